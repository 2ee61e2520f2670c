//! The worst that a rope does to a plate, over its cone and the loaded slews, judged by whatever the caller asks.
//!
//! What a plate and its anchors bear is not linear in the rope's pull, but the actions are. So the search goes in three steps.
//! First, at slews all around, it looks in the directions that tilt the plate most toward many sides, which the cone answers in
//! closed form. Then, from the worst of these that lie apart, it climbs: by steps of slew, of slew with the rope turning
//! along, and of the rope alone, and to the top of the parabolas through what was seen. Last, ever closer round the worst, it
//! looks at points scattered evenly: where a judge has edges, steps along axes halt short of the top.
//!
//! On hundreds of drawn bases no judge that has no jumps was missed by more than a thousandth. A judge that jumps, as a group of
//! anchors does when one more begins to be pulled, is to be put so that it doesn't (the worse of both readings near the jump).
//! Whatever was solved is kept, so that the caller can judge it again, with other edges for instance, without solving anew.

use std::f64::consts::TAU;

use glam::DVec3;

use super::climb;
use super::rope::RopeOnPlate;
use super::shape::PlateFault;
use super::solution::PlateSolution;
use super::solve::PreparedPlate;
use crate::cone::Cap;
use crate::envelope::SlewRange;
use crate::wrench::Wrench;

/// Slews of the first step over a whole turn: all for one variant, fewer for each of several, but at least so many.
const SLEWS: usize = 16;
const LEAST_SLEWS: usize = 10;
/// Sides toward which the plate is tilted most: at least and at most, and all over the slews of all variants.
const LEAST_SIDES: usize = 8;
const MOST_SIDES: usize = 32;
const ALL_SIDES: usize = 128;
/// By what share of the angle between sides they turn from slew to slew, so that they fall between each other.
const SIDES_TURN: f64 = 0.618;
/// The plate without a rope's pull is looked at in one of so many slews.
const UNLOADED_EVERY: usize = 3;
/// Solutions for one judge with one variant or two, first step included; each judge may ask for at least so many more after it.
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

/// What is searched.
#[derive(Debug, Clone, Copy)]
pub struct RopeSearch<'a> {
    /// The plate, with one modular ratio; each of two is searched by itself.
    pub plate: &'a PreparedPlate,
    /// Every direction the rope may pull, in the base's axes.
    pub cap: &'a Cap,
    /// The rope's tension, N; the plate is looked at without it too.
    pub tension_n: f64,
    /// Slews at which a person may hang, cut to what a foot allows.
    pub slews: &'a SlewRange,
    /// How many variants there are: winds, a lost foot. At least one is looked at.
    pub variants: usize,
}

/// One state that was solved.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Which variant.
    pub variant: usize,
    /// Slew, rad.
    pub slew_rad: f64,
    /// Direction of the rope in the base's axes.
    pub direction: DVec3,
    /// Its tension, N: as given, or 0.
    pub tension_n: f64,
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

impl RopeSearch<'_> {
    /// Searches for what each judge calls worst; `on_plate` gives the action for a variant and a slew.
    ///
    /// Solves the plate 440 times at most for one judge and one variant or two, some 80 times more for each variant more, and up
    /// to 240 times more for each judge more. Nothing is worst where there are no slews.
    /// Errors: whatever `on_plate` says. Numbers that are none count as infinitely bad.
    pub fn worst<E>(
        &self,
        on_plate: impl Fn(usize, f64) -> Result<RopeOnPlate, E>,
        judges: &[&Judge<'_>],
    ) -> Result<Searched, E> {
        let mut states = States { search: self, on_plate: &on_plate, candidates: Vec::new() };
        let slews = self.first_slews();
        let sides = ALL_SIDES / (slews.len() * self.variants).max(1);
        let sides = sides.clamp(LEAST_SIDES, MOST_SIDES);
        for variant in 0..self.variants.max(1) {
            for (index, &slew) in slews.iter().enumerate() {
                let apart = TAU / sides as f64;
                let first = apart * (SIDES_TURN * index as f64).fract();
                states.look_around(variant, slew, (0..sides).map(|side| first + apart * side as f64))?;
                if index % UNLOADED_EVERY == 0 {
                    states.look_unloaded(variant, slew)?;
                }
            }
        }
        let more = SOLUTIONS.saturating_sub(states.candidates.len()).max(LEAST_MORE);
        for judge in judges {
            states.climb(judge, more)?;
        }
        let candidates = states.candidates;
        let worst = judges.iter().filter_map(|judge| worst_of(&candidates, judge)).collect();
        Ok(Searched { candidates, worst })
    }

    fn first_slews(&self) -> Vec<f64> {
        let count = (SLEWS / self.variants.max(1)).max(LEAST_SLEWS);
        match self.slews {
            SlewRange::WholeTurn => (0..count).map(|i| TAU * i as f64 / count as f64).collect(),
            SlewRange::Between { from_rad, to_rad } => {
                let pieces = ((to_rad - from_rad) / TAU * count as f64).ceil().max(1.0) as usize;
                let pieces = pieces.min(count);
                (0..=pieces).map(|i| from_rad + (to_rad - from_rad) * i as f64 / pieces as f64).collect()
            }
            SlewRange::At(list) => list.clone(),
        }
    }

    /// A slew moved by a step, kept within the range; where only certain slews are allowed, it stays.
    pub(super) fn slew_moved(&self, slew: f64, step: f64) -> f64 {
        match self.slews {
            SlewRange::WholeTurn if step != 0.0 => (slew + step).rem_euclid(TAU),
            SlewRange::Between { from_rad, to_rad } => (slew + step).max(*from_rad).min(*to_rad),
            SlewRange::WholeTurn | SlewRange::At(_) => slew,
        }
    }
}

