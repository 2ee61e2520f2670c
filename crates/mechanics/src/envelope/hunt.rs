//! The search for one extreme in one state of the brace: over slew, and for a resultant over direction.

use std::f64::consts::{FRAC_PI_2, PI, TAU};
use std::rc::Rc;

use super::case::{BraceState, Case};
use super::engine::{Axes, Engine, Part};
use super::extreme::Sense;
use super::fault::EnvelopeFault;
use super::observed::Observed;
use super::search::{golden, greatest, within_turn};
use super::slews::Slews;
use super::state::State;

/// Grid of slews and of directions, rad: 7.5° hits every 15°.
const GRID: f64 = PI / 24.0;

/// To which slews and directions are refined, rad. Values are good to its square where smooth, and to
/// itself, as a share, at a kink.
const FINE: f64 = 1e-9;

/// The same for a search within a search, which a climb then completes.
const NESTED: f64 = 1e-6;

/// The same for a first look, from which hills are only told apart.
const COARSE: f64 = 1e-4;

/// Directions in which a resultant is looked at first: every 15°.
const DIRECTIONS: u32 = 24;

/// From how many of them it is climbed. Where more are in sight the resultant is as good as a circle.
const HILLS: usize = 8;

/// Rounds of a climb, and steps of an ascent: far more than a hill needs.
const ROUNDS: u32 = 12;
const ASCENT: u32 = 60;

/// Where a search ended: slew, state, and the N numbers there, arm axes.
pub(super) struct Found<const N: usize> {
    pub slew: f64,
    pub numbers: [f64; N],
    pub brace: BraceState,
    pub state: State,
}

/// A search in one state of the brace, or in the better of two.
pub(super) struct Hunt<'e, const N: usize, O> {
    engine: &'e Engine<'e, N, O>,
    states: &'static [BraceState],
    /// Whether a slew only turns components.
    free: bool,
    /// Slews at which answers may be sharp.
    sharp: Vec<f64>,
}

impl<'e, const N: usize, O: Observed<N>> Hunt<'e, N, O> {
    pub fn new(engine: &'e Engine<'e, N, O>, states: &'static [BraceState]) -> Self {
        Self { engine, states, free: engine.turns_freely(states), sharp: engine.prepared.sharp_slews() }
    }

    /// The extreme of a component; `None` if the state holds at no slew.
    pub fn find(&self, part: Part, sense: Sense) -> Result<Option<Found<N>>, EnvelopeFault> {
        let sign = match sense {
            Sense::Max => 1.0,
            Sense::Min => -1.0,
        };
        match part {
            Part::Row(row) => self.row(row, sign),
            Part::Resultant(row) => self.resultant(row),
        }
    }

    fn row(&self, row: usize, sign: f64) -> Result<Option<Found<N>>, EnvelopeFault> {
        let slew = if self.free && (self.engine.axes == Axes::Arm || row % 3 == 2) {
            self.engine.slews.any()
        } else if self.free && self.engine.slews == Slews::Turn {
            // Some slew turns the direction of the greatest resultant into this component's own.
            let own = if row.is_multiple_of(3) { 0.0 } else { FRAC_PI_2 };
            let own = if sign < 0.0 { own + PI } else { own };
            let slew = own - self.longest(row - row % 3)?;
            within_turn(slew)
        } else {
            let weights = |slew| row_weights(self.engine.axes, row, sign, slew);
            greatest(&self.engine.slews, &self.sharp, GRID, FINE, |slew| self.support(&weights(slew), slew))?.0
        };
        self.found(&row_weights(self.engine.axes, row, sign, slew), slew)
    }

    /// The direction, in arm axes, in which a resultant that turns freely is greatest.
    fn longest(&self, row: usize) -> Result<f64, EnvelopeFault> {
        let known = self.engine.longest.borrow().iter().find(|k| (k.0, k.1) == (row, self.states)).map(|k| k.2);
        if let Some(direction) = known {
            return Ok(direction);
        }
        let (direction, _) = greatest(&Slews::Turn, &[], 2.0 * GRID, FINE, |direction| {
            self.support(&direction_weights(row, direction), 0.0)
        })?;
        self.engine.longest.borrow_mut().push((row, self.states, direction));
        Ok(direction)
    }

