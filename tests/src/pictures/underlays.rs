//! Pictures of underlays: an architect's page under a roof, selected, light and dark.

use egui::Key;

use super::camera::{Album, Camera, DARK, LIGHT};
use crate::walks::papers::{drawing, roof_page};
use crate::walks::walker::Walker;

/// A new plan with a file under it, its path typed where the desktop shows no dialog.
fn laid(camera: Camera, name: &str, bytes: &[u8]) -> Walker {
    let mut walker = camera.start();
    let path = walker.file(name);
    std::fs::write(&path, bytes).expect("a file in the folder");
    walker.click("New plan");
    walker.lay_underlay_of(&path);
    walker
}

#[test]
fn an_underlay_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "underlay-light"), (DARK, "underlay-dark")] {
        let mut walker = laid(camera, "fourth floor.pdf", &roof_page());
        walker.press(Key::V);
        walker.settle_underlays();
        album.take(&mut walker, name);
    }
}

#[test]
fn a_drawing_as_an_underlay_is_as_pictured() {
    let mut album = Album::default();
    let mut walker = laid(DARK, "slab.dxf", &drawing());
    walker.press(Key::V);
    walker.settle_underlays();
    album.take(&mut walker, "underlay-drawing-dark");
}
