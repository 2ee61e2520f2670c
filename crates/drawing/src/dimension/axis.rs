//! The line of a chain of dimensions, with the direction in which it is read.

use std::f64::consts::{FRAC_PI_2, PI};

use gantline_plan::geometry::frame::within_half_turn;
use glam::DVec2;

use super::Measured;

/// Where a dimension line runs, and how it is measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DimensionLine {
    /// A point on it, m.
    pub through: DVec2,
    /// Unit vector along it.
    pub along: DVec2,
}

/// The line with its reading direction.
pub(super) struct Axis {
    pub through: DVec2,
    pub along: DVec2,
    pub angle_rad: f64,
    /// Whether what is measured lies on the side to which figures rise.
    pub rises_inward: bool,
}

impl Axis {
    /// None when nothing is measured.
    pub fn of(line: DimensionLine, measured: &[Measured]) -> Option<Self> {
        if measured.is_empty() {
            return None;
        }
        let angle_rad = readable(line.along.to_angle());
        let along = DVec2::from_angle(angle_rad);
        let from_line = |one: &Measured| (one.from + one.to - line.through * 2.0).dot(along.perp());
        let rises_inward = measured.iter().map(from_line).sum::<f64>() > 1e-9;
        Some(Self { through: line.through, along, angle_rad, rises_inward })
    }

    pub fn place(&self, point: DVec2) -> f64 {
        (point - self.through).dot(self.along)
    }

    pub fn point(&self, place: f64) -> DVec2 {
        self.through + self.along * place
    }
}

/// The same line of writing, turned by half a turn if it would stand on its head.
pub fn readable(angle_rad: f64) -> f64 {
    let angle = within_half_turn(angle_rad);
    // A line straight up is read from the right, also when rounding has tipped it a little to the left.
    if angle > FRAC_PI_2 + 1e-6 {
        angle - PI
    } else if angle <= -FRAC_PI_2 + 1e-6 {
        angle + PI
    } else {
        angle
    }
}
