//! A pin-ended bar: it carries axial force only, between points that may stand off its nodes.

use glam::DVec3;
use nalgebra::SVector;

use super::fault::{FrameFault, Quantity};
use super::model::NodeId;

/// A bar between two nodes. Its pins may stand off the nodes by rigid offsets (global axes, m).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// Node at the start.
    pub start: NodeId,
    /// Node at the end.
    pub end: NodeId,
    /// Axial stiffness E·A, N.
    pub ea_n: f64,
    /// Pin at the start, from its node, m.
    pub start_offset_m: DVec3,
    /// Pin at the end, from its node, m.
    pub end_offset_m: DVec3,
}

/// A bar with its geometry worked out: extension = `b`·u.
#[derive(Debug, Clone)]
pub(super) struct BarElement {
    pub nodes: [usize; 2],
    pub length_m: f64,
    pub axis: DVec3,
    pub stiffness_n_per_m: f64,
    pub offsets: [DVec3; 2],
}

impl BarElement {
    pub fn new(bar: &Bar, index: usize, nodes: &[DVec3]) -> Result<Self, FrameFault> {
        for v in [bar.start_offset_m, bar.end_offset_m] {
            super::model::finite(Quantity::BarOffset, index, &v.to_array())?;
        }
        super::model::positive(Quantity::AxialStiffness, index, bar.ea_n)?;
        let (a, b) = (super::model::node_at(nodes, bar.start)?, super::model::node_at(nodes, bar.end)?);
        let along = b + bar.end_offset_m - a - bar.start_offset_m;
        let length_m = along.length();
        if length_m <= super::model::SHORTEST_M {
            return Err(FrameFault::ZeroLengthBar { bar: index });
        }
        Ok(Self {
            nodes: [bar.start.0, bar.end.0],
            length_m,
            axis: along / length_m,
            stiffness_n_per_m: bar.ea_n / length_m,
            offsets: [bar.start_offset_m, bar.end_offset_m],
        })
    }

    /// The vector b of extension = b·u: a pin displaced by u + θ × offset, projected on the axis.
    pub fn extension_vector(&self) -> SVector<f64, 12> {
        let n = self.axis;
        let (t0, t1) = (self.offsets[0].cross(n), self.offsets[1].cross(n));
        SVector::from([-n.x, -n.y, -n.z, -t0.x, -t0.y, -t0.z, n.x, n.y, n.z, t1.x, t1.y, t1.z])
    }
}
