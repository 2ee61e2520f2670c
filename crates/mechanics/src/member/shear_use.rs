//! How shear and torsion eat into the strength left for axial force and bending; one rule in EN 1993-1-1 and EN 1999-1-1.

/// Utilization by axial force and bending beside shear, as the share of all forces together that reaches the limit.
///
/// The codes leave the whole strength up to half the shear resistance, beyond it 1 − (2v − 1)² of it: EN 1993-1-1
/// 6.2.8(3), (4) and 6.2.10, EN 1999-1-1 6.2.8(2) and 6.2.10. So the limit is p ≤ 1 − (2v − 1)², p the plain
/// utilization and v that of shear. Forces grow together: p/u = 1 − (2v/u − 1)² gives u = 4v²/(4v − p) where p < 2v,
/// u = p elsewhere. u = 1 exactly at the codes' limit, u is proportional to the forces, and never below v or p.
///
/// v = shear over shear resistance + torsional stress over shear strength. With torsion the codes take
/// v = V/[(1 − τ/τ_Rd)·V_Rd]; the plain sum is never smaller while the shear check itself holds, and it also sees torsion
/// without shear.
pub(super) fn beside_shear(plain_use: f64, shear_use: f64) -> f64 {
    if plain_use >= 2.0 * shear_use { plain_use } else { 4.0 * shear_use * shear_use / (4.0 * shear_use - plain_use) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_the_shear_resistance_costs_nothing() {
        // p = 1 with v = 0.5 is at the limit, as without shear.
        assert_eq!(beside_shear(1.0, 0.5), 1.0);
        assert_eq!(beside_shear(0.8, 0.3), 0.8);
        assert_eq!(beside_shear(0.0, 0.0), 0.0);
    }

    #[test]
    fn the_limit_is_the_codes() {
        // By hand: v = 0.75 leaves 1 − 0.5² = 0.75 of the strength; v = 0.9 leaves 1 − 0.8² = 0.36; v = 1 nothing.
        for (v, left) in [(0.75, 0.75), (0.9, 0.36), (1.0, 0.0)] {
            assert!((beside_shear(left, v) - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn it_is_proportional_and_never_below_its_parts() {
        for p in [0.0, 0.2, 0.7, 1.5] {
            for v in [0.0, 0.1, 0.6, 2.0] {
                let u = beside_shear(p, v);
                assert!(u >= p - 1e-15 && u >= v - 1e-15);
                assert!((beside_shear(3.0 * p, 3.0 * v) - 3.0 * u).abs() <= 1e-12 * u);
            }
        }
    }

    #[test]
    fn the_sum_is_never_kinder_than_the_quotient_of_the_codes() {
        for torsion in [0.0, 0.1, 0.3, 0.6, 0.9] {
            for shear in [0.0, 0.05, 0.1, 0.3, 0.39, 0.7] {
                if shear + torsion <= 1.0 {
                    assert!(shear + torsion >= shear / (1.0 - torsion) - 1e-12);
                }
            }
        }
    }
}
