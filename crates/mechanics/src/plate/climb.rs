//! From one state of what acts on a plate to a worse one nearby, until none is.

use super::evenly::evenly;
use super::search::{Judge, Search, judged};
use crate::envelope::{EnvelopeFault, Way};

/// The first step, rad: half the distance of the slews first looked at; and the last.
const FIRST_STEP_RAD: f64 = 0.18;
const LAST_STEP_RAD: f64 = 2e-3;
/// A share of the value that is no gain worth another round of steps.
const NO_GAIN: f64 = 1e-5;
/// How far points are scattered at first, rad.
const WIDEST_RAD: f64 = 0.15;

/// Solutions that one round of steps takes at most, along so many ways.
pub(super) const fn one_round(ways: usize) -> usize {
    2 * ways + 1
}

/// Climbs from a candidate with at most `budget` solutions.
pub(super) fn from(
    search: &mut Search<'_>,
    start: usize,
    judge: &Judge<'_>,
    budget: usize,
) -> Result<(), EnvelopeFault> {
    let end = search.candidates.len() + budget;
    let (mut here, mut value) = (start, judged(judge, &search.candidates[start]));
    let mut size = FIRST_STEP_RAD;
    let ways = search.ways(start);
    while size > LAST_STEP_RAD && search.candidates.len() + one_round(ways.len()) <= end && value.is_finite() {
        let (mut best, mut spread, mut toward) = (None, 0.0_f64, Vec::with_capacity(ways.len()));
        for &way in &ways {
            let mut seen = [value; 2];
            for (slot, by) in seen.iter_mut().zip([-size, size]) {
                if let Some(index) = search.step(here, &[(way, by)])? {
                    *slot = judged(judge, &search.candidates[index]);
                    best = Some(worse(best, (index, *slot)));
                    spread = spread.max((value - *slot).abs());
                }
            }
            // To turn everything and to turn the arm alone are nearly the same: the top of one of them will do.
            if way != Way::Slew {
                toward.push((way, size * vertex(seen[0], value, seen[1])));
            }
        }
        if let Some(index) = search.step(here, &toward)? {
            best = Some(worse(best, (index, judged(judge, &search.candidates[index]))));
        }
        match best {
            Some((index, next)) if next > value => {
                let gain = next - value;
                (here, value) = (index, next);
                if gain < 0.1 * spread {
                    size *= 0.4;
                }
            }
            _ => size *= 0.4,
        }
        if spread <= NO_GAIN * value.abs() {
            break;
        }
    }
    Ok(())
}

/// Looks round a candidate at points spread evenly, ever closer and always round the worst so far.
pub(super) fn scatter(
    search: &mut Search<'_>,
    start: usize,
    judge: &Judge<'_>,
    count: usize,
) -> Result<(), EnvelopeFault> {
    let (mut here, mut value) = (start, judged(judge, &search.candidates[start]));
    let ways = search.ways(start);
    let spread = evenly(ways.len());
    for k in 0..count {
        let size = WIDEST_RAD * (LAST_STEP_RAD / WIDEST_RAD).powf(k as f64 / count as f64);
        let by = |share: f64| size * (2.0 * (share * (k + 1) as f64).fract() - 1.0);
        let toward: Vec<(Way, f64)> = ways.iter().zip(&spread).map(|(way, share)| (*way, by(*share))).collect();
        if let Some(index) = search.step(here, &toward)? {
            let next = judged(judge, &search.candidates[index]);
            if next > value {
                (here, value) = (index, next);
            }
        }
    }
    Ok(())
}

fn worse(best: Option<(usize, f64)>, next: (usize, f64)) -> (usize, f64) {
    best.filter(|best| best.1 >= next.1).unwrap_or(next)
}

/// Where the parabola through three values at −1, 0, 1 is greatest, within ±1; 0 where it isn't.
fn vertex(back: f64, here: f64, ahead: f64) -> f64 {
    let bend = 2.0 * here - back - ahead;
    if bend > 0.0 && bend.is_finite() { (0.5 * (ahead - back) / bend).clamp(-1.0, 1.0) } else { 0.0 }
}
