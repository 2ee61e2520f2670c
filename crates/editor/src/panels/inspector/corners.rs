//! Corners of one edge: a new one at a typed distance, and its first one taken away.

use egui::Ui;
use gantline_plan::change::Change;
use gantline_plan::document::EdgeId;
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::quantity::{self, Kind};

use super::of_selection::soft;
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::field::{Entered, refuse};
use crate::widgets::{Field, ask, section};

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, edge: EdgeId, intents: &mut Vec<Intent>) {
    let Some(line) = EdgeLine::of(sight.plan, edge) else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Corners", |ui| {
        let hint = "A distance from the start of the edge. Units stay where they stand.";
        let (field, entered) = Field::text("new corner at", Some("")).hint(hint).show(ui, palette, units);
        if let Some(Entered::Text(text)) = entered {
            match quantity::parse(Kind::Length, &text, units) {
                Ok(along_m) if along_m > 0.0 && along_m < line.length_m => {
                    let change = Change::InsertCorner { edge, at: line.point(along_m, 0.0) };
                    ask(ui, field, sight.plan, "put in corner", change, intents);
                }
                Ok(_) => {
                    let most = quantity::length(line.length_m, units);
                    refuse(ui, field, format!("The new corner must lie between 0 and {most}."));
                }
                Err(fault) => refuse(ui, field, fault.to_string()),
            }
        }
        let join = ui.button("Take away its first corner");
        if join.on_hover_text("The edge before it takes over, with its parapet and facade data.").clicked() {
            intents.push(Intent::change("take away corner", Change::RemoveCorner { edge }));
        }
        soft(ui, sight, "Corners can be dragged while the roof is selected.");
    });
}
