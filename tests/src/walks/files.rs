//! Files while others write them, after a crash, and without a dialog.

use egui::Key;
use gantline_plan::file;

use super::walker::Walker;

const FILE: &str = "roof.gantline.json";

/// A saved plan with one roof, changed since.
fn saved_and_changed(dialogs: &[&str]) -> Walker {
    let mut walker = Walker::start(dialogs);
    walker.sketch_rectangle("24", "12");
    walker.press_with_command(Key::S);
    walker.settle();
    walker.press(Key::U);
    walker.type_numbers(&["6"]);
    walker.press(Key::Escape);
    walker.press(Key::V);
    assert_eq!(walker.plan().placements.len(), 1);
    walker
}

#[test]
fn someone_else_saved_first() {
    let mut walker = saved_and_changed(&[FILE, "elsewhere.gantline.json"]);
    let path = walker.file(FILE);
    let mut others = file::read(&std::fs::read(&path).expect("saved")).expect("a plan");
    "changed by a colleague".clone_into(&mut others.title.remark);
    let others = file::write(&others).expect("plan to text");
    std::fs::write(&path, &others).expect("the colleague saves");
    // Asked, and nothing is written before the answer.
    walker.press_with_command(Key::S);
    walker.settle();
    assert!(walker.says("Someone else changed this file"));
    assert_eq!(std::fs::read(&path).expect("file"), others.as_bytes());
    walker.click("Cancel");
    assert_eq!(std::fs::read(&path).expect("file"), others.as_bytes());
    // Saved elsewhere, both versions are there.
    walker.press_with_command(Key::S);
    walker.settle();
    walker.click("Save elsewhere…");
    walker.settle();
    let elsewhere = file::read(&std::fs::read(walker.file("elsewhere.gantline.json")).expect("saved")).expect("a plan");
    assert_eq!(elsewhere, *walker.plan());
    assert_eq!(std::fs::read(&path).expect("file"), others.as_bytes());
}

#[test]
fn overwriting_what_someone_else_saved_keeps_it_as_the_previous_version() {
    let mut walker = saved_and_changed(&[FILE]);
    let path = walker.file(FILE);
    std::fs::write(&path, "what a colleague wrote").expect("the colleague saves");
    walker.press_with_command(Key::S);
    walker.settle();
    walker.click("Overwrite");
    walker.settle();
    assert_eq!(file::read(&std::fs::read(&path).expect("saved")).expect("a plan"), *walker.plan());
    let kept = std::fs::read_dir(walker.folder.path())
        .expect("folder")
        .flatten()
        .any(|entry| std::fs::read(entry.path()).is_ok_and(|bytes| bytes == b"what a colleague wrote"));
    assert!(kept, "the colleague's version is kept beside the plan");
}

#[test]
fn killed_while_dragging() {
    let mut walker = saved_and_changed(&[FILE]);
    let settled = walker.plan().clone();
    walker.rest_for_a_copy();
    let from = walker.rect("Unit B-01").center();
    walker.hold(from, from + egui::vec2(120.0, 0.0), 30, &mut |_, _| ());
    assert_ne!(*walker.plan(), settled, "the unit is being dragged");
    walker.rest_for_a_copy();
    // The window is gone without a word: nothing was asked, saved or tidied up.
    let Walker { harness, folder } = walker;
    drop(harness);
    let mut again = Walker::start_in(folder, &[FILE]);
    let file = again.file(FILE).display().to_string();
    assert!(again.says(&format!("Work on {file}")), "{:?}", again.told());
    again.click("Open rescued work");
    again.settle();
    assert_eq!(*again.plan(), settled, "the work up to the drag is back");
    assert!(again.told().iter().any(|told| told.starts_with("The rescued work is open; save it to keep it.")));
    // The file was not opened in between: it is not overwritten unasked.
    again.press_with_command(Key::S);
    again.settle();
    assert!(again.says("Someone else changed this file"));
    again.click("Overwrite");
    again.settle();
    assert_eq!(file::read(&std::fs::read(again.file(FILE)).expect("saved")).expect("a plan"), settled);
}

#[test]
fn no_dialog_service() {
    // No answer in the script: the desktop shows no dialog.
    let mut walker = Walker::start(&[]);
    walker.sketch_rectangle("24", "12");
    walker.press_with_command(Key::S);
    walker.settle();
    assert!(walker.says("The desktop shows no file dialog, so type the path of the file."));
    let nowhere = walker.folder.path().join("not there").join("a").display().to_string();
    walker.replace_text(&nowhere);
    assert!(walker.says("There is no such folder."));
    let path = walker.file("typed by hand");
    walker.replace_text(&path.display().to_string());
    walker.press(Key::Enter);
    walker.settle();
    let written = path.with_extension("json");
    assert_eq!(file::read(&std::fs::read(&written).expect("saved")).expect("a plan"), *walker.plan());
    // The same path once more: said, and replaced only by the button.
    walker.press_with_command_and_shift(Key::S);
    walker.settle();
    walker.replace_text(&written.display().to_string());
    walker.press(Key::Enter);
    walker.settle();
    assert!(walker.says("There is a file of this name. Replacing it keeps that file as the previous version."));
    walker.click("Replace");
    walker.settle();
    assert!(!walker.says("There is a file of this name. Replacing it keeps that file as the previous version."));
    // And it opens again by its path.
    walker.press_with_command(Key::O);
    walker.settle();
    walker.replace_text(&written.display().to_string());
    walker.press(Key::Enter);
    walker.settle();
    assert_eq!(walker.plan().roofs.len(), 1);
}
