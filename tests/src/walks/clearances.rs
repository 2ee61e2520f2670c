//! Clearances a millimeter over and under their limits, in height and beside, with the place where they are.

use egui::Key;
use serde_json::Value;

use super::walker::Walker;

/// A roof of 30 × 20 m with a front-braced unit in the middle of its south edge.
pub fn with_a_unit(mut walker: Walker) -> Walker {
    walker.sketch_rectangle("30 m", "20 m");
    walker.place_unit("Roof 1 edge 1", "15 m");
    walker
}

fn start() -> Walker {
    with_a_unit(Walker::start(&["limit.gantline.json"]))
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

/// What the inspector says of unit B-01: this clearance, this figure, blocking or not; and the answer about the file says
/// the same. Returns the pair of that answer.
fn clearance_is(walker: &mut Walker, pair: &str, clear_m: f64, over: &str, blocks: bool) -> Value {
    walker.select("Unit B-01");
    let units = walker.units_of_measure();
    let length = |value| gantline_plan::quantity::length(value, units);
    let row = format!("{pair}: {} of {}, {over}", length(clear_m), length(0.1));
    assert!(
        walker.says(&row),
        "{row}: {:?}",
        walker.told().iter().filter(|told| told.contains(" of ")).collect::<Vec<_>>()
    );
    let failed =
        walker.told().iter().any(|told| told.starts_with("blocking: Unit B-01") && told.contains(&length(clear_m)));
    let warned =
        walker.told().iter().any(|told| told.starts_with("caution: Unit B-01") && told.contains(&length(clear_m)));
    assert_eq!(failed || warned, blocks, "{row}: {:?}", walker.told());
    let check = walker.save_and_check("limit.gantline.json");
    let unit =
        check["units"].as_array().expect("units").iter().find(|unit| unit["tag"] == "B-01").expect("B-01").clone();
    let pairs = unit["clear_zone_pairs"].as_array().expect("pairs");
    let same = |pair: &&Value| (pair["clearance_m"].as_f64().unwrap_or(f64::NAN) - clear_m).abs() < 1e-6;
    let found = pairs.iter().find(same).unwrap_or_else(|| panic!("{clear_m} is not in {pairs:#?}")).clone();
    assert_eq!(found["is_too_small"], blocks);
    found
}

/// Types a length of meters with all its digits, whatever unit is shown.
fn meters(value: f64) -> String {
    format!("{value:.6} m")
}

/// Raises the parapet over its limit for the front brace; the whole walk, in the units of measure that are shown.
pub fn front_brace_over_the_parapet(walker: &mut Walker) {
    walker.type_into("setback", "0.75 m");
    // Front strut of the demonstration family: from the mast 0.60 m below the arm's axis (1.45 m) to the arm 0.55 m in
    // front; tube 70 mm. The parapet, 0.20 m thick, begins 0.75 - 0.20 = 0.55 m before the mast; with 0.10 m around and
    // 35 mm of half width the strut comes over it from r = 0.55 - 0.135 = 0.415 m. Its underside there is
    // 0.85 + 0.415 × 0.60/0.55 - 0.035 × sqrt(1 + (0.60/0.55)²) = 1.250931 m; with 0.10 m of room the parapet may be
    // 1.150931 m high (hand value).
    let limit = 1.150_931;
    for change in [-0.001, 0.001] {
        walker.select("Roof 1 edge 1");
        walker.type_into("over structural slab", &meters(limit + change));
        let row = "front brace · parapet of Roof 1 edge 1 · in height";
        let found = clearance_is(walker, row, 0.1 - change, "while it serves", change > 0.0);
        // The place lies on the strut's line: straight in front of the mast at (15, 0.75), between mast and arm's pin.
        let [x, y] = [0, 1].map(|part| found["at_m"][part].as_f64().expect("place"));
        assert!((x - 15.0).abs() < 0.036 && (y - (0.75 - 0.415)).abs() < 1e-6, "({x}, {y})");
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
    // over the plant room from r = 0.40 - 0.10 - 0.035 = 0.265 m; underside 0.95 + 0.265 × 0.95/0.70 -
    // 0.035 × sqrt(1 + (0.95/0.70)²) = 1.250641 m, less 0.10 m of room (hand value).
    let limit = 1.150_641;
    for change in [-0.001, 0.001] {
        walker.select("Obstacle 1");
        walker.type_into("to", &meters(limit + change));
        let found = clearance_is(
            &mut walker,
            "rear brace · Obstacle 1 · in height",
            0.1 - change,
            "while it serves",
            change > 0.0,
        );
        let [x, y] = [0, 1].map(|part| found["at_m"][part].as_f64().expect("place"));
        assert!((x - 15.0).abs() < 0.036 && (y - (0.75 + 0.265)).abs() < 1e-6, "({x}, {y})");
    }
}

#[test]
fn raising_a_roof_1_mm_over_the_limit_blocks_the_arm() {
    let mut walker = start();
    // A roof in front without parapet, a little below the arm: its underside is at 1.45 - 0.16/2 = 1.37 m over the slab at
    // 20 m, less 0.10 m of room: 21.27 m.
    walker.press(Key::R);
    rectangle(&mut walker, ["10", "-8"], ["10", "8"]);
    walker.type_into("over structural slab", "0");
    for change in [-0.001, 0.001] {
        walker.select_roof("Roof 2");
        walker.type_into("top of slab", &meters(21.27 + change));
        clearance_is(
            &mut walker,
            "arm · wall below Roof 2 · in height",
            0.1 - change,
            "over the rest of the turn",
            change > 0.0,
        );
    }
}

#[test]
fn a_mast_1_mm_too_near_blocks_the_arm() {
    let mut walker = start();
    walker.press_with_command(Key::B);
    walker.choose("stand at once", "any of them");
    walker.press(Key::Escape);
    walker.place_unit("Roof 1 edge 1", "18");
    walker.choose("arm", "Arm 1.15 with tail, with Long rear tie");
    walker.choose("mast", "Mast 1.90");
    // The arm's end is taken round: it turns on a circle of 1.15 + 0.10/2 = 1.20 m; the other's mast as wide as its socket
    // of 0.20 m all the way up. With 0.10 m around, 1.20 + 0.10 + 0.10 = 1.40 m apart (hand value).
    let limit = 1.40;
    // Nearer than that the heights decide: the arm's underside at 1.37 m, the other's arm on its mast up to 1.98 m.
    for (apart, way, clear_m) in [(limit + 0.001, "beside", 0.101), (limit - 0.001, "in height", 1.37 - 1.98)] {
        walker.select("Unit B-02");
        walker.type_into("along", &meters(15.0 + apart));
        let row = format!("arm · Unit B-02 while it stands · {way}");
        clearance_is(&mut walker, &row, clear_m, "over the rest of the turn", clear_m < 0.1);
    }
}
