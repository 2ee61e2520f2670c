//! A prismatic Euler–Bernoulli member with 12 degrees of freedom and releasable end rotations.

use glam::{DMat3, DVec3};
use nalgebra::{DMatrix, SMatrix, SVector};

use super::fault::{FrameFault, Quantity};
use super::load::MemberLoad;
use super::model::{NodeId, SHORTEST_M, finite, node_at, positive};
use crate::stiffness::BarStiffness;

pub(super) type Matrix12 = SMatrix<f64, 12, 12>;
pub(super) type Vector12 = SVector<f64, 12>;

/// Rotations at the ends that pass no moment to the node, about local x, y, z at start and end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Releases {
    /// About local x, y, z at the start.
    pub start: [bool; 3],
    /// About local x, y, z at the end.
    pub end: [bool; 3],
}

/// A member between two nodes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Member {
    /// Node at the start; local x runs from here to the end.
    pub start: NodeId,
    /// Node at the end.
    pub end: NodeId,
    /// Axial, bending and torsional stiffness. The weight is not applied by itself.
    pub stiffness: BarStiffness,
    /// Any direction in the plane of local x and local z, on the side of +z, global axes.
    pub up: DVec3,
    /// Released end rotations.
    pub releases: Releases,
}

/// A member with its matrices worked out. Local axes are the columns of `axes`.
#[derive(Debug, Clone)]
pub(super) struct MemberElement {
    pub nodes: [usize; 2],
    pub length_m: f64,
    pub axes: DMat3,
    /// Local stiffness with releases condensed out.
    stiffness: Matrix12,
    /// u_all = carry · u_kept: what the released rotations do, as the nodes move.
    carry: Matrix12,
    /// p_kept = carryᵀ · p: how loads on released ends reach the others.
    turn: Matrix12,
}

impl MemberElement {
    pub fn new(member: &Member, index: usize, nodes: &[DVec3]) -> Result<Self, FrameFault> {
        check_stiffness(&member.stiffness, index)?;
        finite(Quantity::UpDirection, index, &member.up.to_array())?;
        let along = node_at(nodes, member.end)? - node_at(nodes, member.start)?;
        let length_m = along.length();
        if length_m <= SHORTEST_M {
            return Err(FrameFault::ZeroLengthMember { member: index });
        }
        let axes = local_axes(along / length_m, member.up).ok_or(FrameFault::UpAlongMember { member: index })?;
        let full = local_stiffness(&member.stiffness, length_m);
        let carry = carry_over_releases(&full, member.releases, index)?;
        Ok(Self {
            nodes: [member.start.0, member.end.0],
            length_m,
            axes,
            stiffness: carry.transpose() * full * carry,
            carry,
            turn: turn_matrix(&axes),
        })
    }

    /// Stiffness in global axes.
    pub fn global_stiffness(&self) -> Matrix12 {
        self.turn.transpose() * self.stiffness * self.turn
    }

    /// A local 12×12 matrix condensed over the releases and turned to global axes.
    pub fn globalize(&self, local: &Matrix12) -> Matrix12 {
        let kept = self.carry.transpose() * local * self.carry;
        self.turn.transpose() * kept * self.turn
    }

    /// Nodal loads that stand for a load along the member, in local axes.
    pub fn local_equivalent(&self, load: &MemberLoad) -> Vector12 {
        let all = match *load {
            MemberLoad::Uniform(q) => uniform_equivalent(self.axes.transpose() * q, self.length_m),
            MemberLoad::Point { at_m, force_n } => {
                point_equivalent(self.axes.transpose() * force_n, at_m, self.length_m)
            }
        };
        self.carry.transpose() * all
    }

    /// The same in global axes.
    pub fn global_equivalent(&self, load: &MemberLoad) -> Vector12 {
        self.turn.transpose() * self.local_equivalent(load)
    }

    /// Forces of the nodes on the member, local axes, without the share of loads along it.
    pub fn local_end_forces(&self, global_displacement: &Vector12) -> Vector12 {
        self.stiffness * (self.turn * global_displacement)
    }
}

fn check_stiffness(s: &BarStiffness, index: usize) -> Result<(), FrameFault> {
    positive(Quantity::AxialStiffness, index, s.ea_n)?;
    positive(Quantity::BendingStiffnessY, index, s.ei_y_nm2)?;
    positive(Quantity::BendingStiffnessZ, index, s.ei_z_nm2)?;
    positive(Quantity::TorsionalStiffness, index, s.gj_nm2)
}

