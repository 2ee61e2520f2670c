//! Upright prisms: a shape on the plan from one level to another. Obstacles, parapets, walls, masts and bases are prisms.

use super::bounds::Bounds;
use super::polygons::Polygon;
use glam::DVec2;
use thiserror::Error;

/// The plan of a prism.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanShape {
    /// Any polygon, with holes or without.
    Polygon(Polygon),
    /// A round thing, exactly round.
    Disc {
        /// Its center, m.
        center: DVec2,
        /// Its radius, m; 0 is a single vertical line.
        radius_m: f64,
    },
}

impl PlanShape {
    /// Distance from a point to the shape on the plan, m; 0 inside.
    pub fn distance_m(&self, p: DVec2) -> f64 {
        match self {
            Self::Polygon(polygon) => polygon.distance_m(p),
            Self::Disc { center, radius_m } => (p.distance(*center) - radius_m).max(0.0),
        }
    }
}

/// A shape between two levels.
#[derive(Debug, Clone, PartialEq)]
pub struct Prism {
    shape: PlanShape,
    from_m: f64,
    to_m: f64,
    bounds: Bounds,
}

/// Why a shape and two levels make no prism.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum PrismFault {
    /// A number that is not finite, or a radius below 0.
    #[error("{field} of a prism is {value}")]
    BadNumber {
        /// Which field.
        field: &'static str,
        /// As given.
        value: f64,
    },
    /// The upper level lies below the lower one.
    #[error("a prism from {from_m} m reaches only to {to_m} m")]
    UpsideDown {
        /// Lower level as given, m.
        from_m: f64,
        /// Upper level as given, m.
        to_m: f64,
    },
    /// A ring of a polygon with fewer than three corners.
    #[error("a ring of a prism's polygon has {corners} corners")]
    TooFewCorners {
        /// Corners of the ring.
        corners: usize,
    },
}

impl Prism {
    /// A prism from `from_m` up to `to_m`; both levels may be equal. Rings of a polygon may go either way round.
    pub fn new(shape: PlanShape, from_m: f64, to_m: f64) -> Result<Self, PrismFault> {
        for (field, value) in [("from_m", from_m), ("to_m", to_m)] {
            finite(field, value)?;
        }
        if to_m < from_m {
            return Err(PrismFault::UpsideDown { from_m, to_m });
        }
        let bounds = checked_bounds(&shape)?;
        Ok(Self { shape, from_m, to_m, bounds })
    }

    /// Its plan.
    pub fn shape(&self) -> &PlanShape {
        &self.shape
    }

    /// Lower level, m.
    pub fn from_m(&self) -> f64 {
        self.from_m
    }

    /// Upper level, m.
    pub fn to_m(&self) -> f64 {
        self.to_m
    }

    /// The box around its plan.
    pub fn bounds(&self) -> Bounds {
        self.bounds
    }
}

fn checked_bounds(shape: &PlanShape) -> Result<Bounds, PrismFault> {
    match shape {
        PlanShape::Polygon(polygon) => {
            if let Some(ring) = polygon.rings().find(|ring| ring.len() < 3) {
                return Err(PrismFault::TooFewCorners { corners: ring.len() });
            }
            for p in polygon.rings().flatten() {
                finite("x of a corner", p.x)?;
                finite("y of a corner", p.y)?;
            }
            polygon.bounds().ok_or(PrismFault::TooFewCorners { corners: 0 })
        }
        PlanShape::Disc { center, radius_m } => {
            finite("x of the center", center.x)?;
            finite("y of the center", center.y)?;
            finite("radius_m", *radius_m)?;
            if *radius_m < 0.0 {
                return Err(PrismFault::BadNumber { field: "radius_m", value: *radius_m });
            }
            Ok(Bounds::around(*center, *radius_m))
        }
    }
}

fn finite(field: &'static str, value: f64) -> Result<(), PrismFault> {
    if value.is_finite() { Ok(()) } else { Err(PrismFault::BadNumber { field, value }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_prism_without_sense_is_refused_by_name() {
        let disc = |radius_m| PlanShape::Disc { center: DVec2::ZERO, radius_m };
        let fault = |shape, from, to| Prism::new(shape, from, to).unwrap_err();
        assert_eq!(fault(disc(1.0), 2.0, 1.0), PrismFault::UpsideDown { from_m: 2.0, to_m: 1.0 });
        assert_eq!(fault(disc(-1.0), 0.0, 1.0), PrismFault::BadNumber { field: "radius_m", value: -1.0 });
        assert!(matches!(fault(disc(1.0), f64::NAN, 1.0), PrismFault::BadNumber { field: "from_m", .. }));
        let line = PlanShape::Polygon(Polygon::simple(vec![DVec2::ZERO, DVec2::X]));
        assert_eq!(fault(line, 0.0, 1.0), PrismFault::TooFewCorners { corners: 2 });
        let lost = PlanShape::Polygon(Polygon::simple(vec![DVec2::ZERO, DVec2::X, DVec2::new(0.0, f64::NAN)]));
        assert!(matches!(fault(lost, 0.0, 1.0), PrismFault::BadNumber { field: "y of a corner", .. }));
    }

    #[test]
    fn a_disc_is_far_from_a_point_by_what_lies_beyond_its_radius() {
        let disc = PlanShape::Disc { center: DVec2::new(3.0, 4.0), radius_m: 2.0 };
        assert_eq!(disc.distance_m(DVec2::ZERO), 3.0);
        assert_eq!(disc.distance_m(DVec2::new(3.0, 3.0)), 0.0);
    }
}
