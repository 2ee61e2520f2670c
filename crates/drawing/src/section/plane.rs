//! The upright plane of a section: where plan points lie in it.

use glam::DVec2;

/// An upright plane through a mast axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SectionPlane {
    /// The mast axis in the plan.
    pub at: DVec2,
    /// Unit vector along the arm, in the plan.
    pub along: DVec2,
    /// Level of the underside of the base's plate: y is 0 here.
    pub level_m: f64,
}

impl SectionPlane {
    /// The plan point at a distance from the mast axis.
    pub fn in_plan(&self, x_m: f64) -> DVec2 {
        self.at + self.along * x_m
    }

    /// Distance from the mast axis along the plane of a plan point's foot on it.
    pub fn x_m(&self, point: DVec2) -> f64 {
        (point - self.at).dot(self.along)
    }

    /// Distance of a plan point from the plane.
    pub fn beside_m(&self, point: DVec2) -> f64 {
        (point - self.at).perp_dot(self.along).abs()
    }
}
