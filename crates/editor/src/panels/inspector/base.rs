//! The base of a unit, and the foot of its brace: how it is fixed, what governs, what each look came to.

use std::sync::Arc;

use egui::{RichText, Ui};
use gantline_plan::assess::anchorage::{BaseAssessment, Fixed, HandedOn, PlateState};
use gantline_plan::assess::{Check, Code, Outcome, UnitAssessment};
use gantline_plan::catalog::{Anchors, Base, BaseKind, Bearing, Fixing, FixingKind, ResolvedUnit};
use gantline_plan::document::PlacementId;
use gantline_plan::quantity;

use super::of_selection::soft;
use super::{base_picture, base_uses};
use crate::sight::Sight;
use crate::widgets::{figure_row, section, word_row};

/// Shows them.
pub fn show(ui: &mut Ui, sight: &Sight<'_>, id: PlacementId, unit: &Arc<UnitAssessment>) {
    let Ok(resolved) = &unit.resolved else { return };
    section(ui, sight.look.palette, "Base", |ui| {
        let fixing = resolved.fixing.as_ref();
        stands(ui, sight, &Parts { base: &resolved.base, fixing, kind: resolved.fixing_kind() });
        let Some(base) = &unit.base else {
            soft(ui, sight, "Not judged: the unit stands on no roof. Drag it onto one.");
            return;
        };
        governing(ui, sight, base, Fixed::Base, resolved);
        base_picture::show(ui, sight, id, resolved, Fixed::Base);
        base_uses::show(ui, sight, base, Fixed::Base);
        surroundings(ui, sight, base, resolved);
        test(ui, sight, unit);
        handed_on(ui, sight, &base.handed_on);
    });
    if let (Some(base), Some(foot)) = (&unit.base, &resolved.foot) {
        section(ui, sight.look.palette, "Foot of the brace", |ui| {
            let kind = foot.fixing.as_ref().map(|fixing| fixing.kind);
            stands(ui, sight, &Parts { base: &foot.base, fixing: foot.fixing.as_ref(), kind });
            governing(ui, sight, base, Fixed::Foot, resolved);
            base_picture::show(ui, sight, id, resolved, Fixed::Foot);
            base_uses::show(ui, sight, base, Fixed::Foot);
        });
    }
}

/// A base with what it is fixed with.
struct Parts<'a> {
    base: &'a Base,
    fixing: Option<&'a Fixing>,
    kind: Option<FixingKind>,
}

/// Kind, fixing, anchors.
fn stands(ui: &mut Ui, sight: &Sight<'_>, parts: &Parts<'_>) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    figure_row(ui, palette, "kind of base", parts.base.kind.words(), &parts.base.name);
    let kind = parts.kind.map_or("not known", FixingKind::words);
    let source = parts.fixing.map_or("", |fixing| fixing.source.as_str());
    figure_row(ui, palette, "fixing", kind, source);
    if let Some(fixing) = parts.fixing {
        figure_row(ui, palette, "product", &fixing.name, source);
    }
    if let Some(Anchors { at_m, embedment_m, .. }) = &parts.base.anchors {
        let embedment = quantity::length(*embedment_m, units);
        let words = match parts.kind {
            Some(kind) if kind.is_in_steel() => at_m.len().to_string(),
            _ => format!("{}, embedded {embedment}", at_m.len()),
        };
        figure_row(ui, palette, "anchors", &words, "Effective embedment, from the surface of the concrete.");
    }
    let bearing = match parts.base.bearing {
        Bearing::OnConcrete => String::new(),
        Bearing::OnGrout { thickness_m, strength_pa } => {
            format!("grout {}, {}", quantity::length(thickness_m, units), quantity::stress(strength_pa, units))
        }
        Bearing::OnLevelingNuts { gap_m, .. } => {
            format!("leveling nuts, gap {}", quantity::length(gap_m, units))
        }
    };
    if !bearing.is_empty() {
        figure_row(ui, palette, "plate sits on", &bearing, "");
    }
}

