//! Outlines drawn by typed lengths, holes in them, edges split and joined.

use egui::Key;
use gantline_plan::file;
use gantline_plan::quantity::{self, UnitSystem};
use glam::DVec2;

use super::walker::Walker;

/// An L by eight typed corners, the long side of the foot in two pieces, and a courtyard in it.
pub fn l_with_courtyard(dialogs: &[&str]) -> Walker {
    let mut walker = Walker::start(dialogs);
    walker.click("New plan");
    walker.press(Key::R);
    walker.type_numbers(&["0", "0"]);
    for side in
        [["18", "0"], ["12", "0"], ["14", "90"], ["12.25", "180"], ["10", "90"], ["17.75", "180"], ["11", "-90"]]
    {
        walker.type_numbers(&side);
    }
    walker.press(Key::Enter);
    walker.press(Key::H);
    walker.type_numbers(&["4", "5"]);
    for side in [["6", "0"], ["4.5", "90"], ["6", "180"]] {
        walker.type_numbers(&side);
    }
    walker.press(Key::Enter);
    walker.press(Key::Escape);
    walker.press(Key::V);
    walker
}

#[test]
#[expect(non_snake_case, reason = "the shape is an L and not an l")]
fn an_L_with_courtyard_is_sketched_by_typed_lengths() {
    let mut walker = l_with_courtyard(&["l.gantline.json"]);
    let typed = [18.0, 12.0, 14.0, 12.25, 10.0, 17.75, 11.0, 13.0, 6.0, 4.5, 6.0, 4.5];
    assert_eq!(walker.edge_lengths().len(), typed.len());
    for (index, length_m) in typed.iter().enumerate() {
        let shown = walker.value(&format!("Roof 1 edge {}", index + 1));
        assert_eq!(shown, format!("{length_m:.3} m"), "edge {}", index + 1);
        assert!((walker.edge_lengths()[index] - length_m).abs() < 1e-9);
    }
    // The foot of the L 30 × 14 and its stem 17.75 × 10, less the courtyard 6 × 4.5: 420 + 177.5 - 27 m².
    walker.select_roof("Roof 1");
    assert_eq!(walker.told_of("area"), "570.5 m²");
    assert_eq!(walker.told_of("holes"), "1");
    let check = walker.save_and_check("l.gantline.json");
    let lengths = check["facades"].as_array().expect("facades").iter().filter_map(|facade| facade["length_m"].as_f64());
    // The two pieces of the foot are one facade of 30 m; the rest are as typed.
    assert!((lengths.sum::<f64>() - typed.iter().sum::<f64>()).abs() < 1e-9);
}

#[test]
fn a_segment_that_crosses_is_refused_with_its_place() {
    let mut walker = Walker::start(&[]);
    walker.click("New plan");
    walker.press(Key::R);
    walker.type_numbers(&["0", "0"]);
    walker.type_numbers(&["10", "0"]);
    walker.type_numbers(&["10", "90"]);
    walker.type_numbers(&["4", "180"]);
    // Down from (6, 10) by 12 m: across the first side at (6, 0).
    walker.type_numbers(&["12", "-90"]);
    let said = walker.told().iter().any(|told| told.starts_with("Edges 1 and 4 cross at (6.000, 0.000) m"));
    assert!(said, "{:?}", walker.told());
    let [(crossed, why)] = walker.marks("Refused here").try_into().expect("one place");
    assert_eq!(why, "Edges 1 and 4 cross at (6.000, 0.000) m");
    // Nothing is lost: a shorter side goes on from the same corner.
    walker.type_numbers(&["6", "-90"]);
    walker.press(Key::Enter);
    assert_eq!(walker.edge_lengths()[..4], [10.0, 10.0, 4.0, 6.0]);
    assert!(crossed.distance(walker.screen_of(DVec2::new(6.0, 0.0))) < 1.0, "the place is where the cross stood");
}

