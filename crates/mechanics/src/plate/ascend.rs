//! From one state of what acts on a plate to worse ones, by the judge's own slope.
//!
//! A step goes to the state that makes most of the slope, which the actions answer in closed form at the best slew. For a judge
//! that grows convexly it can't lead down (M. Frank, P. Wolfe, 1956, turned round). Where it does, it has gone too far along, or
//! pulls other anchors than before: then it goes to where the first of these begins to be pulled, or ceases ([`super::limit`]).

use glam::DVec2;

use super::limit::{self, Side, settlement_pa};
use super::search::{Judge, Search, pulled};
use super::slope::Slope;
use crate::envelope::{EnvelopeFault, StateOnBase};
use crate::wrench::Wrench;

/// Solutions that one step takes about, the slope included.
const ONE_STEP: usize = 5;
/// How far the slew may go where the best of all slews leads down, rad.
const NEAR_RAD: f64 = 0.35;
/// A share of the value that is no gain worth another step.
const NO_GAIN: f64 = 5e-5;

/// Goes up from a candidate in so many steps, while the plate was solved less often than `end`.
pub(super) fn from(
    search: &mut Search<'_>,
    start: usize,
    judge: &Judge<'_>,
    (steps, end): (usize, usize),
) -> Result<(), EnvelopeFault> {
    let mut here = start;
    for _ in 0..steps {
        if search.solutions + ONE_STEP > end {
            break;
        }
        let Some(slope) = Slope::at(search, here, judge) else { break };
        let value = search.value(judge, here);
        let mut next = step(search, here, judge, &slope, None)?;
        if next.is_none() && search.solutions + 1 < end {
            next = step(search, here, judge, &slope, Some(NEAR_RAD))?;
        }
        let Some(next) = next else { break };
        let gain = search.value(judge, next) - value;
        here = next;
        if gain <= NO_GAIN * value.abs() {
            break;
        }
    }
    Ok(())
}

/// One step: a worse state than `here`, or none.
fn step(
    search: &mut Search<'_>,
    here: usize,
    judge: &Judge<'_>,
    slope: &Slope,
    reach: Option<f64>,
) -> Result<Option<usize>, EnvelopeFault> {
    let value = search.value(judge, here);
    let Some((set, _)) = search.answers_of(here) else { return Ok(None) };
    let Some(state) = most_of(search, (here, set), slope.value, reach)? else { return Ok(None) };
    let promised = slope.value.dot(&(search.unit.on_plate(&state) - search.candidates[here].action));
    if promised <= NO_GAIN * value.abs() {
        return Ok(None);
    }
    let there = search.solve(set, state);
    if search.value(judge, there) > value {
        return Ok(Some(there));
    }
    let near = (search.states[there].slew_rad - search.states[here].slew_rad).cos() >= NEAR_RAD.cos();
    if reach.is_none() && !near {
        return Ok(None);
    }
    let found = match changed(search, here, there, slope) {
        Some(limit) => limit::beside(search, (here, set), judge, slope, limit)?,
        None => part_of_the_way(search, (here, there), judge, promised)?,
    };
    Ok(found.filter(|found| search.value(judge, *found) > value))
}

/// The state of a set of actions that makes most of a weighted sum on the plate, with a candidate's foot.
pub(super) fn most_of(
    search: &Search<'_>,
    (here, set): (usize, usize),
    on_plate: Wrench,
    reach: Option<f64>,
) -> Result<Option<StateOnBase>, EnvelopeFault> {
    let state = &search.states[here];
    let weights = search.unit.weights_on_base(on_plate);
    let around = reach.map(|reach| (state.slew_rad, reach));
    search.answers[set].1.greatest(weights, state.causes.foot_lost, around)
}

/// The anchor that changes most between two states, with the side of its limit on which it is in the first; none where all
/// stay as they are.
fn changed(search: &Search<'_>, here: usize, there: usize, slope: &Slope) -> Option<(DVec2, Side)> {
    let (from, to) = (&search.candidates[here], &search.candidates[there]);
    let (before, after) = (pulled(from.solution.as_ref().ok()?), pulled(to.solution.as_ref().ok()?));
    let anchors = search.plate.plate().anchors.iter().enumerate();
    let changes = anchors.filter(|(index, _)| (before ^ after) >> (index % 64) & 1 == 1);
    let by = |at: DVec2| slope.settlement(at).dot(&to.action).abs() + settlement_pa(from, at).unwrap_or(0.0).abs();
    let most = changes.max_by(|a, b| by(a.1.at).total_cmp(&by(b.1.at)))?;
    let side = if before >> (most.0 % 64) & 1 == 1 { Side::Pulled } else { Side::NotPulled };
    Some((most.1.at, side))
}

/// The top of the parabola through what was promised and what came, or else nearer.
fn part_of_the_way(
    search: &mut Search<'_>,
    (here, there): (usize, usize),
    judge: &Judge<'_>,
    promised: f64,
) -> Result<Option<usize>, EnvelopeFault> {
    let value = search.value(judge, here);
    let lost = search.value(judge, there) - value;
    let mut share = 0.5 * promised / (promised - lost);
    for _ in 0..2 {
        if !share.is_finite() {
            break;
        }
        let Some((set, answers)) = search.answers_of(here) else { break };
        let Some(state) = answers.between(&search.states[here], &search.states[there], share)? else { break };
        let index = search.solve(set, state);
        if search.value(judge, index) > value {
            return Ok(Some(index));
        }
        share *= 0.4;
    }
    Ok(None)
}
