//! What is being written for others, as a bar with its progress until it has ended.

use egui::{Align, Frame, Layout, Panel, RichText, Ui};
use gantline_exchange::documents::Progress;

use crate::intent::Intent;
use crate::theme::Palette;

/// Shows the bar.
pub fn show(ui: &mut Ui, progress: Option<Progress>, palette: &Palette, intents: &mut Vec<Intent>) {
    let frame = Frame::new().fill(palette.accent_ground).inner_margin(egui::Margin::symmetric(14, 0));
    Panel::top("outgoing").exact_size(36.0).frame(frame).show(ui, |ui| {
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            let words = progress.map_or_else(
                || "Writing…".to_owned(),
                |progress| {
                    let Progress { next, made, wanted } = progress;
                    format!("Writing documents: {}, number {} of {wanted}", next.words(), made + 1)
                },
            );
            ui.add(egui::Label::new(RichText::new(words).color(palette.ink)).truncate());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if ui.button("Stop").clicked() {
                    intents.push(Intent::StopWriting);
                }
            });
        });
    });
}
