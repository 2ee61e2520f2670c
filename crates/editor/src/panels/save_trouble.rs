//! A save that failed stays as a bar until it is solved.

use egui::{Align, Frame, Layout, Panel, RichText, Ui};

use crate::command::Command;
use crate::document::open_document::SaveTrouble;
use crate::intent::Intent;
use crate::theme::Palette;
use crate::widgets::Icon;
use crate::widgets::icon::inline;

/// Shows the bar.
pub fn show(ui: &mut Ui, trouble: &SaveTrouble, palette: &Palette, intents: &mut Vec<Intent>) {
    let frame = Frame::new().fill(palette.accent_ground).inner_margin(egui::Margin::symmetric(14, 0));
    Panel::top("save trouble").exact_size(36.0).frame(frame).show(ui, |ui| {
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            inline(ui, Icon::Caution, palette.blocking);
            let words = format!("Not saved to {}: {}", trouble.path.display(), trouble.why);
            ui.add(egui::Label::new(RichText::new(words).color(palette.ink)).truncate());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if ui.button("Save elsewhere…").clicked() {
                    intents.push(Intent::Run(Command::SaveAs));
                }
                if ui.button("Try again").clicked() {
                    intents.push(Intent::Run(Command::Save));
                }
            });
        });
    });
}
