//! Pictures of the dialog that takes outlines from a drawing.

use std::path::Path;

use egui::Key;

use super::camera::{Album, Camera, DARK, LIGHT};
use crate::walks::walker::Walker;

/// The dialog over a new plan, the path of a stored drawing typed where the desktop shows no dialog.
fn dialog(camera: Camera, drawing: &str) -> Walker {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/drawings").join(drawing);
    let mut walker = camera.start();
    walker.click("New plan");
    walker.press_with_command_and_shift(Key::O);
    walker.type_into("Path", &path.display().to_string());
    walker.settle();
    walker
}

#[test]
fn taking_outlines_from_a_drawing_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "outline-light"), (DARK, "outline-dark")] {
        let mut walker = dialog(camera, "light_polylines.dxf");
        walker.click("Dach Süd: 3 lines, 3 closed");
        walker.click("Annex: 1 line, 0 closed");
        walker.settle();
        let plant = walker.rect("Outline 4").center();
        walker.click_at(plant);
        walker.click("Mark as obstacle");
        album.take(&mut walker, name);
    }
}

#[test]
fn a_drawing_without_units_is_as_pictured() {
    let mut album = Album::default();
    album.take(&mut dialog(LIGHT, "lines_of_release_12.dxf"), "outline-units-light");
}
