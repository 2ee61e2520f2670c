//! Extremes of observed numbers over slew and state: one search for each component.

use std::cell::{Cell, RefCell};
use std::collections::HashMap;
use std::f64::consts::{FRAC_PI_2, PI, TAU};
use std::rc::Rc;

use super::actions::{Actions, FootCase};
use super::case::Case;
use super::extreme::{Causes, Component, Extreme, Sense, Slack};
use super::fault::EnvelopeFault;
use super::observed::{BraceAxial, Observed};
use super::prepared::Prepared;
use super::search::{golden, greatest};
use super::slews::Slews;
use super::state::State;
use crate::unit::{UnitModel, turned};

/// Grid of slews and of directions, rad: 7.5° hits every 15°.
const GRID: f64 = PI / 24.0;

/// To which slews and directions are refined, rad. Values are good to its square where smooth, and to
/// itself, as a share, at a kink.
const FINE: f64 = 1e-9;

/// A brace pressed by no more than this is not pressed: rounding of kilonewtons, N.
const SLACK_N: f64 = 1e-6;

/// Directions in which a resultant is looked at first: every 15°.
const DIRECTIONS: u32 = 24;

/// The same for a search within a search, which a climb then completes.
const NESTED: f64 = 1e-6;

/// Rounds of a climb, and steps of an ascent: far more than a hill needs.
const ROUNDS: u32 = 12;
const ASCENT: u32 = 60;

/// In which axes components are reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Axes {
    Structure,
    Arm,
}

/// What makes a component of the N numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// One of them.
    Row(usize),
    /// hypot of this one and the next.
    Resultant(usize),
}

/// A search for extremes of what is observed.
pub(super) struct Engine<'a, const N: usize, O> {
    prepared: &'a Prepared<'a>,
    observed: O,
    axes: Axes,
    slews: Slews,
    /// Slews at which answers may be sharp.
    sharp: Vec<f64>,
    plan: BracePlan,
    /// The cases, where they are the same at every slew.
    same: Option<Rc<[Case<N>]>>,
    /// The cases at slews that were looked at before.
    seen: RefCell<HashMap<u64, Rc<[Case<N>]>>>,
    /// Directions of the greatest resultants of force and of moment, once searched.
    longest: [Cell<Option<f64>>; 2],
}

/// Which states of the brace count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct BracePlan {
    /// It goes slack somewhere, so both states are looked at.
    pub two_states: bool,
    pub may_lose_foot: bool,
}

/// Where a search ended.
struct Found {
    slew: f64,
    foot_lost: bool,
    brace_slack: bool,
    state: State,
}

impl<'a, const N: usize, O: Observed<N>> Engine<'a, N, O> {
    pub fn new(
        prepared: &'a Prepared<'a>,
        observed: O,
        axes: Axes,
        slews: Slews,
        plan: BracePlan,
    ) -> Result<Self, EnvelopeFault> {
        let mut engine = Self {
            prepared,
            observed,
            axes,
            slews,
            sharp: prepared.sharp_slews(),
            plan,
            same: None,
            seen: RefCell::default(),
            longest: [const { Cell::new(None) }; 2],
        };
        let cases_turn = plan.two_states && prepared.is_cut();
        if prepared.turns_with_the_arm() && !cases_turn {
            engine.same = Some(engine.cases_at(engine.slews.any())?.into());
        }
        Ok(engine)
    }

    /// The extreme of a component; `None` if no state holds at any slew.
    pub fn extreme(&self, component: Component, part: Part, sense: Sense) -> Result<Option<Extreme>, EnvelopeFault> {
        let found = match part {
            Part::Row(row) => {
                let sign = match sense {
                    Sense::Max => 1.0,
                    Sense::Min => -1.0,
                };
                self.row(row, sign)?
            }
            Part::Resultant(row) => self.resultant(row)?,
        };
        found.map(|found| self.report(component, part, sense, found)).transpose()
    }

