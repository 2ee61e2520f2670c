//! Members and the mast's socket: demand over resistance, with what governs.

use std::sync::Arc;

use egui::Ui;
use gantline_plan::assess::{Reactions, UnitAssessment};
use gantline_plan::quantity;

use super::of_selection::soft;
use super::reactions::causes;
use crate::sight::Sight;
use crate::widgets::{figure_row, section, utilization_row};

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>) {
    let Some(reactions) = &unit.reactions else { return };
    section(ui, sight.look.palette, "Members, demand over resistance", |ui| {
        soft(ui, sight, format!("Judged by {}", sight.plan.code.edition));
        for used in &reactions.members {
            let combination = name_of(reactions, used.combination);
            let place = quantity::length(used.station_m, sight.look.units);
            let pull = causes_of(used.pull);
            let hint = format!("{}: {}\n{combination}\nat {place} along it{pull}", used.mode, used.clause);
            utilization_row(ui, sight.look.palette, used.member, used.utilization, &hint);
            let what = match used.utilization {
                Some(_) => format!("{} · {combination}", used.mode),
                None => used.clause.clone(),
            };
            soft(ui, sight, what);
        }
        for used in &reactions.socket {
            utilization_row(ui, sight.look.palette, "mast in socket", used.utilization, &used.what);
            soft(ui, sight, used.clause.clone());
        }
        rating(ui, sight, unit, reactions);
    });
}

/// Direction of a pull, without a slew: what happens inside does not depend on it.
fn causes_of(pull: Option<glam::DVec3>) -> String {
    pull.map_or_else(String::new, |pull| format!("\n{}", causes(Some(pull), 0.0).replace(", slew 0.0°", "")))
}

fn name_of(reactions: &Reactions, index: usize) -> String {
    reactions.combination_name(index).to_owned()
}

fn rating(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>, reactions: &Reactions) {
    let Ok(resolved) = &unit.resolved else { return };
    match &resolved.rating {
        Some(rating) => {
            let text = quantity::force(rating.rated_n, sight.look.units);
            figure_row(ui, sight.look.palette, "declared rating", &text, &format!("by {}", rating.declared_by));
        }
        None => soft(ui, sight, "Nothing is declared for this combination."),
    }
    if let Some(at_rating) = &reactions.at_rating {
        let checked = if at_rating.all_checked { "" } else { "\nnot every mode could be checked" };
        let hint = format!("{}{checked}", at_rating.inside);
        utilization_row(ui, sight.look.palette, "at the rating", Some(at_rating.utilization), &hint);
        if !at_rating.all_checked {
            soft(ui, sight, "Not every mode could be checked.");
        }
    }
}
