//! A ring of corners. Each corner owns the edge that leaves it, so a ring can't lose an edge's data.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Edge, EdgeId};
use crate::geometry::rings;

/// Corners nearer than this are one corner, m.
pub const SAME_CORNER_M: f64 = 0.001;

/// A corner and the edge that leaves it toward the next corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Corner {
    /// Where it is in the plan, m.
    #[schemars(with = "[f64; 2]")]
    pub at: DVec2,
    /// The edge to the next corner.
    pub edge: Edge,
}

/// A closed ring of at least three corners that does not touch or cross itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(try_from = "Vec<Corner>", into = "Vec<Corner>")]
#[schemars(with = "Vec<Corner>")]
pub struct Ring {
    corners: Vec<Corner>,
}

/// Why corners don't make a ring.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum RingFault {
    /// Fewer than three corners.
    #[error("an outline needs at least three corners, not {has}")]
    TooFewCorners {
        /// Corners given.
        has: usize,
    },
    /// A coordinate that is no number.
    #[error("corner {corner} has a coordinate that is not a finite number")]
    NotFinite {
        /// Which corner, counted from 1.
        corner: usize,
    },
    /// Two corners in one place.
    #[error("corners {first} and {second} lie in one place ({x_m:.3}, {y_m:.3}) m")]
    SameCorner {
        /// One, counted from 1.
        first: usize,
        /// The other.
        second: usize,
        /// Where.
        x_m: f64,
        /// Where.
        y_m: f64,
    },
    /// Two edges that cross or touch.
    #[error("edges {first} and {second} cross at ({x_m:.3}, {y_m:.3}) m")]
    Crossing {
        /// One edge, counted from 1.
        first: usize,
        /// The other.
        second: usize,
        /// Where.
        x_m: f64,
        /// Where.
        y_m: f64,
    },
    /// A ring without area.
    #[error("the outline encloses no area")]
    NoArea,
}

impl RingFault {
    /// The place of the trouble in the plan, where there is one.
    pub fn place(&self) -> Option<DVec2> {
        match *self {
            Self::SameCorner { x_m, y_m, .. } | Self::Crossing { x_m, y_m, .. } => Some(DVec2::new(x_m, y_m)),
            Self::TooFewCorners { .. } | Self::NotFinite { .. } | Self::NoArea => None,
        }
    }
}

/// Checks corners as the outline of anything: a roof, a hole, an obstacle.
pub fn check_outline(points: &[DVec2]) -> Result<(), RingFault> {
    rings::check_ring(points, SAME_CORNER_M)?;
    if rings::signed_area_m2(points).abs() < SAME_CORNER_M * SAME_CORNER_M {
        return Err(RingFault::NoArea);
    }
    Ok(())
}

/// People count corners and edges from 1.
impl From<rings::RingFault> for RingFault {
    fn from(fault: rings::RingFault) -> Self {
        match fault {
            rings::RingFault::TooFewCorners { corners } => Self::TooFewCorners { has: corners },
            rings::RingFault::NotFinite { corner, .. } => Self::NotFinite { corner: corner + 1 },
            rings::RingFault::CoincidentCorners { first, second, at } => {
                Self::SameCorner { first: first + 1, second: second + 1, x_m: at.x, y_m: at.y }
            }
            rings::RingFault::Crossing { first, second, at } => {
                Self::Crossing { first: first + 1, second: second + 1, x_m: at.x, y_m: at.y }
            }
        }
    }
}

impl Ring {
    /// A ring from corners in order.
    pub fn new(corners: Vec<Corner>) -> Result<Self, RingFault> {
        let points: Vec<DVec2> = corners.iter().map(|corner| corner.at).collect();
        check_outline(&points)?;
        Ok(Self { corners })
    }

    /// The corners in order.
    pub fn corners(&self) -> &[Corner] {
        &self.corners
    }

    /// How many corners, and edges, there are.
    #[allow(clippy::len_without_is_empty, reason = "a ring has at least three corners")]
    pub fn len(&self) -> usize {
        self.corners.len()
    }

    /// The corners' places in order.
    pub fn points(&self) -> Vec<DVec2> {
        self.corners.iter().map(|corner| corner.at).collect()
    }

    /// The index of the corner that this edge leaves.
    pub fn index_of(&self, edge: EdgeId) -> Option<usize> {
        self.corners.iter().position(|corner| corner.edge.id == edge)
    }

    /// The edge that leaves this corner; the index wraps around.
    pub fn edge(&self, index: usize) -> &Edge {
        &self.corners[index % self.corners.len()].edge
    }

    /// The edges, to change their data; corners stay where they are.
    pub fn edges_mut(&mut self) -> impl Iterator<Item = &mut Edge> {
        self.corners.iter_mut().map(|corner| &mut corner.edge)
    }

    /// Begin and end of the edge that leaves this corner; the index wraps around.
    pub fn ends(&self, index: usize) -> (DVec2, DVec2) {
        let count = self.corners.len();
        (self.corners[index % count].at, self.corners[(index + 1) % count].at)
    }

    /// Area, m²: positive counter-clockwise, negative clockwise.
    pub fn signed_area_m2(&self) -> f64 {
        rings::signed_area_m2(&self.points())
    }

    /// The same corners with these places, checked again.
    pub fn with_points(&self, points: &[DVec2]) -> Result<Self, RingFault> {
        check_outline(points)?;
        let corners =
            self.corners.iter().zip(points).map(|(corner, &at)| Corner { at, edge: corner.edge.clone() }).collect();
        Ok(Self { corners })
    }
}

impl TryFrom<Vec<Corner>> for Ring {
    type Error = RingFault;

    fn try_from(corners: Vec<Corner>) -> Result<Self, RingFault> {
        Self::new(corners)
    }
}

impl From<Ring> for Vec<Corner> {
    fn from(ring: Ring) -> Self {
        ring.corners
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(points: &[(f64, f64)]) -> Result<Ring, RingFault> {
        let corners = points.iter().enumerate().map(|(index, &(x, y))| Corner {
            at: DVec2::new(x, y),
            edge: Edge::sketched(EdgeId::from_number(index as u64 + 1)),
        });
        Ring::new(corners.collect())
    }

    #[test]
    fn a_bow_tie_is_refused_with_the_place_of_the_crossing() {
        let fault = ring(&[(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)]).unwrap_err();
        assert_eq!(fault.place(), Some(DVec2::new(2.0, 2.0)));
    }

    #[test]
    fn a_counter_clockwise_rectangle_has_positive_area() {
        let ring = ring(&[(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)]).unwrap();
        assert_eq!(ring.signed_area_m2(), 600.0);
    }

    #[test]
    fn corners_in_one_place_and_missing_numbers_are_named() {
        assert!(matches!(
            ring(&[(0.0, 0.0), (0.0, 0.0005), (4.0, 0.0), (0.0, 4.0)]),
            Err(RingFault::SameCorner { first: 1, second: 2, .. })
        ));
        assert_eq!(ring(&[(0.0, 0.0), (f64::NAN, 1.0), (4.0, 0.0)]).unwrap_err(), RingFault::NotFinite { corner: 2 });
        assert_eq!(ring(&[(0.0, 0.0), (1.0, 1.0)]).unwrap_err(), RingFault::TooFewCorners { has: 2 });
    }
}
