//! The inspector: fields, figures and findings of what is selected.

use egui::{Frame, Margin, RichText, ScrollArea, Ui};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{PlacementId, Standing, ThingId};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::quantity::{Kind, length, level};

use crate::document::OpenDocument;
use crate::intent::Intent;
use crate::session::Selected;
use crate::sight::Sight;
use crate::theme::type_scale;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, figure_row};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, _document: &OpenDocument, intents: &mut Vec<Intent>) {
    Frame::new().inner_margin(Margin::same(type_scale::MARGIN)).show(ui, |ui| {
        ScrollArea::vertical().auto_shrink(false).show(ui, |ui| match sight.session.selection.shown() {
            Selected::Unit(id) => unit(ui, sight, id, intents),
            Selected::Nothing => {
                heading(ui, "Plan");
                ui.label(crate::views::findings::tally_sentence(&sight.assessment.tally()));
            }
            Selected::Roof(id) => {
                heading(ui, &words::name(sight.plan, ThingId::Roof(id)));
                if let Some(roof) = sight.plan.roofs.get(&id) {
                    figure_row(ui, sight.look.palette, "level", &level(roof.level_m, sight.look.units), "");
                }
            }
            Selected::Edges(edges) => {
                heading(ui, &format!("{} edges", edges.len()));
                for edge in edges {
                    if let Some(line) = EdgeLine::of(sight.plan, edge) {
                        let name = words::name(sight.plan, ThingId::Edge(edge));
                        figure_row(ui, sight.look.palette, &name, &length(line.length_m, sight.look.units), "");
                    }
                }
            }
            Selected::Units(units) => heading(ui, &format!("{} units", units.len())),
            Selected::Obstacle(id) => heading(ui, &words::name(sight.plan, ThingId::Obstacle(id))),
            Selected::Several => heading(ui, &format!("{} things", sight.session.selection.len())),
        });
    });
}

fn heading(ui: &mut Ui, words: &str) {
    ui.label(RichText::new(words).size(type_scale::HEADING + 2.0).family(type_scale::semibold()));
    ui.add_space(4.0);
}

fn unit(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, intents: &mut Vec<Intent>) {
    heading(ui, &words::name(sight.plan, ThingId::Placement(id)));
    let Some(placement) = sight.plan.placements.get(&id) else {
        return;
    };
    let (palette, units) = (sight.look.palette, sight.look.units);
    let Standing::OnEdge { edge, station, setback_m, .. } = &placement.stands else {
        return;
    };
    let along_m = station.along_m(EdgeLine::of(sight.plan, *edge).map_or(0.0, |line| line.length_m));
    let fields = [("along", along_m), ("setback", *setback_m)];
    ui.push_id(id, |ui| {
        for (name, value) in fields {
            let (field, entered) = Field::figure(name, Kind::Length, Some(value)).show(ui, palette, units);
            if let Some(Entered::Figure(value)) = entered {
                let mut patch = PlacementPatch::default();
                if name == "along" {
                    patch.along_m = Some(value);
                } else {
                    patch.setback_m = Some(value);
                }
                ask(ui, field, sight.plan, "set unit", Change::SetPlacements(vec![id], patch), intents);
            }
        }
    });
}
