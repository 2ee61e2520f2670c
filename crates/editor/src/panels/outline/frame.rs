//! The dialog's frame: heading, preview, choices, and the two buttons.

use egui::{Align, Id, Layout, Modal, RichText, ScrollArea, Ui, UiBuilder, vec2};
use gantline_exchange::outline::Role;

use super::{choices, loops, preview};
use crate::intent::Intent;
use crate::session::outline::{Choosing, OutlineDialog, OutlineWish, Stage};
use crate::sight::Look;
use crate::theme::type_scale;
use crate::widgets::{Icon, icon_button};

/// Room around the dialog and inside of it.
const AROUND: f32 = 34.0;
const MARGIN: i8 = 18;
/// Heights of heading and of the row of buttons.
const HEADING: f32 = 34.0;
const BUTTONS: f32 = 38.0;

/// Shows the dialog.
pub fn show(ui: &mut Ui, look: Look<'_>, dialog: &OutlineDialog, intents: &mut Vec<Intent>) {
    let window = ui.ctx().content_rect().size();
    let inside = window - vec2(2.0, 2.0) * (AROUND + f32::from(MARGIN));
    let column = if window.x >= 1600.0 { 440.0 } else { 376.0 };
    let frame = egui::Frame::popup(&ui.ctx().global_style()).inner_margin(egui::Margin::same(MARGIN));
    let shown = Modal::new(Id::unique("outline dialog")).frame(frame).show(ui.ctx(), |ui| match &dialog.stage {
        Stage::Choosing(choosing) => {
            ui.set_min_size(inside);
            ui.set_max_size(inside);
            heading(ui, look, dialog, inside.x, intents);
            let body = ui.available_rect_before_wrap();
            let whole = egui::Rect::from_min_size(body.min, vec2(inside.x, inside.y - HEADING));
            let left = egui::Rect::from_min_size(whole.min, vec2(whole.width() - column - 18.0, whole.height()));
            // In a scope of its own: what the preview shows must not give the choices beside it other ids, or a click that
            // an answer comes between would be lost.
            ui.scope_builder(UiBuilder::new().max_rect(left), |ui| preview::show(ui, look, left, choosing, intents));
            let right = egui::Rect::from_min_max(whole.max - vec2(column, whole.height()), whole.max);
            let lower = BUTTONS + trouble_height(ui, choosing, column);
            let upper = right.with_max_y(right.max.y - lower);
            ui.scope_builder(UiBuilder::new().max_rect(upper), |ui| {
                ScrollArea::vertical().auto_shrink([false, false]).show(ui, |ui| {
                    choices::show(ui, look, choosing, intents);
                    loops::show(ui, look, choosing, intents);
                });
            });
            ui.scope_builder(UiBuilder::new().max_rect(right.with_min_y(upper.max.y)), |ui| {
                if let Some(trouble) = &choosing.trouble {
                    ui.label(RichText::new(&trouble.why).color(look.palette.blocking));
                }
                buttons(ui, look, choosing, intents);
            });
            ui.advance_cursor_after_rect(whole);
        }
        Stage::Reading => {
            ui.set_width(520.0);
            heading(ui, look, dialog, 520.0, intents);
            ui.label("Reading…");
        }
        Stage::Unreadable(why) => {
            ui.set_width(520.0);
            heading(ui, look, dialog, 520.0, intents);
            ui.label(RichText::new("This drawing can't be read.").color(look.palette.blocking));
            ui.label(RichText::new(why).color(look.palette.ink));
            ui.label(RichText::new("The plan stays as it is.").color(look.palette.ink_soft));
            ui.add_space(8.0);
            if ui.button("Cancel").clicked() {
                intents.push(Intent::Outline(OutlineWish::Cancel));
            }
        }
    });
    if shown.should_close() {
        intents.push(Intent::Outline(OutlineWish::Cancel));
    }
}

/// The height that is taken by why the outlines can't be taken, right above the button that was pressed.
fn trouble_height(ui: &Ui, choosing: &Choosing, width: f32) -> f32 {
    let Some(trouble) = &choosing.trouble else { return 0.0 };
    let font = egui::TextStyle::Body.resolve(ui.style());
    let laid = ui.painter().layout(trouble.why.clone(), font, egui::Color32::PLACEHOLDER, width);
    laid.size().y + 12.0
}

fn heading(ui: &mut Ui, look: Look<'_>, dialog: &OutlineDialog, width: f32, intents: &mut Vec<Intent>) {
    let name = dialog.path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    ui.allocate_ui_with_layout(vec2(width, HEADING - 6.0), Layout::left_to_right(Align::Center), |ui| {
        let size = type_scale::HEADING + 3.0;
        ui.label(RichText::new("Outline from a drawing").size(size).family(type_scale::semibold()));
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            if icon_button(ui, look.palette, Icon::Close, "", "Close", false).clicked() {
                intents.push(Intent::Outline(OutlineWish::Cancel));
            }
            if ui.button("Choose another…").clicked() {
                intents.push(Intent::Outline(OutlineWish::ChooseAnother));
            }
            ui.add(egui::Label::new(RichText::new(name).color(look.palette.ink_soft)).truncate());
        });
    });
}

fn buttons(ui: &mut Ui, look: Look<'_>, choosing: &Choosing, intents: &mut Vec<Intent>) {
    let taken: Vec<String> = Role::EACH
        .into_iter()
        .filter(|role| *role != Role::LeaveOut && choosing.count(*role) > 0)
        .map(|role| format!("{} {}", choosing.count(role), plural(role, choosing.count(role))))
        .collect();
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        if ui.button("Cancel").clicked() {
            intents.push(Intent::Outline(OutlineWish::Cancel));
        }
        let take = egui::Button::new(RichText::new("Take").family(type_scale::semibold())).min_size(vec2(76.0, 28.0));
        let response = ui.add_enabled(!taken.is_empty(), take);
        if response.on_disabled_hover_text("No outline is marked yet.").clicked() {
            intents.push(Intent::Outline(OutlineWish::Take));
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            let left_out = choosing.count(Role::LeaveOut);
            let left_out = (left_out > 0).then(|| format!("{left_out} left out"));
            let words = if taken.is_empty() { "Nothing marked".to_owned() } else { taken.join(", ") };
            let words = [words].into_iter().chain(left_out).collect::<Vec<_>>().join(", ");
            ui.add(egui::Label::new(RichText::new(words).color(look.palette.ink_soft)).truncate());
        });
    });
}

fn plural(role: Role, count: usize) -> String {
    let name = role.name().to_lowercase();
    if count == 1 { name } else { format!("{name}s") }
}
