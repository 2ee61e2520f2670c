//! The slews that are looked at, once checked and cut to what a foot allows.

use std::f64::consts::{PI, TAU};

use super::actions::SlewRange;
use super::fault::EnvelopeFault;
use crate::unit::{Brace, UnitModel};

/// Slack in comparing slews with an allowed turn, rad.
const SAME_SLEW_RAD: f64 = 1e-9;

/// A checked set of slews.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Slews {
    Turn,
    Between(f64, f64),
    At(Vec<f64>),
}

impl Slews {
    pub fn new(range: &SlewRange, model: &UnitModel) -> Result<Self, EnvelopeFault> {
        let slews = match range {
            SlewRange::WholeTurn => return Ok(whole(model)),
            SlewRange::Between { from_rad, to_rad } => between(*from_rad, *to_rad)?,
            SlewRange::At(list) => at(list)?,
        };
        if let Some((bearing, allowed)) = foot(model) {
            slews.within(bearing, allowed)?;
        }
        Ok(slews)
    }

    /// A slew for values that are the same at all of them: 0 if it is one.
    pub fn any(&self) -> f64 {
        match self {
            Self::Turn => 0.0,
            Self::Between(from, to) if (*from..=*to).contains(&0.0) => 0.0,
            Self::Between(from, _) => *from,
            Self::At(list) => {
                list.iter().copied().find(|s| *s == 0.0).unwrap_or_else(|| list.first().copied().unwrap_or_default())
            }
        }
    }

    /// The slew a number of whole turns from this one that belongs to a range; `None` if none does.
    pub fn same_turn(&self, slew: f64) -> Option<f64> {
        match self {
            Self::Turn => Some(super::search::within_turn(slew)),
            Self::Between(from, to) => {
                let turned = from + (slew - from).rem_euclid(TAU);
                (turned <= *to).then_some(turned)
            }
            Self::At(list) => list.iter().copied().find(|s| *s == slew),
        }
    }

    /// The slews within `reach` of one of them.
    pub fn around(&self, slew: f64, reach: f64) -> Self {
        match self {
            Self::Turn => Self::Between(slew - reach, slew + reach),
            Self::Between(from, to) => Self::Between((slew - reach).max(*from), (slew + reach).min(*to)),
            Self::At(_) => Self::At(vec![slew]),
        }
    }

    /// Slews spread over the range, `count` to a whole turn, with both ends of a part of one.
    pub fn spread(&self, count: usize) -> Vec<f64> {
        match self {
            Self::Turn => (0..count).map(|i| TAU * i as f64 / count as f64).collect(),
            Self::Between(from, to) => {
                let pieces = ((to - from) / TAU * count as f64).ceil().max(1.0);
                (0..=pieces as usize).map(|i| from + (to - from) * i as f64 / pieces).collect()
            }
            Self::At(list) => list.clone(),
        }
    }

    /// A slew moved by a step and kept within the range; where only certain slews are allowed, it stays.
    pub fn moved(&self, slew: f64, step: f64) -> f64 {
        match self {
            Self::Turn if step != 0.0 => (slew + step).rem_euclid(TAU),
            Self::Between(from, to) => (slew + step).max(*from).min(*to),
            Self::Turn | Self::At(_) => slew,
        }
    }

    fn within(&self, bearing: f64, allowed: f64) -> Result<(), EnvelopeFault> {
        if allowed >= PI - SAME_SLEW_RAD {
            return Ok(());
        }
        let off = |slew: f64| (slew - bearing + PI).rem_euclid(TAU) - PI;
        let beyond = |slew_rad: f64| EnvelopeFault::BeyondFoot { slew_rad, allowed_rad: allowed };
        let check = |slew: f64| {
            if off(slew).abs() <= allowed + SAME_SLEW_RAD { Ok(()) } else { Err(beyond(slew)) }
        };
        match self {
            Self::Turn => Err(beyond(bearing + PI)),
            Self::At(list) => list.iter().try_for_each(|s| check(*s)),
            Self::Between(from, to) => {
                check(*from)?;
                check(*to)?;
                // Both ends are allowed; the way between them may still run around the back.
                if off(*from) + (to - from) <= allowed + 2.0 * SAME_SLEW_RAD {
                    Ok(())
                } else {
                    Err(beyond(bearing + allowed))
                }
            }
        }
    }
}

fn foot(model: &UnitModel) -> Option<(f64, f64)> {
    match model.unit().brace {
        Brace::RearFoot { bearing_rad, allowed_turn_rad, .. } => Some((bearing_rad, allowed_turn_rad)),
        _ => None,
    }
}

fn whole(model: &UnitModel) -> Slews {
    match foot(model) {
        Some((bearing, allowed)) if allowed < PI - SAME_SLEW_RAD => {
            Slews::Between(bearing - allowed, bearing + allowed)
        }
        _ => Slews::Turn,
    }
}

fn between(from_rad: f64, to_rad: f64) -> Result<Slews, EnvelopeFault> {
    let span = to_rad - from_rad;
    if !span.is_finite() || span < 0.0 {
        return Err(EnvelopeFault::SlewRange { from_rad, to_rad });
    }
    Ok(if span >= TAU - SAME_SLEW_RAD { Slews::Turn } else { Slews::Between(from_rad, to_rad) })
}

fn at(list: &[f64]) -> Result<Slews, EnvelopeFault> {
    let range = |at: f64| EnvelopeFault::SlewRange { from_rad: at, to_rad: at };
    if list.is_empty() {
        return Err(range(f64::NAN));
    }
    match list.iter().find(|s| !s.is_finite()) {
        Some(&bad) => Err(range(bad)),
        None => Ok(Slews::At(list.to_vec())),
    }
}