fn governing(ui: &mut Ui, sight: &Sight<'_>, base: &BaseAssessment, of: Fixed, unit: &ResolvedUnit) {
    let palette = sight.look.palette;
    let name = match of {
        Fixed::Base => "utilization of the base",
        Fixed::Foot => "utilization of the foot",
    };
    let Some(used) = base.worst(of) else {
        let text = word_row(ui, palette, name, "not checked", palette.unchecked);
        text.on_hover_text("Nothing could be computed: see below what is missing.");
        if of == Fixed::Base && matches!(unit.base.kind, BaseKind::OnSteel) {
            soft(ui, sight, "Its actions on the steel stand under reactions.");
        }
        return;
    };
    let share = used.share().unwrap_or(f64::INFINITY);
    let all = base.not_checked().all(|(used, _)| used.of != of);
    let used_words = quantity::utilization(share);
    let words = if all || !share.is_finite() { used_words } else { format!("{used_words}, in part") };
    let ink = match (share > 1.0, all) {
        (true, _) => palette.blocking,
        (false, false) => palette.unchecked,
        (false, true) => palette.ink,
    };
    let hint = "The largest of all that was computed; 100 % is the limit. In part: not all could be checked.";
    word_row(ui, palette, name, &words, ink).on_hover_text(hint);
    let why = used.state.as_ref().map(|state| format!(" · {}", cause(sight, state, sight.look.units)));
    soft(ui, sight, format!("Governs: {}{}", used.look.words(), why.unwrap_or_default()));
}

/// Combination, slew and the anchor pulled hardest.
pub(super) fn cause(sight: &Sight<'_>, state: &PlateState, units: quantity::UnitSystem) -> String {
    let name = sight.plan.basis.combination_name(state.combination);
    let pulled = state.tension_n.iter().copied().enumerate().reduce(|a, b| if b.1 > a.1 { b } else { a });
    let pulled = match pulled {
        Some((index, pull_n)) if pull_n > 0.0 => {
            format!("anchor {} pulled hardest: {}", index + 1, quantity::force(pull_n, units))
        }
        _ => "no anchor pulled".to_owned(),
    };
    format!("{name}, slew {}, {pulled}", quantity::angle(state.slew_rad))
}

/// Distances, thickness, what is sustained, default strengths.
fn surroundings(ui: &mut Ui, sight: &Sight<'_>, base: &BaseAssessment, unit: &ResolvedUnit) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    if let Some(edge) = base.edges.first() {
        let hint = "From the nearest anchor to the nearest edge of the concrete.";
        figure_row(ui, palette, "nearest edge", &quantity::length(edge.distance_m, units), hint);
    } else if !matches!(unit.base.kind, BaseKind::OnSteel | BaseKind::CastInSleeve { .. } | BaseKind::WallSocket { .. })
    {
        figure_row(ui, palette, "nearest edge", "none near", "No edge lies so near that the codes ask for it.");
    }
    if let Some(thickness_m) = base.thickness_m {
        figure_row(ui, palette, "concrete under it", &quantity::length(thickness_m, units), "Thickness at the base.");
    }
    if let Some(share) = base.sustained_share {
        let hint = "Share of the anchors' tension that is there all the time.";
        figure_row(ui, palette, "sustained", &quantity::share(share), hint);
    }
    if base.bond_is_default {
        soft(ui, sight, "Bond strengths are the design code's defaults and no product's.");
    }
}

/// What test is due, in the words of the rule.
fn test(ui: &mut Ui, sight: &Sight<'_>, unit: &UnitAssessment) {
    let check = unit.checks.iter().find(|check| check.code == Code::ProofLoad);
    if let Some(words) = check.map(test_words) {
        soft(ui, sight, format!("Test: {words}"));
    }
}

/// What a check of tests tells.
pub(super) fn test_words(check: &Check) -> String {
    match &check.outcome {
        Outcome::NotApplicable(told) => told.clone(),
        Outcome::NotChecked(what) if check.detail.is_empty() => format!("not known; missing: {what}"),
        Outcome::NotChecked(what) => format!("{}; not checked, missing: {what}", check.detail),
        Outcome::Meets | Outcome::Fails(_) => check.detail.clone(),
    }
}

/// Actions that reach the structure elsewhere, for the structural engineer.
fn handed_on(ui: &mut Ui, sight: &Sight<'_>, all: &[HandedOn]) {
    let (palette, units) = (sight.look.palette, sight.look.units);
    for handed in all {
        let name = sight.plan.basis.combination_name(handed.combination);
        ui.add_space(4.0);
        ui.label(RichText::new(format!("Handed on: {}", handed.at)).color(palette.ink));
        soft(ui, sight, format!("For the structural engineer; {name}, with the largest moment there."));
        let [fx, fy, fz, mx, my, mz] = handed.action;
        for (symbol, value) in [("Fx", fx), ("Fy", fy), ("Fz", fz)] {
            figure_row(ui, palette, symbol, &quantity::force(value, units), "");
        }
        for (symbol, value) in [("Mx", mx), ("My", my), ("Mz", mz)] {
            figure_row(ui, palette, symbol, &quantity::moment(value, units), "");
        }
    }
}
