//! Names of things as people read them.

use gantline_plan::assess::{Against, Assessment, Over, PairClearance, Tally, Way};
use gantline_plan::basis::{CaseLoad, LoadBasis, Tension};
use gantline_plan::document::{Plan, ThingId};
use gantline_plan::quantity::{UnitSystem, angle, force, mass};

/// A thing's name: a unit's tag, a roof's name, an edge by its roof and number.
pub fn name(plan: &Plan, thing: ThingId) -> String {
    match thing {
        ThingId::Plan => "Plan".to_owned(),
        ThingId::Roof(id) => plan.roofs.get(&id).map_or_else(|| id.to_string(), |roof| roof.name.clone()),
        ThingId::Edge(id) => match plan.find_edge(id) {
            Some(place) => {
                let before: usize = place
                    .roof
                    .rings()
                    .take_while(|ring| !std::ptr::eq(*ring, place.ring))
                    .map(gantline_plan::document::Ring::len)
                    .sum();
                format!("{} edge {}", place.roof.name, before + place.index + 1)
            }
            None => id.to_string(),
        },
        ThingId::Obstacle(id) => {
            plan.obstacles.get(&id).map_or_else(|| id.to_string(), |obstacle| obstacle.name.clone())
        }
        ThingId::Underlay(id) => plan.underlays.get(&id).map_or_else(|| id.to_string(), |one| one.name.clone()),
        ThingId::Placement(id) => {
            plan.placements.get(&id).map_or_else(|| id.to_string(), |placement| format!("Unit {}", placement.tag))
        }
    }
}

/// What a part passes.
pub fn passed(against: Against) -> ThingId {
    match against {
        Against::Parapet(edge) => ThingId::Edge(edge),
        Against::Obstacle(id) => ThingId::Obstacle(id),
        Against::HigherRoof(id) => ThingId::Roof(id),
        Against::Base(id) | Against::StandingUnit(id) => ThingId::Placement(id),
    }
}

/// Which part passes what, and in which direction it was measured.
pub fn clearance(plan: &Plan, pair: &PairClearance) -> String {
    let thing = name(plan, passed(pair.against));
    let what = match pair.against {
        Against::Parapet(_) => format!("parapet of {thing}"),
        Against::Obstacle(_) => thing,
        Against::HigherRoof(_) => format!("wall below {thing}"),
        Against::Base(_) => format!("base of {thing}"),
        Against::StandingUnit(_) => format!("{thing} while it stands"),
    };
    let way = match pair.way {
        Way::Height => "in height",
        Way::Around => "beside",
    };
    format!("{} · {what} · {way}", pair.part.word())
}

/// Over which part of the turn a clearance was measured.
pub const fn over(over: Over) -> &'static str {
    match over {
        Over::Serving => "while it serves",
        Over::Rest => "over the rest of the turn",
    }
}

/// What findings there are about a thing, in words.
pub fn tally_of(assessment: &Assessment, thing: ThingId) -> String {
    let ThingId::Placement(id) = thing else {
        return tally(&Tally::of(assessment.findings_about(thing)));
    };
    assessment.units.get(&id).map_or_else(|| "not assessed".to_owned(), |unit| tally(&Tally::of(&unit.checks)))
}

/// How many findings of which kind.
pub fn tally(tally: &Tally) -> String {
    format!("{} blocking, {} caution, {} not checked", tally.blocking, tally.caution, tally.not_checked)
}

/// The basis as a sentence: its heaviest rope case, the load cone, the angle of work.
pub fn basis_sentence(basis: &LoadBasis, units: UnitSystem) -> String {
    let ropes = basis.cases.values().filter_map(|case| match &case.load {
        CaseLoad::Rope { persons, tension } => Some((*persons, tension)),
        CaseLoad::Tether { .. } | CaseLoad::Wind { .. } => None,
    });
    let pull =
        ropes.min_by_key(|(persons, tension)| (!matches!(tension, Tension::Ultimate { .. }), *persons)).map_or_else(
            || "no rope case".to_owned(),
            |(persons, tension)| {
                let on = if persons == 1 { "one person".to_owned() } else { format!("{persons} persons") };
                match tension {
                    Tension::Service { mass_kg, .. } => format!("{} for {on}", mass(mass_kg.value, units)),
                    Tension::Ultimate { anchor_load_n } => {
                        format!("{} for {on}, ultimate", force(anchor_load_n.value, units))
                    }
                    Tension::MultipleOfRated { times } => format!("{} × rated load for {on}", times.value),
                }
            },
        );
    let cone = basis.cone.half_angle_rad.value;
    let within = if cone >= std::f64::consts::PI - 1e-9 {
        "in any direction".to_owned()
    } else {
        format!("within {} of straight down", angle(cone))
    };
    format!("{pull}, {within}; work to {}", angle(basis.rules.reach.angle_rad.value))
}
