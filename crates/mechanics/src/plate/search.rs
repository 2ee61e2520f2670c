//! The worst that may happen to a plate, over all actions, judged by whatever the caller asks.
//!
//! What a plate and its anchors bear is not linear in what acts, but the actions are. So the search goes in three steps.
//! First, at slews all around, it looks at the states that tilt the plate most toward many sides, which the actions answer in
//! closed form. Then, from the worst of these that lie apart, it climbs: by steps of slew, of slew with everything turning
//! along, and of ropes and wind alone, and to the top of the parabolas through what was seen. Last, ever closer round the
//! worst, it looks at points scattered evenly: where a judge has edges, steps along axes halt short of the top.
//!
//! Whatever was solved is kept, so that the caller can judge it again, with other edges for instance, without solving anew.

use std::f64::consts::TAU;

use glam::DVec3;

use super::climb;
use super::on_unit::{UnitOnPlate, tilting};
use super::shape::PlateFault;
use super::solution::PlateSolution;
use super::solve::PreparedPlate;
use crate::envelope::{Causes, EnvelopeFault, OnBase, StateOnBase};
use crate::wrench::Wrench;

/// Slews of the first step over a whole turn: all for one set of actions, fewer for each of several, but at least so many.
const SLEWS: usize = 16;
const LEAST_SLEWS: usize = 10;
/// Sides toward which the plate is tilted most: at least and at most, and all over the slews of all sets.
const LEAST_SIDES: usize = 8;
const MOST_SIDES: usize = 32;
const ALL_SIDES: usize = 128;
/// By what share of the angle between sides they turn from slew to slew, so that they fall between each other.
const SIDES_TURN: f64 = 0.618;
/// Pulled off and pressed most, and without the pull of any rope toward so many sides, it is looked at in one of so many slews.
const UNLOADED_EVERY: usize = 3;
const UNLOADED_SIDES: usize = 6;
/// Solutions for one judge with one set or two, first step included; each judge may ask for at least so many more after it.
const SOLUTIONS: usize = 440;
const LEAST_MORE: usize = 240;
/// From how many places two rounds of steps are made, how many of those climb on with how many solutions each, and how many of
/// their tops are scattered round.
const STARTS: usize = 10;
const CLIMBS: usize = 3;
const SOLUTIONS_A_CLIMB: usize = 22;
const SCATTERS: usize = 2;
/// Places that tilt the plate, and whose ropes pull, in directions nearer than these are one, rad.
const TILTS_APART_RAD: f64 = 0.3;
const ROPES_APART_RAD: f64 = 0.5;

/// One state that was solved.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Which set of actions, by its index in the list that was given.
    pub actions: usize,
    /// Slew, rad.
    pub slew_rad: f64,
    /// What pulls and blows, in the base's axes, and what has become of the brace. Ropes that were joined share what their
    /// joined rope pulls; where their cones differ, one of them may stand outside its own.
    pub causes: Causes,
    /// Action on the plate in its axes.
    pub action: Wrench,
    /// What the plate makes of it.
    pub solution: Result<PlateSolution, PlateFault>,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub struct Searched {
    /// Everything that was solved.
    pub candidates: Vec<Candidate>,
    /// For each judge the worst of them: its index and its value.
    pub worst: Vec<(usize, f64)>,
}

/// How bad a state is: any number that grows with it, infinity where it can't be answered.
pub type Judge<'a> = dyn Fn(&Candidate) -> f64 + 'a;

impl Searched {
    /// The worst of what was solved for another judge; the first where several are alike.
    pub fn judge_again(&self, judge: &Judge<'_>) -> Option<(usize, f64)> {
        worst_of(&self.candidates, judge)
    }
}

/// The states solved so far, and how to solve one more.
pub(super) struct Search<'s> {
    unit: &'s UnitOnPlate<'s>,
    plate: &'s PreparedPlate,
    answers: Vec<(usize, OnBase<'s>)>,
    pub candidates: Vec<Candidate>,
    /// The action on the base of each.
    states: Vec<StateOnBase>,
}

