//! Clearances a millimeter over and under their limits, in height and beside, with the place where they are.

use egui::Key;
use gantline_plan::quantity;
use glam::DVec2;
use serde_json::Value;

use super::walker::Walker;

const FILE: &str = "limit.gantline.json";
/// Asked for over, under and around a part by the basis of a new plan, m.
const ASKED_M: f64 = 0.10;

/// A roof of 30 × 20 m at 20 m with parapets of 1.10 m and a front-braced unit in the middle of its south edge.
pub fn with_a_unit(mut walker: Walker) -> Walker {
    walker.sketch_rectangle("30 m", "20 m");
    walker.place_unit("Roof 1 edge 1", "15 m");
    walker.type_into("setback", "0.85 m");
    walker
}

fn start() -> Walker {
    with_a_unit(Walker::start(&[FILE]))
}

/// A rectangle by its lower left corner and its sides, with the tool in hand.
fn rectangle(walker: &mut Walker, corner: [&str; 2], sides: [&str; 2]) {
    walker.type_numbers(&corner);
    walker.type_numbers(&[sides[0], "0"]);
    walker.type_numbers(&[sides[1], "90"]);
    walker.type_numbers(&[sides[0], "180"]);
    walker.press(Key::Enter);
    walker.press(Key::Escape);
    walker.press(Key::V);
}

/// Types a length of meters with all its digits, whatever unit is shown.
fn meters(value: f64) -> String {
    format!("{value:.9} m")
}

/// A pair of a part of unit B-01 and what it passes while it serves.
struct Pair<'a> {
    /// As the inspector names it.
    row: &'a str,
    /// The rule that fails when they come too near.
    code: &'a str,
    clear_m: f64,
    blocks: bool,
}

/// Reads a pair off the inspector, the plan and the answer about the saved file, which must all say the same, and gives its
/// place: in plan and as a level, m.
fn read(walker: &mut Walker, pair: &Pair<'_>) -> (DVec2, f64) {
    walker.select("Unit B-01");
    let units = walker.units_of_measure();
    let figure = format!("{} of {}", quantity::length(pair.clear_m, units), quantity::length(ASKED_M, units));
    let row = format!("{}: {figure}, while it serves", pair.row);
    assert!(walker.says(&row), "{row}: {:?}", walker.told());
    let check = walker.save_and_check(FILE);
    let unit = check["units"].as_array().expect("units").iter().find(|unit| unit["tag"] == "B-01").expect("B-01");
    let blocking = check["findings"].as_array().expect("findings").iter().find(|finding| {
        finding["code"] == pair.code
            && finding["outcome"]["fails"] == "blocking"
            && finding["about"][0]["placement"] == unit["id"]
    });
    assert_eq!(blocking.is_some(), pair.blocks, "{}: {:?}", pair.code, check["findings"]);
    let number = |value: &Value| value.as_f64().expect("a number");
    let answered = unit["clear_zone_pairs"].as_array().expect("pairs").iter().find(|answer| {
        answer["over"] == "serving_slew"
            && answer["is_too_small"] == pair.blocks
            && (number(&answer["clearance_m"]) - pair.clear_m).abs() < 1e-6
    });
    let answered = answered.unwrap_or_else(|| panic!("{row} is not among {:#?}", unit["clear_zone_pairs"]));
    let place = DVec2::new(number(&answered["at_m"][0]), number(&answered["at_m"][1]));
    if let Some(finding) = blocking {
        assert_eq!(finding["at"]["at_m"], answered["at_m"]);
        assert!(walker.told().iter().any(|told| told.starts_with("blocking: Unit B-01")));
        // Marked on the plan where it is, with its figure. Arm and tail are two parts of one name.
        let marks = walker.marks(&format!("Conflict of Unit B-01: {}, while it serves", pair.row));
        let there = walker.screen_of(place);
        assert!(marks.iter().any(|(at, value)| *value == figure && at.distance(there) < 0.5), "{marks:?} {there:?}");
    }
    (place, number(&answered["level_m"]))
}

/// Raises the parapet over its limit for the front brace; the whole walk, in the units of measure that are shown.
pub fn front_brace_over_the_parapet(walker: &mut Walker) {
    walker.type_into("setback", "0.75 m");
    // Front strut of the demonstration family: from the mast 0.60 m below the arm's axis (1.45 m) to the arm 0.55 m in
    // front; tube 70 mm. The parapet, 0.20 m thick, begins 0.75 - 0.20 = 0.55 m before the mast; with 0.10 m around and
    // 35 mm of half width the strut comes over it from 0.55 - 0.135 = 0.415 m. Its underside there, over the slab:
    // 0.85 + 0.415 × 0.60/0.55 - 0.035/cos β with tan β = 0.60/0.55: 1.250931 m (hand value).
    let slope: f64 = 0.60 / 0.55;
    let underside_m = 0.85 + 0.415 * slope - 0.035 * slope.hypot(1.0);
    assert!((underside_m - 1.250_931).abs() < 1e-6);
    for (over_m, blocks) in [(-0.001, false), (0.001, true)] {
        walker.select("Roof 1 edge 1");
        walker.type_into("over structural slab", &meters(underside_m - ASKED_M + over_m));
        let row = "front brace · parapet of Roof 1 edge 1 · in height";
        let pair = Pair { row, code: "brace-clears-parapet", clear_m: ASKED_M - over_m, blocks };
        let (at, level_m) = read(walker, &pair);
        // On the strut's line: straight in front of the mast and as high as its underside there.
        assert!(at.distance(DVec2::new(15.0, 0.75 - 0.415)) < 1e-6, "{at}");
        assert!((level_m - 20.0 - underside_m).abs() < 1e-6, "{level_m}");
    }
}