    fn row(&self, row: usize, sign: f64) -> Result<Option<Found>, EnvelopeFault> {
        let slew = if self.turns_freely() && (self.axes == Axes::Arm || row % 3 == 2) {
            self.slews.any()
        } else if self.turns_freely() && self.slews == Slews::Turn {
            // Some slew turns the direction of the greatest resultant into this component's own.
            let own = if row.is_multiple_of(3) { 0.0 } else { FRAC_PI_2 };
            let own = if sign < 0.0 { own + PI } else { own };
            let slew = own - self.longest(row - row % 3)?;
            within_turn(slew)
        } else {
            let weights = |slew| self.row_weights(row, sign, slew);
            greatest(&self.slews, &self.sharp, GRID, FINE, |slew| self.support(&weights(slew), slew))?.0
        };
        self.found(&self.row_weights(row, sign, slew), slew)
    }

    /// Whether all answers turn with the arm and no cone is cut: then a slew only turns components.
    fn turns_freely(&self) -> bool {
        self.same.is_some() && !self.prepared.is_cut()
    }

    /// The direction, in arm axes, in which a resultant that turns freely is greatest.
    fn longest(&self, row: usize) -> Result<f64, EnvelopeFault> {
        let known = &self.longest[row / 3];
        if let Some(direction) = known.get() {
            return Ok(direction);
        }
        let (direction, _) = greatest(&Slews::Turn, &[], 2.0 * GRID, FINE, |direction| {
            self.support(&Self::direction_weights(row, direction), 0.0)
        })?;
        known.set(Some(direction));
        Ok(direction)
    }

    /// max over directions u of the greatest u·(a, b): the length of the longest (a, b).
    fn resultant(&self, row: usize) -> Result<Option<Found>, EnvelopeFault> {
        if self.turns_freely() {
            let weights = Self::direction_weights(row, self.longest(row)?);
            let slew = self.slews.any();
            return self.ascend(row, weights, slew);
        }
        if let Slews::At(list) = &self.slews {
            return self.resultant_at(row, list);
        }
        let mut best = None;
        let mut length = f64::NEG_INFINITY;
        for (direction, slew) in self.hills(row)? {
            let start = self.ascend(row, Self::direction_weights(row, direction - slew), slew)?;
            let found = self.climb(row, start)?;
            let here = self.length(row, found.as_ref())?;
            if found.is_some() && here > length {
                (best, length) = (found, here);
            }
        }
        Ok(best)
    }

    /// Directions of the structure, each with its slew, from which the longest resultant is in sight.
    fn hills(&self, row: usize) -> Result<Vec<(f64, f64)>, EnvelopeFault> {
        let step = TAU / f64::from(DIRECTIONS);
        let mut seen = Vec::with_capacity(DIRECTIONS as usize);
        for i in 0..DIRECTIONS {
            let direction = f64::from(i) * step;
            let (slew, reach) = self.best_slew(row, direction)?;
            seen.push((direction, slew, reach));
        }
        let top = seen.iter().copied().fold(seen[0], |a, b| if b.2 > a.2 { b } else { a });
        let mut hills = vec![(top.0, top.1)];
        for i in 0..seen.len() {
            let (here, next) = (seen[i], seen[(i + 1) % seen.len()]);
            if longest_between(here.2, next.2, step) > top.2 {
                hills.extend([(here.0, here.1), (next.0, next.1)]);
            }
        }
        hills.dedup();
        // On a ridge with a kink only a search within a search gets on.
        let (direction, _) = golden(top.0 - step, top.0 + step, NESTED, &mut |direction| {
            Ok::<f64, EnvelopeFault>(self.best_slew(row, direction)?.1)
        })?;
        hills.push((direction, self.best_slew(row, direction)?.0));
        Ok(hills)
    }

