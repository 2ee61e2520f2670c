//! The slanted view: upright lines stay upright and true, the plan is turned and flattened.

use glam::DVec2;

/// A parallel view from above.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slant {
    /// Direction in the plan in which one looks, counter-clockwise from the x axis, rad.
    pub looking_rad: f64,
    /// How much of the depth is seen: 0 from the side, 1 from straight above.
    pub depth_share: f64,
}

impl Default for Slant {
    /// From the lower left of the sheet, rather flat.
    fn default() -> Self {
        Self { looking_rad: 62.0_f64.to_radians(), depth_share: 0.45 }
    }
}

impl Slant {
    /// Unit vector away from the eye, in the plan.
    pub fn away(self) -> DVec2 {
        DVec2::from_angle(self.looking_rad)
    }

    /// Where a point of the plan at a level lies in the drawing.
    pub fn place(self, point: DVec2, level_m: f64) -> DVec2 {
        let away = self.away();
        let right = -away.perp();
        DVec2::new(point.dot(right), point.dot(away) * self.depth_share + level_m)
    }

    /// Whether a wall that looks in this direction of the plan is seen.
    pub fn sees(self, outward: DVec2) -> bool {
        outward.dot(self.away()) < -1e-9
    }
}
