//! Judges one unit among its neighbors. What hangs on a base and those around it belongs here: it is looked at again when
//! the unit moves, and when one of its neighbors does.

use std::sync::Arc;

use super::anchorage::{BaseSites, Forces, OnSite, OnSites, Site, Stands, assess_on_sites, site_judged};
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
    /// Its make-up among those that the memo knows, and whether its actions keep the limits of lean.
    pub make_up: usize,
    pub within_lean: bool,
    pub resolved: Result<Arc<ResolvedUnit>, MakeUpFault>,
    pub reactions: Option<Arc<Reactions>>,
    pub forces: Option<Arc<Forces>>,
}

impl Known<'_> {
    /// The unit where it stands; none where its parts or its place are not known.
    fn stands<'a>(&'a self, plan: &'a Plan, surroundings: &'a Surroundings) -> Option<Stands<'a>> {
        let (Some(frame), Ok(unit)) = (&self.input.frame, &self.resolved) else { return None };
        let edge = self.input.setting_out.map(|out| out.edge);
        Some(Stands { plan, surroundings, unit, frame, edge, neighbors: &self.input.neighbors })
    }

    /// The sites of its base and foot.
    pub fn sites(&self, plan: &Plan, surroundings: &Surroundings) -> BaseSites {
        let stands = self.stands(plan, surroundings).zip(self.forces.as_deref());
        stands.map_or_else(BaseSites::default, |(stands, forces)| BaseSites::of(&stands, forces))
    }

    /// What is found on one of them.
    pub fn judged(&self, plan: &Plan, site: &Site) -> Option<OnSite> {
        site_judged(site, self.resolved.as_ref().ok()?, self.forces.as_deref()?, &plan.code)
    }
}

/// Everything about one unit.
pub(super) fn assess_unit(
    plan: &Plan,
    surroundings: &Surroundings,
    known: &Known<'_>,
    on_sites: &OnSites,
) -> UnitAssessment {
    let Known { id, input, placed, resolved, reactions, forces, .. } = known;
    let mut result = UnitAssessment {
        frame: input.frame,
        resolved: resolved.clone(),
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
    if let (Some(stands), Some(forces), Some(reactions)) = (known.stands(plan, surroundings), forces, reactions) {
        result.base = Some(Arc::new(assess_on_sites(&stands, forces, reactions, on_sites)));
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
