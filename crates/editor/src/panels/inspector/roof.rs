//! One roof: name, level over ground 0, build-up, slab, lock.

use egui::Ui;
use gantline_plan::change::{Change, RoofPatch};
use gantline_plan::document::{Roof, RoofId, Slab, ThingId};
use gantline_plan::quantity::{self, Kind};

use super::of_selection::{findings, heading, soft};
use super::roof_bars;
use crate::intent::Intent;
use crate::session::Selection;
use crate::sight::Sight;
use crate::widgets::field::Entered;
use crate::widgets::{Field, ask, figure_row, section, switch_row};

/// Shows it.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: RoofId, intents: &mut Vec<Intent>) {
    let Some(roof) = sight.plan.roofs.get(&id) else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    heading(ui, &roof.name);
    let (field, entered) = Field::text("name", Some(&roof.name)).show(ui, palette, units);
    if let Some(Entered::Text(name)) = entered {
        set(ui, sight, field, id, RoofPatch { name: Some(name), ..RoofPatch::default() }, intents);
    }
    section(ui, palette, "Heights", |ui| {
        level(ui, sight, id, roof, intents);
        let build_up = Field::figure("build-up", Kind::Length, Some(roof.build_up_m)).aside("over the slab");
        let (field, entered) = build_up.hint("Insulation, membrane, paving.").show(ui, palette, units);
        if let Some(Entered::Figure(build_up_m)) = entered {
            set(ui, sight, field, id, RoofPatch { build_up_m: Some(build_up_m), ..RoofPatch::default() }, intents);
        }
        figure_row(ui, palette, "finish", &quantity::level(roof.level_m + roof.build_up_m, units), "");
    });
    slab(ui, sight, id, &roof.slab, intents);
    roof_bars::show(ui, sight, id, &roof.slab, intents);
    section(ui, palette, "Outline", |ui| {
        figure_row(ui, palette, "area", &quantity::area(roof.area_m2(), units), "Outline less holes.");
        figure_row(ui, palette, "corners", &roof.outer.len().to_string(), "");
        figure_row(ui, palette, "holes", &roof.holes.len().to_string(), "");
        if ui.button("Select its edges").clicked() {
            let edges = roof.rings().flat_map(|ring| ring.corners().iter().map(|corner| ThingId::Edge(corner.edge.id)));
            intents.push(Intent::Select(Selection::of(edges)));
        }
        let hint = "A locked roof can't be moved and its corners can't be dragged.";
        if let Some(locked) = switch_row(ui, palette, "locked", Some(roof.locked), hint) {
            let patch = RoofPatch { locked: Some(locked), ..RoofPatch::default() };
            intents.push(Intent::change("lock roof", Change::SetRoof(id, patch)));
        }
    });
    findings(ui, sight, sight.assessment.findings_about(ThingId::Roof(id)), intents);
}

/// The field of a roof's level.
pub(super) fn level(ui: &mut Ui, sight: &Sight<'_>, id: RoofId, roof: &Roof, intents: &mut Vec<Intent>) {
    let level = Field::figure("top of slab", Kind::Length, Some(roof.level_m)).aside("Ground is 0");
    let (field, entered) = level.show(ui, sight.look.palette, sight.look.units);
    if let Some(Entered::Figure(level_m)) = entered {
        set(ui, sight, field, id, RoofPatch { level_m: Some(level_m), ..RoofPatch::default() }, intents);
    }
}

fn slab(ui: &mut Ui, sight: &Sight<'_>, id: RoofId, slab: &Slab, intents: &mut Vec<Intent>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Structural slab", |ui| {
        let mut ask_slab = |ui: &Ui, field, slab: Slab| {
            set(ui, sight, field, id, RoofPatch { slab: Some(slab), ..RoofPatch::default() }, intents);
        };
        let (field, entered) =
            Field::figure("thickness", Kind::Length, Some(slab.thickness_m)).show(ui, palette, units);
        if let Some(Entered::Figure(thickness_m)) = entered {
            ask_slab(ui, field, Slab { thickness_m, ..slab.clone() });
        }
        match slab.cylinder_strength_pa {
            Some(strength) => {
                let (field, entered) =
                    Field::figure("cylinder strength", Kind::Stress, Some(strength)).show(ui, palette, units);
                if let Some(Entered::Figure(strength)) = entered {
                    ask_slab(ui, field, Slab { cylinder_strength_pa: Some(strength), ..slab.clone() });
                }
            }
            None => unknown_strength(ui, sight, slab, &mut ask_slab),
        }
        let hint = "Concrete is taken as cracked unless someone shows otherwise.";
        if let Some(cracked) = switch_row(ui, palette, "cracked", Some(slab.cracked), hint) {
            let patch = RoofPatch { slab: Some(Slab { cracked, ..slab.clone() }), ..RoofPatch::default() };
            intents.push(Intent::change("slab", Change::SetRoof(id, patch)));
        }
        figure_row(ui, palette, "zones of other thickness", &slab.zones.len().to_string(), "");
        figure_row(ui, palette, "zones without drilling", &slab.no_drill.len().to_string(), "");
    });
}

/// A strength that nobody knows is not shown as a figure.
fn unknown_strength(ui: &mut Ui, sight: &Sight<'_>, slab: &Slab, ask_slab: &mut impl FnMut(&Ui, egui::Id, Slab)) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    let unknown = Field::text("cylinder strength", Some("")).hint("Not known yet. Type it with its unit.");
    let (field, entered) = unknown.show(ui, palette, units);
    soft(ui, sight, "Not known yet.");
    if let Some(Entered::Text(text)) = entered {
        match quantity::parse(Kind::Stress, &text, units) {
            Ok(strength) => ask_slab(ui, field, Slab { cylinder_strength_pa: Some(strength), ..slab.clone() }),
            Err(fault) => crate::widgets::field::refuse(ui, field, fault.to_string()),
        }
    }
}

fn set(ui: &Ui, sight: &Sight<'_>, field: egui::Id, id: RoofId, patch: RoofPatch, intents: &mut Vec<Intent>) {
    ask(ui, field, sight.plan, "set roof", Change::SetRoof(id, patch), intents);
}
