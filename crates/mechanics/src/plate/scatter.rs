//! Points spread evenly round a state, ever closer and always round the worst so far.

use super::evenly::evenly;
use super::search::{Judge, Search};
use crate::envelope::{EnvelopeFault, Way};

/// How far points are scattered at first and at last, rad.
const WIDEST_RAD: f64 = 0.15;
const CLOSEST_RAD: f64 = 2e-3;

/// Looks round a candidate at so many points.
pub(super) fn round(
    search: &mut Search<'_>,
    start: usize,
    judge: &Judge<'_>,
    count: usize,
) -> Result<(), EnvelopeFault> {
    let Some((set, answers)) = search.answers_of(start) else { return Ok(()) };
    let ways = answers.ways(&search.states[start]);
    let (mut here, mut value) = (start, search.value(judge, start));
    let spread = evenly(ways.len());
    for k in 0..count {
        let size = WIDEST_RAD * (CLOSEST_RAD / WIDEST_RAD).powf(k as f64 / count as f64);
        let by = |share: f64| size * (2.0 * (share * (k + 1) as f64).fract() - 1.0);
        let toward: Vec<(Way, f64)> = ways.iter().zip(&spread).map(|(way, share)| (*way, by(*share))).collect();
        if let Some(state) = search.answers[set].1.moved(&search.states[here], &toward)? {
            let index = search.solve(set, state);
            let next = search.value(judge, index);
            if next > value {
                (here, value) = (index, next);
            }
        }
    }
    Ok(())
}
