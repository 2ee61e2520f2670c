//! Nothing selected: what this plan is, what it is based on, and what was found.

use egui::{RichText, Ui};
use gantline_plan::change::Change;
use gantline_plan::document::{Datum, ThingId, Title};
use gantline_plan::quantity::Kind;

use super::of_selection::{findings, heading, soft};
use super::underlays;
use crate::document::OpenDocument;
use crate::intent::Intent;
use crate::session::{Page, Selection};
use crate::sight::Sight;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, figure_row, section};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, document: &OpenDocument, intents: &mut Vec<Intent>) {
    heading(ui, "Plan");
    let place = document.path.as_ref().map_or_else(|| "no file yet".to_owned(), |path| path.display().to_string());
    soft(ui, sight, place);
    title(ui, sight, intents);
    basis(ui, sight, intents);
    figures(ui, sight);
    underlays::show(ui, sight, intents);
    findings(ui, sight, sight.assessment.checks(), intents);
}

type TitleField = (&'static str, fn(&mut Title) -> &mut String);

const TITLE: [TitleField; 6] = [
    ("job", |title| &mut title.job),
    ("address", |title| &mut title.address),
    ("author", |title| &mut title.author),
    ("revision", |title| &mut title.revision),
    ("date", |title| &mut title.date),
    ("remark", |title| &mut title.remark),
];

fn title(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Title block", |ui| {
        for (name, field_of) in TITLE {
            let mut title = sight.plan.title.clone();
            let now = field_of(&mut title).clone();
            let (id, entered) = Field::text(name, Some(&now)).show(ui, palette, units);
            if let Some(Entered::Text(text)) = entered {
                *field_of(&mut title) = text;
                ask(ui, id, sight.plan, "title block", Change::SetTitle(title), intents);
            }
        }
        let datum = &sight.plan.datum;
        let zero = Field::text("level zero is", Some(&datum.level_zero)).hint("Ground is 0: what that is, in words.");
        let (id, entered) = zero.show(ui, palette, units);
        if let Some(Entered::Text(level_zero)) = entered {
            let datum = Datum { level_zero, ..datum.clone() };
            ask(ui, id, sight.plan, "datum", Change::SetDatum(datum), intents);
        }
        let north = Field::figure("north", Kind::Angle, Some(datum.north_rad)).aside("left of up");
        let (id, entered) = north.show(ui, palette, units);
        if let Some(Entered::Figure(north_rad)) = entered {
            let datum = Datum { north_rad, ..datum.clone() };
            ask(ui, id, sight.plan, "datum", Change::SetDatum(datum), intents);
        }
        grid_origin(ui, sight, intents);
    });
}

/// Where the plan's origin lies in the grid of the drawing that its outline came from.
fn grid_origin(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let datum = &sight.plan.datum;
    if datum.grid_origin_m == glam::DVec2::ZERO {
        return;
    }
    let hint = "What the plan's origin is in the grid of the site drawing.";
    for (name, axis) in [("origin in grid, x", 0), ("origin in grid, y", 1)] {
        let field = Field::figure(name, Kind::Length, Some(datum.grid_origin_m[axis])).hint(hint);
        let (id, entered) = field.show(ui, sight.look.palette, sight.look.units);
        if let Some(Entered::Figure(at_m)) = entered {
            let mut datum = datum.clone();
            datum.grid_origin_m[axis] = at_m;
            ask(ui, id, sight.plan, "datum", Change::SetDatum(datum), intents);
        }
    }
}

fn basis(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let palette = sight.look.palette;
    section(ui, palette, "Basis", |ui| {
        let basis = &sight.plan.basis;
        ui.label(RichText::new(words::basis_sentence(basis, sight.look.units)).color(palette.ink));
        soft(ui, sight, format!("{} · members: {}", basis.name, sight.plan.code.edition));
        let open = basis.unconfirmed() + sight.plan.code.unconfirmed();
        let text = match open {
            0 => "Someone stands behind every value.".to_owned(),
            1 => "1 value waits for someone to confirm it.".to_owned(),
            _ => format!("{open} values wait for someone to confirm them."),
        };
        let ink = if open == 0 { palette.meets } else { palette.unchecked };
        ui.label(RichText::new(text).color(ink));
        if ui.button("Basis and sources…").clicked() {
            intents.push(Intent::Page(Some(Page::Basis)));
        }
        unconfirmed_edges(ui, sight, intents);
    });
}

fn unconfirmed_edges(ui: &mut Ui, sight: &Sight<'_>, intents: &mut Vec<Intent>) {
    let open: Vec<ThingId> = sight
        .plan
        .edges()
        .filter(|place| !place.edge().confirmed)
        .map(|place| ThingId::Edge(place.edge().id))
        .collect();
    if open.is_empty() {
        return;
    }
    let text = format!("{} edges have parapet and facade data that nobody confirmed.", open.len());
    ui.label(RichText::new(text).color(sight.look.palette.unchecked));
    if ui.button("Select these edges").clicked() {
        intents.push(Intent::Select(Selection::of(open)));
    }
}

fn figures(ui: &mut Ui, sight: &Sight<'_>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Facades", |ui| {
        let facades = sight.assessment.facades.values().filter(|found| found.facade.data.needs_access);
        let (count, area, covered) = facades
            .fold((0, 0.0, 0.0), |(count, area, covered), f| (count + 1, area + f.area_m2, covered + f.covered_m2));
        figure_row(ui, palette, "facades that need access", &count.to_string(), "");
        let area_text = |value| gantline_plan::quantity::number(Kind::Area, value, units);
        figure_row(ui, palette, "their area", &area_text(area), "");
        figure_row(ui, palette, "reached by some unit", &area_text(covered), "");
        figure_row(ui, palette, "units", &sight.plan.placements.len().to_string(), "");
    });
}
