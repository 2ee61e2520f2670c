//! A path to be typed, where the desktop shows no file dialog.

use std::path::PathBuf;

use egui::{Key, RichText, TextEdit, Ui};

use crate::document::picker::{with_ending, with_picture_ending};
use crate::intent::Intent;
use crate::session::page::PathQuestion;
use crate::sight::Look;

/// Shows the page.
pub fn show(ui: &mut Ui, look: Look<'_>, question: PathQuestion, text: &mut String, intents: &mut Vec<Intent>) {
    let what = if question == PathQuestion::Folder { "folder" } else { "file" };
    let words = format!("The desktop shows no file dialog, so type the path of the {what}.");
    ui.label(RichText::new(words).color(look.palette.ink_soft));
    ui.add_space(6.0);
    let label = ui.label("Path");
    let response = ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY)).labelled_by(label.id);
    let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    if !entered && ui.memory(|memory| memory.focused().is_none()) {
        response.request_focus();
    }
    let typed = PathBuf::from(text.trim());
    let path = match question {
        PathQuestion::Save => with_ending(typed.clone()),
        PathQuestion::Picture => with_picture_ending(typed.clone()),
        PathQuestion::Open | PathQuestion::Drawing | PathQuestion::Underlay | PathQuestion::Folder => typed.clone(),
    };
    let trouble = trouble(question, &typed);
    let is_written = matches!(question, PathQuestion::Save | PathQuestion::Picture);
    let replaces = is_written && trouble.is_none() && path.is_file();
    if let Some(trouble) = &trouble
        && !text.trim().is_empty()
    {
        ui.label(RichText::new(trouble).color(look.palette.blocking));
    }
    if replaces {
        let words = if question == PathQuestion::Save {
            "There is a file of this name. Replacing it keeps that file as the previous version."
        } else {
            "There is a file of this name. It would be replaced."
        };
        ui.label(RichText::new(words).color(look.palette.caution));
    }
    ui.add_space(8.0);
    ui.horizontal(|ui| {
        let name = match question {
            PathQuestion::Open | PathQuestion::Drawing | PathQuestion::Underlay => "Open",
            PathQuestion::Save | PathQuestion::Picture if replaces => "Replace",
            PathQuestion::Folder | PathQuestion::Picture => "Write",
            PathQuestion::Save => "Save",
        };
        let pressed = ui.add_enabled(trouble.is_none(), egui::Button::new(name)).clicked();
        // Enter in the field opens and saves; a file is replaced only by the button that says so.
        if (pressed || entered && !replaces) && trouble.is_none() {
            intents.push(Intent::Page(None));
            intents.push(match question {
                PathQuestion::Open => Intent::OpenPath(path.clone()),
                PathQuestion::Drawing => Intent::ReadDrawing(path.clone()),
                PathQuestion::Underlay => Intent::ReadUnderlay(path.clone()),
                PathQuestion::Save => Intent::SaveTo(path.clone()),
                PathQuestion::Folder => Intent::DocumentsTo(path.clone()),
                PathQuestion::Picture => Intent::PictureTo(path.clone()),
            });
        }
        if ui.button("Cancel").clicked() {
            intents.push(Intent::Page(None));
        }
    });
}

/// Why a path can't be used; none when it can.
fn trouble(question: PathQuestion, path: &std::path::Path) -> Option<String> {
    if question == PathQuestion::Folder {
        return (!path.is_dir()).then(|| "There is no such folder.".to_owned());
    }
    if path.file_name().is_none() {
        return Some("A file name is missing.".to_owned());
    }
    match question {
        PathQuestion::Open | PathQuestion::Drawing | PathQuestion::Underlay if !path.is_file() => {
            Some("There is no such file.".to_owned())
        }
        PathQuestion::Open | PathQuestion::Drawing | PathQuestion::Underlay | PathQuestion::Folder => None,
        PathQuestion::Save | PathQuestion::Picture => {
            let folder = path.parent().filter(|parent| !parent.as_os_str().is_empty());
            let there = folder.is_none_or(std::path::Path::is_dir);
            (!there).then(|| "There is no such folder.".to_owned())
        }
    }
}
