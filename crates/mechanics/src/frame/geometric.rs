//! How axial forces soften a frame: the load factor at which it buckles.

use nalgebra::{DMatrix, DVector};

use super::assemble::scatter;
use super::bar::BarElement;
use super::factored::FactoredFrame;
use super::fault::FrameFault;
use super::member::Matrix12;
use super::model::BarId;
use super::solution::Solution;

/// A factor beyond the reciprocal of this is rounding error, not a load that anyone could reach.
const LEAST_SOFTENING: f64 = 1e-9;

/// A frame ready to be asked for critical factors under any axial forces.
///
/// With K = L·Lᵀ, softening is the largest eigenvalue μ of −L⁻¹·K_G·L⁻ᵀ; the critical factor is 1/μ.
/// Parts of the frame that don't touch each other's degrees of freedom, such as bending in the arm's
/// plane and across it, are solved apart.
#[derive(Debug, Clone)]
pub struct Buckling {
    blocks: Vec<Block>,
    elements: Vec<Element>,
}

/// Degrees of freedom that move together, and L⁻¹ of their stiffness.
#[derive(Debug, Clone)]
struct Block {
    first_node: usize,
    size: usize,
    inverse_root: DMatrix<f64>,
}

/// Geometric stiffness of one element for a pull of 1 N, as it lies in one or more blocks.
#[derive(Debug, Clone)]
struct Element {
    /// Block, place in the block, row of `unit`.
    places: Vec<(usize, usize, usize)>,
    unit: Matrix12,
}

/// Softening under some axial forces.
#[derive(Debug, Clone, PartialEq)]
pub struct Softening {
    /// μ: one over the critical factor; 0 or less if nothing buckles.
    pub value: f64,
    /// Its slope in the axial force of each element, 1/N.
    pub slope: Vec<f64>,
}

impl FactoredFrame {
    /// The smallest positive factor on the loads of `solution` at which the frame buckles:
    /// det(K + α·K_G) = 0, K_G the consistent geometric stiffness of the axial forces
    /// (Przemieniecki 1968, eq. 15.42; bars as strings, N/L across their axis). `None` if nothing
    /// is pressed enough to buckle in this direction of loading.
    ///
    /// Validity: a member buckles between nodes as a cubic does, so a single element overrates a
    /// pinned column by a fifth and a column free at its head by 0.8 %; two elements a column free at its
    /// head by 0.05 %. Terms of bending moments and torsion are left out, so lateral-torsional buckling is
    /// not covered. Loads keep their direction.
    pub fn critical_factor(&self, solution: &Solution) -> Result<Option<f64>, FrameFault> {
        let members = solution.members.iter().map(|m| (m.ends[6] - m.ends[0]) / 2.0);
        let bars = (0..self.parts.bars.len()).filter_map(|i| solution.bar_axial(BarId(i)));
        let pulls: Vec<f64> = members.chain(bars).collect();
        let softening = self.buckling()?.softening(&pulls)?.value;
        Ok((softening > LEAST_SOFTENING).then(|| 1.0 / softening))
    }

    /// Prepares critical factors under any axial forces.
    pub fn buckling(&self) -> Result<Buckling, FrameFault> {
        let units = self.unit_elements();
        let stiffness = self.scaled_stiffness();
        let blocks = self.blocks(&stiffness, &units);
        let mut place_of = vec![(usize::MAX, 0); self.parts.springs.len()];
        let mut prepared = Vec::with_capacity(blocks.len());
        for (b, rows) in blocks.iter().enumerate() {
            for (i, &row) in rows.iter().enumerate() {
                place_of[self.parts.free[row]] = (b, i);
            }
            let k = DMatrix::from_fn(rows.len(), rows.len(), |i, j| stiffness[(rows[i], rows[j])]);
            let mut inverse_root =
                DMatrix::from_diagonal(&DVector::from_iterator(rows.len(), rows.iter().map(|&row| self.scale[row])));
            let node = rows.first().map_or(0, |&row| self.parts.free[row] / 6);
            let root = k.cholesky().ok_or(FrameFault::BeyondMeasure { node })?.l();
            if !root.solve_lower_triangular_mut(&mut inverse_root) {
                return Err(FrameFault::BeyondMeasure { node });
            }
            prepared.push(Block { first_node: node, size: rows.len(), inverse_root });
        }
        let elements = units.into_iter().map(|(nodes, unit)| Element {
            places: (0..12)
                .map(|i| (place_of[6 * nodes[i / 6] + i % 6], i))
                .filter(|((block, _), _)| *block != usize::MAX)
                .map(|((block, place), i)| (block, place, i))
                .collect(),
            unit,
        });
        Ok(Buckling { elements: elements.collect(), blocks: prepared })
    }

    /// Geometric stiffness of members, then bars, for a pull of 1 N.
    fn unit_elements(&self) -> Vec<([usize; 2], Matrix12)> {
        let members = self.parts.members.iter();
        let members = members.map(|m| (m.nodes, m.globalize(&string_and_bow(m.length_m))));
        members.chain(self.parts.bars.iter().map(|bar| (bar.nodes, across(bar)))).collect()
    }

