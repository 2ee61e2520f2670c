//! One finding: its mark and word, what it is about, what was measured and what is asked, and the way out.

use egui::{Response, RichText, Sense, Ui, UiBuilder, vec2};
use gantline_plan::assess::{Check, Outcome};
use gantline_plan::document::{Plan, ThingId};
use gantline_plan::quantity::{UnitSystem, number};

use super::icon::paint;
use super::mark;
use crate::intent::Intent;
use crate::sight::Look;
use crate::theme::type_scale;
use crate::words;

/// Shows a finding over as many lines as it needs; a click goes there.
pub fn finding_row(ui: &mut Ui, look: Look<'_>, plan: &Plan, check: &Check, intents: &mut Vec<Intent>) -> Response {
    const MARK: f32 = 22.0;
    let palette = look.palette;
    let (icon, ink, word) = mark::of(&check.outcome, palette);
    let thing = owner(check);
    let inner = ui.scope_builder(UiBuilder::new().sense(Sense::click()), |ui| {
        let hovered = ui.response().hovered() || ui.response().has_focus();
        let place = ui.painter().add(egui::Shape::Noop);
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.set_min_width(ui.available_width());
        ui.horizontal_top(|ui| {
            let (square, _) = ui.allocate_exact_size(vec2(MARK - 8.0, 16.0), Sense::hover());
            paint(ui.painter(), icon, square.with_max_y(square.min.y + 14.0), ink);
            ui.vertical(|ui| {
                ui.spacing_mut().item_spacing.y = 1.0;
                let head = format!("{word} · {}", words::name(plan, thing));
                ui.label(RichText::new(head).family(type_scale::semibold()).color(ink));
                ui.label(RichText::new(what(check)).color(palette.ink));
                if let Some(figures) = figures(check, look.units) {
                    ui.label(RichText::new(figures).color(palette.ink));
                }
                if !check.way_out.is_empty() {
                    ui.label(RichText::new(&check.way_out).size(type_scale::SMALL).color(palette.ink_soft));
                }
            });
        });
        ui.add_space(5.0);
        if hovered {
            let ground = egui::Shape::rect_filled(ui.min_rect().expand(3.0), 3, palette.hover);
            ui.painter().set(place, ground);
        }
    });
    let response = inner.response.on_hover_cursor(egui::CursorIcon::PointingHand);
    let label = format!("{word}: {}: {}", words::name(plan, thing), sentence(check, look.units));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &label));
    if response.clicked() {
        intents.push(Intent::GoTo(thing, check.at.map(|place| place.at)));
    }
    response
}

/// The thing that owns a finding.
pub fn owner(check: &Check) -> ThingId {
    check.about.first().copied().unwrap_or(ThingId::Plan)
}

/// What the rule asks, with particulars, and what is missing where it could not be looked at.
pub fn what(check: &Check) -> String {
    let mut text = check.code.asks().to_owned();
    let missing = match &check.outcome {
        Outcome::NotChecked(missing) => missing.as_str(),
        _ => "",
    };
    for part in [check.detail.as_str(), missing] {
        if !part.is_empty() && !text.contains(part) {
            text.push(' ');
            text.push_str(part);
        }
    }
    text
}

/// What was measured beside what is asked, with the source of the limit.
pub fn figures(check: &Check, units: UnitSystem) -> Option<String> {
    let measured = measured(check, units);
    let limit = limit(check, units);
    let source = check.limit.as_ref().map_or("", |limit| limit.source.as_str());
    let figures = match (measured, limit) {
        (Some(measured), Some(limit)) => format!("{measured}, asked {limit}"),
        (Some(measured), None) => measured,
        (None, Some(limit)) => format!("asked {limit}"),
        (None, None) => return None,
    };
    Some(if source.is_empty() { figures } else { format!("{figures} ({source})") })
}

/// What was measured.
pub fn measured(check: &Check, units: UnitSystem) -> Option<String> {
    check.measured.map(|amount| number(amount.kind, amount.value, units))
}

/// What is asked, with the way of the comparison.
pub fn limit(check: &Check, units: UnitSystem) -> Option<String> {
    let limit = check.limit.as_ref()?;
    let sign = if limit.is_least { "≥" } else { "≤" };
    Some(format!("{sign} {}", number(limit.amount.kind, limit.amount.value, units)))
}

/// The whole finding as text.
pub fn sentence(check: &Check, units: UnitSystem) -> String {
    let parts = [what(check), figures(check, units).unwrap_or_default(), check.way_out.clone()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}
