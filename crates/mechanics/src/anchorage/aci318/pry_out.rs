//! Pry-out on the side away from the shear, ACI 318-19 17.7.3.

use super::super::actions::GroupActions;
use super::super::group::Group;

/// Clause and formula.
pub(super) const RULE: (&str, &str) =
    ("ACI 318-19 17.7.3 (17.7.3.1)", "phi*Vcpg = phi*kcp*Ncpg, Ncpg = Ncbg, adhesive min(Nag, Ncbg)");

/// k_cp = 1 for h_ef < 65 mm, else 2 (17.7.3.1).
pub(super) fn k_cp(embedment_m: f64) -> f64 {
    if embedment_m < 0.065 { 1.0 } else { 2.0 }
}

/// Shear on fasteners that pry out together, N, and its offset from their middle along both axes, m.
///
/// The amounts are added whatever their directions, so that shears against each other, from torsion, don't cancel; the sum is
/// never below the resultant.
pub(super) fn shear_on(group: &Group, actions: &GroupActions, members: &[usize]) -> (f64, [f64; 2]) {
    let total: f64 = members.iter().map(|&i| actions.shear_of_n(i)).sum();
    if total <= 0.0 {
        return (0.0, [0.0; 2]);
    }
    let offset = [0, 1].map(|axis| {
        let middle = members.iter().map(|&i| group.anchors_m[i][axis]).sum::<f64>() / members.len() as f64;
        let at = members.iter().map(|&i| actions.shear_of_n(i) * group.anchors_m[i][axis]).sum::<f64>() / total;
        (at - middle).abs()
    });
    (total, offset)
}