    fn scaled_stiffness(&self) -> DMatrix<f64> {
        let (parts, free) = (&self.parts, &self.parts.free);
        DMatrix::from_fn(free.len(), free.len(), |i, j| {
            let spring = if i == j { parts.springs[free[i]] } else { 0.0 };
            (parts.stiffness[(free[i], free[j])] + spring) * self.scale[i] * self.scale[j]
        })
    }

    /// Groups of free degrees of freedom that neither stiffness nor any axial force ties together.
    fn blocks(&self, stiffness: &DMatrix<f64>, units: &[([usize; 2], Matrix12)]) -> Vec<Vec<usize>> {
        /// Entries of the scaled stiffness below this are rounding error.
        const NOTHING: f64 = 1e-13;
        let (free, count) = (&self.parts.free, self.parts.springs.len());
        let mut geometric = DMatrix::zeros(count, count);
        for (nodes, unit) in units {
            let size = unit.amax();
            scatter(&mut geometric, *nodes, &unit.map(|v| if v.abs() > NOTHING * size { 1.0 } else { 0.0 }));
        }
        let tied = |i: usize, j: usize| stiffness[(i, j)].abs() > NOTHING || geometric[(free[i], free[j])] != 0.0;
        let mut left: Vec<usize> = (0..free.len()).collect();
        let mut blocks = Vec::new();
        while let Some(first) = left.pop() {
            let mut block = vec![first];
            let mut next = 0;
            while let Some(&row) = block.get(next) {
                let (joins, stays): (Vec<usize>, Vec<usize>) = left.iter().partition(|&&j| tied(row, j));
                block.extend(joins);
                left = stays;
                next += 1;
            }
            block.sort_unstable();
            blocks.push(block);
        }
        blocks
    }
}

impl Buckling {
    /// Softening under axial forces, N, tension positive: those of the members in order, then of the bars.
    pub fn softening(&self, pulls_n: &[f64]) -> Result<Softening, FrameFault> {
        let mut best: Option<(f64, usize, DVector<f64>)> = None;
        for (index, block) in self.blocks.iter().enumerate() {
            let Some((value, shape)) = self.of_block(index, block, pulls_n)? else { continue };
            if best.as_ref().is_none_or(|(most, ..)| value > *most) {
                best = Some((value, index, shape));
            }
        }
        let Some((value, block, shape)) = best else {
            return Ok(Softening { value: 0.0, slope: vec![0.0; self.elements.len()] });
        };
        Ok(Softening { value, slope: self.elements.iter().map(|e| -e.energy(block, &shape)).collect() })
    }

    /// The largest eigenvalue and the displacements of its shape, of unit strain energy.
    fn of_block(
        &self,
        index: usize,
        block: &Block,
        pulls_n: &[f64],
    ) -> Result<Option<(f64, DVector<f64>)>, FrameFault> {
        let mut softening = DMatrix::zeros(block.size, block.size);
        for (element, pull) in self.elements.iter().zip(pulls_n) {
            element.add(index, -pull, &mut softening);
        }
        if softening.iter().all(|v| *v == 0.0) {
            return Ok(None);
        }
        let l = &block.inverse_root;
        let softening = l * softening * l.transpose();
        // An eigenvalue search never ends on what is no number.
        if softening.iter().any(|v| !v.is_finite()) {
            return Err(FrameFault::BeyondMeasure { node: block.first_node });
        }
        let eigen = softening.symmetric_eigen();
        let largest = eigen.eigenvalues.imax();
        Ok(Some((eigen.eigenvalues[largest], l.transpose() * eigen.eigenvectors.column(largest))))
    }
}

impl Element {
    fn add(&self, block: usize, factor: f64, to: &mut DMatrix<f64>) {
        for &(_, i, row) in self.places.iter().filter(|p| p.0 == block) {
            for &(_, j, column) in self.places.iter().filter(|p| p.0 == block) {
                to[(i, j)] += factor * self.unit[(row, column)];
            }
        }
    }

    /// uᵀ·K_G·u for a pull of 1 N.
    fn energy(&self, block: usize, shape: &DVector<f64>) -> f64 {
        let here = || self.places.iter().filter(|p| p.0 == block);
        here()
            .map(|&(_, i, row)| {
                here().map(|&(_, j, column)| shape[i] * self.unit[(row, column)] * shape[j]).sum::<f64>()
            })
            .sum()
    }
}

/// Consistent geometric stiffness of a member under a pull of 1 N.
fn string_and_bow(l: f64) -> Matrix12 {
    let mut k = Matrix12::zeros();
    let unit = 1.0 / (30.0 * l);
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

/// A bar under a pull of 1 N holds its pins together across its axis with 1/L.
fn across(bar: &BarElement) -> Matrix12 {
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
    pins.transpose() * (cross / bar.length_m) * pins
}
