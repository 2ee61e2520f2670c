//! Pictures of units: ledger, findings, charts, and the section of each kind of brace.

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

/// What is chosen from which list, and the picture of the section then.
type Kind = (&'static [(&'static str, &'static str)], &'static str);

#[test]
fn the_section_of_each_brace_kind_is_as_pictured() {
    const KINDS: [Kind; 5] = [
        (&[], "section-front-brace"),
        (&[("arm", "Arm 1.15 with tail, with Long rear tie")], "section-rear-brace-to-mast"),
        (&[("family", "Demonstration family Tern (invented)")], "section-no-brace"),
        (&[("brace", "Tie to the turning collar, with Arm 1.25, pinned head")], "section-rear-brace-to-base"),
        (&[("brace", "Rear foot strut, with Arm 1.25, welded head")], "section-rear-foot"),
    ];
    let mut album = Album::default();
    let mut walker = LIGHT.start();
    walker.sketch_rectangle("30", "20");
    walker.place_unit("Roof 1 edge 1", "15");
    walker.press(Key::X);
    for (choices, name) in KINDS {
        for (list, choice) in choices {
            walker.choose(list, choice);
        }
        album.take(&mut walker, name);
    }
}
