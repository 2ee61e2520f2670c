//! The frame as it is described: nodes, members, bars and supports, before anything is solved.

use glam::DVec3;

use super::bar::Bar;
use super::factored::FactoredFrame;
use super::fault::{FrameFault, Quantity};
use super::member::Member;
use super::support::Support;

/// Two ends nearer than this are one place, m.
pub(super) const SHORTEST_M: f64 = 1e-9;

/// Number of a node, in the order in which nodes were added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct NodeId(pub usize);

/// Number of a member, in the order in which members were added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct MemberId(pub usize);

/// Number of a bar, in the order in which bars were added.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct BarId(pub usize);

/// A space frame under description.
#[derive(Debug, Clone, Default)]
pub struct Frame {
    pub(super) nodes: Vec<DVec3>,
    pub(super) members: Vec<Member>,
    pub(super) bars: Vec<Bar>,
    pub(super) supports: Vec<(NodeId, Support)>,
}

impl Frame {
    /// An empty frame.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Adds a node at a place in global axes, m.
    pub fn add_node(&mut self, at_m: DVec3) -> NodeId {
        self.nodes.push(at_m);
        NodeId(self.nodes.len() - 1)
    }

    /// Adds a member.
    pub fn add_member(&mut self, member: Member) -> MemberId {
        self.members.push(member);
        MemberId(self.members.len() - 1)
    }

    /// Adds a bar.
    pub fn add_bar(&mut self, bar: Bar) -> BarId {
        self.bars.push(bar);
        BarId(self.bars.len() - 1)
    }

    /// Holds a node. A node held twice is held by both.
    pub fn hold(&mut self, node: NodeId, support: Support) {
        self.supports.push((node, support));
    }

    /// Where a node is, m.
    #[must_use]
    pub fn position(&self, node: NodeId) -> Option<DVec3> {
        self.nodes.get(node.0).copied()
    }

    /// Checks everything and factors the stiffness matrix once, for any number of load cases.
    pub fn factor(&self) -> Result<FactoredFrame, FrameFault> {
        for (index, at) in self.nodes.iter().enumerate() {
            finite(Quantity::NodePosition, index, &at.to_array())?;
        }
        FactoredFrame::new(self)
    }
}

pub(super) fn finite(quantity: Quantity, index: usize, values: &[f64]) -> Result<(), FrameFault> {
    match values.iter().find(|v| !v.is_finite()) {
        Some(&value) => Err(FrameFault::NotFinite { quantity, index, value }),
        None => Ok(()),
    }
}

pub(super) fn positive(quantity: Quantity, index: usize, value: f64) -> Result<(), FrameFault> {
    finite(quantity, index, &[value])?;
    if value > 0.0 { Ok(()) } else { Err(FrameFault::NotPositive { quantity, index, value }) }
}

pub(super) fn node_at(nodes: &[DVec3], node: NodeId) -> Result<DVec3, FrameFault> {
    nodes.get(node.0).copied().ok_or(FrameFault::Unknown { index: node.0, count: nodes.len() })
}
