//! Many units: what they share, what is mixed; one field changes all in one step.

use egui::{Id, Ui};
use gantline_plan::assess::Check;
use gantline_plan::catalog::{PartKind, choices, part_name};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{PartId, Placement, PlacementId, Standing};
use gantline_plan::quantity::{self, Kind};

use super::edges_data::shared;
use super::of_selection::{findings, heading, soft};
use crate::intent::Intent;
use crate::sight::Sight;
use crate::widgets::choice_row::Entry;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, choice_row, figure_row, section, switch_row};

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, ids: &[PlacementId], intents: &mut Vec<Intent>) {
    let placements: Vec<&Placement> = ids.iter().filter_map(|id| sight.plan.placements.get(id)).collect();
    heading(ui, &format!("{} units", ids.len()));
    soft(ui, sight, "A field changes all of them in one step.");
    place(ui, sight, ids, &placements, intents);
    parts(ui, sight, ids, &placements, intents);
    section(ui, sight.look.palette, "Together", |ui| {
        let found = ids.iter().filter_map(|id| sight.assessment.units.get(id));
        let masses = found.filter_map(|unit| unit.resolved.as_ref().ok().map(|unit| unit.portable_mass_kg()));
        let total = quantity::mass(masses.sum(), sight.look.units);
        figure_row(ui, sight.look.palette, "portable mass", &total, "Masts, arms and braces.");
        let hint = "Locked units can't be moved, changed or deleted.";
        let locked = shared(placements.iter().map(|placement| placement.locked));
        if let Some(locked) = switch_row(ui, sight.look.palette, "locked", locked, hint) {
            let patch = PlacementPatch { locked: Some(locked), ..PlacementPatch::default() };
            intents.push(Intent::change("lock units", Change::SetPlacements(ids.to_vec(), patch)));
        }
    });
    let checks: Vec<&Check> =
        ids.iter().filter_map(|id| sight.assessment.units.get(id)).flat_map(|unit| &unit.checks).collect();
    findings(ui, sight, checks, intents);
}

fn set(ui: &Ui, sight: &Sight<'_>, field: Id, ids: &[PlacementId], patch: PlacementPatch, intents: &mut Vec<Intent>) {
    ask(ui, field, sight.plan, "set units", Change::SetPlacements(ids.to_vec(), patch), intents);
}

type Patch = fn(f64) -> PlacementPatch;

fn place(ui: &mut Ui, sight: &Sight<'_>, ids: &[PlacementId], placements: &[&Placement], intents: &mut Vec<Intent>) {
    let on_edge = |get: fn(f64, f64) -> f64| {
        shared(placements.iter().map(|placement| match &placement.stands {
            Standing::OnEdge { setback_m, turn_rad, .. } => Some(get(*setback_m, *turn_rad)),
            Standing::Free { .. } => None,
        }))
        .flatten()
    };
    let slew = shared(placements.iter().map(|placement| placement.make_up.drawn_slew_rad));
    let fields: [(&str, Kind, Option<f64>, Patch); 3] = [
        ("setback", Kind::Length, on_edge(|setback_m, _| setback_m), |value| PlacementPatch {
            setback_m: Some(value),
            ..PlacementPatch::default()
        }),
        ("turn", Kind::Angle, on_edge(|_, turn_rad| turn_rad), |value| PlacementPatch {
            turn_rad: Some(value),
            ..PlacementPatch::default()
        }),
        ("drawn slew", Kind::Angle, slew, |value| PlacementPatch {
            drawn_slew_rad: Some(value),
            ..PlacementPatch::default()
        }),
    ];
    section(ui, sight.look.palette, "Where they stand", |ui| {
        for (name, kind, value, patch) in fields {
            let (id, entered) = Field::figure(name, kind, value).show(ui, sight.look.palette, sight.look.units);
            if let Some(Entered::Figure(value)) = entered {
                set(ui, sight, id, ids, patch(value), intents);
            }
        }
    });
}

fn parts(ui: &mut Ui, sight: &Sight<'_>, ids: &[PlacementId], placements: &[&Placement], intents: &mut Vec<Intent>) {
    section(ui, sight.look.palette, "Make-up", |ui| {
        let family = shared(placements.iter().map(|placement| placement.make_up.family));
        let Some(family) = family.and_then(|id| sight.plan.families.get(&id)) else {
            soft(ui, sight, "They are of different families (mixed).");
            return;
        };
        for kind in PartKind::ALL {
            let now = shared(placements.iter().map(|placement| part_name(family, &placement.make_up, kind)));
            let Some(first) = placements.first() else { return };
            // What may go with it differs from unit to unit; checks say so for each that gets a part it can't have.
            let offered = choices(family, &first.make_up, kind);
            let shown = now.clone().unwrap_or_else(|| "mixed".to_owned());
            let chosen = choice_row(ui, sight.look.palette, kind.word(), &shown, |_| {
                offered.iter().map(|c| Entry::open(c.name.clone(), now.as_ref() == Some(&c.name))).collect()
            });
            if let Some(choice) = chosen.and_then(|index| offered.get(index)) {
                let patch = part_patch(kind, choice.part.clone());
                intents.push(Intent::change("change part", Change::SetPlacements(ids.to_vec(), patch)));
            }
        }
    });
}

fn part_patch(kind: PartKind, part: Option<PartId>) -> PlacementPatch {
    let mut patch = PlacementPatch::default();
    match kind {
        PartKind::Mast => patch.mast = part,
        PartKind::Arm => patch.arm = part,
        PartKind::Base => patch.base = part,
        PartKind::Brace => patch.brace = Some(part),
    }
    patch
}
