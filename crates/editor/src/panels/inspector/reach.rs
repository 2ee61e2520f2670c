//! What a unit reaches of each facade it serves.

use std::sync::Arc;

use egui::Ui;
use gantline_plan::assess::UnitAssessment;
use gantline_plan::document::ThingId;
use gantline_plan::geometry::turns::Turns;
use gantline_plan::quantity;

use super::of_selection::soft;
use crate::sight::Sight;
use crate::widgets::{figure_row, section};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Reach", |ui| {
        figure_row(ui, palette, "loaded slew", &turns(&unit.loaded), "Slew at which a person may hang.");
        if unit.serves.is_empty() {
            soft(ui, sight, "It serves no facade.");
        }
        for served in &unit.serves {
            figure_row(ui, palette, "serves", &words::name(sight.plan, ThingId::Edge(served.facade)), "");
            figure_row(ui, palette, "serving slew", &turns(&served.slew), "");
            let stand_off = quantity::length(served.stand_off_m, units);
            figure_row(ui, palette, "stand-off", &stand_off, "Tip outside the facade's face, arm straight out.");
            let whole = quantity::length(served.full_height.length_m(), units);
            figure_row(ui, palette, "reached from top to foot", &whole, "Length along the facade.");
            let any = quantity::length(served.any_depth.length_m(), units);
            figure_row(ui, palette, "reached at some depth", &any, "Length along the facade.");
            figure_row(ui, palette, "area", &quantity::area(served.area_m2, units), "");
            let below = quantity::length(served.top_below_tip_m, units);
            figure_row(ui, palette, "facade's top below the tip", &below, "");
        }
    });
}

/// Ranges of slew.
pub fn turns(turns: &Turns) -> String {
    if turns.is_whole() {
        return "whole turn".to_owned();
    }
    let of = |turn: &gantline_plan::geometry::turns::Turn| {
        format!("{} to {}", quantity::angle(turn.from_rad), quantity::angle(turn.to_rad))
    };
    let all: Vec<String> = turns.intervals().iter().map(of).collect();
    if all.is_empty() { "none".to_owned() } else { all.join(", ") }
}
