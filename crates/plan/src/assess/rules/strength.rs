//! Whether the unit holds: combinations, members, joints, slew hold, eye, stiffness, and what is declared for it.

use gantline_mechanics::retention::RetentionCheck;
use gantline_mechanics::slew_hold::{SlewCheck, SlewHoldRating};

use super::{UnitContext, at_most, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::reactions::{Reactions, Unavailable};
use crate::basis::{CaseLoad, Tension};
use crate::catalog::{BraceAction, ResolvedUnit, SlewHold, to_mechanics};
use crate::quantity::Kind;

/// Demand over resistance that is still held.
const FULL_USE: f64 = 1.0;

/// Checks of strength and stiffness.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let (Ok(unit), Some(reactions)) = (&context.unit.resolved, &context.unit.reactions) else {
        let missing = || Outcome::NotChecked("parts of the unit".to_owned());
        return [Code::CombinationComputed, Code::MemberUtilization, Code::JointRetention, Code::SlewHold]
            .into_iter()
            .map(|code| context.check(code, missing()))
            .collect();
    };
    let mut checks = combinations(context, reactions);
    checks.extend(members(context, reactions));
    checks.push(rating_covers_load(context, unit));
    checks.push(rating_supported(context, unit, reactions));
    checks.push(brace_stays_pulled(context, unit, reactions));
    checks.extend(joints(context, reactions));
    checks.push(slew_hold(context, unit, reactions));
    checks.push(eye(context, unit));
    checks.push(second_order(context, reactions));
    checks.push(deflection(context, unit, reactions));
    checks.extend(socket(context, reactions));
    checks
}

fn share(value: f64) -> Amount {
    Amount::share(value)
}

fn force(value: f64) -> Amount {
    Amount { kind: Kind::Force, value }
}

fn full_use(source: &str) -> Limit {
    Limit { amount: share(FULL_USE), is_least: false, source: source.to_owned() }
}

