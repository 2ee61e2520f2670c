//! Which sets of actions do anything that no other one does as much of.

use super::evenly::evenly;
use crate::envelope::{ActionsOnBase, EnvelopeFault};
use crate::wrench::Wrench;

/// Directions of the six components, spread evenly, in which supports are compared, beside the axes themselves.
const DIRECTIONS: usize = 200;
/// Slews to a whole turn at which they are.
const SLEWS: usize = 12;
/// Slews for each direction.
const SLEWS_A_DIRECTION: usize = 3;
/// A support that is above another by less than this share of it is not above it: some roundings.
const SAME_SHARE: f64 = 1e-9;
/// The indices of the sets that are not covered by another. One is covered where its greatest weighted sum of the six
/// components is above the other's in none of many directions, at many slews; of two that are alike the first is kept.
pub(super) fn uncovered(sets: &[ActionsOnBase<'_>], lever_m: f64) -> Result<Vec<usize>, EnvelopeFault> {
    let mut kept: Vec<usize> = (0..sets.len()).collect();
    let Some(slews) = sets.first().map(|set| set.spread(SLEWS)).filter(|slews| !slews.is_empty() && sets.len() > 1)
    else {
        return Ok(kept);
    };
    let answers = sets.iter().map(ActionsOnBase::on_base).collect::<Result<Vec<_>, _>>()?;
    let probes: Vec<(Wrench, f64)> = directions(lever_m)
        .enumerate()
        .flat_map(|(i, direction)| {
            let slews = &slews;
            (0..SLEWS_A_DIRECTION.min(slews.len())).map(move |k| {
                let apart = slews.len().div_ceil(SLEWS_A_DIRECTION);
                (direction, slews[(i + k * apart) % slews.len()])
            })
        })
        .collect();
    let mut known = vec![vec![None; probes.len()]; sets.len()];
    let mut support = |set: usize, probe: usize| -> Result<f64, EnvelopeFault> {
        if let Some(value) = known[set][probe] {
            return Ok(value);
        }
        let (weights, slew) = probes[probe];
        let value = answers[set].support(weights, slew)?.unwrap_or(f64::NEG_INFINITY);
        known[set][probe] = Some(value);
        Ok(value)
    };
    for one in (0..sets.len()).rev() {
        for other in kept.clone() {
            if other == one {
                continue;
            }
            let mut above = false;
            for probe in 0..probes.len() {
                let (ours, theirs) = (support(one, probe)?, support(other, probe)?);
                if ours > theirs + SAME_SHARE * theirs.abs() || ours.is_nan() || theirs.is_nan() {
                    above = true;
                    break;
                }
            }
            if !above {
                kept.retain(|index| *index != one);
                break;
            }
        }
    }
    Ok(kept)
}

/// The axes both ways, then directions spread evenly; moments count by the force that makes them at the lever.
fn directions(lever_m: f64) -> impl Iterator<Item = Wrench> {
    let axes = (0..12).map(|i| {
        let mut six = [0.0; 6];
        six[i / 2] = if i % 2 == 0 { 1.0 } else { -1.0 };
        six
    });
    let steps = evenly(6);
    let spread = (1..=DIRECTIONS).map(move |k| {
        std::array::from_fn(|way| 2.0 * (steps.get(way).copied().unwrap_or_default() * k as f64).fract() - 1.0)
    });
    axes.chain(spread).map(move |six| {
        let mut weights = Wrench::from_six(six);
        weights.moment_nm /= lever_m;
        weights
    })
}
