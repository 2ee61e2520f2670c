//! A file that can't be opened: its name, the place in it, what was expected. Nothing of the open plan is lost.

use std::path::Path;

use egui::{RichText, Ui};

use crate::command::Command;
use crate::intent::Intent;
use crate::sight::Look;

/// How many parts are named one by one.
const NAMED: usize = 12;

/// Shows the page.
pub fn show(
    ui: &mut Ui,
    look: Look<'_>,
    path: &Path,
    what: &str,
    left_out: Option<&[String]>,
    intents: &mut Vec<Intent>,
) {
    ui.label(RichText::new(path.display().to_string()).strong());
    ui.add_space(6.0);
    ui.label(RichText::new(what).color(look.palette.blocking));
    if let Some(left_out) = left_out {
        ui.add_space(6.0);
        missing(ui, look, left_out);
    }
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        if left_out.is_some() && ui.button("Open what is sound").clicked() {
            intents.push(Intent::Page(None));
            intents.push(Intent::OpenSoundParts(path.to_owned()));
        }
        if ui.button("Choose another…").clicked() {
            intents.push(Intent::Page(None));
            intents.push(Intent::Run(Command::Open));
        }
        if ui.button("Close").clicked() {
            intents.push(Intent::Page(None));
        }
    });
}

/// What would not be there.
fn missing(ui: &mut Ui, look: Look<'_>, left_out: &[String]) {
    ui.label("What is sound can be opened as a plan of its own; the file stays as it is. Without:");
    for part in left_out.iter().take(NAMED) {
        ui.label(RichText::new(part).color(look.palette.ink_soft));
    }
    if left_out.len() > NAMED {
        ui.label(RichText::new(format!("and {} more", left_out.len() - NAMED)).color(look.palette.ink_soft));
    }
}
