//! Fifty units at once, and a plan of three hundred.

use egui::Key;
use gantline_plan::file;

use super::walker::Walker;

/// Fifty units on the south edge of a roof 120 m long, placed by typed distances.
fn fifty(dialogs: &[&str]) -> Walker {
    let mut walker = Walker::start(dialogs);
    walker.sketch_rectangle("120", "20");
    walker.press(Key::U);
    for number in 0..50_u32 {
        walker.type_numbers(&[&format!("{:.1}", 2.0 + 2.3 * f64::from(number))]);
    }
    walker.press(Key::Escape);
    walker.press(Key::V);
    assert_eq!(walker.plan().placements.len(), 50);
    walker
}

#[test]
fn fifty_units_are_edited_at_once() {
    let mut walker = fifty(&["fifty.gantline.json"]);
    // One of them stands differently, so that the fields are mixed.
    walker.press(Key::N);
    walker.type_into("setback", "0.95");
    let mixed = walker.setbacks();
    assert_eq!(mixed.iter().filter(|setback| **setback == 0.95).count(), 1);
    walker.press_with_command(Key::A);
    assert!(walker.says("50 units"));
    assert_eq!(walker.placeholder_of("setback"), "mixed");
    assert_eq!(walker.told_of("turn"), "0.0°");
    let before = file::write(walker.plan()).expect("plan to text");
    walker.type_into("setback", "0.9");
    assert!(walker.setbacks().iter().all(|setback| *setback == 0.9), "one field changes all");
    assert_eq!(walker.told_of("setback"), "0.900 m");
    let check = walker.save_and_check("fifty.gantline.json");
    assert_eq!(check["units"].as_array().map(Vec::len), Some(50));
    walker.press_with_command(Key::Z);
    assert_eq!(file::write(walker.plan()).expect("plan to text"), before, "one step of undo");
}
