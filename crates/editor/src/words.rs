//! Names of things as people read them.

use gantline_plan::assess::{Assessment, Tally};
use gantline_plan::document::{Plan, ThingId};

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
        ThingId::Placement(id) => {
            plan.placements.get(&id).map_or_else(|| id.to_string(), |placement| format!("Unit {}", placement.tag))
        }
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
