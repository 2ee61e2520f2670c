//! A file that can't be opened: its name, the place in it, what was expected. Nothing of the open plan is lost.

use std::path::Path;

use egui::{RichText, Ui};

use crate::command::Command;
use crate::intent::Intent;
use crate::sight::Look;

/// Shows the page.
pub fn show(ui: &mut Ui, look: Look<'_>, path: &Path, what: &str, intents: &mut Vec<Intent>) {
    ui.label(RichText::new(path.display().to_string()).strong());
    ui.add_space(6.0);
    ui.label(RichText::new(what).color(look.palette.blocking));
    ui.add_space(12.0);
    ui.horizontal(|ui| {
        if ui.button("Choose another…").clicked() {
            intents.push(Intent::Page(None));
            intents.push(Intent::Run(Command::Open));
        }
        if ui.button("Close").clicked() {
            intents.push(Intent::Page(None));
        }
    });
}
