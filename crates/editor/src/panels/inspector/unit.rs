//! One unit: where it stands, what it is made of, what it reaches, what it does to its base, what was found.

use std::sync::Arc;

use egui::Ui;
use gantline_plan::assess::UnitAssessment;
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{PlacementId, ThingId};
use gantline_plan::quantity;

use super::of_selection::{findings, heading, soft};
use super::{base, clearances, joints, members, reach, reactions, unit_parts, unit_place};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::{figure_row, section, switch_row};
use crate::words;

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, intents: &mut Vec<Intent>) {
    let Some(placement) = sight.plan.placements.get(&id) else { return };
    heading(ui, &words::name(sight.plan, ThingId::Placement(id)));
    unit_place::show(ui, sight, id, placement, intents);
    unit_parts::show(ui, sight, id, placement, intents);
    let Some(unit) = sight.assessment.units.get(&id) else {
        soft(ui, sight, "computing…");
        return;
    };
    findings(ui, sight, &unit.checks, intents);
    reach::show(ui, sight, unit);
    clearances::show(ui, sight, unit, intents);
    reactions::show(ui, sight, unit);
    base::show(ui, sight, id, unit);
    members::show(ui, sight, unit);
    joints::show(ui, sight, unit);
    handling(ui, sight, unit);
    let hint = "A locked unit can't be moved, changed or deleted.";
    if let Some(locked) = switch_row(ui, sight.look.palette, "locked", Some(placement.locked), hint) {
        let patch = PlacementPatch { locked: Some(locked), ..PlacementPatch::default() };
        intents.push(Intent::change("lock unit", Change::SetPlacements(vec![id], patch)));
    }
}

fn handling(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>) {
    let Ok(resolved) = &unit.resolved else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Parts", |ui| {
        let mass = |kg| quantity::mass(kg, units);
        figure_row(ui, palette, "mast", &mass(resolved.mast.mass_kg), "");
        figure_row(ui, palette, "arm", &mass(resolved.arm.mass_kg), "");
        if let Some(brace) = &resolved.brace {
            figure_row(ui, palette, "brace", &mass(brace.mass_kg), "");
        }
        figure_row(ui, palette, "carried to the base", &mass(resolved.portable_mass_kg()), "Mast, arm and brace.");
        let from = if resolved.invented { "Invented for demonstration: no such parts are made." } else { "" };
        figure_row(ui, palette, "family", &resolved.family, from);
        if resolved.invented {
            soft(ui, sight, from);
        }
    });
}