    /// max over directions u of the greatest u·(a, b): the length of the longest (a, b).
    fn resultant(&self, row: usize) -> Result<Option<Found<N>>, EnvelopeFault> {
        if self.free {
            let weights = direction_weights(row, self.longest(row)?);
            let slew = self.engine.slews.any();
            return self.ascend(row, weights, slew);
        }
        if let Slews::At(list) = &self.engine.slews {
            return self.resultant_at(row, list);
        }
        let mut best = None;
        let mut length = f64::NEG_INFINITY;
        for (direction, slew) in self.hills(row)? {
            let start = self.ascend(row, direction_weights(row, direction - slew), slew)?;
            let found = self.climb(row, start)?;
            let here = length_of(row, found.as_ref());
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
            let (slew, reach) = self.best_slew(row, direction, COARSE)?;
            seen.push((direction, slew, reach));
        }
        let top = seen.iter().copied().fold(seen[0], |a, b| if b.2 > a.2 { b } else { a });
        let in_sight = |i: usize, j: usize| longest_between(seen[i].2, seen[j].2, step) > top.2;
        let last = seen.len() - 1;
        let beside_a_hill =
            |i: usize| in_sight(i, if i == last { 0 } else { i + 1 }) || in_sight(if i == 0 { last } else { i - 1 }, i);
        let mut hills: Vec<_> = (0..=last).filter(|&i| beside_a_hill(i)).map(|i| seen[i]).collect();
        hills.sort_by(|a, b| b.2.total_cmp(&a.2));
        let mut hills: Vec<(f64, f64)> = hills.into_iter().take(HILLS).map(|h| (h.0, h.1)).collect();
        // On a ridge with a kink only a search within a search gets on.
        let (direction, _) = golden(top.0 - step, top.0 + step, NESTED, &mut |direction| {
            Ok::<f64, EnvelopeFault>(self.best_slew(row, direction, NESTED)?.1)
        })?;
        hills.push((direction, self.best_slew(row, direction, NESTED)?.0));
        Ok(hills)
    }

    /// The longest resultant at any of some single slews.
    fn resultant_at(&self, row: usize, list: &[f64]) -> Result<Option<Found<N>>, EnvelopeFault> {
        let mut best = None;
        let mut length = f64::NEG_INFINITY;
        for &slew in list {
            let (direction, _) = greatest(&Slews::Turn, &[], 2.0 * GRID, NESTED, |direction| {
                self.support(&direction_weights(row, direction), slew)
            })?;
            let found = self.ascend(row, direction_weights(row, direction), slew)?;
            let here = length_of(row, found.as_ref());
            if found.is_some() && here > length {
                (best, length) = (found, here);
            }
        }
        Ok(best)
    }

    /// The slew at which a resultant reaches furthest in a direction of the structure.
    fn best_slew(&self, row: usize, direction: f64, fine: f64) -> Result<(f64, f64), EnvelopeFault> {
        greatest(&self.engine.slews, &self.sharp, 2.0 * GRID, fine, |slew| {
            self.support(&direction_weights(row, direction - slew), slew)
        })
    }

