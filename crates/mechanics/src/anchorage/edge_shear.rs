//! Shear of a group as one edge feels it, for any code.

use super::actions::GroupActions;

/// Fasteners nearer to an edge than the nearest one and this stand in its front row.
pub(super) const ROW_TOLERANCE_M: f64 = 1e-3;

/// The row of fasteners nearest to an edge, which feels the shear toward it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FrontRow<'a> {
    /// Direction out of the concrete, a unit vector.
    pub outward: [f64; 2],
    /// Direction along the edge, a unit vector.
    pub along: [f64; 2],
    /// The fasteners.
    pub members: &'a [usize],
    /// Their places along the edge, m.
    pub places_m: &'a [f64],
    /// Mean of those places, m.
    pub mean_m: f64,
}

/// Shear as one edge feels it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct TowardEdge {
    /// Toward the edge, N, not negative.
    pub square_n: f64,
    /// Along the edge, N, not negative.
    pub along_n: f64,
    /// Eccentricity of the shear toward the edge in its row, m.
    pub eccentricity_m: f64,
}

impl FrontRow<'_> {
    /// All that the group brings toward the edge counts on the front row, at least what the front row itself brings; what
    /// points away does not help. Along the edge the greater of the group's sum and the row's amounts, whichever way they
    /// point: what twists a row does not cancel (on the safe side: a standard may let the rear rows keep their share).
    pub(super) fn feels(&self, actions: &GroupActions) -> TowardEdge {
        let square = |v: &[f64; 2]| v[0] * self.outward[0] + v[1] * self.outward[1];
        let along = |v: &[f64; 2]| v[0] * self.along[0] + v[1] * self.along[1];
        let shears = || self.members.iter().map(|&i| &actions.shear_n[i]);
        let pushed: f64 = shears().map(|v| square(v).max(0.0)).sum();
        let pushed_at: f64 = shears().zip(self.places_m).map(|(v, t)| square(v).max(0.0) * t).sum();
        let total = actions.total_shear_n();
        TowardEdge {
            square_n: square(&total).max(pushed).max(0.0),
            along_n: along(&total).abs().max(shears().map(|v| along(v).abs()).sum::<f64>()),
            eccentricity_m: if pushed > 0.0 { (pushed_at / pushed - self.mean_m).abs() } else { 0.0 },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_twists_a_row_along_its_edge_does_not_cancel() {
        let row =
            FrontRow { outward: [1.0, 0.0], along: [0.0, 1.0], members: &[0, 1], places_m: &[-0.1, 0.1], mean_m: 0.0 };
        let shear_n = vec![[2e3, 5e3], [0.0, -5e3], [-4e3, 0.0]];
        let found = row.feels(&GroupActions { shear_n, ..GroupActions::none(3) });
        // Toward the edge the row's own 2 kN, though the group as a whole points away, at 0.1 m from its middle; along it
        // 5 + 5 kN.
        assert_eq!(found, TowardEdge { square_n: 2e3, along_n: 10e3, eccentricity_m: 0.1 });
    }
}
