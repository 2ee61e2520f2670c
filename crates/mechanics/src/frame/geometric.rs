//! How axial forces soften a frame: the load factor at which it buckles.

use nalgebra::DMatrix;

use super::assemble::scatter;
use super::factored::FactoredFrame;
use super::member::Matrix12;
use super::solution::Solution;

impl FactoredFrame {
    /// The smallest positive factor on the loads of `solution` at which the frame buckles:
    /// det(K + α·K_G) = 0, K_G the consistent geometric stiffness of the axial forces
    /// (Przemieniecki 1968, eq. 15.42; bars as strings, N/L across their axis). `None` if nothing
    /// is pressed enough to buckle in this direction of loading.
    ///
    /// Validity: a member buckles between nodes as a cubic does, so a single element overrates a
    /// pinned column by a fifth; four elements a column come within 0.1 %. Terms of bending moments and
    /// torsion are left out, so lateral-torsional buckling is not covered. Loads keep their direction.
    #[must_use]
    pub fn critical_factor(&self, solution: &Solution) -> Option<f64> {
        let free = &self.parts.free;
        let count = self.parts.springs.len();
        let mut geometric = DMatrix::zeros(count, count);
        for (element, forces) in self.parts.members.iter().zip(&solution.members) {
            let pull = (forces.ends[6] - forces.ends[0]) / 2.0;
            let local = string_and_bow(pull, element.length_m);
            scatter(&mut geometric, element.nodes, &element.globalize(&local));
        }
        for (index, bar) in self.parts.bars.iter().enumerate() {
            let pull = solution.bar_axial(super::model::BarId(index))?;
            scatter(&mut geometric, bar.nodes, &across(bar, pull));
        }
        // With K = L·Lᵀ the largest eigenvalue μ of −L⁻¹·K_G·L⁻ᵀ is 1/α.
        let mut softening = DMatrix::from_fn(free.len(), free.len(), |i, j| {
            -geometric[(free[i], free[j])] * self.scale[i] * self.scale[j]
        });
        let l = self.cholesky.l();
        if !l.solve_lower_triangular_mut(&mut softening) {
            return None;
        }
        let mut softening = softening.transpose();
        if !l.solve_lower_triangular_mut(&mut softening) {
            return None;
        }
        let symmetric = (&softening + softening.transpose()) * 0.5;
        let largest = symmetric.symmetric_eigenvalues().max();
        // A factor beyond 1e9 is rounding error, not a load that anyone could reach.
        (largest > 1e-9).then(|| 1.0 / largest)
    }
}

/// Consistent geometric stiffness of a member under the axial force `pull` (tension positive).
fn string_and_bow(pull: f64, l: f64) -> Matrix12 {
    let mut k = Matrix12::zeros();
    let unit = pull / (30.0 * l);
    for (w, r, sign) in [(1, 5, 1.0), (2, 4, -1.0)] {
        let (a, b) = (36.0, sign * 3.0 * l);
        let (c, d) = (4.0 * l * l, -l * l);
        let dofs = [w, r, w + 6, r + 6];
        let block = [[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]];
        for (i, &row) in dofs.iter().enumerate() {
            for (j, &column) in dofs.iter().enumerate() {
                k[(row, column)] = unit * block[i][j];
            }
        }
    }
    k
}

/// A bar under `pull` holds its pins together across its axis with N/L.
fn across(bar: &super::bar::BarElement, pull: f64) -> Matrix12 {
    let mut pins = nalgebra::SMatrix::<f64, 3, 12>::zeros();
    for (end, sign) in [(0, -1.0), (1, 1.0)] {
        let e = bar.offsets[end];
        let rotation = [[0.0, e.z, -e.y], [-e.z, 0.0, e.x], [e.y, -e.x, 0.0]];
        for i in 0..3 {
            pins[(i, 6 * end + i)] = sign;
            for j in 0..3 {
                pins[(i, 6 * end + 3 + j)] = sign * rotation[i][j];
            }
        }
    }
    let n = nalgebra::Vector3::new(bar.axis.x, bar.axis.y, bar.axis.z);
    let cross = nalgebra::Matrix3::identity() - n * n.transpose();
    pins.transpose() * (cross * (pull / bar.length_m)) * pins
}
