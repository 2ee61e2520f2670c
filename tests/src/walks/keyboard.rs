//! The whole job without a pointer.

use egui::Key;
use gantline_exchange::answers::ReactionsAnswer;
use gantline_exchange::answers::figure::Amount;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::quantity::{UnitSystem, moment};

use super::walker::Walker;

#[test]
fn keyboard_only() {
    let mut walker = Walker::start(&["typed.gantline.json"]);
    walker.press_with_command(Key::N);
    walker.press(Key::R);
    walker.type_numbers(&["0", "0"]);
    walker.type_numbers(&["30", "0"]);
    walker.type_numbers(&["20", "90"]);
    walker.type_numbers(&["30", "180"]);
    walker.press(Key::Enter);
    assert_eq!(walker.edge_lengths(), [30.0, 20.0, 30.0, 20.0]);
    walker.press(Key::U);
    walker.type_numbers(&["12.5"]);
    walker.press(Key::Escape);
    walker.press(Key::V);
    assert!(walker.value("Unit B-01").starts_with("along 12.500 m"), "{}", walker.value("Unit B-01"));
    let shown = walker.told_of("M max");
    let check = walker.save_and_check("typed.gantline.json");
    assert_eq!(check["units"].as_array().map(Vec::len), Some(1));
    let plan = walker.plan();
    let answer = ReactionsAnswer::of(plan, &assess(plan, &mut Memo::new()));
    let largest = answer.units[0]
        .combinations
        .iter()
        .flat_map(|combination| &combination.sets)
        .filter(|set| set.component == "M")
        .map(|set| match set.value {
            Amount::Moment(value) => value.value(),
            _ => f64::NAN,
        })
        .fold(0.0, f64::max);
    assert_eq!(shown.split(';').next(), Some(moment(largest, UnitSystem::Si).as_str()));
    assert!(largest > 10_000.0, "a unit hung with a technician tilts its base: {largest} N·m");
}
