//! Whether arm and brace pass what is near with room. One check for each pair that was looked at; where nothing is near,
//! one that says so.

use super::{PLACE_OR_PARTS, UnitContext, meets_or};
use crate::assess::assessment::{Against, Over, PairClearance, Part, Way};
use crate::assess::check::{Amount, Check, Limit, Outcome, Place, Severity};
use crate::assess::clear_zones::neighbor_prisms;
use crate::assess::clearance::Required;
use crate::assess::code::Code;
use crate::assess::way_out::{blocked_slews, has_way_out};
use crate::document::ThingId;
use crate::geometry::mass::VolumeOf;
use crate::geometry::prism::Prism;
use crate::geometry::turns::Turns;

const CODES: [[Code; 4]; 2] = [
    [Code::ArmClearsParapet, Code::ArmClearsObstacle, Code::ArmClearsHigherRoof, Code::ArmClearsUnit],
    [Code::BraceClearsParapet, Code::BraceClearsObstacle, Code::BraceClearsHigherRoof, Code::BraceClearsUnit],
];

fn code_of(pair: &PairClearance) -> Code {
    let codes = CODES[usize::from(pair.part != Part::Arm)];
    match pair.against {
        Against::Parapet(_) => codes[0],
        Against::Obstacle(_) => codes[1],
        Against::HigherRoof(_) => codes[2],
        Against::Base(_) | Against::StandingUnit(_) => codes[3],
    }
}

fn thing_of(against: Against) -> ThingId {
    match against {
        Against::Parapet(edge) => ThingId::Edge(edge),
        Against::Obstacle(id) => ThingId::Obstacle(id),
        Against::HigherRoof(id) => ThingId::Roof(id),
        Against::Base(id) | Against::StandingUnit(id) => ThingId::Placement(id),
    }
}

/// Checks of every pair.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let all: Vec<Code> = CODES.iter().flatten().copied().chain([Code::WayOutFromInboard]).collect();
    let Some((_, unit)) = context.known() else { return context.not_checked(&all, PLACE_OR_PARTS) };
    let clear = &context.plan.basis.rules.clear;
    let Ok(required) = Required::new(clear.height_m.value, clear.around_m.value) else {
        return context.not_checked(&all, "usable clearances in the basis");
    };
    let mut checks: Vec<Check> = context.unit.clearances.iter().map(|pair| pair_check(context, pair)).collect();
    for (row, codes) in CODES.iter().enumerate() {
        for &code in codes {
            if checks.iter().any(|check| check.code == code) {
                continue;
            }
            let why = if row == 1 && unit.brace.is_none() { "no brace" } else { "nothing of the kind is near" };
            checks.push(context.check(code, Outcome::NotApplicable(why.to_owned())));
        }
    }
    checks.push(way_out(context, &required));
    checks
}

fn pair_check(context: &UnitContext<'_>, pair: &PairClearance) -> Check {
    let severity = match pair.over {
        Over::Serving => Severity::Blocking,
        Over::Rest => Severity::Caution,
    };
    let rules = &context.plan.basis.rules.clear;
    let source = match pair.way {
        Way::Height => &rules.height_m.source,
        Way::Around => &rules.around_m.source,
    };
    let mut check = context.check(code_of(pair), meets_or(!pair.conflict, severity));
    check.about.push(thing_of(pair.against));
    check.at = Some(Place { at: pair.at, level_m: Some(pair.level_m) });
    check.measured = Some(Amount::length(pair.clear_m));
    check.limit = Some(Limit { amount: Amount::length(pair.limit_m), is_least: true, source: source.clone() });
    let over = match pair.over {
        Over::Serving => "where it serves",
        Over::Rest => "on the rest of the turn",
    };
    let way = match pair.way {
        Way::Height => "in height",
        Way::Around => "beside it",
    };
    check.detail = format!("{} {over}, {way}", pair.part.word());
    if pair.conflict {
        check.way_out = way_out_of(pair);
    }
    check
}

fn way_out_of(pair: &PairClearance) -> String {
    let short_m = pair.limit_m - pair.clear_m;
    match (pair.over, pair.against) {
        (Over::Rest, _) => "Can't be slewed past there: set slew stops, or move one of the two.".to_owned(),
        (Over::Serving, Against::Parapet(_)) => {
            format!(
                "{} {short_m:.3} m too low there: a lower parapet, a higher mast, or another brace.",
                pair.part.word()
            )
        }
        (Over::Serving, Against::Obstacle(_) | Against::HigherRoof(_)) => {
            format!("{short_m:.3} m short: move the unit, or choose another mast, arm or brace.")
        }
        (Over::Serving, Against::Base(_) | Against::StandingUnit(_)) => {
            format!("{short_m:.3} m short: move one of the two units.")
        }
    }
}

/// Looked at closely only where something is hit.
fn way_out(context: &UnitContext<'_>, required: &Required) -> Check {
    let unit = context.unit;
    if unit.serving.is_empty() {
        return context.check(Code::WayOutFromInboard, Outcome::NotApplicable("the unit serves nothing".to_owned()));
    }
    let turns = unit.swept.iter().any(|part| part.turned_rad.is_some());
    let hit = unit.clearances.iter().filter(|pair| pair.conflict && pair.part != Part::FootStrut);
    let against: Vec<Against> = hit.map(|pair| pair.against).collect();
    let blocked = if turns && !against.is_empty() {
        let prisms = hit_prisms(context, &against);
        blocked_slews(&unit.swept, &prisms.iter().collect::<Vec<_>>(), required)
    } else {
        Turns::none()
    };
    let holds = has_way_out(&unit.loaded, &unit.serving, &blocked);
    let mut check = context.check(Code::WayOutFromInboard, meets_or(holds, Severity::Blocking));
    if !holds {
        check.about.extend(against.iter().map(|&against| thing_of(against)));
        check.about.sort_unstable_by_key(|&thing| (thing != context.thing(), thing));
        check.about.dedup();
        "No slew leads from inboard to where the unit serves: move it, or widen its slew stops."
            .clone_into(&mut check.way_out);
    }
    check
}

/// The prisms of things that some part runs into: of the building, and of other units.
fn hit_prisms(context: &UnitContext<'_>, against: &[Against]) -> Vec<Prism> {
    let solids = context.surroundings.solids.iter().filter(|solid| {
        against.contains(&match solid.volume.of {
            VolumeOf::Parapet(edge) => Against::Parapet(edge),
            VolumeOf::Obstacle(id) => Against::Obstacle(id),
            VolumeOf::Roof(id) => Against::HigherRoof(id),
        })
    });
    let mut prisms: Vec<Prism> = solids.map(|solid| solid.prism.clone()).collect();
    if let Some((frame, unit)) = context.known() {
        let rule = &context.plan.basis.rules.neighbors;
        let of_units = context.neighbors.iter().flat_map(|n| neighbor_prisms(frame, unit.arm.outreach_m, n, rule));
        prisms.extend(of_units.filter(|(of, _)| against.contains(of)).map(|(_, prism)| prism));
    }
    prisms
}
