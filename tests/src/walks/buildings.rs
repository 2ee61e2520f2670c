//! Buildings with more than one roof.

use egui::{Key, vec2};
use gantline_plan::quantity::{UnitSystem, length};
use serde_json::Value;

use super::walker::Walker;

/// A rectangle by its corner and sides, and the level of its slab.
fn roof(walker: &mut Walker, corner: [&str; 2], sides: [&str; 2], level: &str) {
    walker.press(Key::R);
    walker.type_numbers(&corner);
    walker.type_numbers(&[sides[0], "0"]);
    walker.type_numbers(&[sides[1], "90"]);
    walker.type_numbers(&[sides[0], "180"]);
    walker.press(Key::Enter);
    walker.type_into("top of slab", level);
}

#[test]
fn two_roofs_one_wall() {
    let mut walker = Walker::start(&["two.gantline.json"]);
    walker.click("New plan");
    roof(&mut walker, ["0", "0"], ["20", "12"], "20");
    roof(&mut walker, ["20", "0"], ["14", "12"], "12");
    walker.press(Key::Escape);
    walker.press(Key::V);
    walker.select("Roof 1 edge 2");
    // From the parapet's coping down to the ground: 20 + 1.1 m.
    assert_eq!(walker.told_of("height"), "21.100 m");
    walker.choose("ends at", "Roof 2");
    // Down to the low roof's finish: 21.1 - 12 m; over 12 m of length 9.1 × 12 = 109.2 m².
    assert_eq!(walker.told_of("height"), "9.100 m");
    assert_eq!(walker.told_of("area"), "109.2 m²");
    // A unit on the low roof, half a meter from the wall.
    walker.press(Key::U);
    let edge = walker.rect("Roof 2 edge 1").center() - vec2(0.0, 10.0);
    walker.harness.hover_at(edge);
    walker.harness.run();
    walker.type_numbers(&["0.5"]);
    walker.press(Key::Escape);
    walker.press(Key::V);
    assert!(walker.value("Unit B-01").starts_with("along 0.500 m"), "{}", walker.value("Unit B-01"));
    let check = walker.save_and_check("two.gantline.json");
    let wall = check["facades"].as_array().expect("facades").iter().find(|facade| facade["foot_level_m"] == 12.0);
    assert_eq!(wall.expect("the wall")["height_m"].as_f64().map(|height| (height * 1e9).round() / 1e9), Some(9.1));
    let high = &check["facades"][0]["roof"];
    let pairs = check["units"][0]["clear_zone_pairs"].as_array().expect("pairs");
    let against_wall = |pair: &&Value| pair["part"] == "arm" && pair["against"]["higher_roof"] == *high;
    let met = pairs.iter().filter(against_wall).filter(|pair| pair["is_too_small"] == true);
    let shown: Vec<String> = met
        .map(|pair| length(pair["clearance_m"].as_f64().unwrap_or(f64::NAN), UnitSystem::Si))
        .filter(|clear| walker.says(&format!("{clear}, asked ≥ 0.100 m (setting of this plan)")))
        .collect();
    assert!(!shown.is_empty(), "the arm meets the wall, and the inspector says by how much: {pairs:#?}");
}
