//! The global stiffness matrix, and which degrees of freedom are left to solve for.

use nalgebra::DMatrix;

use super::bar::BarElement;
use super::fault::{Dof, FrameFault};
use super::member::{Matrix12, MemberElement};
use super::model::Frame;
use super::support::Hold;

/// Elements, the full stiffness matrix with springs, and the free degrees of freedom.
#[derive(Debug, Clone)]
pub(super) struct Assembled {
    pub members: Vec<MemberElement>,
    pub bars: Vec<BarElement>,
    /// Stiffness of members and bars alone, without springs: it gives reactions.
    pub stiffness: DMatrix<f64>,
    /// Spring stiffness of each degree of freedom, 0 where there is none.
    pub springs: Vec<f64>,
    /// Degrees of freedom to solve for.
    pub free: Vec<usize>,
    /// Rotations which nothing resists and nothing holds; left out, and no moment may act there.
    pub idle: Vec<usize>,
}

impl Assembled {
    pub fn new(frame: &Frame) -> Result<Self, FrameFault> {
        let count = 6 * frame.nodes.len();
        let mut stiffness = DMatrix::zeros(count, count);
        let mut members = Vec::with_capacity(frame.members.len());
        for (index, member) in frame.members.iter().enumerate() {
            let element = MemberElement::new(member, index, &frame.nodes)?;
            scatter(&mut stiffness, element.nodes, &element.global_stiffness());
            members.push(element);
        }
        let mut bars = Vec::with_capacity(frame.bars.len());
        for (index, bar) in frame.bars.iter().enumerate() {
            let element = BarElement::new(bar, index, &frame.nodes)?;
            let b = element.extension_vector();
            let k = b * b.transpose() * element.stiffness_n_per_m;
            scatter(&mut stiffness, element.nodes, &k);
            bars.push(element);
        }
        let (held, springs) = holds(frame, count)?;
        let (free, idle) = sort_out(&stiffness, &held, &springs)?;
        Ok(Self { members, bars, stiffness, springs, free, idle })
    }
}

/// Adds a 12×12 element matrix at its two nodes.
pub(super) fn scatter(whole: &mut DMatrix<f64>, nodes: [usize; 2], part: &Matrix12) {
    for i in 0..12 {
        let row = 6 * nodes[i / 6] + i % 6;
        for j in 0..12 {
            whole[(row, 6 * nodes[j / 6] + j % 6)] += part[(i, j)];
        }
    }
}

fn holds(frame: &Frame, count: usize) -> Result<(Vec<bool>, Vec<f64>), FrameFault> {
    let (mut held, mut springs) = (vec![false; count], vec![0.0; count]);
    for (index, (node, support)) in frame.supports.iter().enumerate() {
        super::model::node_at(&frame.nodes, *node)?;
        support.check(index)?;
        for (i, hold) in support.0.iter().enumerate() {
            match *hold {
                Hold::Free => {}
                Hold::Rigid => held[6 * node.0 + i] = true,
                Hold::Spring(k) => springs[6 * node.0 + i] += k,
            }
        }
    }
    Ok((held, springs))
}

/// A rotation without any stiffness, as at the foot of a bar, is left out. A displacement without
/// any is a mechanism.
fn sort_out(stiffness: &DMatrix<f64>, held: &[bool], springs: &[f64]) -> Result<(Vec<usize>, Vec<usize>), FrameFault> {
    let (mut free, mut idle) = (Vec::new(), Vec::new());
    for i in (0..held.len()).filter(|&i| !held[i]) {
        let node_scale = (0..3).map(|j| stiffness[(6 * (i / 6) + j, 6 * (i / 6) + j)]).fold(0.0, f64::max);
        // A square meter turns N/m into N·m/rad; below this share a rotation is rounding error.
        let nothing = stiffness[(i, i)] + springs[i] <= 1e-14 * node_scale;
        match (nothing, i % 6 < 3) {
            (false, _) => free.push(i),
            (true, false) => idle.push(i),
            (true, true) => {
                return Err(FrameFault::Mechanism { node: i / 6, dof: Dof::of_index(i) });
            }
        }
    }
    Ok((free, idle))
}