    /// The longest resultant at any of some single slews.
    fn resultant_at(&self, row: usize, list: &[f64]) -> Result<Option<Found>, EnvelopeFault> {
        let mut best = None;
        let mut length = f64::NEG_INFINITY;
        for &slew in list {
            let (direction, _) = greatest(&Slews::Turn, &[], 2.0 * GRID, NESTED, |direction| {
                self.support(&Self::direction_weights(row, direction), slew)
            })?;
            let found = self.ascend(row, Self::direction_weights(row, direction), slew)?;
            let here = self.length(row, found.as_ref())?;
            if found.is_some() && here > length {
                (best, length) = (found, here);
            }
        }
        Ok(best)
    }

    /// The slew at which a resultant reaches furthest in a direction of the structure.
    fn best_slew(&self, row: usize, direction: f64) -> Result<(f64, f64), EnvelopeFault> {
        greatest(&self.slews, &self.sharp, 2.0 * GRID, NESTED, |slew| {
            self.support(&Self::direction_weights(row, direction - slew), slew)
        })
    }

    /// Uphill by direction and by slew in turn. The direction is kept once as seen from the arm and once
    /// as seen from the structure, since ridges run along either.
    fn climb(&self, row: usize, start: Option<Found>) -> Result<Option<Found>, EnvelopeFault> {
        let mut best = start;
        let mut length = self.length(row, best.as_ref())?;
        for round in 0..ROUNDS {
            let before = length;
            for keeps in [Axes::Arm, Axes::Structure] {
                let Some(found) = &best else { return Ok(None) };
                let next = self.step_in_slew(row, found, keeps, round)?;
                let longer = self.length(row, next.as_ref())?;
                if longer > length {
                    (best, length) = (next, longer);
                }
            }
            if length <= before * (1.0 + 1e-13) {
                break;
            }
        }
        Ok(best)
    }

    /// The best slew near a found state for its direction, and the best direction there.
    fn step_in_slew(&self, row: usize, found: &Found, keeps: Axes, round: u32) -> Result<Option<Found>, EnvelopeFault> {
        let numbers = self.numbers(found)?;
        let direction = numbers[row + 1].atan2(numbers[row]);
        let weights = |slew: f64| {
            let seen_from_arm = match keeps {
                Axes::Arm => direction,
                Axes::Structure => direction + found.slew - slew,
            };
            Self::direction_weights(row, seen_from_arm)
        };
        // The top is near; later rounds only correct.
        let reach = GRID / f64::from(1 << round.min(20));
        let around = self.slews.around(found.slew, reach);
        let (slew, _) = greatest(&around, &self.sharp, reach, FINE, |s| self.support(&weights(s), s))?;
        self.ascend(row, weights(slew), slew)
    }

    /// Uphill by direction alone: along the resultant of the best state the best state is at least as
    /// good.
    fn ascend(&self, row: usize, weights: [f64; N], slew: f64) -> Result<Option<Found>, EnvelopeFault> {
        let mut best = self.found(&weights, slew)?;
        let mut length = self.length(row, best.as_ref())?;
        for _ in 0..ASCENT {
            let Some(found) = &best else { break };
            let numbers = self.numbers(found)?;
            let weights = Self::direction_weights(row, numbers[row + 1].atan2(numbers[row]));
            let next = self.found(&weights, slew)?;
            let longer = self.length(row, next.as_ref())?;
            if longer <= length * (1.0 + 1e-14) {
                break;
            }
            (best, length) = (next, longer);
        }
        Ok(best)
    }

    fn length(&self, row: usize, found: Option<&Found>) -> Result<f64, EnvelopeFault> {
        let Some(found) = found else { return Ok(0.0) };
        let numbers = self.numbers(found)?;
        Ok(numbers[row].hypot(numbers[row + 1]))
    }

