//! The states of the brace at one slew: in place, slack, its foot lost, each with its own answers.

use std::convert::Infallible;

use super::prepared::Prepared;
use super::rows::Rows;
use super::search::golden;
use super::state::State;

/// Doublings of the multiplier before a condition counts as met in the limit only.
const DOUBLINGS: u32 = 120;

/// Halvings of the multiplier's interval: down to the last digit.
const HALVINGS: u32 = 100;

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
    /// value that is reported comes from [`Case::state`].
    pub fn support(&self, with: &Prepared<'_>, w: &[f64; N], slew: f64) -> Option<f64> {
        let Some(condition) = &self.condition else {
            return Some(with.support(&self.rows, w, slew));
        };
        if with.support(condition, &[1.0], slew) < 0.0 {
            return None;
        }
        let at = |factor: f64| with.support_with(&self.rows, w, (condition, factor), slew);
        Some(least_of_convex(at, self.rows.scale(w) / condition.scale(&[1.0])))
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

/// The least value over factors ≥ 0 of a convex function whose factor is of the size of `scale`.
fn least_of_convex(at: impl Fn(f64) -> f64, scale: f64) -> f64 {
    let mut end = scale;
    let (mut before, mut here) = (at(0.0), at(end));
    for _ in 0..DOUBLINGS {
        if here >= before {
            break;
        }
        end *= 2.0;
        (before, here) = (here, at(end));
    }
    let mut f = |x: f64| Ok::<f64, Infallible>(-at(x));
    let Ok((_, least)) = golden(0.0, end, 1e-9 * end, &mut f);
    at(0.0).min(-least)
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
    for _ in 0..HALVINGS {
        // The mix is allowed and the multiplier bounds from above; when they meet there is no more to gain.
        let mixed = mix(&below, &above);
        let bound = (goal.of(&below)[0] + low * margin(&below)).min(goal.of(&above)[0] + high * margin(&above));
        if bound - goal.of(&mixed)[0] <= 1e-13 * bound.abs() {
            return Some(mixed);
        }
        let middle = f64::midpoint(low, high);
        let state = at(middle);
        if margin(&state) < 0.0 {
            (low, below) = (middle, state);
        } else {
            (high, above) = (middle, state);
        }
    }
    Some(mix(&below, &above))
}
