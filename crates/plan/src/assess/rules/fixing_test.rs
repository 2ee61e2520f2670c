//! Tests of fixings, and the pins of a removable socket.

use super::strength::{NO_DESIGN, force};
use super::{UnitContext, meets_or};
use crate::assess::check::{Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::reactions::{Component, Reactions, Sense};
use crate::basis::{LoadLevel, TestDuty};
use crate::catalog::{BaseKind, HoldDown};

/// Checks of tests and pins.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    vec![proof_load(context), hold_down(context)]
}

/// A proof test pulls no more than what is validated; the duty is told in words whatever comes of it.
fn proof_load(context: &UnitContext<'_>) -> Check {
    let code = Code::ProofLoad;
    let not_checked = |what: String| context.check(code, Outcome::NotChecked(what));
    let Ok(unit) = &context.unit.resolved else { return not_checked("parts of the unit".to_owned()) };
    let Some(kind) = unit.fixing_kind() else { return not_checked("how the base is fixed".to_owned()) };
    let Some(duty) = context.plan.basis.tests.get(&kind) else {
        return not_checked(format!("test of {} in the load basis", kind.words()));
    };
    let told = format!("{}: {}", kind.words(), duty.value.words());
    let TestDuty::Proof(proof) = &duty.value else {
        return context.check(code, Outcome::NotApplicable(told));
    };
    let Some(validated_n) = unit.fixing.as_ref().and_then(|fixing| fixing.validated_design_n) else {
        let mut check = not_checked("validated design load of the fixing".to_owned());
        check.detail = told;
        return check;
    };
    let holds = proof.load_n.value <= validated_n;
    let mut check = context.check(code, meets_or(holds, Severity::Caution));
    check.measured = Some(force(proof.load_n.value));
    let source = "validated design load of the fixing".to_owned();
    check.limit = Some(Limit { amount: force(validated_n), is_least: false, source });
    check.detail = told;
    if !holds {
        "Pull less in the test, or choose a fixing whose design load is validated higher."
            .clone_into(&mut check.way_out);
    }
    check
}

/// Pins of a removable socket at the design level.
fn hold_down(context: &UnitContext<'_>) -> Check {
    let code = Code::HoldDownPins;
    let not_checked = |what: &str| context.check(code, Outcome::NotChecked(what.to_owned()));
    let Ok(unit) = &context.unit.resolved else { return not_checked("parts of the unit") };
    let BaseKind::FlushPlate { hold_down, .. } = unit.base.kind else {
        return context.check(code, Outcome::NotApplicable("no removable socket".to_owned()));
    };
    let Some(resistance_n) = hold_down.resistance_n else { return not_checked("resistance of a hold-down pin") };
    let Some(pull_n) = context.unit.reactions.as_ref().and_then(|found| largest_pull_n(found, &hold_down)) else {
        return not_checked(NO_DESIGN);
    };
    let holds = pull_n <= resistance_n;
    let mut check = context.check(code, meets_or(holds, Severity::Blocking));
    check.measured = Some(force(pull_n));
    let source = "design resistance of a hold-down pin".to_owned();
    check.limit = Some(Limit { amount: force(resistance_n), is_least: false, source });
    if !holds {
        "Choose a base with more or stronger pins, or a shorter arm.".clone_into(&mut check.way_out);
    }
    check
}

/// Largest pull on a pin, N: N = 2·|M|/(k·r) + max(F_z, 0)/k.
///
/// k pins (three or more) evenly on a circle of radius r, stiff socket plate turning about the circle's middle: Σr²·cos² =
/// k·r²/2. Statics, derived here. Pressing plates put the turning point farther from the pulled pins, so that this is not
/// less than what acts. Largest M and F_z need not act together.
fn largest_pull_n(found: &Reactions, pins: &HoldDown) -> Option<f64> {
    let count = f64::from(pins.pins);
    let designed =
        found.combinations.iter().filter(|result| result.level != LoadLevel::Service && !result.sets.is_empty());
    let pulls = designed.map(|result| {
        let lifts = result.sets.iter().filter(|set| set.component == Component::Fz && set.sense == Sense::Max);
        let uplift_n = lifts.map(|set| set.value).fold(0.0, f64::max);
        2.0 * result.largest(Component::M) / (count * pins.radius_m) + uplift_n / count
    });
    pulls.reduce(f64::max)
}