/// The states solved so far, and how to solve one more.
pub(super) struct States<'a, F> {
    pub search: &'a RopeSearch<'a>,
    on_plate: &'a F,
    pub candidates: Vec<Candidate>,
}

impl<E, F: Fn(usize, f64) -> Result<RopeOnPlate, E>> States<'_, F> {
    /// Looks in the directions that tilt the plate most toward each side.
    fn look_around(&mut self, variant: usize, slew: f64, sides: impl Iterator<Item = f64>) -> Result<(), E> {
        let rope = (self.on_plate)(variant, slew)?;
        for side in sides {
            let direction = self.search.cap.maximizer(rope.tilt(side));
            self.solve(&rope, (variant, slew, direction), self.search.tension_n);
        }
        Ok(())
    }

    fn look_unloaded(&mut self, variant: usize, slew: f64) -> Result<(), E> {
        let rope = (self.on_plate)(variant, slew)?;
        self.solve(&rope, (variant, slew, DVec3::NEG_Z), 0.0);
        Ok(())
    }

    /// Climbs for one judge with at most `more` solutions.
    fn climb(&mut self, judge: &Judge<'_>, more: usize) -> Result<(), E> {
        let mut left = more;
        for start in starts(&self.candidates, judge, STARTS) {
            left -= climb::from(self, start, judge, 2 * climb::ONE_ROUND)?;
        }
        for start in starts(&self.candidates, judge, CLIMBS) {
            left -= climb::from(self, start, judge, SOLUTIONS_A_CLIMB.min(left))?;
        }
        let tops = starts(&self.candidates, judge, SCATTERS);
        let each = left / tops.len().max(1);
        tops.into_iter().try_for_each(|top| climb::scatter(self, top, judge, each))
    }

    /// Solves one more state and gives its index.
    pub fn look(&mut self, variant: usize, slew: f64, direction: DVec3) -> Result<usize, E> {
        let rope = (self.on_plate)(variant, slew)?;
        self.solve(&rope, (variant, slew, direction), self.search.tension_n);
        Ok(self.candidates.len() - 1)
    }

    fn solve(&mut self, rope: &RopeOnPlate, (variant, slew_rad, direction): (usize, f64, DVec3), tension_n: f64) {
        let action = rope.action(direction * tension_n);
        let solution = self.search.plate.solve(action.force_n.z, action.moment_nm.x, action.moment_nm.y);
        self.candidates.push(Candidate { variant, slew_rad, direction, tension_n, action, solution });
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

/// The worst states under the rope that lie apart from each other, worst first.
fn starts(candidates: &[Candidate], judge: &Judge<'_>, most: usize) -> Vec<usize> {
    let mut order: Vec<(usize, f64)> = candidates.iter().map(|c| judged(judge, c)).enumerate().collect();
    order.retain(|(index, value)| candidates[*index].tension_n > 0.0 && value.is_finite());
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
    a.variant != b.variant
        || tilt(a).angle_to(tilt(b)).abs() > TILTS_APART_RAD
        || a.direction.angle_between(b.direction) > ROPES_APART_RAD
}
