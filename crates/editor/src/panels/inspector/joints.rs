//! Joints, twist, stiffness: what keeps the unit together and how far it moves.

use std::sync::Arc;

use egui::Ui;
use gantline_plan::assess::UnitAssessment;
use gantline_plan::catalog::Retention;
use gantline_plan::quantity::{self, UnitSystem};

use crate::sight::Sight;
use crate::widgets::{figure_row, section};

const NOT_CHECKED: &str = "not checked";

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, unit: &Arc<UnitAssessment>) {
    let Some(reactions) = &unit.reactions else { return };
    let (palette, units) = (sight.look.palette, sight.look.units);
    section(ui, palette, "Joints and stiffness", |ui| {
        for joint in &reactions.joints {
            let name = format!("{}, uplift", joint.joint);
            let combination = reactions.combination_name(joint.combination);
            let hint = format!("Held by {}.\n{combination}", held_by(joint.held_by, units));
            figure_row(ui, palette, &name, &quantity::force(joint.uplift_n, units), &hint);
        }
        let or_not = |text: Option<String>| text.unwrap_or_else(|| NOT_CHECKED.to_owned());
        let twist = or_not(reactions.twist_nm.map(|twist| quantity::moment(twist, units)));
        figure_row(ui, palette, "largest twist", &twist, "About the mast axis, at the design level.");
        let tip = or_not(reactions.tip_deflection_m.map(|tip| quantity::length(tip, units)));
        figure_row(ui, palette, "tip deflection in service", &tip, "Largest movement of the working rope's point.");
        let alpha = or_not(reactions.alpha_cr.map(|alpha| format!("{alpha:.1}")));
        figure_row(ui, palette, "critical load factor", &alpha, "Smallest ratio of critical to acting load.");
    });
}

fn held_by(retention: Retention, units: UnitSystem) -> String {
    let resistance = |resistance: Option<f64>| {
        resistance.map_or_else(|| "resistance not known".to_owned(), |value| quantity::force(value, units))
    };
    match retention {
        Retention::Nothing => "nothing".to_owned(),
        Retention::Gravity => "its own weight".to_owned(),
        Retention::Pin { resistance_n } => format!("a pin, {}", resistance(resistance_n)),
        Retention::Locked { resistance_n } => format!("a lock, {}", resistance(resistance_n)),
    }
}
