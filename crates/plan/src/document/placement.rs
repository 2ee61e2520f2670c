//! A placed unit and where its base stands.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{EdgeId, RoofId, Tag};
use crate::catalog::MakeUp;

/// A unit with its base on the plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Placement {
    /// The name people use for it.
    pub tag: Tag,
    /// Which mast, arm, brace and base.
    pub make_up: MakeUp,
    /// Where its base stands.
    pub stands: Standing,
    /// Whether it is locked against being moved.
    #[serde(default)]
    pub locked: bool,
}

/// Where a base stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Standing {
    /// Anchored to an edge: it goes along when the edge moves.
    OnEdge {
        /// The edge it serves.
        edge: EdgeId,
        /// Where along the edge.
        station: Station,
        /// Mast axis behind the outline.
        setback_m: f64,
        /// Turn of the base from square to the edge, counter-clockwise.
        turn_rad: f64,
    },
    /// Free on a roof.
    Free {
        /// The roof it stands on.
        roof: RoofId,
        /// Mast axis in the plan.
        #[schemars(with = "[f64; 2]")]
        at: DVec2,
        /// Direction of the base's x axis, counter-clockwise from the plan's x axis.
        outward_rad: f64,
        /// Edges it is meant to serve; may be empty.
        serves: Vec<EdgeId>,
    },
}

impl Standing {
    /// The edge it is anchored to; none for what stands free.
    pub fn edge(&self) -> Option<EdgeId> {
        match self {
            Self::OnEdge { edge, .. } => Some(*edge),
            Self::Free { .. } => None,
        }
    }
}

/// A distance along an edge, measured from one of its corners: the nearer one when it was set.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Station {
    /// The corner it is measured from.
    pub from: EdgeEnd,
    /// The distance; never clamped, so it may lie past the edge's end.
    pub distance_m: f64,
}

/// One of the two corners of an edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EdgeEnd {
    /// The corner the edge leaves.
    Start,
    /// The corner it arrives at.
    End,
}

impl Station {
    /// The station of a place `along_m` from the start of an edge of this length, measured from the nearer corner.
    pub fn nearest(along_m: f64, edge_length_m: f64) -> Self {
        if along_m <= edge_length_m / 2.0 {
            Self { from: EdgeEnd::Start, distance_m: along_m }
        } else {
            Self { from: EdgeEnd::End, distance_m: edge_length_m - along_m }
        }
    }

    /// Distance from the start of an edge of this length, m.
    pub fn along_m(self, edge_length_m: f64) -> f64 {
        match self.from {
            EdgeEnd::Start => self.distance_m,
            EdgeEnd::End => edge_length_m - self.distance_m,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_station_is_measured_from_the_nearer_corner_and_keeps_its_distance() {
        let station = Station::nearest(9.0, 12.0);
        assert_eq!(station, Station { from: EdgeEnd::End, distance_m: 3.0 });
        assert_eq!(station.along_m(20.0), 17.0);
    }
}
