//! Pictures of the start page, and of pages and questions over the sheet.

use egui::Key;

use super::camera::{Album, DARK, LIGHT};

#[test]
fn the_start_page_is_as_pictured() {
    let mut album = Album::default();
    album.take(&mut LIGHT.start(), "start-light");
    album.take(&mut DARK.start(), "start-dark");
}

#[test]
fn an_empty_sheet_is_as_pictured() {
    let mut album = Album::default();
    let mut walker = LIGHT.start();
    walker.click("New plan");
    album.take(&mut walker, "new-plan-light");
}

#[test]
fn the_load_basis_is_as_pictured() {
    let mut album = Album::default();
    for (camera, name) in [(LIGHT, "basis-light"), (DARK, "basis-dark")] {
        let mut walker = camera.demonstration("Small roof");
        let bar =
            walker.told().into_iter().find(|told| told.starts_with("Load basis: ")).expect("the bar names the basis");
        walker.click(&bar);
        album.take(&mut walker, name);
    }
}

#[test]
fn keys_and_words_are_as_pictured() {
    let mut album = Album::default();
    let mut walker = LIGHT.demonstration("Small roof");
    walker.press(Key::F1);
    album.take(&mut walker, "shortcuts-light");
}

#[test]
fn finding_a_tag_is_as_pictured() {
    let mut album = Album::default();
    let mut walker = DARK.demonstration("Courtyard building");
    walker.press_with_command(Key::F);
    walker.type_text("B-1");
    album.take(&mut walker, "find-dark");
}

#[test]
fn a_question_is_as_pictured() {
    let mut album = Album::default();
    let mut walker = LIGHT.start();
    walker.sketch_rectangle("30", "20");
    walker.press_with_command(Key::N);
    album.take(&mut walker, "question-light");
}

#[test]
fn preferences_are_as_pictured() {
    let mut album = Album::default();
    let mut walker = DARK.demonstration("Small roof");
    walker.press_with_command(Key::Comma);
    album.take(&mut walker, "preferences-dark");
}
