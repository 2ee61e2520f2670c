//! What keeps a unit together: brace, joints, slew hold.

use gantline_mechanics::retention::RetentionCheck;
use gantline_mechanics::slew_hold::{SlewCheck, SlewHoldRating};

use super::strength::{FULL_USE, NO_DESIGN, force};
use super::{UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::reactions::{JointUse, Reactions};
use crate::catalog::{BraceAction, ResolvedUnit, Retention, SlewHold, to_mechanics};
use crate::quantity::Kind;

/// Checks of what keeps a unit together.
pub(super) fn checks(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Vec<Check> {
    let mut checks = vec![brace_stays_pulled(context, unit, reactions)];
    checks.extend(joints(context, unit, reactions));
    checks.push(slew_hold(context, unit, reactions));
    checks
}

fn brace_stays_pulled(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    let pulls_only = unit.brace.as_ref().is_some_and(|brace| brace.action == BraceAction::PullOnly);
    if !pulls_only {
        let why = "no brace that only pulls".to_owned();
        return context.check(Code::BraceStaysPulled, Outcome::NotApplicable(why));
    }
    let Some(slack) = &reactions.slack else {
        let computed = reactions.combinations.iter().any(|result| !result.sets.is_empty());
        return if computed {
            context.check(Code::BraceStaysPulled, Outcome::Meets)
        } else {
            context.check(Code::BraceStaysPulled, Outcome::NotChecked("any combination that was computed".to_owned()))
        };
    };
    let severity = if slack.is_mechanism { Severity::Blocking } else { Severity::Caution };
    let mut check = context.check(Code::BraceStaysPulled, Outcome::Fails(severity));
    check.detail.clone_from(&slack.said);
    "Choose a brace that can also push, or narrow the load cone where its source allows."
        .clone_into(&mut check.way_out);
    check
}

fn joints(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Vec<Check> {
    let of_brace = unit.brace.iter().flat_map(|_| ["upper pin of the brace", "lower pin of the brace"]);
    let looked_at = |name: &str| reactions.joints.iter().any(|joint| joint.joint == name);
    let missed = ["arm on mast", "mast in socket"].into_iter().chain(of_brace).filter(|name| !looked_at(name));
    let missed = missed.map(|name| {
        let mut check = context.check(Code::JointRetention, Outcome::NotChecked(NO_DESIGN.to_owned()));
        name.clone_into(&mut check.detail);
        check
    });
    reactions.joints.iter().map(|joint| joint_check(context, joint)).chain(missed).collect()
}

fn joint_check(context: &UnitContext<'_>, joint: &JointUse) -> Check {
    let verdict = to_mechanics::held(joint.held_by).check(joint.uplift_n);
    let (outcome, way_out) = match verdict {
        RetentionCheck::StaysPressed => (Outcome::Meets, ""),
        RetentionCheck::ComesApart { .. } => {
            (Outcome::Fails(Severity::Blocking), "The joint lifts and nothing holds it: it needs a pin or a lock.")
        }
        RetentionCheck::Held { utilization } => {
            (meets_or(utilization <= FULL_USE, Severity::Blocking), "The joint needs a stronger pin or lock.")
        }
        RetentionCheck::NotChecked(_) => {
            (Outcome::NotChecked(format!("resistance of what holds: {}", joint.joint)), "")
        }
    };
    let mut check = context.check(Code::JointRetention, outcome);
    joint.joint.clone_into(&mut check.detail);
    check.measured = Some(force(joint.uplift_n));
    check.limit = resistance_n(joint.held_by).map(|resistance_n| Limit {
        amount: force(resistance_n),
        is_least: false,
        source: "datum of the part".to_owned(),
    });
    if check.is_finding() {
        way_out.clone_into(&mut check.way_out);
    }
    check
}

/// What keeps a joint together against uplift, N: nothing and weight alone keep nothing.
const fn resistance_n(held_by: Retention) -> Option<f64> {
    match held_by {
        Retention::Nothing | Retention::Gravity => Some(0.0),
        Retention::Pin { resistance_n } | Retention::Locked { resistance_n } => resistance_n,
    }
}

fn slew_hold(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    let Some(twist_nm) = reactions.twist_nm else {
        let missing = Outcome::NotChecked("a combination at the design level".to_owned());
        return context.check(Code::SlewHold, missing);
    };
    let (rating, rated_nm) = match unit.base.slew_hold {
        SlewHold::Free => (SlewHoldRating::Free, None),
        SlewHold::Detents { rated_torque_nm, .. } => {
            (SlewHoldRating::Detents { torque_nm: Some(rated_torque_nm) }, Some(rated_torque_nm))
        }
        SlewHold::Clamp { rated_torque_nm } => {
            (SlewHoldRating::Clamp { torque_nm: Some(rated_torque_nm) }, Some(rated_torque_nm))
        }
    };
    let outcome = match rating.check(twist_nm) {
        SlewCheck::Follows => Outcome::Meets,
        SlewCheck::Held { utilization } => meets_or(utilization <= FULL_USE, Severity::Caution),
        SlewCheck::TorqueOnFreeSlew { .. } => Outcome::Fails(Severity::Caution),
        SlewCheck::NotChecked => Outcome::NotChecked("rated torque of the slew hold".to_owned()),
    };
    let mut check = context.check(Code::SlewHold, outcome);
    check.measured = Some(Amount { kind: Kind::Moment, value: twist_nm });
    check.limit = rated_nm.map(|value| Limit {
        amount: Amount { kind: Kind::Moment, value },
        is_least: false,
        source: "rated torque of the base's slew hold".to_owned(),
    });
    if check.is_finding() {
        "The arm would be turned by the rope: choose a base with a stronger slew hold.".clone_into(&mut check.way_out);
    }
    check
}