    /// Uphill by direction and by slew in turn. The direction is kept once as seen from the arm and once
    /// as seen from the structure, since ridges run along either.
    fn climb(&self, row: usize, start: Option<Found<N>>) -> Result<Option<Found<N>>, EnvelopeFault> {
        let mut best = start;
        let mut length = length_of(row, best.as_ref());
        for round in 0..ROUNDS {
            let before = length;
            for keeps in [Axes::Arm, Axes::Structure] {
                let Some(found) = &best else { return Ok(None) };
                let next = self.step_in_slew(row, found, keeps, round)?;
                let longer = length_of(row, next.as_ref());
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
    fn step_in_slew(
        &self,
        row: usize,
        found: &Found<N>,
        keeps: Axes,
        round: u32,
    ) -> Result<Option<Found<N>>, EnvelopeFault> {
        let numbers = &found.numbers;
        let direction = numbers[row + 1].atan2(numbers[row]);
        let weights = |slew: f64| {
            let seen_from_arm = match keeps {
                Axes::Arm => direction,
                Axes::Structure => direction + found.slew - slew,
            };
            direction_weights(row, seen_from_arm)
        };
        // The top is near; later rounds only correct.
        let reach = GRID / f64::from(1 << round.min(20));
        let around = self.engine.slews.around(found.slew, reach);
        let (slew, _) = greatest(&around, &self.sharp, reach, FINE, |s| self.support(&weights(s), s))?;
        self.ascend(row, weights(slew), slew)
    }

    /// Uphill by direction alone: along the resultant of the best state the best state is at least as
    /// good.
    fn ascend(&self, row: usize, weights: [f64; N], slew: f64) -> Result<Option<Found<N>>, EnvelopeFault> {
        let mut best = self.found(&weights, slew)?;
        let mut length = length_of(row, best.as_ref());
        for _ in 0..ASCENT {
            let Some(found) = &best else { break };
            let numbers = &found.numbers;
            let weights = direction_weights(row, numbers[row + 1].atan2(numbers[row]));
            let next = self.found(&weights, slew)?;
            let longer = length_of(row, next.as_ref());
            if longer <= length * (1.0 + 1e-14) {
                break;
            }
            (best, length) = (next, longer);
        }
        Ok(best)
    }

    fn cases(&self, slew: f64) -> Result<Rc<[Case<N>]>, EnvelopeFault> {
        let slew = if self.free { self.engine.slews.any() } else { slew };
        if self.states == [BraceState::FootLost] { self.engine.footless(slew) } else { self.engine.footed(slew) }
    }

    fn support(&self, w: &[f64; N], slew: f64) -> Result<f64, EnvelopeFault> {
        let cases = self.cases(slew)?;
        let mut best = f64::NEG_INFINITY;
        for case in cases.iter().filter(|c| self.states.contains(&c.brace)) {
            // Without its condition a state can only do more.
            if case.condition.is_none() || self.engine.prepared.support(&case.rows, w, slew) > best {
                best = best.max(case.support(self.engine.prepared, w, slew, best).unwrap_or(best));
            }
        }
        Ok(best)
    }

    fn found(&self, w: &[f64; N], slew: f64) -> Result<Option<Found<N>>, EnvelopeFault> {
        let cases = self.cases(slew)?;
        let mut best: Option<(f64, Found<N>)> = None;
        for case in cases.iter().filter(|c| self.states.contains(&c.brace)) {
            let Some(state) = case.state(self.engine.prepared, w, slew) else {
                continue;
            };
            let numbers = case.rows.of(&state);
            let value: f64 = numbers.iter().zip(w).map(|(n, w)| n * w).sum();
            if best.as_ref().is_none_or(|(most, _)| value > *most) {
                best = Some((value, Found { slew, numbers, brace: case.brace, state }));
            }
        }
        Ok(best.map(|(_, found)| found))
    }
}

/// Length of the resultant of a row and the next in a found state.
fn length_of<const N: usize>(row: usize, found: Option<&Found<N>>) -> f64 {
    found.map_or(0.0, |f| f.numbers[row].hypot(f.numbers[row + 1]))
}

/// Weights on the numbers in arm axes that make one of them in the reported axes.
fn row_weights<const N: usize>(axes: Axes, row: usize, sign: f64, slew: f64) -> [f64; N] {
    let mut w = [0.0; N];
    let across = row % 3;
    if axes == Axes::Arm || across == 2 {
        w[row] = sign;
        return w;
    }
    let (sin, cos) = slew.sin_cos();
    let first = row - across;
    (w[first], w[first + 1]) = if across == 0 { (sign * cos, -sign * sin) } else { (sign * sin, sign * cos) };
    w
}

/// Weights that make the share of a resultant in a direction, arm axes.
fn direction_weights<const N: usize>(row: usize, direction: f64) -> [f64; N] {
    let mut w = [0.0; N];
    (w[row + 1], w[row]) = direction.sin_cos();
    w
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

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: a vector of length 2 at 5° reaches 2·cos 5° and 2·cos 10° along 0° and 15°.
    #[test]
    fn the_longest_between_two_directions_is_the_vector_that_reaches_both() {
        let [five, ten, step] = [5f64, 10.0, 15.0].map(f64::to_radians);
        let length = longest_between(2.0 * five.cos(), 2.0 * ten.cos(), step);
        assert!((length - 2.0).abs() < 1e-12, "{length}");
        assert_eq!(longest_between(1.0, 0.5, step), 1.0);
    }
}