    fn support(&self, w: &[f64; N], slew: f64) -> Result<f64, EnvelopeFault> {
        let cases = self.cases(slew)?;
        let mut best = f64::NEG_INFINITY;
        for case in cases.iter() {
            // Without its condition a state can only do more.
            if self.prepared.support(&case.rows, w, slew) > best {
                best = best.max(case.support(self.prepared, w, slew).unwrap_or(best));
            }
        }
        Ok(best)
    }

    fn found(&self, w: &[f64; N], slew: f64) -> Result<Option<Found>, EnvelopeFault> {
        let cases = self.cases(slew)?;
        let mut best: Option<(f64, Found)> = None;
        for case in cases.iter() {
            let so_far = best.as_ref().map_or(f64::NEG_INFINITY, |(value, _)| *value);
            if self.prepared.support(&case.rows, w, slew) <= so_far {
                continue;
            }
            let Some(state) = case.state(self.prepared, w, slew) else {
                continue;
            };
            let numbers = case.rows.of(&state);
            let value: f64 = numbers.iter().zip(w).map(|(n, w)| n * w).sum();
            if value > so_far {
                let found = Found { slew, foot_lost: case.foot_lost, brace_slack: case.brace_slack, state };
                best = Some((value, found));
            }
        }
        Ok(best.map(|(_, found)| found))
    }

    /// The N numbers of a found state, arm axes.
    fn numbers(&self, found: &Found) -> Result<[f64; N], EnvelopeFault> {
        let cases = self.cases(found.slew)?;
        let same = |c: &&Case<N>| (c.foot_lost, c.brace_slack) == (found.foot_lost, found.brace_slack);
        Ok(cases.iter().find(same).map_or([f64::NAN; N], |case| case.rows.of(&found.state)))
    }

    fn report(&self, component: Component, part: Part, sense: Sense, found: Found) -> Result<Extreme, EnvelopeFault> {
        let mut numbers = self.numbers(&found)?;
        if self.axes == Axes::Structure {
            turn(&mut numbers, found.slew);
        }
        let value = match part {
            Part::Row(row) => numbers[row],
            Part::Resultant(row) => numbers[row].hypot(numbers[row + 1]),
        };
        let mut concurrent = [0.0; 6];
        concurrent[..N].copy_from_slice(&numbers);
        let to_structure = glam::DVec2::from_angle(found.slew);
        let pulls_n: Vec<_> = found.state.pulls_n.iter().map(|p| turned(*p, found.slew)).collect();
        Ok(Extreme {
            component,
            sense,
            value,
            concurrent,
            pull_direction: pulls_n.iter().find_map(|p| p.try_normalize()),
            slew_rad: if self.slews == Slews::Turn { within_turn(found.slew) } else { found.slew },
            causes: Causes {
                pulls_n,
                second_legs_n: found.state.legs_n,
                wind: to_structure.rotate(found.state.wind),
                tether: to_structure.rotate(found.state.tether),
                foot_lost: found.foot_lost,
                brace_slack: found.brace_slack,
            },
        })
    }

