//! Clearances of a unit, the tightest first: which part passes what, how near, and how near it may.

use std::sync::Arc;

use egui::{Align2, FontId, Sense, Ui, vec2};
use gantline_plan::assess::{Over, PairClearance, UnitAssessment};
use gantline_plan::quantity;

use super::of_selection::soft;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::icon::paint;
use crate::widgets::{Icon, section};
use crate::words;

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>, intents: &mut Vec<Intent>) {
    section(ui, sight.look.palette, "Clearances, tightest first", |ui| {
        let pairs = unit.tightest();
        if pairs.is_empty() {
            soft(ui, sight, "Nothing stands near arm or brace.");
        }
        for pair in pairs {
            row(ui, sight, pair, intents);
        }
    });
}

fn row(ui: &mut Ui, sight: &Sight<'_>, pair: &PairClearance, intents: &mut Vec<Intent>) {
    const FIGURES: f32 = 132.0;
    let (palette, units) = (sight.look.palette, sight.look.units);
    // The severity is that of the rule: over the rest of the turn a conflict is a caution.
    let (icon, ink) = match (pair.conflict, pair.over) {
        (true, Over::Serving) => (Icon::Blocking, palette.blocking),
        (true, Over::Rest) => (Icon::Caution, palette.caution),
        (false, _) => (Icon::Meets, palette.meets),
    };
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 20.0), Sense::click());
    if response.hovered() || response.has_focus() {
        ui.painter().rect_filled(rect.expand2(vec2(4.0, 0.0)), 2, palette.hover);
    }
    let square = egui::Rect::from_center_size(rect.left_center() + vec2(7.0, 0.0), vec2(13.0, 13.0));
    paint(ui.painter(), icon, square, ink);
    let name = words::clearance(sight.plan, pair);
    let figures = format!("{} of {}", quantity::length(pair.clear_m, units), quantity::length(pair.limit_m, units));
    let font = FontId::proportional(type_scale::SMALL);
    let width = rect.width() - 20.0 - FIGURES;
    let galley = elided(ui, &name, font.clone(), width, palette.ink);
    ui.painter().galley(rect.left_center() + vec2(20.0, -galley.size().y / 2.0), galley, palette.ink);
    ui.painter().text(rect.right_center(), Align2::RIGHT_CENTER, &figures, font, palette.ink);
    let over = words::over(pair.over);
    let level = quantity::level(pair.level_m, units);
    let hint = format!("{name}\n{figures}, {over}, at level {level}");
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, format!("{name}: {figures}, {over}")));
    if response.on_hover_text(hint).clicked() {
        intents.push(Intent::GoTo(words::passed(pair.against), Some(pair.at)));
    }
}

fn elided(ui: &Ui, text: &str, font: FontId, width: f32, ink: egui::Color32) -> Arc<egui::Galley> {
    let mut job = egui::text::LayoutJob::simple_singleline(text.to_owned(), font, ink);
    job.wrap = egui::text::TextWrapping::truncate_at_width(width);
    ui.painter().layout_job(job)
}
