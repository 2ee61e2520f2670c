//! A file that is broken in one place: named with the place, and what is sound of it opens as a plan of its own.

use egui::Key;

use super::walker::Walker;

const SMALL: &str = include_str!("../../../demo-projects/small-roof.json");

#[test]
fn what_is_sound_of_a_broken_file_opens_and_the_file_stays_as_it_is() {
    let mut walker = Walker::start(&["broken.json"]);
    let path = walker.file("broken.json");
    let broken = SMALL.replacen("\"setback_m\": 0.55", "\"setback_m\": \"near\"", 1);
    assert_ne!(broken, SMALL, "one setback is no number");
    std::fs::write(&path, &broken).expect("a broken file");
    walker.press_with_command(Key::O);
    walker.settle();
    assert!(walker.says("This file can't be opened"), "{:?}", walker.told());
    assert!(walker.told().iter().any(|told| told.starts_with("placements › unit-")), "the part is named");
    walker.click("Open what is sound");
    walker.settle();
    // The small roof has eight units (as its program draws it); one of them is broken.
    assert_eq!((walker.plan().roofs.len(), walker.plan().placements.len()), (1, 7));
    assert_eq!(std::fs::read(&path).expect("the file"), broken.as_bytes());
    // It has no file yet: leaving it asks first.
    walker.press_with_command(Key::W);
    assert!(walker.says("Save the changes first?"));
}
