//! Sketching, placing and dragging by pointer and keyboard.

use egui::Key;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file;
use gantline_plan::quantity::{UnitSystem, area, length};

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

/// Along, setback, smallest clearance.
type Step = (f64, f64, Option<f64>);

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
    let to = from + egui::vec2(180.0, -60.0);
    let mut steps: Vec<Step> = Vec::new();
    walker.drag(from, to, 60, |walker, _| {
        let shown = walker.harness.state().assessment();
        let fresh = assess(walker.plan(), &mut Memo::new());
        assert_eq!(*shown, fresh, "what is shown equals a fresh assessment to the bit");
        let unit = &fresh.units[&id];
        let set = unit.setting_out.as_ref().expect("on an edge");
        assert_eq!(walker.told_of("along"), length(set.from_start_m, UnitSystem::Si));
        assert_eq!(walker.told_of("setback"), length(set.setback_m, UnitSystem::Si));
        let reached = unit.serves.first().map(|served| area(served.area_m2, UnitSystem::Si));
        assert_eq!(reached.is_none(), walker.says("It serves no facade."));
        if let Some(reached) = reached {
            assert_eq!(walker.told_of("area"), reached);
        }
        let tightest = unit.tightest().first().map(|pair| pair.clear_m);
        if let Some(tightest) = tightest {
            let figure = format!(": {} of ", length(tightest, UnitSystem::Si));
            assert!(walker.told().iter().any(|told| told.contains(&figure)), "{figure}");
        }
        steps.push((set.from_start_m, set.setback_m, tightest));
    });
    let changed =
        |different: fn(&Step, &Step) -> bool| steps.windows(2).filter(|pair| different(&pair[0], &pair[1])).count();
    assert!(changed(|a, b| a.0 != b.0) > 40, "the unit follows the pointer along the edge");
    assert!(changed(|a, b| a.1 != b.1) > 10, "and inward: {steps:?}");
    assert!(changed(|a, b| a.2 != b.2) > 3, "and the smallest clearance with it: {steps:?}");
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