impl<'s> Search<'s> {
    pub fn new(unit: &'s UnitOnPlate<'s>, plate: &'s PreparedPlate) -> Result<Self, EnvelopeFault> {
        let answers = unit.answers()?;
        Ok(Self { unit, plate, answers, candidates: Vec::new(), states: Vec::new() })
    }

    pub fn searched(self, judges: &[&Judge<'_>]) -> Searched {
        let worst = judges.iter().filter_map(|judge| worst_of(&self.candidates, *judge)).collect();
        Searched { candidates: self.candidates, worst }
    }

    /// Looks at the states that tilt the plate most toward sides all around, at slews all around.
    pub fn look_around(&mut self) -> Result<(), EnvelopeFault> {
        let sets = self.answers.len().max(1);
        let slews = self.unit.slews((SLEWS / sets).max(LEAST_SLEWS));
        let sides = (ALL_SIDES / (slews.len() * sets).max(1)).clamp(LEAST_SIDES, MOST_SIDES);
        let apart = TAU / sides as f64;
        for set in 0..self.answers.len() {
            for (index, &slew) in slews.iter().enumerate() {
                let first = apart * (SIDES_TURN * index as f64).fract();
                for side in 0..sides {
                    let weights = self.unit.weights_on_base(tilting(first + apart * side as f64));
                    for state in self.answers[set].1.toward(weights, slew)? {
                        self.solve(set, state);
                    }
                }
                if index % UNLOADED_EVERY == 0 {
                    for along in [DVec3::Z, DVec3::NEG_Z] {
                        let weights = Wrench { force_n: along, moment_nm: DVec3::ZERO };
                        for state in self.answers[set].1.toward(self.unit.weights_on_base(weights), slew)? {
                            self.solve(set, state);
                        }
                    }
                    self.look_unloaded(set, slew)?;
                }
            }
        }
        Ok(())
    }

    fn look_unloaded(&mut self, set: usize, slew: f64) -> Result<(), EnvelopeFault> {
        let mut seen: Vec<Wrench> = Vec::new();
        for side in 0..UNLOADED_SIDES {
            let weights = self.unit.weights_on_base(tilting(TAU * side as f64 / UNLOADED_SIDES as f64));
            for state in self.answers[set].1.toward_unloaded(weights, slew)? {
                // Without wind and tether all sides are the same.
                if !seen.contains(&state.action) {
                    seen.push(state.action);
                    self.solve(set, state);
                }
            }
        }
        Ok(())
    }

    /// Climbs for one judge.
    pub fn refine(&mut self, judge: &Judge<'_>) -> Result<(), EnvelopeFault> {
        self.climb(judge, SOLUTIONS.saturating_sub(self.candidates.len()).max(LEAST_MORE))
    }

    pub fn worst_for(
        mut self,
        kept: &[Candidate],
        judge: &Judge<'_>,
        more: usize,
    ) -> Result<Option<(Candidate, f64)>, EnvelopeFault> {
        let best = worst_of(kept, judge);
        for start in starts(kept, judge, STARTS) {
            let candidate = &kept[start];
            let Some(set) = self.answers.iter().position(|answer| answer.0 == candidate.actions) else { continue };
            if let Some(state) = self.answers[set].1.again(&candidate.causes, candidate.slew_rad)? {
                self.states.push(state);
                self.candidates.push(candidate.clone());
            }
        }
        self.climb(judge, more)?;
        let new = worst_of(&self.candidates, judge);
        let kept = best.map(|(index, value)| (&kept[index], value));
        let new = new.map(|(index, value)| (&self.candidates[index], value));
        let worst = kept.into_iter().chain(new).reduce(|worst, next| if next.1 > worst.1 { next } else { worst });
        Ok(worst.map(|(candidate, value)| (candidate.clone(), value)))
    }

    /// Climbs for one judge with at most `more` solutions.
    fn climb(&mut self, judge: &Judge<'_>, more: usize) -> Result<(), EnvelopeFault> {
        let end = self.candidates.len() + more;
        let left = |search: &Self| end.saturating_sub(search.candidates.len());
        for start in starts(&self.candidates, judge, STARTS) {
            let budget = (2 * self.one_round(start)).min(left(self));
            climb::from(self, start, judge, budget)?;
        }
        for start in starts(&self.candidates, judge, CLIMBS) {
            let budget = SOLUTIONS_A_CLIMB.min(left(self));
            climb::from(self, start, judge, budget)?;
        }
        let tops = starts(&self.candidates, judge, SCATTERS);
        let each = left(self) / tops.len().max(1);
        tops.into_iter().try_for_each(|top| climb::scatter(self, top, judge, each))
    }

    /// Solutions that one round of steps from a candidate takes at most.
    fn one_round(&self, from: usize) -> usize {
        climb::one_round(self.ways(from).len())
    }

    pub fn ways(&self, from: usize) -> Vec<crate::envelope::Way> {
        let set = self.set_of(from);
        set.map(|set| self.answers[set].1.ways(&self.states[from])).unwrap_or_default()
    }

    /// Solves the state some steps away from a candidate; none where they lead nowhere.
    pub fn step(&mut self, from: usize, steps: &[(crate::envelope::Way, f64)]) -> Result<Option<usize>, EnvelopeFault> {
        let Some(set) = self.set_of(from) else { return Ok(None) };
        let state = self.answers[set].1.moved(&self.states[from], steps)?;
        Ok(state.map(|state| self.solve(set, state)))
    }

    fn set_of(&self, candidate: usize) -> Option<usize> {
        let actions = self.candidates.get(candidate)?.actions;
        self.answers.iter().position(|answer| answer.0 == actions)
    }

    fn solve(&mut self, set: usize, state: StateOnBase) -> usize {
        let action = self.unit.on_plate(&state);
        let solution = self.plate.solve(action.force_n.z, action.moment_nm.x, action.moment_nm.y);
        self.candidates.push(Candidate {
            actions: self.answers[set].0,
            slew_rad: state.slew_rad,
            causes: state.causes.clone(),
            action,
            solution,
        });
        self.states.push(state);
        self.candidates.len() - 1
    }
}

/// A judge's number, infinite where it is none.
pub(super) fn judged(judge: &Judge<'_>, candidate: &Candidate) -> f64 {
    let value = judge(candidate);
    if value.is_nan() { f64::INFINITY } else { value }
}

fn worst_of(candidates: &[Candidate], judge: &Judge<'_>) -> Option<(usize, f64)> {
    let values = candidates.iter().map(|candidate| judged(judge, candidate)).enumerate();
    values.reduce(|worst, next| if next.1 > worst.1 { next } else { worst })
}

/// The worst states that lie apart from each other, worst first.
fn starts(candidates: &[Candidate], judge: &Judge<'_>, most: usize) -> Vec<usize> {
    let mut order: Vec<(usize, f64)> = candidates.iter().map(|c| judged(judge, c)).enumerate().collect();
    order.retain(|(_, value)| value.is_finite());
    order.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let mut chosen: Vec<usize> = Vec::new();
    for (index, _) in order {
        if chosen.len() == most {
            break;
        }
        if chosen.iter().all(|other| apart(&candidates[index], &candidates[*other])) {
            chosen.push(index);
        }
    }
    chosen
}

fn apart(a: &Candidate, b: &Candidate) -> bool {
    let tilt = |c: &Candidate| c.action.moment_nm.truncate();
    let mut pulls = a.causes.pulls_n.iter().zip(&b.causes.pulls_n);
    a.actions != b.actions
        || a.causes.foot_lost != b.causes.foot_lost
        || tilt(a).angle_to(tilt(b)).abs() > TILTS_APART_RAD
        || pulls.any(|(a, b)| a.angle_between(*b) > ROPES_APART_RAD)
}
