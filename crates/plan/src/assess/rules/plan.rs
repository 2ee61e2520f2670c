//! The plan as a whole: its basis, its tags, and what is left to others.

use super::meets_or;
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::basis::MemberCode;
use crate::document::{Plan, ThingId, tag};
use crate::quantity::Kind;

/// What this program does not look at; each is listed on every plan, so that nobody takes silence for a pass.
const LEFT_OPEN: [&str; 5] =
    ["fatigue", "vortex shedding of masts left standing", "earthquake", "corrosion between unlike metals", "fire"];

/// Checks of the plan as a whole.
pub fn checks(plan: &Plan) -> Vec<Check> {
    let mut checks = vec![cone_holds_reach(plan), basis_confirmed(plan), code_matches(plan)];
    checks.extend(tags(plan));
    checks.extend(LEFT_OPEN.iter().map(|effect| {
        let mut check = Check::new(
            Code::LeftOpen,
            ThingId::Plan,
            Outcome::NotChecked(format!("{effect}: not looked at by this program")),
        );
        (*effect).clone_into(&mut check.detail);
        check
    }));
    checks
}

/// The load cone must hold the angle of work plus the largest lean square to the facade.
fn cone_holds_reach(plan: &Plan) -> Check {
    let cone = &plan.basis.cone;
    let lean = cone.lean.as_ref().map_or(0.0, |lean| lean.inward_rad.value.max(lean.outward_rad.value));
    let needed = plan.basis.rules.reach.angle_rad.value + lean;
    let has = cone.half_angle_rad.value;
    let holds = has >= needed - 1e-9;
    let mut check = Check::new(Code::LoadConeHoldsReach, ThingId::Plan, meets_or(holds, Severity::Blocking));
    check.measured = Some(Amount { kind: Kind::Angle, value: has });
    check.limit = Some(Limit {
        amount: Amount { kind: Kind::Angle, value: needed },
        is_least: true,
        source: "angle of work and lean of this basis".to_owned(),
    });
    if !holds {
        "Widen the load cone, or work less far to the side.".clone_into(&mut check.way_out);
    }
    check
}

/// Regime, loads, factors and limits: as long as one of them stands as a default, nobody stands behind the basis.
fn basis_confirmed(plan: &Plan) -> Check {
    let open = plan.basis.unconfirmed();
    let mut check = Check::new(Code::BasisConfirmed, ThingId::Plan, meets_or(open == 0, Severity::Caution));
    check.detail.clone_from(&plan.basis.name);
    if open > 0 {
        let values = if open == 1 { "value is a default" } else { "values are defaults" };
        check.detail = format!("{}: {open} {values}", plan.basis.name);
        "Someone competent reads the basis and confirms or changes it.".clone_into(&mut check.way_out);
    }
    check
}

fn code_matches(plan: &Plan) -> Check {
    let Some(expected) = plan.basis.goes_with else {
        let why = "the basis names no family of resistance factors".to_owned();
        return Check::new(Code::CodeMatchesBasis, ThingId::Plan, Outcome::NotApplicable(why));
    };
    let holds = expected == plan.code.members;
    let mut check = Check::new(Code::CodeMatchesBasis, ThingId::Plan, meets_or(holds, Severity::Caution));
    if !holds {
        let name = |code: MemberCode| match code {
            MemberCode::Eurocode => "Eurocode",
            MemberCode::Aisc360 => "AISC 360",
        };
        check.detail = format!("loads go with {}, members are judged by {}", name(expected), name(plan.code.members));
        "Choose a design code of the same family as the load factors.".clone_into(&mut check.way_out);
    }
    check
}

fn tags(plan: &Plan) -> Vec<Check> {
    let twice = tag::duplicates(&plan.placements);
    if twice.is_empty() {
        return vec![Check::new(Code::TagIsUnique, ThingId::Plan, Outcome::Meets)];
    }
    twice
        .into_iter()
        .map(|(tag, ids)| {
            let mut check = Check::new(Code::TagIsUnique, ThingId::Plan, Outcome::Fails(Severity::Caution));
            check.about = ids.into_iter().map(ThingId::Placement).collect();
            check.detail = format!("{tag} stands on {} units", check.about.len());
            "Give each unit a tag of its own.".clone_into(&mut check.way_out);
            check
        })
        .collect()
}
