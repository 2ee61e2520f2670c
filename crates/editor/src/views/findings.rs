//! All findings, worst first, under the tally of all checks. A click goes there.

use egui::{Align2, FontId, RichText, ScrollArea, Sense, TextEdit, Ui, vec2};
use gantline_plan::assess::{Check, Tally};

use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::finding_row::{limit, measured, owner, what};
use crate::widgets::icon::paint;
use crate::widgets::{mark, one_line};
use crate::words;

/// Height of a row.
const ROW: f32 = 24.0;

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    let mut filter = filter_text(ui);
    ui.horizontal(|ui| {
        ui.label(RichText::new(tally_sentence(&sight.assessment.tally())).color(palette.ink_soft));
        ui.add_space(16.0);
        let label = ui.label(RichText::new("Filter").color(palette.ink_soft));
        ui.add(TextEdit::singleline(&mut filter).desired_width(200.0)).labelled_by(label.id);
    });
    let id = filter_id();
    ui.data_mut(|data| data.insert_temp(id, filter.clone()));
    let wanted = filter.trim().to_lowercase();
    let mut findings = sight.assessment.findings();
    findings.retain(|check| wanted.is_empty() || text_of(sight, check).to_lowercase().contains(&wanted));
    columns(ui, sight);
    ScrollArea::vertical().auto_shrink(false).show_rows(ui, ROW, findings.len(), |ui, rows| {
        for check in &findings[rows] {
            row(ui, sight, check, intents);
        }
    });
}

fn filter_id() -> egui::Id {
    egui::Id::unique("filter of findings")
}

fn filter_text(ui: &Ui) -> String {
    let id = filter_id();
    ui.data(|data| data.get_temp(id)).unwrap_or_default()
}

/// Where the columns begin, as shares of the width behind the word of the outcome.
const WORD: f32 = 118.0;
const THING: f32 = 150.0;
const FIGURE: f32 = 104.0;

struct Columns {
    thing: f32,
    what: f32,
    measured: f32,
    limit: f32,
    way_out: f32,
    end: f32,
}

fn places(rect: egui::Rect) -> Columns {
    let thing = rect.min.x + WORD;
    let what = thing + THING;
    let rest = (rect.max.x - what - 2.0 * FIGURE - 24.0).max(100.0);
    let measured = what + rest * 0.5 + FIGURE;
    let limit = measured + FIGURE;
    Columns { thing, what, measured, limit, way_out: limit + 16.0, end: rect.max.x - 8.0 }
}

fn columns(ui: &mut Ui, sight: &Sight<'_>) {
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 18.0), Sense::hover());
    let at = places(rect);
    let font = FontId::proportional(type_scale::SMALL);
    let ink = sight.look.palette.ink_soft;
    let y = rect.center().y;
    let painter = ui.painter();
    for (x, name) in [(rect.min.x, "outcome"), (at.thing, "about"), (at.what, "what is asked"), (at.way_out, "way out")]
    {
        painter.text(egui::pos2(x, y), Align2::LEFT_CENTER, name, font.clone(), ink);
    }
    for (x, name) in [(at.measured, "measured"), (at.limit, "asked")] {
        painter.text(egui::pos2(x, y), Align2::RIGHT_CENTER, name, font.clone(), ink);
    }
    painter.hline(rect.x_range(), rect.max.y, (1.0, sight.look.palette.hairline));
}

fn row(ui: &mut Ui, sight: &Sight<'_>, check: &Check, intents: &mut Vec<Intent>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::click());
    let at = places(rect);
    if response.hovered() || response.has_focus() {
        ui.painter().rect_filled(rect, 2, palette.hover);
    }
    let (icon, ink, word) = mark::of(&check.outcome, palette);
    let y = rect.center().y;
    paint(ui.painter(), icon, egui::Rect::from_center_size(egui::pos2(rect.min.x + 8.0, y), vec2(14.0, 14.0)), ink);
    let body = FontId::proportional(type_scale::BODY);
    ui.painter().text(egui::pos2(rect.min.x + 22.0, y), Align2::LEFT_CENTER, word, body.clone(), ink);
    let line = |x: f32, to: f32, text: &str, ink| one_line(ui, egui::pos2(x, y), to - x, text, ink);
    line(at.thing, at.what - 8.0, &words::name(sight.plan, owner(check)), palette.ink);
    line(at.what, at.measured - FIGURE, &what(check), palette.ink);
    line(at.way_out, at.end, &check.way_out, palette.ink_soft);
    for (x, text) in [(at.measured, measured(check, units)), (at.limit, limit(check, units))] {
        let text = text.unwrap_or_default();
        ui.painter().text(egui::pos2(x, y), Align2::RIGHT_CENTER, text, body.clone(), palette.ink);
    }
    let spoken = format!("{word}: {}", text_of(sight, check));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &spoken));
    let source = check.limit.as_ref().map_or("", |limit| limit.source.as_str());
    let hint = [what(check), source.to_owned(), check.way_out.clone()];
    let hint = hint.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join("\n");
    if response.on_hover_text(hint).clicked() {
        intents.push(Intent::GoTo(owner(check), check.at.map(|place| place.at)));
    }
}

fn text_of(sight: &Sight<'_>, check: &Check) -> String {
    let (_, _, word) = mark::of(&check.outcome, sight.look.palette);
    let name = words::name(sight.plan, owner(check));
    format!("{word} {name}: {}", crate::widgets::finding_row::sentence(check, sight.look.units))
}

/// How many checks came to what; never "no issues".
pub fn tally_sentence(tally: &Tally) -> String {
    format!(
        "{} checks: {} meet, {} fail, {} not checked, {} do not apply",
        tally.all(),
        tally.meets,
        tally.fails(),
        tally.not_checked,
        tally.not_applicable
    )
}

/// A finding as one sentence.
pub fn sentence(check: &Check) -> String {
    let parts = [check.code.asks(), check.detail.as_str(), check.way_out.as_str()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}