/// Columns x, y, z; `None` if `up` runs along the member.
fn local_axes(x: DVec3, up: DVec3) -> Option<DMat3> {
    let y = up.cross(x);
    let sine = y.length();
    if sine <= 1e-9 * up.length() || up.length() == 0.0 {
        return None;
    }
    let y = y / sine;
    Some(DMat3::from_cols(x, y, x.cross(y)))
}

fn turn_matrix(axes: &DMat3) -> Matrix12 {
    let mut turn = Matrix12::zeros();
    for block in 0..4 {
        for row in 0..3 {
            for column in 0..3 {
                turn[(3 * block + row, 3 * block + column)] = axes.col(row)[column];
            }
        }
    }
    turn
}

/// k of a prismatic Euler–Bernoulli member (Przemieniecki 1968, eq. 5.116 with Φ = 0).
fn local_stiffness(s: &BarStiffness, length_m: f64) -> Matrix12 {
    let l = length_m;
    let mut k = Matrix12::zeros();
    for (i, stiffness) in [(0, s.ea_n / l), (3, s.gj_nm2 / l)] {
        k[(i, i)] = stiffness;
        k[(i + 6, i + 6)] = stiffness;
        k[(i, i + 6)] = -stiffness;
        k[(i + 6, i)] = -stiffness;
    }
    // In the plane of x and y a positive rotation lifts the far end; in that of x and z it lowers it.
    for (w, r, sign, ei) in [(1, 5, 1.0, s.ei_z_nm2), (2, 4, -1.0, s.ei_y_nm2)] {
        let (a, b, c) = (12.0 * ei / l.powi(3), sign * 6.0 * ei / l.powi(2), ei / l);
        let dofs = [w, r, w + 6, r + 6];
        let block = [[a, b, -a, b], [b, 4.0 * c, -b, 2.0 * c], [-a, -b, a, -b], [b, 2.0 * c, -b, 4.0 * c]];
        for (i, &row) in dofs.iter().enumerate() {
            for (j, &column) in dofs.iter().enumerate() {
                k[(row, column)] = block[i][j];
            }
        }
    }
    k
}

/// Condensation of released rotations r against kept ones c: u_r = −k_rr⁻¹·k_rc·u_c.
fn carry_over_releases(k: &Matrix12, releases: Releases, index: usize) -> Result<Matrix12, FrameFault> {
    let mut carry = Matrix12::identity();
    let released: Vec<usize> = (0..6)
        .filter(|&i| if i < 3 { releases.start[i] } else { releases.end[i - 3] })
        .map(|i| if i < 3 { 3 + i } else { 6 + i })
        .collect();
    if released.is_empty() {
        return Ok(carry);
    }
    let count = released.len();
    // Scaled to a unit diagonal, so that a vanishing pivot means a mechanism in any unit of length.
    let scale: Vec<f64> = released.iter().map(|&i| 1.0 / k[(i, i)].sqrt()).collect();
    let k_rr = DMatrix::from_fn(count, count, |i, j| k[(released[i], released[j])] * scale[i] * scale[j]);
    let k_rc =
        DMatrix::from_fn(count, 12, |i, j| if released.contains(&j) { 0.0 } else { k[(released[i], j)] * scale[i] });
    let over = FrameFault::OverReleased { member: index };
    let factor = k_rr.cholesky().ok_or(over)?;
    if factor.l_dirty().diagonal().iter().any(|&p| p * p < 1e-10) {
        return Err(over);
    }
    let follow = factor.solve(&k_rc);
    for (i, &row) in released.iter().enumerate() {
        for column in 0..12 {
            carry[(row, column)] = -follow[(i, column)] * scale[i];
        }
    }
    Ok(carry)
}

fn uniform_equivalent(q: DVec3, l: f64) -> Vector12 {
    let (f, m) = (q * l / 2.0, q * l * l / 12.0);
    Vector12::from([f.x, f.y, f.z, 0.0, -m.z, m.y, f.x, f.y, f.z, 0.0, m.z, -m.y])
}

fn point_equivalent(p: DVec3, a: f64, l: f64) -> Vector12 {
    let b = l - a;
    let near = b * b * (3.0 * a + b) / l.powi(3);
    let far = a * a * (a + 3.0 * b) / l.powi(3);
    let (m0, m1) = (a * b * b / (l * l), a * a * b / (l * l));
    Vector12::from([
        p.x * b / l,
        p.y * near,
        p.z * near,
        0.0,
        -p.z * m0,
        p.y * m0,
        p.x * a / l,
        p.y * far,
        p.z * far,
        0.0,
        p.z * m1,
        -p.y * m1,
    ])
}
