//! What acts on a frame: wrenches at nodes, uniform and point loads along members.

use glam::DVec3;

use super::model::{MemberId, NodeId};
use crate::wrench::Wrench;

/// A load along a member, in global axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MemberLoad {
    /// Force per meter over the whole length, N/m.
    Uniform(DVec3),
    /// A force (N) at a distance (m) from the member's start.
    Point {
        /// Distance from the start, m.
        at_m: f64,
        /// Force, N.
        force_n: DVec3,
    },
}

/// Loads that act together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LoadCase {
    /// Forces and moments at nodes, global axes.
    pub nodal: Vec<(NodeId, Wrench)>,
    /// Loads along members.
    pub members: Vec<(MemberId, MemberLoad)>,
}

impl LoadCase {
    /// A single force at a node.
    #[must_use]
    pub fn force_at(node: NodeId, force_n: DVec3) -> Self {
        Self { nodal: vec![(node, Wrench { force_n, moment_nm: DVec3::ZERO })], members: Vec::new() }
    }
}
