//! What is under the pointer: things taken by their tags, corners picked, what is measured, obstacles moved.

use egui::{Key, vec2};
use glam::DVec2;

use super::walker::Walker;

fn with_a_unit() -> Walker {
    let mut walker = Walker::start(&["pointing.gantline.json"]);
    walker.sketch_rectangle("30", "20");
    walker.place_unit("Roof 1 edge 1", "12");
    walker.type_into("setback", "0.85 m");
    walker
}

#[test]
fn a_unit_is_taken_by_its_tag() {
    let mut walker = with_a_unit();
    walker.select_roof("Roof 1");
    let tag = walker.on_sheet("B-01");
    walker.click_at(tag);
    assert_eq!(walker.heading(), "Unit B-01");
    // Dragged by it, it keeps its distance to the pointer: along by what the pointer went, the setback as it was.
    let scale = (walker.screen_of(DVec2::new(30.0, 0.0)).x - walker.screen_of(DVec2::ZERO).x) / 30.0;
    // A handle comes before what lies under it: the tag is taken beside the bar of the setback.
    let tag = walker.on_sheet("B-01") + vec2(12.0, 0.0);
    let setbacks = walker.setbacks();
    walker.drag(tag, tag + vec2(5.0 * scale, 2.0), 10, |_, _| ());
    assert!((walker.places()[0].x - 17.0).abs() < 0.3, "{:?}", walker.places());
    assert_eq!(walker.setbacks(), setbacks);
}

#[test]
fn what_is_measured_is_told() {
    let mut walker = with_a_unit();
    walker.press(Key::K);
    // From corner to corner: each catches within 10 points. 30 m by 20 m: √1300 = 36.056 m.
    let (from, to) = (walker.screen_of(DVec2::ZERO), walker.screen_of(DVec2::new(30.0, 20.0)));
    walker.click_at(from + vec2(3.0, -4.0));
    walker.click_at(to + vec2(-4.0, 3.0));
    let told = walker.value("At the pointer");
    assert!(told.starts_with("distance 36.056 m, along x 30.000 m, along y 20.000 m"), "{told}");
}

#[test]
fn escape_lets_go_of_a_picked_corner_before_the_roof() {
    let mut walker = with_a_unit();
    walker.select_roof("Roof 1");
    let corner = walker.corner_at("Roof 1 edge 1", "Roof 1 edge 2");
    walker.click_at(corner);
    assert!(walker.told().iter().any(|told| told.ends_with("Corner: drag it, or take it away with Delete.")));
    walker.press(Key::Escape);
    assert_eq!(walker.heading(), "Roof 1", "the roof stays selected");
    walker.click_at(corner);
    let outside = walker.screen_of(DVec2::new(-3.0, -3.0));
    walker.click_at(outside);
    let before = walker.plan().clone();
    walker.press(Key::Delete);
    assert_eq!(*walker.plan(), before, "with nothing selected Delete takes no corner");
}

#[test]
fn an_obstacle_is_moved_by_typed_figures_and_escape_puts_it_back() {
    let mut walker = with_a_unit();
    walker.press(Key::O);
    walker.type_numbers(&["10", "8"]);
    for side in [["6", "0"], ["4", "90"], ["6", "180"]] {
        walker.type_numbers(&side);
    }
    walker.press(Key::Enter);
    walker.press(Key::Escape);
    walker.press(Key::V);
    let corners = |walker: &Walker| walker.plan().obstacles.values().next().expect("an obstacle").outline.clone();
    let drawn = corners(&walker);
    let middle = walker.screen_of(DVec2::new(13.0, 10.0));
    walker.click_at(middle);
    assert_eq!(walker.heading(), "Obstacle 1");
    let before = walker.plan().clone();
    walker.hold(middle, middle + vec2(40.0, -25.0), 6, &mut |walker, step| {
        let told = walker.value("At the pointer");
        assert!(step == 1 || told.starts_with("moved x ") && told.contains(", moved y "), "{told}");
    });
    walker.press(Key::Escape);
    walker.harness.drop_at(middle);
    walker.harness.run();
    assert_eq!(*walker.plan(), before);
    walker.drag_typed(middle, &["2.5", "-1.25"]);
    let moved = corners(&walker);
    assert!(moved.iter().zip(&drawn).all(|(now, then)| now.distance(*then + DVec2::new(2.5, -1.25)) < 1e-9));
}
