//! Whether arm and brace pass what is near with room. One check for each pair that was looked at; where nothing is near,
//! one that says so.

use super::{UnitContext, meets_or};
use crate::assess::assessment::{Against, Over, PairClearance, Part, Way};
use crate::assess::check::{Amount, Check, Limit, Outcome, Place, Severity};
use crate::assess::clearance::Required;
use crate::assess::code::Code;
use crate::assess::way_out::{blocked_slews, has_way_out};
use crate::document::ThingId;
use crate::geometry::prism::Prism;

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
    let Some((_, unit)) = context.known() else {
        let missing = || Outcome::NotChecked("place or parts of the unit".to_owned());
        return vec![
            context.check(Code::ArmClearsParapet, missing()),
            context.check(Code::BraceClearsParapet, missing()),
        ];
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
    checks.push(way_out(context));
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

/// Looked at closely only where something is hit on the rest of the turn.
fn way_out(context: &UnitContext<'_>) -> Check {
    let unit = context.unit;
    if unit.serving.is_empty() {
        return context.check(Code::WayOutFromInboard, Outcome::NotApplicable("the unit serves nothing".to_owned()));
    }
    let turns = unit.swept.iter().any(|part| part.turned_rad.is_some());
    let hit = unit.clearances.iter().any(|pair| pair.conflict && pair.part != Part::FootStrut);
    let blocked = if turns && hit {
        let clear = &context.plan.basis.rules.clear;
        let Ok(required) = Required::new(clear.height_m.value, clear.around_m.value) else {
            return context.check(Code::WayOutFromInboard, Outcome::NotChecked("clearances of the basis".to_owned()));
        };
        let things: Vec<ThingId> =
            unit.clearances.iter().filter(|pair| pair.conflict).map(|pair| thing_of(pair.against)).collect();
        let prisms: Vec<&Prism> = context
            .surroundings
            .solids
            .iter()
            .filter(|solid| {
                things.contains(&match solid.volume.of {
                    crate::geometry::mass::VolumeOf::Parapet(edge) => ThingId::Edge(edge),
                    crate::geometry::mass::VolumeOf::Obstacle(id) => ThingId::Obstacle(id),
                    crate::geometry::mass::VolumeOf::Roof(id) => ThingId::Roof(id),
                })
            })
            .map(|solid| &solid.prism)
            .collect();
        blocked_slews(&unit.swept, &prisms, &required)
    } else {
        crate::geometry::turns::Turns::none()
    };
    let holds = has_way_out(&unit.loaded, &unit.serving, &blocked);
    let mut check = context.check(Code::WayOutFromInboard, meets_or(holds, Severity::Blocking));
    if !holds {
        "No slew leads from inboard to where the unit serves: move it, or widen its slew stops."
            .clone_into(&mut check.way_out);
    }
    check
}
