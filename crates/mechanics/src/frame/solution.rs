//! What a load case does to a frame: displacements, reactions, end forces, forces inside members.

use glam::DVec3;
use nalgebra::DVector;

use super::factored::FactoredFrame;
use super::fault::FrameFault;
use super::load::{LoadCase, MemberLoad};
use super::member::Vector12;
use super::model::{BarId, MemberId, NodeId};
use crate::wrench::Wrench;

/// The answer to one load case.
#[derive(Debug, Clone)]
pub struct Solution {
    displacements: DVector<f64>,
    reactions: DVector<f64>,
    bars: Vec<f64>,
    pub(super) members: Vec<MemberForces>,
}

/// End forces of one member and the loads along it, in its own axes.
#[derive(Debug, Clone)]
pub(super) struct MemberForces {
    pub length_m: f64,
    /// Forces of the nodes on the member.
    pub ends: Vector12,
    uniform: DVec3,
    points: Vec<(f64, DVec3)>,
}

impl Solution {
    pub(super) fn new(frame: &FactoredFrame, case: &LoadCase, displacements: DVector<f64>) -> Result<Self, FrameFault> {
        let reactions = &frame.parts.stiffness * &displacements - frame.equivalent_loads(case)?;
        let members = member_forces(frame, case, &displacements);
        let bars = frame.parts.bars.iter().map(|bar| {
            let u = gather(&displacements, bar.nodes);
            bar.extension_vector().dot(&u) * bar.stiffness_n_per_m
        });
        Ok(Self { bars: bars.collect(), reactions, members, displacements })
    }

    /// Displacement of a node, m, global axes.
    #[must_use]
    pub fn displacement(&self, node: NodeId) -> Option<DVec3> {
        triple(&self.displacements, 6 * node.0)
    }

    /// Rotation of a node, rad, global axes.
    #[must_use]
    pub fn rotation(&self, node: NodeId) -> Option<DVec3> {
        triple(&self.displacements, 6 * node.0 + 3)
    }

    /// What the support does to the frame at a node (N, N·m, global axes); vanishes at a node which
    /// nothing holds. The action of the frame on the structure is its negative.
    #[must_use]
    pub fn reaction(&self, node: NodeId) -> Option<Wrench> {
        Some(Wrench {
            force_n: triple(&self.reactions, 6 * node.0)?,
            moment_nm: triple(&self.reactions, 6 * node.0 + 3)?,
        })
    }

    /// Axial force of a bar, N, tension positive.
    #[must_use]
    pub fn bar_axial(&self, bar: BarId) -> Option<f64> {
        self.bars.get(bar.0).copied()
    }

    /// Forces of the nodes on a member at its start and end, N and N·m, in the member's axes.
    #[must_use]
    pub fn end_forces(&self, member: MemberId) -> Option<[Wrench; 2]> {
        let ends = &self.members.get(member.0)?.ends;
        Some([0, 6].map(|o| Wrench::from_six(std::array::from_fn(|i| ends[o + i]))))
    }

    /// Forces inside a member at a distance from its start: what the part toward the end does to the
    /// part toward the start, as force (N, Vy, Vz) and moment (T, My, Mz) in the member's axes;
    /// tension is positive. At a point load the value before it is given.
    pub fn internal(&self, member: MemberId, at_m: f64) -> Result<Wrench, FrameFault> {
        let forces =
            self.members.get(member.0).ok_or(FrameFault::Unknown { index: member.0, count: self.members.len() })?;
        if (0.0..=forces.length_m).contains(&at_m) {
            Ok(forces.internal(at_m))
        } else {
            Err(FrameFault::OutsideMember { member: member.0, at_m, length_m: forces.length_m })
        }
    }
}

impl MemberForces {
    /// Equilibrium of the part from the start to the cut.
    fn internal(&self, at_m: f64) -> Wrench {
        let cut = DVec3::new(at_m, 0.0, 0.0);
        let start = Wrench::from_six(std::array::from_fn(|i| self.ends[i]));
        let mut sum = start.moved(DVec3::ZERO, cut);
        let middle = DVec3::new(at_m / 2.0, 0.0, 0.0);
        sum += Wrench::of_force(self.uniform * at_m, middle, cut);
        for &(place, force) in self.points.iter().filter(|(place, _)| *place < at_m) {
            sum += Wrench::of_force(force, DVec3::new(place, 0.0, 0.0), cut);
        }
        -sum
    }
}

fn member_forces(frame: &FactoredFrame, case: &LoadCase, displacements: &DVector<f64>) -> Vec<MemberForces> {
    let mut all: Vec<MemberForces> = frame
        .parts
        .members
        .iter()
        .map(|element| MemberForces {
            length_m: element.length_m,
            ends: element.local_end_forces(&gather(displacements, element.nodes)),
            uniform: DVec3::ZERO,
            points: Vec::new(),
        })
        .collect();
    for (id, load) in &case.members {
        let element = &frame.parts.members[id.0];
        let forces = &mut all[id.0];
        forces.ends -= element.local_equivalent(load);
        let to_local = element.axes.transpose();
        match *load {
            MemberLoad::Uniform(q) => forces.uniform += to_local * q,
            MemberLoad::Point { at_m, force_n } => {
                forces.points.push((at_m, to_local * force_n));
            }
        }
    }
    all
}

fn gather(whole: &DVector<f64>, nodes: [usize; 2]) -> Vector12 {
    Vector12::from_fn(|i, _| whole[6 * nodes[i / 6] + i % 6])
}

fn triple(from: &DVector<f64>, at: usize) -> Option<DVec3> {
    (at + 2 < from.len()).then(|| DVec3::new(from[at], from[at + 1], from[at + 2]))
}
