//! From one state of a rope on a plate to a worse one nearby, until none is.

use glam::{DMat3, DVec3};

use super::rope::RopeOnPlate;
use super::search::{Candidate, Judge, States, judged};

/// The first step, rad: half the distance of the slews first looked at; and the last.
const FIRST_STEP_RAD: f64 = 0.18;
const LAST_STEP_RAD: f64 = 2e-3;
/// A share of the value that is no gain worth another round of steps.
const NO_GAIN: f64 = 1e-5;

/// Solutions that one round of steps takes at most.
pub(super) const ONE_ROUND: usize = 9;
/// How far points are scattered at first, rad.
const WIDEST_RAD: f64 = 0.15;
/// Multiples of these, less their whole parts, are spread evenly in four dimensions: powers of 1/1.16730…, the root of
/// x⁵ = x + 1 (the sequence of M. Roberts, from memory).
const SPREAD: [f64; 4] =
    [0.856_674_883_854_502_9, 0.733_891_856_627_126, 0.628_706_721_038_086_6, 0.538_597_257_223_612_3];

/// Slew with the rope turning along, slew alone, and the rope alone across and up.
#[derive(Debug, Clone, Copy, Default)]
struct Step {
    turn: f64,
    slew: f64,
    across: f64,
    up: f64,
}

impl Step {
    /// A step along one of four ways.
    fn along(way: usize, by: f64) -> Self {
        let mut step = Self::default();
        *[&mut step.turn, &mut step.slew, &mut step.across, &mut step.up][way] = by;
        step
    }
}

/// Climbs from a candidate with at most `budget` solutions; gives how many it took.
pub(super) fn from<E, F>(states: &mut States<'_, F>, start: usize, judge: &Judge<'_>, budget: usize) -> Result<usize, E>
where
    F: Fn(usize, f64) -> Result<RopeOnPlate, E>,
{
    let before = states.candidates.len();
    let mut here = states.candidates[start].clone();
    let mut value = judged(judge, &here);
    let mut size = FIRST_STEP_RAD;
    while size > LAST_STEP_RAD && states.candidates.len() - before + ONE_ROUND <= budget && value.is_finite() {
        let (mut best, mut seen) = (None, [[value; 2]; 4]);
        for (way, pair) in seen.iter_mut().enumerate() {
            for (slot, by) in pair.iter_mut().zip([-size, size]) {
                if let Some(index) = step(states, &here, Step::along(way, by))? {
                    *slot = judged(judge, &states.candidates[index]);
                    best = Some(worse(best, (index, *slot)));
                }
            }
        }
        let top = seen.map(|[back, ahead]| vertex(back, value, ahead) * size);
        let toward = Step { turn: top[0], slew: 0.0, across: top[2], up: top[3] };
        if let Some(index) = step(states, &here, toward)? {
            best = Some(worse(best, (index, judged(judge, &states.candidates[index]))));
        }
        let spread = seen.iter().flatten().map(|v| (value - v).abs()).fold(0.0, f64::max);
        match best {
            Some((index, next)) if next > value => {
                let gain = next - value;
                here = states.candidates[index].clone();
                value = next;
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
    Ok(states.candidates.len() - before)
}

/// Looks round a candidate at points spread evenly, ever closer and always round the worst so far.
pub(super) fn scatter<E, F>(states: &mut States<'_, F>, start: usize, judge: &Judge<'_>, count: usize) -> Result<(), E>
where
    F: Fn(usize, f64) -> Result<RopeOnPlate, E>,
{
    let mut here = states.candidates[start].clone();
    let mut value = judged(judge, &here);
    for k in 0..count {
        let size = WIDEST_RAD * (LAST_STEP_RAD / WIDEST_RAD).powf(k as f64 / count as f64);
        let by = |way: usize| size * (2.0 * (SPREAD[way] * (k + 1) as f64).fract() - 1.0);
        let toward = Step { turn: by(0), slew: by(1), across: by(2), up: by(3) };
        if let Some(index) = step(states, &here, toward)? {
            let next = judged(judge, &states.candidates[index]);
            if next > value {
                (here, value) = (states.candidates[index].clone(), next);
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

/// Solves the state a step away; none where the step leads nowhere.
fn step<E, F>(states: &mut States<'_, F>, from: &Candidate, step: Step) -> Result<Option<usize>, E>
where
    F: Fn(usize, f64) -> Result<RopeOnPlate, E>,
{
    let slew = states.search.slew_moved(from.slew_rad, step.turn + step.slew);
    let along = DMat3::from_rotation_z(step.turn) * from.direction;
    let across = along.cross(DVec3::Z).try_normalize().unwrap_or(DVec3::X);
    let up = across.cross(along);
    // The direction of the cone nearest to where the step leads is the one that makes most of it.
    let direction = states.search.cap.maximizer(along + across * step.across + up * step.up);
    if slew == from.slew_rad && direction.distance_squared(from.direction) < 1e-16 {
        return Ok(None);
    }
    states.look(from.variant, slew, direction).map(Some)
}
