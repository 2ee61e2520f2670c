//! Edges, one or many: their parapet and facade data; what differs is shown as mixed, one field changes all.

use egui::Ui;
use gantline_plan::change::{Change, EdgePatch};
use gantline_plan::document::edge::Edge;
use gantline_plan::document::plan::EdgePlace;
use gantline_plan::document::{EdgeId, Ring, ThingId};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::quantity;

use super::edges_data::{self, Asking};
use super::of_selection::{findings, heading, soft};
use super::{facade_profile, roof};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::{figure_row, section};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, ids: &[EdgeId], intents: &mut Vec<Intent>) {
    let places: Vec<EdgePlace<'_>> = ids.iter().filter_map(|&id| sight.plan.find_edge(id)).collect();
    let edges: Vec<&Edge> = places.iter().map(EdgePlace::edge).collect();
    if places.is_empty() {
        return;
    }
    match ids {
        [one] => heading(ui, &words::name(sight.plan, ThingId::Edge(*one))),
        _ => heading(ui, &format!("{} edges", ids.len())),
    }
    confirmation(ui, sight, ids, &edges, intents);
    of_one_roof(ui, sight, &places, intents);
    let asking = Asking { sight, ids };
    edges_data::parapet(ui, asking, &edges, &places, intents);
    edges_data::facade(ui, asking, &edges, intents);
    facade_profile::show(ui, asking, &edges, intents);
    lengths(ui, sight, ids);
    if let [one] = ids {
        corners(ui, sight, *one, intents);
        reached(ui, sight, *one);
    }
    let about =
        sight.assessment.checks().filter(|check| ids.iter().any(|&id| check.about.contains(&ThingId::Edge(id))));
    findings(ui, sight, about, intents);
}

/// A whole roof's edges, as they are selected once it is drawn: its level is asked in the same place.
fn of_one_roof(ui: &mut Ui, sight: &Sight<'_>, places: &[EdgePlace<'_>], intents: &mut Vec<Intent>) {
    let [first, rest @ ..] = places else { return };
    let corners = first.roof.rings().map(Ring::len).sum::<usize>();
    if places.len() == corners && rest.iter().all(|place| place.roof_id == first.roof_id) {
        section(ui, sight.look.palette, &format!("Level of {}", first.roof.name), |ui| {
            roof::level(ui, sight, first.roof_id, first.roof, intents);
        });
    }
}

fn confirmation(ui: &mut Ui, sight: &Sight<'_>, ids: &[EdgeId], edges: &[&Edge], intents: &mut Vec<Intent>) {
    let open = edges.iter().filter(|edge| !edge.confirmed).count();
    if open == 0 {
        soft(ui, sight, "Parapet and facade data are confirmed.");
        return;
    }
    let text = if ids.len() == 1 {
        "Not confirmed: these are defaults.".to_owned()
    } else {
        format!("Not confirmed: {open} of {} hold defaults.", ids.len())
    };
    ui.label(egui::RichText::new(text).color(sight.look.palette.unchecked));
    if ui.button("These data are right").clicked() {
        let patch = EdgePatch { confirmed: Some(true), ..EdgePatch::default() };
        intents.push(Intent::change("confirm edges", Change::SetEdges(ids.to_vec(), patch)));
    }
}

fn lengths(ui: &mut Ui, sight: &Sight<'_>, ids: &[EdgeId]) {
    let units = sight.look.units;
    section(ui, sight.look.palette, "Length", |ui| {
        let lines: Vec<EdgeLine> = ids.iter().filter_map(|&id| EdgeLine::of(sight.plan, id)).collect();
        let name = if ids.len() == 1 { "length" } else { "lengths together" };
        let total: f64 = lines.iter().map(|line| line.length_m).sum();
        figure_row(ui, sight.look.palette, name, &quantity::length(total, units), "");
    });
}

/// What a pointer does with handles of the selected roof, for the keyboard too.
fn corners(ui: &mut Ui, sight: &Sight<'_>, edge: EdgeId, intents: &mut Vec<Intent>) {
    let Some(line) = EdgeLine::of(sight.plan, edge) else { return };
    ui.horizontal_wrapped(|ui| {
        if ui.button("Split in the middle").on_hover_text("A new corner; units keep their places.").clicked() {
            let at = line.point(line.length_m / 2.0, 0.0);
            intents.push(Intent::change("split edge", Change::InsertCorner { edge, at }));
        }
        let hint = "The edge before it takes over; units keep their places.";
        if ui.button("Take its first corner away").on_hover_text(hint).clicked() {
            intents.push(Intent::change("take corner away", Change::RemoveCorner { edge }));
        }
    });
}

fn reached(ui: &mut Ui, sight: &Sight<'_>, id: EdgeId) {
    let Some(found) = sight.assessment.facade_of(id) else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Reach of this facade", |ui| {
        let facade = &found.facade;
        figure_row(
            ui,
            palette,
            "height",
            &quantity::length(facade.height_m(), units),
            "From its top down to its foot.",
        );
        figure_row(ui, palette, "area", &quantity::area(found.area_m2, units), "");
        figure_row(ui, palette, "reached", &quantity::area(found.covered_m2, units), "");
        let whole = quantity::length(found.full_height.length_m(), units);
        figure_row(ui, palette, "reached from top to foot", &whole, "Length along the edge.");
        figure_row(ui, palette, "gaps", &found.gaps.len().to_string(), "Regions that no unit reaches.");
        figure_row(ui, palette, "units that serve it", &found.served_by.len().to_string(), "");
    });
}
