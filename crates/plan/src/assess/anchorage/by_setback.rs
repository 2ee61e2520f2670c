//! How near to its edge a base can stand: the share of resistance used for every setback, and the setbacks that hold.

use std::sync::Arc;

use super::forces::Forces;
use super::phase::assess_base;
use super::place::Stands;
use crate::assess::assessment::Assessment;
use crate::assess::clear_zones::Neighbor;
use crate::assess::lean::basis_for;
use crate::assess::reactions::Reactions;
use crate::assess::surroundings::Surroundings;
use crate::catalog::ResolvedUnit;
use crate::document::{PlacementId, Plan, Standing};
use crate::geometry::frame::Frame;
use crate::geometry::spans::Spans;

/// Setbacks that are looked at first.
const SAMPLES: u32 = 60;
/// Halvings between one that holds and one that doesn't: to a tenth of a millimeter of some meters.
const HALVINGS: u32 = 14;
/// How far behind its edge a base is looked at at least, m.
const LEAST_SPAN_M: f64 = 1.5;
/// Bases farther apart than this share no concrete, m.
const APART_M: f64 = 6.0;

/// The share of resistance used against the setback.
#[derive(Debug, Clone, PartialEq)]
pub struct UseBySetback {
    /// Where the base stands now: its mast axis behind the edge, m.
    pub now_m: f64,
    /// Setback and share; no share where nothing could be computed, as with an anchor beyond the edge.
    pub points: Vec<(f64, Option<f64>)>,
    /// Setbacks at which everything that could be checked holds; with rules for narrow members there can be several.
    pub holds: Spans,
    /// What was not checked at the present setback, so that nothing here is a pass.
    pub not_checked: Vec<String>,
}

/// Looks at all setbacks of a unit on an edge, while everything else stays where it is. For a chart that is asked for: it takes
/// some tens of milliseconds.
///
/// Errors: why there is none, in words.
pub fn use_by_setback(plan: &Plan, assessment: &Assessment, id: PlacementId) -> Result<UseBySetback, String> {
    let placement = plan.placements.get(&id).ok_or("the unit is not on the plan")?;
    let known = assessment.units.get(&id).ok_or("the unit was not assessed")?;
    let unit = known.resolved.as_ref().map_err(ToString::to_string)?;
    let reactions = known.reactions.as_ref().ok_or("its reactions are not known")?;
    let Standing::OnEdge { setback_m, .. } = placement.stands else {
        return Err("the unit stands on no edge".to_owned());
    };
    let basis = basis_for(&plan.basis, known, assessment);
    let forces = Forces::of(unit, &basis, &plan.code, reactions);
    let surroundings = Surroundings::of(plan);
    let moved = Moved { plan, surroundings: &surroundings, unit, forces: &forces, reactions, id, assessment };
    let to_m = LEAST_SPAN_M.max(1.5 * setback_m);
    let step_m = to_m / f64::from(SAMPLES);
    let setbacks = (1..=SAMPLES).map(|n| step_m * f64::from(n));
    let looked: Vec<(f64, Option<Looked>)> = setbacks.map(|setback| (setback, moved.look(setback))).collect();
    let least = looked.iter().filter_map(|(_, looked)| looked.as_ref().map(|looked| looked.not_checked)).min();
    let least = least.unwrap_or_default();
    let points: Vec<(f64, Option<f64>)> =
        looked.into_iter().map(|(setback, looked)| (setback, looked.and_then(|looked| looked.share(least)))).collect();
    let mut holds = Vec::new();
    let mut from: Option<f64> = None;
    let mut before = (0.0, false);
    for &(setback, share) in &points {
        let good = share.is_some_and(|share| share <= 1.0);
        if good && from.is_none() {
            from = Some(moved.boundary(before.0, setback, least));
        } else if !good && let Some(start) = from.take() {
            holds.push((start, moved.boundary(setback, before.0, least)));
        }
        before = (setback, good);
    }
    if let Some(start) = from {
        holds.push((start, to_m));
    }
    let now = known.base.as_ref();
    let not_checked = now.iter().flat_map(|base| base.not_checked());
    let mut said: Vec<String> = not_checked.map(|(used, what)| format!("{}: {what}", used.look.words())).collect();
    said.dedup();
    Ok(UseBySetback { now_m: setback_m, points, holds: Spans::of(holds), not_checked: said })
}

struct Moved<'a> {
    plan: &'a Plan,
    surroundings: &'a Surroundings,
    unit: &'a Arc<ResolvedUnit>,
    forces: &'a Forces,
    reactions: &'a Reactions,
    id: PlacementId,
    assessment: &'a Assessment,
}

/// What came of a setback.
struct Looked {
    share: Option<f64>,
    not_checked: usize,
}

impl Looked {
    /// The share, where as much could be checked as anywhere: with an anchor beyond the edge the anchors can't be judged, and
    /// what is left of the base says nothing.
    fn share(&self, least_not_checked: usize) -> Option<f64> {
        self.share.filter(|_| self.not_checked <= least_not_checked)
    }
}

impl Moved<'_> {
    fn look(&self, setback: f64) -> Option<Looked> {
        let Standing::OnEdge { edge, station, turn_rad, .. } = &self.plan.placements.get(&self.id)?.stands else {
            return None;
        };
        let stands = Standing::OnEdge { edge: *edge, station: *station, setback_m: setback, turn_rad: *turn_rad };
        let frame = self.surroundings.frame_of(&stands)?.over_slab(self.unit);
        let neighbors = self.neighbors(&frame);
        let stands = Stands {
            plan: self.plan,
            surroundings: self.surroundings,
            unit: self.unit,
            frame: &frame,
            edge: Some(*edge),
            neighbors: &neighbors,
        };
        let found = assess_base(&stands, self.forces, self.reactions);
        Some(Looked { share: found.utilization(), not_checked: found.not_checked().count() })
    }

    /// Between a setback that doesn't hold and one that does, the last that does.
    fn boundary(&self, mut fails_m: f64, mut holds_m: f64, least_not_checked: usize) -> f64 {
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(fails_m, holds_m);
            let share = self.look(middle).and_then(|looked| looked.share(least_not_checked));
            if share.is_some_and(|share| share <= 1.0) { holds_m = middle } else { fails_m = middle }
        }
        holds_m
    }

    fn neighbors(&self, frame: &Frame) -> Vec<Neighbor> {
        let others = self.assessment.units.iter().filter(|(other, _)| **other != self.id);
        others
            .filter_map(|(&id, other)| {
                let (its, unit) = (other.frame?, other.resolved.as_ref().ok()?);
                (its.at.distance(frame.at) < APART_M).then(|| Neighbor { id, frame: its, unit: Arc::clone(unit) })
            })
            .collect()
    }
}
