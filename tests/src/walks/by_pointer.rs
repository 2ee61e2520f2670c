//! Sketching, placing and dragging by pointer and keyboard.

use egui::Key;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file;

use super::walker::Walker;

#[test]
fn a_roof_is_sketched_by_typed_lengths_exact_to_a_millimeter() {
    let mut walker = Walker::start(&[]);
    walker.sketch_rectangle("32.5", "18.25");
    assert_eq!(walker.plan().roofs.len(), 1);
    for (found, typed) in walker.edge_lengths().iter().zip([32.5, 18.25, 32.5, 18.25]) {
        assert!((found - typed).abs() < 1e-9, "{found} instead of {typed}");
    }
    let area: f64 = walker.plan().roofs.values().map(gantline_plan::document::Roof::area_m2).sum();
    // 32.5 × 18.25 (hand value).
    assert!((area - 593.125).abs() < 1e-9);
}

#[test]
fn every_drag_step_shows_its_own_figures() {
    let mut walker = Walker::start(&[]);
    walker.sketch_rectangle("30", "20");
    walker.press(Key::U);
    let edge = walker.rect("Roof 1 edge 1").center();
    walker.harness.hover_at(edge - egui::vec2(0.0, 14.0));
    walker.harness.run();
    walker.harness.drag_at(edge - egui::vec2(0.0, 14.0));
    walker.harness.run();
    walker.harness.drop_at(edge - egui::vec2(0.0, 14.0));
    walker.harness.run();
    assert_eq!(walker.plan().placements.len(), 1, "a click near the edge places a unit");
    walker.press(Key::V);
    let (&id, _) = walker.plan().placements.iter().next().expect("one unit");
    let before = file::write(walker.plan()).expect("plan to text");
    assert!(walker.value("Unit B-01").starts_with("along "), "{}", walker.value("Unit B-01"));
    let from = walker.rect("Unit B-01").center();
    let to = from + egui::vec2(180.0, -8.0);
    let mut along = Vec::new();
    walker.drag(from, to, 60, |walker, _| {
        let shown = walker.harness.state().assessment();
        let fresh = assess(walker.plan(), &mut Memo::new());
        assert_eq!(*shown, fresh, "what is shown equals a fresh assessment to the bit");
        along.push(fresh.units[&id].setting_out.expect("on an edge").from_start_m);
    });
    assert!(along.windows(2).filter(|pair| pair[0] != pair[1]).count() > 40, "the unit follows the pointer");
    assert_ne!(file::write(walker.plan()).expect("plan to text"), before);
    walker.press_with_command(Key::Z);
    assert_eq!(file::write(walker.plan()).expect("plan to text"), before, "a drag is one step of undo");
    // Esc in the middle of a drag leaves every byte.
    let from = walker.rect("Unit B-01").center();
    walker.hold(from, from + egui::vec2(90.0, 0.0), 20, &mut |_, _| ());
    walker.press(Key::Escape);
    assert_eq!(file::write(walker.plan()).expect("plan to text"), before);
}

#[test]
fn a_plan_is_saved_and_opens_again_equal() {
    let mut walker = Walker::start(&["roof.gantline.json", "roof.gantline.json"]);
    walker.sketch_rectangle("24", "12");
    walker.press_with_command(Key::S);
    walker.harness.state_mut().wait_for_disk();
    walker.harness.run();
    let bytes = std::fs::read(walker.file("roof.gantline.json")).expect("the plan was saved");
    let saved = file::read(&bytes).expect("a plan that reads back");
    assert_eq!(saved, *walker.plan());
    assert_eq!(saved.roofs.len(), 1);
}
