//! The first steps of a search: the states that tilt, lift, push and twist a plate most toward sides all around.

use std::f64::consts::TAU;

use glam::DVec3;

use super::on_unit::tilting;
use super::search::Search;
use crate::envelope::EnvelopeFault;
use crate::wrench::Wrench;

/// Slews to a whole turn, from which the one that makes most of each side is taken.
const SLEWS: usize = 8;
/// Sides toward which the plate is tilted, tilted and twisted, and pushed.
const SIDES: usize = 8;
const TWISTED: usize = 8;
const PUSHES: usize = 4;
/// The weight of a twist beside a tilt of weight 1.
const TWIST: f64 = 0.8;
/// The weight of a lift, or of a push down, beside a tilt of weight 1, as a share of the plate's size.
const LIFT: f64 = 0.3;
/// How many slews without the pull of any rope, and sides toward which the plate is tilted there.
const UNLOADED_SLEWS: usize = 2;
const UNLOADED_SIDES: usize = 4;

/// Looks at every set of actions: tilted toward sides all around, lifted and pressed, and without any rope.
pub(super) fn around(search: &mut Search<'_>) -> Result<(), EnvelopeFault> {
    let slews = search.unit.slews(SLEWS);
    let lift = LIFT * search.plate.size_m();
    for set in 0..search.answers.len() {
        for side in 0..SIDES {
            toward(search, set, &slews, tilted(turned(set, side as f64, SIDES), lifted(set, side) * lift, 0.0))?;
        }
        for along in [DVec3::Z, DVec3::NEG_Z] {
            toward(search, set, &slews, Wrench { force_n: along, moment_nm: DVec3::ZERO })?;
        }
        let count = UNLOADED_SLEWS.min(slews.len());
        for index in 0..count {
            unloaded(search, set, slews[index * slews.len() / count])?;
        }
    }
    Ok(())
}

/// Looks at a set of actions more closely: between the sides of the first look, twisted both ways, and pushed.
pub(super) fn closer(search: &mut Search<'_>, set: usize) -> Result<(), EnvelopeFault> {
    let slews = search.unit.slews(SLEWS);
    let lift = LIFT * search.plate.size_m();
    for side in 0..SIDES {
        let between = turned(set, side as f64 + 0.5, SIDES);
        toward(search, set, &slews, tilted(between, lift, 0.0))?;
        toward(search, set, &slews, tilted(between, -lift, 0.0))?;
        toward(search, set, &slews, tilted(turned(set, side as f64, SIDES), -lifted(set, side) * lift, 0.0))?;
    }
    for side in 0..TWISTED {
        for twist in [-TWIST, TWIST] {
            toward(search, set, &slews, tilted(turned(set, side as f64 + 0.25, TWISTED), lift, twist))?;
        }
    }
    for push in 0..PUSHES {
        let (sin, cos) = turned(set, push as f64, PUSHES).sin_cos();
        let twist = if push % 2 == 0 { 1.0 } else { -1.0 } / search.plate.size_m();
        toward(search, set, &slews, Wrench::from_six([cos, sin, 0.0, 0.0, 0.0, twist]))?;
    }
    Ok(())
}

/// Whether the first look at a side lifts the plate, 1, or presses it, −1: in turn.
fn lifted(set: usize, side: usize) -> f64 {
    if (side + set).is_multiple_of(2) { 1.0 } else { -1.0 }
}

/// One of so many sides; those of each set lie between those of the set before.
fn turned(set: usize, side: f64, sides: usize) -> f64 {
    TAU / sides as f64 * (side + (0.618 * set as f64).fract())
}

/// The weights of a tilt toward a side with a lift and a twist.
fn tilted(side_rad: f64, lift: f64, twist: f64) -> Wrench {
    let mut weights = tilting(side_rad);
    weights.force_n.z = lift;
    weights.moment_nm.z = twist;
    weights
}

/// The states that make most of a weighted sum on the plate, at the slew among some at which it is greatest.
fn toward(search: &mut Search<'_>, set: usize, slews: &[f64], on_plate: Wrench) -> Result<(), EnvelopeFault> {
    let weights = search.unit.weights_on_base(on_plate);
    let mut best: Option<(f64, f64)> = None;
    for &slew in slews {
        let support = search.answers[set].1.support(weights, slew)?;
        if let Some(value) = support.filter(|value| best.is_none_or(|known| *value > known.1)) {
            best = Some((slew, value));
        }
    }
    let Some((slew, _)) = best else { return Ok(()) };
    for state in search.answers[set].1.toward(weights, slew)? {
        search.solve_once(set, state);
    }
    Ok(())
}

fn unloaded(search: &mut Search<'_>, set: usize, slew: f64) -> Result<(), EnvelopeFault> {
    for side in 0..UNLOADED_SIDES {
        let weights = search.unit.weights_on_base(tilting(TAU * side as f64 / UNLOADED_SIDES as f64));
        for state in search.answers[set].1.toward_unloaded(weights, slew)? {
            search.solve_once(set, state);
        }
    }
    Ok(())
}
