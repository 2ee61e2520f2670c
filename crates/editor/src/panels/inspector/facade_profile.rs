//! The facade's face outside the outline, by depth: one row a step, added and taken away.

use egui::{RichText, Ui};
use gantline_plan::change::EdgePatch;
use gantline_plan::document::FacadeStep;
use gantline_plan::document::edge::Edge;
use gantline_plan::quantity::Kind;

use super::edges_data::{Asking, shared};
use super::of_selection::soft;
use crate::intent::Intent;
use crate::theme::type_scale;
use crate::widgets::field::Entered;
use crate::widgets::{Field, Icon, icon_button, section};

/// Shows the steps. Edges whose steps differ get equal ones from the first entry on.
pub fn show(ui: &mut Ui, asking: Asking<'_>, edges: &[&Edge], intents: &mut Vec<Intent>) {
    let palette = asking.sight.look.palette;
    section(ui, palette, "Face of the facade outside the outline", |ui| {
        let Some(first) = edges.first() else { return };
        let steps = shared(edges.iter().map(|edge| &edge.facade.profile));
        if steps.is_none() {
            soft(ui, asking.sight, "These edges have different steps (mixed). A new offset gives all the same.");
            let (id, entered) = Field::figure("offset", Kind::Length, None).show(ui, palette, asking.sight.look.units);
            if let Some(Entered::Figure(offset_m)) = entered {
                set(ui, asking, id, vec![FacadeStep { from_depth_m: 0.0, offset_m }], intents);
            }
            return;
        }
        let steps = &first.facade.profile;
        for index in 0..steps.len() {
            ui.push_id(index, |ui| step(ui, asking, steps, index, intents));
        }
        let deepest = steps.last().map_or(0.0, |step| step.from_depth_m);
        let offset_m = steps.last().map_or(0.0, |step| step.offset_m);
        if ui.button("Add a step below").clicked() {
            let mut steps = steps.clone();
            steps.push(FacadeStep { from_depth_m: deepest + NEXT_STEP_M, offset_m });
            let patch = EdgePatch { profile: Some(steps), ..EdgePatch::default() };
            let change = gantline_plan::change::Change::SetEdges(asking.ids.to_vec(), patch);
            intents.push(Intent::change("set edges", change));
        }
    });
}

/// How far below the last one a new step begins, until someone types its depth, m.
const NEXT_STEP_M: f64 = 3.0;

fn step(ui: &mut Ui, asking: Asking<'_>, steps: &[FacadeStep], index: usize, intents: &mut Vec<Intent>) {
    let (palette, units) = (asking.sight.look.palette, asking.sight.look.units);
    if index > 0 {
        ui.horizontal(|ui| {
            let words = format!("step {}", index + 1);
            ui.label(RichText::new(words).size(type_scale::SMALL).color(palette.ink_soft));
            let name = format!("Take away step {}", index + 1);
            if icon_button(ui, palette, Icon::Close, "", &name, false).clicked() {
                let mut steps = steps.to_vec();
                steps.remove(index);
                let patch = EdgePatch { profile: Some(steps), ..EdgePatch::default() };
                let change = gantline_plan::change::Change::SetEdges(asking.ids.to_vec(), patch);
                intents.push(Intent::change("set edges", change));
            }
        });
        let depth = Field::figure("from depth", Kind::Length, Some(steps[index].from_depth_m));
        let (id, entered) = depth.hint("Below the top of the parapet.").show(ui, palette, units);
        if let Some(Entered::Figure(from_depth_m)) = entered {
            changed(ui, asking, id, steps, index, FacadeStep { from_depth_m, ..steps[index] }, intents);
        }
    }
    let offset = Field::figure("offset", Kind::Length, Some(steps[index].offset_m)).aside("minus: behind");
    let (id, entered) = offset.show(ui, palette, units);
    if let Some(Entered::Figure(offset_m)) = entered {
        changed(ui, asking, id, steps, index, FacadeStep { offset_m, ..steps[index] }, intents);
    }
}

fn changed(
    ui: &Ui,
    asking: Asking<'_>,
    id: egui::Id,
    steps: &[FacadeStep],
    index: usize,
    new: FacadeStep,
    intents: &mut Vec<Intent>,
) {
    let mut steps = steps.to_vec();
    steps[index] = new;
    set(ui, asking, id, steps, intents);
}

fn set(ui: &Ui, asking: Asking<'_>, id: egui::Id, steps: Vec<FacadeStep>, intents: &mut Vec<Intent>) {
    asking.set(ui, id, EdgePatch { profile: Some(steps), ..EdgePatch::default() }, intents);
}
