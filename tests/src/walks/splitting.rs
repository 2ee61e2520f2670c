//! Edges that are split, bent, joined and cut short under the units on them.

use egui::{Key, vec2};
use gantline_plan::file;
use glam::DVec2;

use super::walker::Walker;

/// Drags a corner of the selected roof by typed distances.
fn move_corner(walker: &mut Walker, corner: (f64, f64), by: [&str; 2]) {
    let at = walker.place(corner.0, corner.1);
    walker.hold(at, at + vec2(12.0, -12.0), 3, &mut |_, _| ());
    walker.type_numbers(&by);
    walker.harness.drop_at(at);
    walker.harness.run();
}

/// Where the units stand, m, in the order of their ids.
fn stands(walker: &Walker) -> [DVec2; 2] {
    let assessment = walker.harness.state().assessment();
    let all: Vec<DVec2> = assessment.units.values().map(|unit| unit.frame.expect("on the plan").at).collect();
    all.try_into().expect("two units")
}

fn assert_near(found: [DVec2; 2], expected: [DVec2; 2]) {
    for (found, expected) in found.into_iter().zip(expected) {
        assert!(found.distance(expected) < 1e-9, "{found} instead of {expected}");
    }
}

fn bytes(walker: &Walker) -> String {
    file::write(walker.plan()).expect("plan to text")
}

/// A point this far along a line and behind it, outside being on the right as one goes along.
fn along_and_behind(from: DVec2, to: DVec2, along_m: f64, behind_m: f64) -> DVec2 {
    let way = (to - from).normalize();
    from + way * along_m + way.perp() * behind_m
}

#[test]
fn a_split_edge_keeps_its_units_in_place() {
    let mut walker = Walker::start(&["split.gantline.json"; 4]);
    walker.sketch_rectangle("30", "20");
    walker.press(Key::Home);
    walker.place_unit_on("Roof 1 edge 1", "7");
    walker.place_unit_on("Roof 1 edge 1", "22");
    let setback_m = 0.85;
    let placed = [DVec2::new(7.0, setback_m), DVec2::new(22.0, setback_m)];
    assert_near(stands(&walker), placed);
    let whole = bytes(&walker);

    // A corner put in: each unit goes to the part it stands on.
    let edge = walker.rect("Roof 1 edge 1").center();
    walker.click_at(edge);
    walker.type_into("new corner at", "15");
    assert_near(stands(&walker), placed);
    assert!(walker.value("Unit B-01").starts_with("along 7.000 m"), "{}", walker.value("Unit B-01"));
    assert!(walker.value("Unit B-02").starts_with("along 7.000 m"), "{}", walker.value("Unit B-02"));
    assert_eq!(walker.value("Roof 1 edge 2"), "15.000 m");

    // The corner moved 2 m outward: units go along with their edges, 7 m from the corner they are measured from.
    let roof = walker.place(15.0, 10.0);
    walker.click_at(roof);
    move_corner(&mut walker, (15.0, 0.0), ["0", "-2"]);
    let corner = DVec2::new(15.0, -2.0);
    let bent = [
        along_and_behind(DVec2::ZERO, corner, 7.0, setback_m),
        along_and_behind(corner, DVec2::new(30.0, 0.0), 7.0, setback_m),
    ];
    assert_near(stands(&walker), bent);
    // √(15² + 2²) m.
    assert_eq!(walker.value("Roof 1 edge 1"), "15.133 m");

    // The corner taken away: units stay where they stand, measured from the one edge that is left.
    let edge = walker.rect("Roof 1 edge 2").center();
    walker.click_at(edge);
    walker.scroll_and_click("Take away its first corner");
    assert_near(stands(&walker), bent);
    assert_eq!(walker.value("Roof 1 edge 1"), "30.000 m");
    assert!(walker.value("Unit B-01").starts_with(&format!("along {:.3} m", bent[0].x)));

    // Cut to 6 m, the edge ends before both units: said, and never clamped.
    let roof = walker.place(15.0, 10.0);
    walker.click_at(roof);
    move_corner(&mut walker, (30.0, 0.0), ["-24", "0"]);
    assert_eq!(walker.value("Roof 1 edge 1"), "6.000 m");
    let check = walker.save_and_check("split.gantline.json");
    // One is measured from the start of the edge, the other from its end.
    for (unit, past_m) in [("B-01", bent[0].x - 6.0), ("B-02", 24.0 - bent[1].x)] {
        let at = walker.rect(&format!("Unit {unit}")).center();
        walker.click_at(at);
        let past = format!("{past_m:.3} m past the end of its edge");
        let said = format!("blocking: Unit {unit}: The unit stands between the ends of its edge. {past}");
        assert!(walker.told().iter().any(|told| told.starts_with(&said)), "{said} {:?}", walker.told());
        let answered = check["findings"].as_array().expect("findings").iter().any(|finding| {
            finding["code"] == "stands-past-edge-end"
                && finding["detail"] == past
                && finding["outcome"]["fails"] == "blocking"
        });
        assert!(answered, "{}", check["findings"]);
    }

    for _ in 0..4 {
        walker.press_with_command(Key::Z);
    }
    assert_eq!(bytes(&walker), whole, "four steps back, to the byte");
}

/// Every row about the reach of the facade below one edge, which is left selected.
fn reach_of(walker: &mut Walker, edge: &str) -> Vec<String> {
    let edge = walker.rect(edge).center();
    walker.click_at(edge);
    walker.told_between("Reach of this facade", "Findings")
}

#[test]
fn no_gap_at_a_parapet_joint() {
    let mut walker = Walker::start(&["joint.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    walker.press(Key::Home);
    let edge = walker.rect("Roof 1 edge 1").center();
    walker.click_at(edge);
    // Low enough that technicians work from the very top: the reach over the whole height is not empty.
    walker.type_into("over structural slab", "0.3");
    for along in ["10", "13.5", "16.5", "20"] {
        walker.place_unit_on("Roof 1 edge 1", along);
    }
    walker.click_at(edge);
    walker.type_into("new corner at", "15");
    let shown = reach_of(&mut walker, "Roof 1 edge 1");
    let before = walker.save_and_check("joint.gantline.json");
    let stretches = before["facades"][0]["covered_full_height"].as_array().expect("stretches").clone();
    let ends: Vec<(f64, f64)> = stretches
        .iter()
        .map(|stretch| (stretch["from_m"].as_f64().expect("a number"), stretch["to_m"].as_f64().expect("a number")))
        .collect();
    assert!(ends.iter().any(|&(from, to)| from < 14.0 && to > 16.0), "reached across the joint at 15 m: {ends:?}");
    let whole: f64 = ends.iter().map(|(from, to)| to - from).sum();
    assert_eq!(walker.figure("reached from top to foot"), format!("{whole:.3} m"));
    // The parapet of one half becomes lower: nothing of the reach changes, neither on the screen nor in the answer.
    let second = walker.rect("Roof 1 edge 2").center();
    walker.click_at(second);
    walker.type_into("over structural slab", "0.15");
    assert_eq!(walker.told_of("over structural slab"), "0.150 m");
    let after = walker.save_and_check("joint.gantline.json");
    assert_eq!(after["facades"], before["facades"]);
    assert_eq!(reach_of(&mut walker, "Roof 1 edge 1"), shown);
    assert_eq!(walker.told_of("over structural slab"), "0.300 m");
    assert_eq!(reach_of(&mut walker, "Roof 1 edge 2"), shown, "both halves hang in one facade");
}
