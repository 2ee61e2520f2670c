//! Whether the unit holds: combinations, members, stiffness; with what is declared for it and what keeps it together.

use super::{UnitContext, at_most, declared, joints, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::reactions::{MemberUse, Reactions, Unavailable};
use crate::catalog::ResolvedUnit;
use crate::quantity::Kind;

/// Everything that is looked at here.
const OF_STRENGTH: [Code; 11] = [
    Code::CombinationComputed,
    Code::MemberUtilization,
    Code::RatingCoversLoad,
    Code::RatingSupported,
    Code::BraceStaysPulled,
    Code::JointRetention,
    Code::SlewHold,
    Code::EyeHoldsTether,
    Code::SecondOrder,
    Code::TipDeflection,
    Code::MastInSocket,
];

/// What is missing where nothing could be computed at the design level.
pub(super) const NO_DESIGN: &str = "a combination at the design level that could be computed";

/// Demand over resistance that is still held.
pub(super) const FULL_USE: f64 = 1.0;

/// Checks of strength and stiffness.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let (Ok(unit), Some(reactions)) = (&context.unit.resolved, &context.unit.reactions) else {
        return context.not_checked(&OF_STRENGTH, "parts of the unit");
    };
    let mut checks = combinations(context, reactions);
    checks.extend(members(context, unit, reactions));
    checks.extend(declared::checks(context, unit, reactions));
    checks.extend(joints::checks(context, unit, reactions));
    checks.push(second_order(context, reactions));
    checks.push(deflection(context, unit, reactions));
    checks.extend(socket(context, reactions));
    checks
}

pub(super) fn share(value: f64) -> Amount {
    Amount::share(value)
}

pub(super) fn force(value: f64) -> Amount {
    Amount { kind: Kind::Force, value }
}

pub(super) fn full_use(source: &str) -> Limit {
    Limit { amount: share(FULL_USE), is_least: false, source: source.to_owned() }
}

fn combinations(context: &UnitContext<'_>, reactions: &Reactions) -> Vec<Check> {
    if reactions.combinations.is_empty() {
        return context.not_checked(&[Code::CombinationComputed], "a combination in the basis");
    }
    let made = reactions.combinations.iter().map(|result| {
        let outcome = match &result.unavailable {
            None => Outcome::Meets,
            Some(Unavailable::Missing(what)) => Outcome::NotChecked(what.clone()),
            Some(Unavailable::DoesNotApply(why)) => Outcome::NotApplicable(why.clone()),
        };
        let mut check = context.check(Code::CombinationComputed, outcome);
        check.detail.clone_from(&result.name);
        check
    });
    made.collect()
}

fn members(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Vec<Check> {
    let brace = unit.brace.as_ref().map(|_| "brace");
    let looked_at = |name: &str| reactions.members.iter().any(|member| member.member == name);
    let missed = ["mast", "arm"].into_iter().chain(brace).filter(|name| !looked_at(name)).map(|name| {
        let mut check = context.check(Code::MemberUtilization, Outcome::NotChecked(NO_DESIGN.to_owned()));
        name.clone_into(&mut check.detail);
        check
    });
    let made = reactions.members.iter().map(|member| member_check(context, reactions, member));
    made.chain(missed).collect()
}

fn member_check(context: &UnitContext<'_>, reactions: &Reactions, member: &MemberUse) -> Check {
    let outcome = match member.utilization {
        None => Outcome::NotChecked(member.clause.clone()),
        Some(utilization) => meets_or(utilization <= FULL_USE, Severity::Blocking),
    };
    let mut check = context.check(Code::MemberUtilization, outcome);
    let combination = reactions.combination_name(member.combination);
    check.detail = format!("{}, {}, {combination}", member.member, member.mode);
    if let Some(utilization) = member.utilization {
        check.measured = Some(share(utilization));
        check.limit = Some(full_use(&member.clause));
        if utilization > FULL_USE {
            "Choose a shorter arm, a lower mast, another brace or a stronger part.".clone_into(&mut check.way_out);
        }
    }
    check
}

/// From 10 on first-order analysis is enough; from 3 on moments were amplified; below that nothing was judged.
fn second_order(context: &UnitContext<'_>, reactions: &Reactions) -> Check {
    let Some(alpha_cr) = reactions.alpha_cr else {
        return context.check(Code::SecondOrder, Outcome::NotChecked("the critical load factor".to_owned()));
    };
    let outcome = if alpha_cr >= 10.0 {
        Outcome::Meets
    } else if alpha_cr >= 3.0 {
        Outcome::Fails(Severity::Note)
    } else {
        Outcome::Fails(Severity::Blocking)
    };
    let mut check = context.check(Code::SecondOrder, outcome);
    check.measured = Some(Amount { kind: Kind::Number, value: alpha_cr });
    check.limit = Some(Limit {
        amount: Amount { kind: Kind::Number, value: 10.0 },
        is_least: true,
        source: "EN 1993-1-1 5.2.1(3)".to_owned(),
    });
    if alpha_cr < 3.0 {
        "Too soft: choose a shorter or stiffer unit.".clone_into(&mut check.way_out);
    } else if alpha_cr < 10.0 {
        "Moments were amplified by 1/(1 − 1/α).".clone_into(&mut check.way_out);
    }
    check
}

fn deflection(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    let Some(tip_m) = reactions.tip_deflection_m else {
        let missing = Outcome::NotChecked("a rope combination at the service level".to_owned());
        return context.check(Code::TipDeflection, missing);
    };
    let share_limit = &context.plan.basis.rules.deflection_share;
    let limit_m = share_limit.value * unit.arm.outreach_m;
    let mut check = context.check(Code::TipDeflection, meets_or(tip_m <= limit_m, Severity::Note));
    check.measured = Some(Amount::length(tip_m));
    check.limit = Some(Limit { amount: Amount::length(limit_m), ..at_most(share_limit, Amount::length) });
    if tip_m > limit_m {
        "Choose a stiffer mast or a shorter arm, or accept the deflection.".clone_into(&mut check.way_out);
    }
    check
}

fn socket(context: &UnitContext<'_>, reactions: &Reactions) -> Vec<Check> {
    if reactions.socket.is_empty() {
        return context.not_checked(&[Code::MastInSocket], NO_DESIGN);
    }
    let made = reactions.socket.iter().map(|socket| {
        let outcome = match socket.utilization {
            Some(utilization) => meets_or(utilization <= FULL_USE, Severity::Blocking),
            None => Outcome::NotChecked(socket.clause.clone()),
        };
        let mut check = context.check(Code::MastInSocket, outcome);
        check.detail.clone_from(&socket.what);
        check.measured = socket.utilization.map(share);
        check.limit = socket.utilization.map(|_| full_use(&socket.clause));
        if socket.utilization.is_some_and(|utilization| utilization > FULL_USE) {
            "Choose a base with a deeper socket, or a mast with a thicker wall.".clone_into(&mut check.way_out);
        }
        check
    });
    made.collect()
}
