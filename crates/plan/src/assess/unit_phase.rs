//! Judges one unit among its neighbors. What hangs on a base and those around it belongs here: it is looked at again when
//! the unit moves, and when one of its neighbors does.

use std::sync::Arc;

use super::anchorage::{Forces, Stands, assess_base};
use super::assessment::UnitAssessment;
use super::clear_zones::pair_clearances;
use super::memo::UnitInput;
use super::place_phase::Placed;
use super::reactions::Reactions;
use super::rules;
use super::standing::{edges_near, room};
use super::surroundings::Surroundings;
use crate::catalog::{MakeUpFault, ResolvedUnit};
use crate::document::{PlacementId, Plan};

/// What the phases before have found about a unit.
pub(super) struct Known<'a> {
    pub id: PlacementId,
    pub input: &'a UnitInput,
    pub placed: &'a Placed,
    pub resolved: &'a Result<Arc<ResolvedUnit>, MakeUpFault>,
    pub reactions: Option<Arc<Reactions>>,
    pub forces: Option<&'a Forces>,
}

/// Everything about one unit.
pub(super) fn assess_unit(plan: &Plan, surroundings: &Surroundings, known: &Known<'_>) -> UnitAssessment {
    let Known { id, input, placed, resolved, reactions, forces } = known;
    let mut result = UnitAssessment {
        frame: input.frame,
        resolved: (*resolved).clone(),
        reactions: reactions.clone(),
        base: None,
        loaded: placed.loaded.clone(),
        serving: placed.serving.clone(),
        serves: placed.reaches.iter().map(|reach| reach.served.clone()).collect(),
        setting_out: input.setting_out,
        swept: placed.swept.clone(),
        clearances: Vec::new(),
        room: None,
        checks: Vec::new(),
    };
    let mut rooms = None;
    if let (Some(frame), Ok(unit)) = (&input.frame, resolved) {
        let working = &plan.basis.rules;
        result.clearances = pair_clearances(unit, frame, placed, &input.neighbors, working);
        rooms = room(unit, frame, &input.neighbors, surroundings, &working.people);
        if let Some(found) = &mut rooms {
            let near = edges_near(plan, frame.roof, &found.room.standing, f64::INFINITY);
            found.room.to_edge = near.into_iter().min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        }
    }
    if let (Some(frame), Ok(unit), Some(forces), Some(reactions)) = (&input.frame, resolved, forces, reactions) {
        let edge = input.setting_out.map(|out| out.edge);
        let stands = Stands { plan, surroundings, unit, frame, edge, neighbors: &input.neighbors };
        result.base = Some(Arc::new(assess_base(&stands, forces, reactions)));
    }
    result.room = rooms.as_ref().map(|found| found.room.clone());
    let context = rules::UnitContext {
        plan,
        id: *id,
        unit: &result,
        rooms: rooms.as_ref(),
        neighbors: &input.neighbors,
        surroundings,
    };
    result.checks = rules::unit_checks(&context);
    result
}
