//! The line of the brace: its pins, direction, length and give, at any slew.

use glam::DVec3;

use super::describe::{Brace, FootFrom, Unit};
use super::fault::UnitFault;
use super::station::Part;

/// Shorter braces than this are none, m.
const SHORTEST_M: f64 = 1e-6;

/// What the lower pin sits on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Lower {
    /// The mast, at this height, m.
    Mast(f64),
    /// A lug on the base, turning with the slew.
    Base,
    /// A foot of its own that doesn't slew.
    Foot,
}

/// The brace's geometry, independent of slew.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct BraceLine {
    /// Part on which the upper pin sits, and its coordinate there, m.
    pub upper_part: Part,
    pub upper_at_m: f64,
    /// Upper pin, arm axes, m.
    pub upper: DVec3,
    pub lower: Lower,
    /// Lower pin, arm axes; of a foot in structure axes, m.
    lower_pin: DVec3,
    ea_n: f64,
    foot_give_m_per_n: f64,
    pub weight_n_per_m: f64,
}

/// The brace at one slew.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct BraceAt {
    /// Lower pin, arm axes, m.
    pub lower_pin: DVec3,
    /// Unit vector from the lower to the upper pin, arm axes.
    pub axis: DVec3,
    pub length_m: f64,
    /// Extension for each newton of pull, brace and foot in a row, m/N.
    pub give_m_per_n: f64,
}

impl BraceLine {
    pub fn new(unit: &Unit) -> Option<Self> {
        let head = DVec3::new(0.0, 0.0, unit.mast_height_m);
        let on_arm = |x: f64| (Part::Arm, x, head + DVec3::X * x);
        let (upper, lower, lower_axis, bar, spring) = match unit.brace {
            Brace::None => return None,
            Brace::RearToMast { tail_at_m, mast_at_m, bar, .. } => {
                (on_arm(-tail_at_m), Lower::Mast(mast_at_m), DVec3::Z * mast_at_m, bar, None)
            }
            Brace::RearToBase { tail_at_m, base_at_m, bar, .. } => {
                (on_arm(-tail_at_m), Lower::Base, DVec3::X * -base_at_m, bar, None)
            }
            Brace::Front { arm_at_m, mast_at_m, bar, .. } => {
                (on_arm(arm_at_m), Lower::Mast(mast_at_m), DVec3::Z * mast_at_m, bar, None)
            }
            Brace::RearFoot { from, distance_m, foot_level_m, bearing_rad, foot_spring_n_per_m, bar, .. } => {
                let upper = match from {
                    FootFrom::MastHead => (Part::Mast, unit.mast_height_m, head),
                    FootFrom::ArmTail { at_m } => on_arm(-at_m),
                };
                let (sin, cos) = bearing_rad.sin_cos();
                let foot = DVec3::new(-distance_m * cos, -distance_m * sin, foot_level_m);
                (upper, Lower::Foot, foot, bar, foot_spring_n_per_m)
            }
        };
        let lower_offset = match lower {
            Lower::Foot => DVec3::ZERO,
            Lower::Mast(_) | Lower::Base => unit.pins.lower_m,
        };
        Some(Self {
            upper_part: upper.0,
            upper_at_m: upper.1,
            upper: upper.2 + unit.pins.upper_m,
            lower,
            lower_pin: lower_axis + lower_offset,
            ea_n: bar.ea_n,
            foot_give_m_per_n: spring.map_or(0.0, |k| 1.0 / k),
            weight_n_per_m: bar.weight_n_per_m,
        })
    }

    pub fn at(&self, slew_rad: f64) -> Result<BraceAt, UnitFault> {
        let lower_pin = match self.lower {
            Lower::Mast(_) | Lower::Base => self.lower_pin,
            Lower::Foot => turned(self.lower_pin, -slew_rad),
        };
        let along = self.upper - lower_pin;
        let length_m = along.length();
        if length_m < SHORTEST_M {
            return Err(UnitFault::BraceWithoutLength { slew_rad });
        }
        Ok(BraceAt {
            lower_pin,
            axis: along / length_m,
            length_m,
            give_m_per_n: length_m / self.ea_n + self.foot_give_m_per_n,
        })
    }

    /// Axial stiffness E·A, N.
    pub const fn ea_n(&self) -> f64 {
        self.ea_n
    }
}

/// A vector turned about z, counter-clockwise seen from above.
pub(crate) fn turned(v: DVec3, angle_rad: f64) -> DVec3 {
    let (sin, cos) = angle_rad.sin_cos();
    DVec3::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y, v.z)
}