#[test]
fn a_unit_on_the_courtyard_edge_looks_into_the_courtyard() {
    let mut walker = l_with_courtyard(&["l.gantline.json"]);
    walker.place_unit("Roof 1 edge 9", "3");
    walker.place_unit("Roof 1 edge 3", "7");
    let check = walker.save_and_check("l.gantline.json");
    let units = check["units"].as_array().expect("units");
    // The courtyard reaches from (4, 5) to (10, 9.5); the unit stands outside it and its tip hangs in it.
    let place = &units[0]["place"];
    let [x, y] = [0, 1].map(|part| place["at_m"][part].as_f64().expect("place"));
    let outward = place["outward_rad"].as_f64().expect("direction");
    let outreach = units_arm_m(&mut walker);
    let tip = [x + outreach * outward.cos(), y + outreach * outward.sin()];
    let inside = |[x, y]: [f64; 2]| x > 4.0 && x < 10.0 && y > 5.0 && y < 9.5;
    assert!(!inside([x, y]) && inside(tip), "stands at ({x}, {y}), tip at {tip:?}");
    // What it covers is on the courtyard's own facade, as the inspector says.
    walker.select("Unit B-01");
    let served = &units[0]["serves"][0];
    let courtyard =
        &check["facades"].as_array().expect("facades").iter().find(|facade| facade["key"] == served["facade"]);
    assert_eq!(courtyard.expect("its facade")["length_m"], 6.0);
    assert_eq!(walker.told_of("serves"), "Roof 1 edge 9");
    let area = served["area_m2"].as_f64().expect("area");
    assert!(area > 0.0);
    assert_eq!(walker.told_of("area"), quantity::area(area, UnitSystem::Si));
    // The same make-up on an outer edge brings the same to its base, to the last bit.
    let reactions = walker.save_and_reactions("l.gantline.json");
    assert_eq!(reactions[0]["combinations"], reactions[1]["combinations"]);
    assert!(reactions[0]["combinations"].as_array().is_some_and(|all| all.len() > 3));
}

#[test]
fn a_split_edge_keeps_its_units_in_place() {
    let mut walker = Walker::start(&["split.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    for along in ["3", "12", "20", "28.5"] {
        walker.place_unit("Roof 1 edge 1", along);
    }
    let before = file::write(walker.plan()).expect("plan to text");
    let places = walker.places();
    let stays = |walker: &Walker, places: &[DVec2]| {
        walker.places().iter().zip(places).all(|(now, then)| now.distance(*then) < 1e-9)
    };
    // A corner put in two meters outside the middle of the edge, by its handle.
    walker.select_roof("Roof 1");
    walker.drag_typed(walker.rect("Roof 1 edge 1").center(), &["0", "-2"]);
    assert_eq!(walker.edge_lengths().len(), 5);
    assert!(stays(&walker, &places), "{:?} instead of {places:?}", walker.places());
    assert!((walker.edge_lengths()[0] - 229.0_f64.sqrt()).abs() < 1e-9, "from (0, 0) to (15, -2)");
    // The corner moved: each unit keeps its distance from the corner that it is measured from.
    let from_their_corners = |walker: &mut Walker| {
        [("B-01", "along"), ("B-02", "to the end of the edge"), ("B-03", "along"), ("B-04", "to the end of the edge")]
            .map(|(tag, name)| {
                walker.select(&format!("Unit {tag}"));
                walker.told_of(name)
            })
    };
    let told = from_their_corners(&mut walker);
    walker.select_roof("Roof 1");
    let corner = walker.corner_at("Roof 1 edge 1", "Roof 1 edge 2");
    walker.drag_typed(corner, &["1", "0.5"]);
    assert_eq!(from_their_corners(&mut walker), told);
    walker.select_roof("Roof 1");
    walker.press_with_command(Key::Z);
    assert!(stays(&walker, &places));
    // Taken away by a click and Delete: the edge is whole again and the units stand where they stood.
    walker.click_at(corner);
    walker.press(Key::Delete);
    assert_eq!(walker.edge_lengths(), [30.0, 20.0, 30.0, 20.0]);
    assert!(stays(&walker, &places));
    // An edge that ends before a unit does: the unit stays where it was told, and a check fails.
    let end = walker.corner_at("Roof 1 edge 1", "Roof 1 edge 2");
    walker.drag_typed(end, &["-20", "0"]);
    walker.select("Unit B-02");
    assert_eq!(walker.told_of("along"), "12.000 m");
    let check = walker.save_and_check("split.gantline.json");
    let past = check["findings"].as_array().expect("findings").iter().find(|one| one["code"] == "stands-past-edge-end");
    let past = past.expect("a failed check");
    assert_eq!(past["outcome"]["fails"], "blocking");
    let asks = past["asks"].as_str().expect("words");
    assert!(walker.told().iter().any(|told| told.starts_with(asks)), "the inspector says it: {asks}");
    // Undo gives the same bytes as before.
    while file::write(walker.plan()).expect("plan to text") != before {
        let steps = walker.plan().clone();
        walker.press_with_command(Key::Z);
        assert_ne!(*walker.plan(), steps, "undo came to an end before the bytes were the same");
    }
}

/// Outreach of the first unit's arm.
fn units_arm_m(walker: &mut Walker) -> f64 {
    walker.save_and_reactions("l.gantline.json")[0]["make_up"]["arm"]["outreach_m"].as_f64().expect("outreach")
}
