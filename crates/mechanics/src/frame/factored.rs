//! A frame whose stiffness matrix is factored once and then answers any number of load cases.

use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

use super::assemble::Assembled;
use super::fault::{Dof, FrameFault, Quantity};
use super::load::{LoadCase, MemberLoad};
use super::model::{Frame, NodeId, finite};
use super::solution::Solution;

/// A pivot of the matrix scaled to a unit diagonal below this counts as none: a mechanism. Rounding
/// leaves about 1e-15 times the number of unknowns; a stable frame of stout bars stays above 1e-9.
const LEAST_PIVOT: f64 = 1e-12;

/// A stable frame, ready to be loaded.
#[derive(Debug, Clone)]
pub struct FactoredFrame {
    pub(super) parts: Assembled,
    /// One over the root of each free degree of freedom's own stiffness.
    pub(super) scale: DVector<f64>,
    pub(super) cholesky: Cholesky<f64, Dyn>,
}

impl FactoredFrame {
    pub(super) fn new(frame: &Frame) -> Result<Self, FrameFault> {
        let parts = Assembled::new(frame)?;
        let free = &parts.free;
        let own = |i: usize| parts.stiffness[(i, i)] + parts.springs[i];
        let scale = DVector::from_iterator(free.len(), free.iter().map(|&i| 1.0 / own(i).sqrt()));
        let scaled = DMatrix::from_fn(free.len(), free.len(), |i, j| {
            let spring = if i == j { parts.springs[free[i]] } else { 0.0 };
            (parts.stiffness[(free[i], free[j])] + spring) * scale[i] * scale[j]
        });
        let cholesky = scaled
            .clone()
            .cholesky()
            .filter(|c| c.l_dirty().diagonal().iter().all(|p| p * p > LEAST_PIVOT))
            .ok_or_else(|| name_mechanism(scaled, free, &scale))?;
        Ok(Self { parts, scale, cholesky })
    }

    /// Solves one load case.
    pub fn solve(&self, case: &LoadCase) -> Result<Solution, FrameFault> {
        let loads = self.equivalent_loads(case)?;
        let displacements = self.displacements(&DMatrix::from_columns(&[loads]));
        Solution::new(self, case, displacements.column(0).into_owned())
    }

    /// Solves several load cases with the one factorization.
    pub fn solve_many(&self, cases: &[LoadCase]) -> Result<Vec<Solution>, FrameFault> {
        cases.iter().map(|case| self.solve(case)).collect()
    }

    /// Nodal loads that stand for the case: its wrenches, and what loads along members put on the
    /// ends. Six numbers a node. The work of a case on a field of nodal displacements is their
    /// product, exactly if the field bends between nodes as unloaded members do.
    pub fn equivalent_loads(&self, case: &LoadCase) -> Result<DVector<f64>, FrameFault> {
        let mut p = DVector::zeros(self.parts.springs.len());
        for (index, (node, wrench)) in case.nodal.iter().enumerate() {
            finite(Quantity::Load, index, &wrench.six())?;
            self.known(*node)?;
            for (i, value) in wrench.six().into_iter().enumerate() {
                p[6 * node.0 + i] += value;
            }
        }
        for (index, (member, load)) in case.members.iter().enumerate() {
            let element = self
                .parts
                .members
                .get(member.0)
                .ok_or(FrameFault::Unknown { index: member.0, count: self.parts.members.len() })?;
            check_load(load, index, member.0, element.length_m)?;
            let part = element.global_equivalent(load);
            for i in 0..12 {
                p[6 * element.nodes[i / 6] + i % 6] += part[i];
            }
        }
        match self.parts.idle.iter().find(|&&i| p[i] != 0.0) {
            Some(&i) => Err(FrameFault::MomentOnFreeRotation { node: i / 6, dof: Dof::of_index(i) }),
            None => Ok(p),
        }
    }

    /// Displacements of all nodes for columns of nodal loads, six numbers a node, m and rad.
    #[must_use]
    pub fn displacements(&self, loads: &DMatrix<f64>) -> DMatrix<f64> {
        let free = &self.parts.free;
        let mut scaled = DMatrix::from_fn(free.len(), loads.ncols(), |i, j| loads[(free[i], j)] * self.scale[i]);
        self.cholesky.solve_mut(&mut scaled);
        let mut whole = DMatrix::zeros(loads.nrows(), loads.ncols());
        for (i, &dof) in free.iter().enumerate() {
            for j in 0..loads.ncols() {
                whole[(dof, j)] = scaled[(i, j)] * self.scale[i];
            }
        }
        whole
    }

    /// How many nodes the frame has.
    #[must_use]
    pub fn node_count(&self) -> usize {
        self.parts.springs.len() / 6
    }

    pub(super) fn known(&self, node: NodeId) -> Result<(), FrameFault> {
        if node.0 < self.node_count() {
            Ok(())
        } else {
            Err(FrameFault::Unknown { index: node.0, count: self.node_count() })
        }
    }
}

fn check_load(load: &MemberLoad, index: usize, member: usize, length_m: f64) -> Result<(), FrameFault> {
    match *load {
        MemberLoad::Uniform(q) => finite(Quantity::Load, index, &q.to_array()),
        MemberLoad::Point { at_m, force_n } => {
            finite(Quantity::Load, index, &force_n.to_array())?;
            finite(Quantity::PlaceAlongMember, index, &[at_m])?;
            if (0.0..=length_m).contains(&at_m) {
                Ok(())
            } else {
                Err(FrameFault::OutsideMember { member, at_m, length_m })
            }
        }
    }
}

/// The softest way to move names the node: largest share in the eigenvector of the least eigenvalue.
fn name_mechanism(scaled: DMatrix<f64>, free: &[usize], scale: &DVector<f64>) -> FrameFault {
    // An eigenvalue search never ends on what is no number; then stiffnesses are beyond all measure.
    if scaled.iter().any(|v| !v.is_finite()) {
        let node = free.first().map_or(0, |dof| dof / 6);
        return FrameFault::BeyondMeasure { node };
    }
    let eigen = scaled.symmetric_eigen();
    let softest = eigen.eigenvalues.imin();
    let shares = eigen.eigenvectors.column(softest);
    let mut worst = 0;
    for i in 0..free.len() {
        if (shares[i] * scale[i]).abs() > (shares[worst] * scale[worst]).abs() {
            worst = i;
        }
    }
    let dof = free.get(worst).copied().unwrap_or(0);
    FrameFault::Mechanism { node: dof / 6, dof: Dof::of_index(dof) }
}