#[test]
fn raising_the_parapet_1_mm_over_the_limit_blocks_the_front_brace() {
    front_brace_over_the_parapet(&mut start());
}

#[test]
fn raising_a_plant_room_1_mm_over_the_limit_blocks_the_rear_brace() {
    let mut walker = start();
    walker.type_into("setback", "0.75");
    walker.choose("arm", "Arm 1.15 with tail, with Long rear tie");
    walker.choose("mast", "Mast 1.90");
    // A plant room 0.40 m behind the mast.
    walker.press(Key::O);
    rectangle(&mut walker, ["10", "1.15"], ["10", "4"]);
    // Long rear tie: from the mast 0.95 m below the arm's axis (1.90 m) to the tail 0.70 m behind; tube 70 mm. It comes
    // over the plant room from 0.40 - 0.10 - 0.035 = 0.265 m; underside 0.95 + 0.265 × 0.95/0.70 - 0.035/cos β with
    // tan β = 0.95/0.70: 1.250641 m (hand value).
    let slope: f64 = 0.95 / 0.70;
    let underside_m = 0.95 + 0.265 * slope - 0.035 * slope.hypot(1.0);
    assert!((underside_m - 1.250_641).abs() < 1e-6);
    for (over_m, blocks) in [(-0.001, false), (0.001, true)] {
        walker.select("Obstacle 1");
        walker.type_into("to", &meters(underside_m - ASKED_M + over_m));
        let row = "rear brace · Obstacle 1 · in height";
        let pair = Pair { row, code: "brace-clears-obstacle", clear_m: ASKED_M - over_m, blocks };
        let (at, level_m) = read(&mut walker, &pair);
        assert!(at.distance(DVec2::new(15.0, 0.75 + 0.265)) < 1e-6, "{at}");
        assert!((level_m - 20.0 - underside_m).abs() < 1e-6, "{level_m}");
    }
}

#[test]
fn raising_a_roof_1_mm_over_the_limit_blocks_the_arm() {
    let mut walker = start();
    // No parapets. The mast stands half a meter before the end of the edge, and the higher roof begins there: while the arm
    // serves the last of the facade it comes over it. Its underside: 1.90 - 0.16/2 = 1.82 m over the slab.
    walker.select_roof("Roof 1");
    walker.click_button("Select its edges");
    walker.type_into("over structural slab", "0");
    walker.select("Unit B-01");
    walker.choose("arm", "Arm 1.15 with tail, with Long rear tie");
    walker.choose("mast", "Mast 1.90");
    walker.type_into("along", "29.5");
    walker.type_into("setback", "0.7");
    walker.press(Key::R);
    rectangle(&mut walker, ["30", "0"], ["20", "20"]);
    walker.type_into("over structural slab", "0");
    walker.press(Key::Home);
    let underside_m = 1.82;
    for (over_m, blocks) in [(-0.001, false), (0.001, true)] {
        walker.select_roof("Roof 2");
        walker.type_into("top of slab", &meters(20.0 + underside_m - ASKED_M + over_m));
        let row = "arm · wall below Roof 2 · in height";
        let pair = Pair { row, code: "arm-clears-higher-roof", clear_m: ASKED_M - over_m, blocks };
        let (at, level_m) = read(&mut walker, &pair);
        // On the arm's line, out to its tip, and within half its width and 0.10 m of the wall.
        assert!(at.distance(DVec2::new(29.5, 0.7)) < 1.15 + 1e-6 && at.x > 30.0 - 0.15 - 1e-6, "{at}");
        assert!((level_m - 20.0 - underside_m).abs() < 1e-6, "{level_m}");
    }
}

#[test]
fn a_mast_1_mm_too_near_blocks_the_arm() {
    // Both masts 1.90 m. The arm of the first serves from 0.15 m before the facade on, that is while 1.15·cos ψ - 0.85 is at
    // least 0.15: cos ψ = 1.00/1.15. The second mast stands 0.45 m nearer to the edge; the arm is 100 mm wide and the mast as
    // wide as its socket, 200 mm: its axis must stay 0.05 + 0.10 + 0.10 m from the arm's line. Along the edge they are
    // (0.25 + 0.45·sin ψ)/cos ψ apart then; a millimeter nearer to the line is 1 mm/cos ψ along the edge. Nearer than that
    // the heights decide: the arm's underside at 1.82 m, the other's head at 1.98 m.
    let cos = 1.00_f64 / 1.15;
    let sin = (1.0 - cos * cos).sqrt();
    let mut walker = start();
    walker.press_with_command(Key::B);
    walker.choose("stand at once", "any of them");
    walker.press(Key::Escape);
    walker.select("Unit B-01");
    walker.choose("arm", "Arm 1.15 with tail, with Long rear tie");
    walker.choose("mast", "Mast 1.90");
    walker.press_with_command(Key::D);
    assert_eq!(walker.heading(), "Unit B-02", "the copy is selected");
    walker.type_into("setback", "0.4");
    for (nearer_m, blocks) in [(0.001, true), (-0.001, false)] {
        let apart_m = (0.25 - nearer_m + 0.45 * sin) / cos;
        walker.select("Unit B-02");
        walker.type_into("along", &meters(15.0 + apart_m));
        let (row, clear_m) = if blocks {
            ("arm · Unit B-02 while it stands · in height", 1.82 - 1.98)
        } else {
            ("arm · Unit B-02 while it stands · beside", ASKED_M - nearer_m)
        };
        let (at, _) = read(&mut walker, &Pair { row, code: "arm-clears-unit", clear_m, blocks });
        // On the arm's line at its last serving slew.
        let out = at - DVec2::new(15.0, 0.85);
        assert!((out.x * cos + out.y * sin).abs() < 1e-3, "{at}");
    }
}
