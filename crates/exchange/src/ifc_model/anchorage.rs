//! What base, fixing and concrete bear, as properties: how it came out, what governs, and every use that was looked at.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::assess::anchorage::{BaseAssessment, BaseState, Used};
use gantline_plan::document::Plan;
use gantline_plan::quantity::Kind;

use super::properties::{Property, count, figure, words};

/// The properties; of a base that was not assessed it is said that it was not checked.
pub fn properties(plan: &Plan, unit: &UnitAssessment) -> Vec<Property> {
    let Some(base) = unit.base.as_deref() else {
        return words("State", BaseState::NotChecked.words()).into_iter().collect();
    };
    let mut all = vec![words("State", base.state().words())];
    all.push(base.utilization().and_then(|share| figure("Largest use", Kind::Share, share)));
    all.extend(governing(plan, base));
    all.push(Some(count("Looks that were not checked", base.not_checked().count())));
    all.push(base.edges.first().and_then(|edge| figure("Nearest edge", Kind::Length, edge.distance_m)));
    all.push(base.thickness_m.and_then(|thickness_m| figure("Concrete thickness", Kind::Length, thickness_m)));
    all.push(base.sustained_share.and_then(|share| figure("Sustained share of tension", Kind::Share, share)));
    all.push(
        base.bond_is_default.then(|| words("Bond strengths", "defaults of the design code, no product's")).flatten(),
    );
    all.extend(base.uses.iter().map(|used| {
        let name = format!("Use, {}", used.named());
        match &used.outcome {
            Used::Share(share) => figure(name, Kind::Share, *share),
            Used::NotChecked(what) => words(&name, format!("not checked: {what}")),
            Used::NotApplicable(_) => None,
        }
    }));
    all.into_iter().flatten().collect()
}

fn governing(plan: &Plan, base: &BaseAssessment) -> [Option<Property>; 3] {
    let used = base.governing();
    let state = used.and_then(|used| used.state.as_deref());
    [
        used.and_then(|used| words("What governs", used.named())),
        state.and_then(|state| words("Combination that governs", plan.basis.combination_name(state.combination))),
        state.and_then(|state| figure("Slew that governs", Kind::Angle, state.slew_rad)),
    ]
}
