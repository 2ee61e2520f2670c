//! Fifty units at once, and a plan of three hundred.

use std::path::Path;

use egui::{Key, vec2};
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

#[test]
fn three_hundred_units_stay_calm() {
    let mut walker = Walker::start(&["large.json"]);
    let demo = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-projects/large-complex.json");
    std::fs::copy(demo, walker.file("large.json")).expect("the demonstration plan is copied");
    walker.press_with_command(Key::O);
    walker.settle();
    assert!(walker.plan().placements.len() >= 300);
    let middle = walker.sheet().center();
    let width = walker.sheet().width();
    let calm = |walker: &Walker, doing: &str| {
        assert_eq!(walker.sheet().width(), width, "{doing}: the panels keep their widths");
        let overlaps = walker.overlapping_figures();
        assert!(
            overlaps.is_empty(),
            "{doing}: {} overlaps, as {:?}",
            overlaps.len(),
            &overlaps[..overlaps.len().min(12)]
        );
    };
    calm(&walker, "opened");
    for step in 0..12 {
        walker.zoom_at(middle, 1.3);
        calm(&walker, &format!("zoom {step}"));
    }
    for step in 0..10 {
        walker.pan_by(vec2(37.0, -11.0));
        calm(&walker, &format!("pan {step}"));
    }
    walker.press(Key::Home);
    // A box to the left takes what it touches.
    walker.drag(middle + vec2(300.0, 250.0), middle - vec2(300.0, 250.0), 10, |walker, step| {
        calm(walker, &format!("box {step}"));
    });
    let heading = walker.heading();
    assert!(heading.ends_with("units") || heading.contains("things"), "{heading}");
    calm(&walker, "a box of units is selected");
    // One unit dragged over a hundred frames.
    walker.press(Key::Escape);
    walker.zoom_at(middle, 6.0);
    let name = walker.any_unit_in_sight();
    let from = walker.rect(&name).center();
    walker.drag(from, from + vec2(120.0, 0.0), 100, |walker, step| {
        calm(walker, &format!("{name} dragged, frame {step}"));
    });
}
