//! What the frame needs to know of a bar: how stiff it is and how heavy, nothing of its shape.

/// Elastic properties and weight of a prismatic bar, as one Euler–Bernoulli member sees them.
///
/// Local axes: x along the bar, y and z the principal axes of the section. For a member that is not
/// vertical, local z points up in the member's vertical plane, so `ei_y_nm2` resists bending in that
/// vertical plane and `ei_z_nm2` bending sideways.
///
/// Shear flexibility is not held (`k·G·A → ∞`): an idealization that keeps results comparable with
/// outside programs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarStiffness {
    /// Axial stiffness E·A, N.
    pub ea_n: f64,
    /// Bending stiffness E·I about local y, N·m².
    pub ei_y_nm2: f64,
    /// Bending stiffness E·I about local z, N·m².
    pub ei_z_nm2: f64,
    /// Torsional stiffness G·J about local x, N·m².
    pub gj_nm2: f64,
    /// Weight of a unit of length, N/m, never negative.
    pub weight_n_per_m: f64,
}

impl BarStiffness {
    /// A bar that bends alike in every direction, such as a round tube.
    ///
    /// `ea_n` in N, `ei_nm2` and `gj_nm2` in N·m², `weight_n_per_m` in N/m.
    #[must_use]
    pub const fn round(ea_n: f64, ei_nm2: f64, gj_nm2: f64, weight_n_per_m: f64) -> Self {
        Self { ea_n, ei_y_nm2: ei_nm2, ei_z_nm2: ei_nm2, gj_nm2, weight_n_per_m }
    }
}
