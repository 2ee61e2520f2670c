//! Pictures of the drawers: ledger, findings, charts.

use egui::Key;

use super::camera::{Album, DARK, LIGHT, LIGHT_US};

#[test]
fn the_ledger_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "ledger-light"), (DARK, "ledger-dark"), (LIGHT_US, "ledger-us-light")] {
        let mut walker = camera.demonstration("Courtyard building");
        walker.press(Key::N);
        walker.press(Key::F2);
        album.take(&mut walker, name);
    }
}

#[test]
fn findings_are_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "findings-light"), (DARK, "findings-dark")] {
        let mut walker = camera.demonstration("Courtyard building");
        walker.press(Key::F3);
        album.take(&mut walker, name);
    }
}

#[test]
fn charts_are_as_pictured() {
    let mut album = Album::default();
    for (camera, slew, members) in
        [(LIGHT, "charts-slew-light", "charts-members-light"), (DARK, "charts-slew-dark", "charts-members-dark")]
    {
        let mut walker = camera.demonstration("Small roof");
        walker.press(Key::N);
        walker.press(Key::F4);
        album.take(&mut walker, slew);
        walker.click("along members");
        album.take(&mut walker, members);
    }
}
