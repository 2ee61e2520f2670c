//! An upright box around something on the plan.

use glam::DVec2;

/// The smallest upright rectangle around some points, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// Least x and y, m.
    pub min_m: DVec2,
    /// Greatest x and y, m.
    pub max_m: DVec2,
}

impl Bounds {
    /// The bounds of some points; none for no points at all.
    pub fn of(points: impl IntoIterator<Item = DVec2>) -> Option<Self> {
        let mut points = points.into_iter();
        let first = points.next()?;
        let start = Self { min_m: first, max_m: first };
        Some(points.fold(start, |b, p| Self { min_m: b.min_m.min(p), max_m: b.max_m.max(p) }))
    }

    /// The square around a circle; `radius_m` may be 0.
    pub fn around(center: DVec2, radius_m: f64) -> Self {
        Self { min_m: center - DVec2::splat(radius_m), max_m: center + DVec2::splat(radius_m) }
    }

    /// The same box with every side moved outward by `by_m`.
    #[must_use]
    pub fn grown(self, by_m: f64) -> Self {
        Self { min_m: self.min_m - DVec2::splat(by_m), max_m: self.max_m + DVec2::splat(by_m) }
    }

    /// Whether two boxes share a point; a common border counts. Boxes with a coordinate that is no number share with all,
    /// so that a thing whose place is unknown is looked at rather than passed over.
    pub fn meets(&self, other: &Self) -> bool {
        let lost = |b: &Self| b.min_m.is_nan() || b.max_m.is_nan();
        if lost(self) || lost(other) {
            return true;
        }
        let apart = self.max_m.x < other.min_m.x
            || other.max_m.x < self.min_m.x
            || self.max_m.y < other.min_m.y
            || other.max_m.y < self.min_m.y;
        !apart
    }

    /// Width and height, m.
    pub fn size_m(&self) -> DVec2 {
        self.max_m - self.min_m
    }

    /// Whether all four numbers are finite.
    pub fn is_finite(&self) -> bool {
        self.min_m.is_finite() && self.max_m.is_finite()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn boxes_that_share_a_border_meet_and_boxes_a_millimeter_apart_do_not() {
        let left = Bounds { min_m: DVec2::ZERO, max_m: DVec2::new(2.0, 1.0) };
        let right = Bounds { min_m: DVec2::new(2.0, 0.5), max_m: DVec2::new(3.0, 4.0) };
        assert!(left.meets(&right));
        let farther = Bounds { min_m: DVec2::new(2.001, 0.5), max_m: DVec2::new(3.0, 4.0) };
        assert!(!left.meets(&farther));
    }

    #[test]
    fn a_box_without_a_place_meets_every_box() {
        let nowhere = Bounds::around(DVec2::new(f64::NAN, f64::NAN), 1.0);
        assert!(nowhere.meets(&Bounds::around(DVec2::new(1e5, 1e5), 0.0)));
    }
}