fn combinations(context: &UnitContext<'_>, reactions: &Reactions) -> Vec<Check> {
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

fn members(context: &UnitContext<'_>, reactions: &Reactions) -> Vec<Check> {
    let made = reactions.members.iter().map(|member| {
        let outcome = match member.utilization {
            None => Outcome::NotChecked(member.clause.clone()),
            Some(utilization) => meets_or(utilization <= FULL_USE, Severity::Blocking),
        };
        let mut check = context.check(Code::MemberUtilization, outcome);
        let combination = reactions.combinations.get(member.combination).map_or("", |result| result.name.as_str());
        check.detail = format!("{}, {}, {combination}", member.member, member.mode);
        if let Some(utilization) = member.utilization {
            check.measured = Some(share(utilization));
            check.limit = Some(full_use(&member.clause));
            if utilization > FULL_USE {
                "Choose a shorter arm, a lower mast, another brace or a stronger part.".clone_into(&mut check.way_out);
            }
        }
        check
    });
    made.collect()
}

/// The largest pull of persons as they are, without jerks and load factors, against the declared rating.
fn rating_covers_load(context: &UnitContext<'_>, unit: &ResolvedUnit) -> Check {
    let Some(rating) = &unit.rating else {
        let missing = Outcome::NotChecked("a declared rating of this combination".to_owned());
        return context.check(Code::RatingCoversLoad, missing);
    };
    let masses = context.plan.basis.cases.values().filter_map(|case| match &case.load {
        CaseLoad::Rope { persons, tension: Tension::Service { mass_kg, .. } } if *persons <= rating.persons => {
            Some(mass_kg.value * crate::basis::load_case::GRAVITY_M_S2)
        }
        _ => None,
    });
    let Some(largest_n) = masses.reduce(f64::max) else {
        let missing = Outcome::NotChecked("a load of persons as they are, in the basis".to_owned());
        return context.check(Code::RatingCoversLoad, missing);
    };
    let holds = largest_n <= rating.rated_n;
    let mut check = context.check(Code::RatingCoversLoad, meets_or(holds, Severity::Blocking));
    check.measured = Some(force(largest_n));
    check.limit = Some(Limit {
        amount: force(rating.rated_n),
        is_least: false,
        source: format!("declared by {}", rating.declared_by),
    });
    check.detail =
        format!("rating for {} on the rope", if rating.persons == 1 { "one person" } else { "several persons" });
    if !holds {
        "Choose a combination with a higher rating, or reduce the load.".clone_into(&mut check.way_out);
    }
    check
}

/// The calculated utilization at the declared rating, with the basis' own factors.
fn rating_supported(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    if unit.rating.is_none() {
        return context.check(Code::RatingSupported, Outcome::NotApplicable("nothing is declared".to_owned()));
    }
    let Some(at_rating) = &reactions.at_rating else {
        let missing =
            Outcome::NotChecked("a load of persons as they are, in the basis, whose factors to use".to_owned());
        return context.check(Code::RatingSupported, missing);
    };
    let holds = at_rating.utilization <= FULL_USE;
    let outcome = if at_rating.all_checked || !holds {
        meets_or(holds, Severity::Blocking)
    } else {
        Outcome::NotChecked("some modes of failure of some members".to_owned())
    };
    let mut check = context.check(Code::RatingSupported, outcome);
    check.measured = Some(share(at_rating.utilization));
    check.limit = Some(full_use("members at the declared rating with the factors of the basis"));
    check.detail.clone_from(&at_rating.inside);
    if !holds {
        "The calculation does not support the declared rating: ask whoever declares it.".clone_into(&mut check.way_out);
    }
    check
}

fn brace_stays_pulled(context: &UnitContext<'_>, unit: &ResolvedUnit, reactions: &Reactions) -> Check {
    let pulls_only = unit.brace.as_ref().is_some_and(|brace| brace.action == BraceAction::PullOnly);
    if !pulls_only {
        let why = "no brace that only pulls".to_owned();
        return context.check(Code::BraceStaysPulled, Outcome::NotApplicable(why));
    }
    let Some(slack) = &reactions.slack else { return context.check(Code::BraceStaysPulled, Outcome::Meets) };
    let severity = if slack.is_mechanism { Severity::Blocking } else { Severity::Caution };
    let mut check = context.check(Code::BraceStaysPulled, Outcome::Fails(severity));
    check.detail.clone_from(&slack.said);
    "Choose a brace that can also push, or narrow the load cone where its source allows."
        .clone_into(&mut check.way_out);
    check
}

fn joints(context: &UnitContext<'_>, reactions: &Reactions) -> Vec<Check> {
    let made = reactions.joints.iter().map(|joint| {
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
        if check.is_finding() {
            way_out.clone_into(&mut check.way_out);
        }
        check
    });
    made.collect()
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

fn eye(context: &UnitContext<'_>, unit: &ResolvedUnit) -> Check {
    let tethers = context.plan.basis.cases.values().filter_map(|case| match &case.load {
        CaseLoad::Tether { tension: Tension::Ultimate { anchor_load_n } } => Some(anchor_load_n.value),
        CaseLoad::Tether { tension } => tension.service_n(),
        _ => None,
    });
    let (Some(load_n), Some(person_n)) = (tethers.reduce(f64::max), unit.base.eye.and_then(|eye| eye.person_n)) else {
        let why = "no person is tied to this base's eye".to_owned();
        return context.check(Code::EyeHoldsTether, Outcome::NotApplicable(why));
    };
    let holds = load_n <= person_n;
    let mut check = context.check(Code::EyeHoldsTether, meets_or(holds, Severity::Blocking));
    check.measured = Some(force(load_n));
    check.limit = Some(Limit { amount: force(person_n), is_least: false, source: "datum of the base".to_owned() });
    if !holds {
        "Tie nobody to this eye, or choose a base with a stronger one.".clone_into(&mut check.way_out);
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