    /// All states of the brace at a slew.
    pub fn cases(&self, slew: f64) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
        if let Some(cases) = &self.same {
            return Ok(Rc::clone(cases));
        }
        if let Some(cases) = self.seen.borrow().get(&slew.to_bits()) {
            return Ok(Rc::clone(cases));
        }
        let cases: Rc<[Case<N>]> = self.cases_at(slew)?.into();
        self.seen.borrow_mut().insert(slew.to_bits(), Rc::clone(&cases));
        Ok(cases)
    }

    fn cases_at(&self, slew: f64) -> Result<Vec<Case<N>>, EnvelopeFault> {
        let model = self.prepared.model;
        let braced = model.influence(slew)?;
        let rows = self.prepared.rows(&braced, &self.observed)?;
        let without = |foot_lost, condition| -> Result<Option<Case<N>>, EnvelopeFault> {
            let Some(at) = model.influence_without_brace(slew) else {
                return Ok(None);
            };
            Ok(Some(Case {
                rows: self.prepared.rows(&at, &self.observed)?,
                condition,
                foot_lost,
                brace_slack: !foot_lost,
            }))
        };
        let mut cases = Vec::with_capacity(3);
        let mut condition = None;
        if self.plan.two_states {
            let axial = self.prepared.rows(&braced, &BraceAxial)?;
            if self.prepared.support(&axial, &[-1.0], slew) > SLACK_N {
                cases.extend(without(false, Some(axial.along(&[-1.0])))?);
                condition = Some(axial);
            }
        }
        cases.insert(0, Case { rows, condition, foot_lost: false, brace_slack: false });
        if self.plan.may_lose_foot {
            let lost = without(true, None)?;
            cases.push(lost.ok_or(EnvelopeFault::FallsWithoutFoot)?);
        }
        Ok(cases)
    }

    /// Weights on the numbers in arm axes that make one of them in the reported axes.
    fn row_weights(&self, row: usize, sign: f64, slew: f64) -> [f64; N] {
        let mut w = [0.0; N];
        let across = row % 3;
        if self.axes == Axes::Arm || across == 2 {
            w[row] = sign;
            return w;
        }
        let (sin, cos) = slew.sin_cos();
        let first = row - across;
        (w[first], w[first + 1]) = if across == 0 { (sign * cos, -sign * sin) } else { (sign * sin, sign * cos) };
        w
    }

    fn direction_weights(row: usize, direction: f64) -> [f64; N] {
        let mut w = [0.0; N];
        (w[row + 1], w[row]) = direction.sin_cos();
        w
    }
}

/// The longest vector whose direction lies between two, `step` apart, if along them it reaches no further
/// than `a` and `b`: r with r·cos x = a and r·cos(step − x) = b.
fn longest_between(a: f64, b: f64, step: f64) -> f64 {
    let (sin, cos) = step.sin_cos();
    if a <= 0.0 || b <= 0.0 || b < a * cos || a < b * cos {
        return a.max(b);
    }
    (a * a + b * b - 2.0 * a * b * cos).sqrt() / sin
}

/// The same slew above −π and up to π.
fn within_turn(slew: f64) -> f64 {
    PI - (PI - slew).rem_euclid(TAU)
}

/// Components in arm axes become components in structure axes.
fn turn(numbers: &mut [f64], slew: f64) {
    let (sin, cos) = slew.sin_cos();
    for triple in numbers.chunks_exact_mut(3) {
        let (x, y) = (triple[0], triple[1]);
        triple[0] = cos * x - sin * y;
        triple[1] = sin * x + cos * y;
    }
}

/// Which states of the brace count, and whether it goes slack: looked at once, by the least axial
/// force that the brace would have if it could be pressed.
pub(super) fn brace_plan(
    model: &UnitModel,
    actions: &Actions,
    prepared: &Prepared<'_>,
    slews: &Slews,
) -> Result<(BracePlan, Slack), EnvelopeFault> {
    let has_foot = model.depends_on_slew();
    let mut plan = BracePlan { two_states: false, may_lose_foot: has_foot && actions.foot == FootCase::HoldsOrLost };
    if !model.unit().brace.pulls_only() {
        return Ok((plan, Slack::Never));
    }
    let one_state = BracePlan { two_states: false, may_lose_foot: false };
    let engine = Engine::new(prepared, BraceAxial, Axes::Arm, slews.clone(), one_state)?;
    let least = engine.extreme(Component::Axial, Part::Row(0), Sense::Min)?;
    let Some(least) = least.filter(|e| e.value < -SLACK_N) else {
        return Ok((plan, Slack::Never));
    };
    plan.two_states = true;
    let (slew_rad, axial_n) = (least.slew_rad, least.value);
    let stands = model.influence_without_brace(slew_rad).is_some();
    let slack =
        if stands { Slack::StandsWithout { slew_rad, axial_n } } else { Slack::Mechanism { slew_rad, axial_n } };
    Ok((plan, slack))
}
