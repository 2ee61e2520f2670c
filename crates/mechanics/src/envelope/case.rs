//! The states of the brace at one slew: in place, slack, its foot lost, each with its own answers.

use super::prepared::Prepared;
use super::rows::Rows;
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
    pub foot_lost: bool,
    pub brace_slack: bool,
}

impl<const N: usize> Case<N> {
    /// The greatest weighted sum; `None` if the state never holds.
    pub fn support(&self, with: &Prepared<'_>, w: &[f64; N], slew: f64) -> Option<f64> {
        if self.condition.is_none() {
            return Some(with.support(&self.rows, w, slew));
        }
        let state = self.state(with, w, slew)?;
        let numbers = self.rows.of(&state);
        Some(numbers.iter().zip(w).map(|(n, w)| n * w).sum())
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

/// Where the goal is greatest while the condition isn't negative.
///
/// By duality it is min over λ ≥ 0 of the greatest goal + λ·condition. As λ grows, the maximizer's
/// condition rises; where it passes 0, the states on both sides are mixed so that it is 0.
fn under_condition(with: &Prepared<'_>, goal: &Rows<1>, condition: &Rows<1>, slew: f64) -> Option<State> {
    let at = |factor: f64| with.state(&goal.plus(condition, factor), &[1.0], slew);
    let margin = |state: &State| condition.of(state)[0];
    let free = at(0.0);
    if margin(&free) >= 0.0 {
        return Some(free);
    }
    let most = with.state(condition, &[1.0], slew);
    if margin(&most) < 0.0 {
        return None;
    }
    let (mut low, mut high) = (0.0, 1.0);
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
        let middle = f64::midpoint(low, high);
        let state = at(middle);
        if margin(&state) < 0.0 {
            (low, below) = (middle, state);
        } else {
            (high, above) = (middle, state);
        }
    }
    let (under, over) = (margin(&below), margin(&above));
    Some(below.between(&above, over / (over - under)))
}
