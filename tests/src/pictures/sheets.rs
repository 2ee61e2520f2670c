//! Pictures of plan, section and elevation with the inspector beside them.

use egui::Key;

use super::camera::{Album, Camera, DARK, LIGHT, LIGHT_US};
use crate::walks::walker::Walker;

/// Clicks a thing on the sheet.
fn select(walker: &mut Walker, name: &str) {
    let at = walker.rect(name).center();
    walker.harness.hover_at(at);
    walker.harness.run();
    walker.harness.drag_at(at);
    walker.harness.run();
    walker.harness.drop_at(at);
    walker.harness.run();
}

/// The edge of the main roof that lies farthest to the left: no unit stands at its middle.
fn westmost_edge(walker: &Walker) -> String {
    let names: Vec<String> = (1..=8).map(|number| format!("Main roof edge {number}")).collect();
    let left = |name: &String| walker.rect(name).center().x;
    names.into_iter().min_by(|a, b| left(a).total_cmp(&left(b))).expect("an edge")
}

/// The first unit of a plan, selected without a pointer.
fn first_unit(camera: Camera, plan: &str) -> Walker {
    let mut walker = camera.demonstration(plan);
    walker.press(Key::N);
    walker
}

#[test]
fn a_plan_with_nothing_selected_is_as_pictured() {
    let mut album = Album::default();
    album.take(&mut LIGHT.demonstration("Courtyard building"), "courtyard-light");
    album.take(&mut DARK.demonstration("Courtyard building"), "courtyard-dark");
    album.take(&mut LIGHT.demonstration("Large complex"), "complex-light");
}

#[test]
fn a_selected_unit_is_as_pictured() {
    let mut album = Album::default();
    album.take(&mut first_unit(LIGHT, "Small roof"), "unit-light");
    album.take(&mut first_unit(DARK, "Small roof"), "unit-dark");
    album.take(&mut first_unit(LIGHT_US, "Small roof"), "unit-us-light");
}

#[test]
fn a_section_on_the_main_sheet_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "section-light"), (DARK, "section-dark"), (LIGHT_US, "section-us-light")] {
        let mut walker = first_unit(camera, "Small roof");
        walker.press(Key::X);
        album.take(&mut walker, name);
    }
}

#[test]
fn an_elevation_on_the_main_sheet_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "elevation-light"), (DARK, "elevation-dark")] {
        let mut walker = camera.demonstration("Courtyard building");
        let edge = westmost_edge(&walker);
        select(&mut walker, &edge);
        walker.press(Key::X);
        album.take(&mut walker, name);
    }
}

#[test]
fn clear_zones_and_reactions_are_as_pictured() {
    let mut album = Album::default();
    let mut walker = first_unit(LIGHT, "Courtyard building");
    walker.press(Key::Num2);
    album.take(&mut walker, "clear-zones-light");
    walker.press(Key::Num3);
    album.take(&mut walker, "reactions-light");
}

#[test]
fn a_unit_in_the_middle_of_a_drag_is_as_pictured() {
    let mut album = Album::default();
    let mut walker = LIGHT.start();
    walker.sketch_rectangle("30", "20");
    walker.press(Key::U);
    walker.type_numbers(&["8"]);
    walker.type_numbers(&["20"]);
    walker.press(Key::Escape);
    walker.press(Key::V);
    let from = walker.rect("Unit B-01").center();
    walker.hold(from, from + egui::vec2(110.0, -4.0), 12, &mut |_, _| ());
    album.take_as_it_is(&mut walker, "drag-light");
}

#[test]
fn typed_numbers_of_an_outline_are_as_pictured() {
    let mut album = Album::default();
    let mut walker = DARK.start();
    walker.click("New plan");
    walker.press(Key::R);
    walker.type_numbers(&["0", "0"]);
    walker.type_numbers(&["24", "0"]);
    walker.type_text("12.5");
    album.take_as_it_is(&mut walker, "typed-dark");
}

#[test]
fn edges_and_several_units_are_as_pictured() {
    let mut album = Album::default();
    let mut walker = LIGHT.start();
    walker.sketch_rectangle("30", "20");
    album.take(&mut walker, "edges-light");
    let mut walker = first_unit(DARK, "Small roof");
    walker.press_with_command(Key::A);
    album.take(&mut walker, "units-dark");
}
