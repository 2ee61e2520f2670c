//! The states of the brace at one slew: in place, slack, its foot lost, each with its own answers.

use super::prepared::Prepared;
use super::rows::Rows;
use super::state::State;

/// Doublings of the multiplier before a condition counts as met in the limit only.
const DOUBLINGS: u32 = 120;

/// Halvings of the multiplier's interval: down to the last digit.
const HALVINGS: u32 = 300;

/// A value and its bound that differ by less than this share are the same: a few roundings.
const SAME_SHARE: f64 = 1e-13;

/// Answers in one state of the brace, and the condition under which that state holds.
#[derive(Debug, Clone)]
pub(super) struct Case<const N: usize> {
    pub rows: Rows<N>,
    /// Must not be negative: the brace's axial force, or its negative.
    pub condition: Option<Rows<1>>,
    pub brace: BraceState,
}

/// What has become of the brace.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum BraceState {
    /// It is in place, or there is none.
    Holds,
    /// It only pulls and would be pressed.
    Slack,
    /// Its foot is lost.
    FootLost,
}

impl<const N: usize> Case<N> {
    /// The greatest weighted sum; `None` if the state never holds. Good enough to search by, 1e-9; the
    /// value that is reported comes from [`Case::state`]. A sum that isn't above `enough` need not be told: then any number
    /// from it up to `enough` is the answer.
    pub fn support(&self, with: &Prepared<'_>, w: &[f64; N], slew: f64, enough: f64) -> Option<f64> {
        let Some(condition) = &self.condition else {
            return Some(with.support(&self.rows, w, slew));
        };
        if with.support(condition, &[1.0], slew) < 0.0 {
            return None;
        }
        let at = |factor: f64| with.support_with(&self.rows, w, (condition, factor), slew);
        Some(least_of_convex(at, self.rows.scale(w) / condition.scale(&[1.0]), enough))
    }

    /// A state that attains it.
    pub fn state(&self, with: &Prepared<'_>, w: &[f64; N], slew: f64) -> Option<State> {
        let Some(condition) = &self.condition else {
            return Some(with.state(&self.rows, w, slew));
        };
        let goal = self.rows.along(w);
        under_condition(with, &goal, condition, slew)
    }
}

/// A place on a convex function: factor, value, slope.
#[derive(Clone, Copy)]
struct Touch {
    factor: f64,
    value: f64,
    slope: f64,
}

impl Touch {
    /// The factor at which its tangent and another's meet, and their value there: nothing of the function between them is lower.
    fn meets(&self, other: &Self) -> (f64, f64) {
        let along =
            (other.value - self.value - other.slope * (other.factor - self.factor)) / (self.slope - other.slope);
        (self.factor + along, self.value + self.slope * along)
    }
}

/// The least value over factors ≥ 0 of a convex function whose factor is of the size of `scale`, or any value not below it
/// that isn't above `enough`.
///
/// Between a place where it falls and one where it rises the next is where the straight line between their slopes vanishes;
/// where that leaves most of the stretch, the place where their tangents meet, and then the middle. The tangents bound the
/// least value from below, the places looked at from above.
fn least_of_convex(at: impl Fn(f64) -> (f64, f64), scale: f64, enough: f64) -> f64 {
    let touch = |factor: f64| {
        let (value, slope) = at(factor);
        Touch { factor, value, slope }
    };
    let mut below = touch(0.0);
    if below.slope >= 0.0 || below.value <= enough {
        return below.value;
    }
    let mut above = touch(scale);
    let mut doublings = 0;
    while above.slope < 0.0 && doublings < DOUBLINGS && above.value > enough {
        below = above;
        above = touch(2.0 * above.factor);
        doublings += 1;
    }
    let mut least = below.value.min(above.value);
    for round in 0..HALVINGS {
        if above.slope < 0.0 || least <= enough {
            break;
        }
        let (corner, bound) = below.meets(&above);
        if least - bound <= SAME_SHARE * least.abs() {
            break;
        }
        let width = above.factor - below.factor;
        let next = match round % 3 {
            0 => below.factor + width * (below.slope / (below.slope - above.slope)),
            1 => corner,
            _ => f64::midpoint(below.factor, above.factor),
        };
        if !(below.factor < next && next < above.factor) {
            break;
        }
        let here = touch(next);
        least = least.min(here.value);
        if here.slope < 0.0 {
            below = here;
        } else {
            above = here;
        }
    }
    least
}

/// Where the goal is greatest while the condition isn't negative.
///
/// By duality it is min over λ ≥ 0 of the greatest goal + λ·condition. As λ grows, the maximizer's
/// condition rises; where it passes 0, the states on both sides are mixed so that it is 0.
fn under_condition(with: &Prepared<'_>, goal: &Rows<1>, condition: &Rows<1>, slew: f64) -> Option<State> {
    let at = |factor: f64| with.state(&goal.plus(condition, factor), &[1.0], slew);
    let margin = |state: &State| condition.of(state)[0];
    let mix = |below: &State, above: &State| {
        let (under, over) = (margin(below), margin(above));
        below.between(above, over / (over - under))
    };
    let free = at(0.0);
    if margin(&free) >= 0.0 {
        return Some(free);
    }
    let most = with.state(condition, &[1.0], slew);
    if margin(&most) < 0.0 {
        return None;
    }
    let (mut low, mut high) = (0.0, goal.scale(&[1.0]) / condition.scale(&[1.0]));
    let (mut below, mut above) = (free, at(high));
    let mut tries = 0;
    while margin(&above) < 0.0 {
        tries += 1;
        if tries > DOUBLINGS {
            return Some(most);
        }
        (low, below) = (high, above);
        high *= 2.0;
        above = at(high);
    }
    for round in 0..HALVINGS {
        // The mix is allowed and the multiplier bounds from above; when they meet there is no more to gain.
        let mixed = mix(&below, &above);
        let [first, second] = [(low, &below), (high, &above)].map(|(factor, state)| {
            let slope = margin(state);
            Touch { factor, value: goal.of(state)[0] + factor * slope, slope }
        });
        let bound = first.value.min(second.value);
        if bound - goal.of(&mixed)[0] <= SAME_SHARE * bound.abs() {
            return Some(mixed);
        }
        let next = match round % 3 {
            0 => low + (high - low) * (first.slope / (first.slope - second.slope)),
            1 => first.meets(&second).0,
            _ => f64::midpoint(low, high),
        };
        let next = if low < next && next < high { next } else { f64::midpoint(low, high) };
        let state = at(next);
        if margin(&state) < 0.0 {
            (low, below) = (next, state);
        } else {
            (high, above) = (next, state);
        }
    }
    Some(mix(&below, &above))
}
