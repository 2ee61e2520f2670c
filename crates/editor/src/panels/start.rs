//! The start page: new plan, open, files opened last, rescued work, demonstration plans, the caution.

use std::path::{Path, PathBuf};

use egui::{Align, Button, CentralPanel, Frame, Label, Layout, Margin, RichText, ScrollArea, Ui, vec2};

use crate::command::Command;
use crate::demonstration;
use crate::intent::Intent;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::section;

/// What the program says before anything else.
pub const CAUTION: &str = "For planning. Rated loads and families come from their makers. To be verified by a licensed \
structural engineer and a competent person under the local code; anchors proof-tested where required. Not a permit to \
hang from a rope. Demonstration families are invented.";

/// How many files are shown.
const SHOWN: usize = 4;

/// Shows the page.
pub fn show(
    ui: &mut Ui,
    look: Look<'_>,
    recent: &[PathBuf],
    rescued: &[String],
    said: &str,
    intents: &mut Vec<Intent>,
) {
    let palette = look.palette;
    CentralPanel::default().frame(Frame::new().fill(palette.sheet)).show(ui, |ui| {
        ScrollArea::vertical().show(ui, |ui| {
            let width = 620.0_f32.min(ui.available_width() - 40.0);
            let side = (ui.available_width() - width) / 2.0;
            ui.add_space((ui.available_height() * 0.12).max(24.0));
            ui.horizontal(|ui| {
                ui.add_space(side);
                ui.vertical(|ui| {
                    ui.set_width(width);
                    content(ui, look, recent, rescued, said, intents);
                });
            });
        });
    });
}

fn content(ui: &mut Ui, look: Look<'_>, recent: &[PathBuf], rescued: &[String], said: &str, intents: &mut Vec<Intent>) {
    let palette = look.palette;
    let heading = RichText::new("Gantline").size(34.0).family(type_scale::semibold()).color(palette.ink);
    ui.label(heading);
    let what = "Plans rope access to facades from portable mast-and-arm units at roof edges.";
    ui.label(RichText::new(what).size(type_scale::HEADING).color(palette.ink_soft));
    ui.add_space(18.0);
    ui.horizontal(|ui| {
        for command in [Command::New, Command::Open] {
            let entry = command.entry();
            let text = RichText::new(entry.name).size(type_scale::HEADING);
            if ui
                .add(Button::new(text).min_size(vec2(150.0, 40.0)))
                .on_hover_text(entry.hint_with_key(ui.ctx()))
                .clicked()
            {
                intents.push(Intent::Run(command));
            }
        }
    });
    if !said.is_empty() {
        ui.add_space(8.0);
        ui.label(RichText::new(said).color(palette.unchecked));
    }
    if !rescued.is_empty() {
        section(ui, palette, "Rescued after a crash", |ui| rescued_rows(ui, rescued, intents));
    }
    if !recent.is_empty() {
        section(ui, palette, "Opened last", |ui| {
            recent.iter().take(SHOWN).for_each(|path| recent_row(ui, look, path, intents));
        });
    }
    if !demonstration::PLANS.is_empty() {
        section(ui, palette, "Demonstration plans, invented", |ui| demonstrations(ui, look, intents));
    }
    ui.add_space(22.0);
    let frame = Frame::new().stroke((1.0, palette.hairline)).corner_radius(4).inner_margin(Margin::same(12));
    frame.show(ui, |ui| {
        ui.add(Label::new(RichText::new(CAUTION).size(type_scale::SMALL).color(palette.ink_soft)).wrap());
    });
    ui.add_space(24.0);
}

fn row(ui: &mut Ui, look: Look<'_>, name: &str, about: &str) -> egui::Response {
    let size = vec2(ui.available_width(), 40.0);
    let response = ui.add(Button::new("").min_size(size).frame_when_inactive(false));
    let inner = response.rect.shrink2(vec2(10.0, 3.0));
    let painter = ui.painter();
    let body = egui::FontId::new(type_scale::BODY, type_scale::semibold());
    painter.text(inner.left_top(), egui::Align2::LEFT_TOP, name, body, look.palette.ink);
    let small = egui::FontId::proportional(type_scale::SMALL);
    let galley = painter.layout_no_wrap(about.to_owned(), small, look.palette.ink_soft);
    painter.with_clip_rect(inner).galley(
        inner.left_bottom() - vec2(0.0, galley.size().y),
        galley,
        look.palette.ink_soft,
    );
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, name));
    response
}

fn recent_row(ui: &mut Ui, look: Look<'_>, path: &Path, intents: &mut Vec<Intent>) {
    let name = path.file_name().map_or_else(|| path.display().to_string(), |name| name.to_string_lossy().into_owned());
    let folder = path.parent().map(|parent| parent.display().to_string()).unwrap_or_default();
    if row(ui, look, &name, &folder).clicked() {
        intents.push(Intent::OpenPath(path.to_owned()));
    }
}

fn demonstrations(ui: &mut Ui, look: Look<'_>, intents: &mut Vec<Intent>) {
    for (index, plan) in demonstration::PLANS.iter().enumerate() {
        if row(ui, look, plan.name, plan.about).clicked() {
            intents.push(Intent::OpenDemonstration(index));
        }
    }
}

fn rescued_rows(ui: &mut Ui, rescued: &[String], intents: &mut Vec<Intent>) {
    for (index, of) in rescued.iter().enumerate() {
        ui.horizontal(|ui| {
            ui.add(Label::new(format!("Work on {of}")).truncate());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                if ui.button("Drop").on_hover_text("The copy is deleted.").clicked() {
                    intents.push(Intent::DropRescue(index));
                }
                if ui.button("Open rescued work").clicked() {
                    intents.push(Intent::Rescue(index));
                }
            });
        });
    }
}
