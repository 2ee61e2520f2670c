//! All findings, worst first, under the tally of all checks. A click goes there.

use egui::{Button, RichText, ScrollArea, Ui};
use gantline_plan::assess::{Check, Tally};
use gantline_plan::document::ThingId;
use gantline_plan::quantity::number;

use crate::intent::Intent;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::icon::inline;
use crate::widgets::mark;
use crate::words;

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    ui.label(RichText::new(tally_sentence(&sight.assessment.tally())).color(palette.ink_soft));
    let findings = sight.assessment.findings();
    ScrollArea::vertical().auto_shrink(false).show_rows(ui, type_scale::ROW, findings.len(), |ui, rows| {
        for check in &findings[rows] {
            let (icon, ink, word) = mark::of(&check.outcome, palette);
            ui.horizontal(|ui| {
                inline(ui, icon, ink);
                let thing = check.about.first().copied().unwrap_or(ThingId::Plan);
                let text = format!("{word} · {} · {}", words::name(sight.plan, thing), row_text(sight, check));
                let button = Button::new(RichText::new(text)).frame_when_inactive(false).truncate();
                if ui.add(button).on_hover_text(&check.way_out).clicked() {
                    intents.push(Intent::GoTo(thing, check.at.map(|place| place.at)));
                }
            });
        }
    });
}

fn row_text(sight: &Sight<'_>, check: &Check) -> String {
    let units = sight.look.units;
    let measured = check.measured.map(|amount| number(amount.kind, amount.value, units));
    let limit = check.limit.as_ref().map(|limit| number(limit.amount.kind, limit.amount.value, units));
    let figures = match (measured, limit) {
        (Some(measured), Some(limit)) => format!(" {measured} of {limit}"),
        (Some(measured), None) => format!(" {measured}"),
        (None, _) => String::new(),
    };
    format!("{}{figures} {}", check.code.asks(), check.detail)
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
