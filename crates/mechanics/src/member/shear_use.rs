//! How shear and torsion eat into the strength left for bending; the same rule in EN 1993-1-1 and EN 1999-1-1.

/// Below this share of the strength is never reported as left, so that a utilization stays a finite number. The shear
/// mode itself stands above 98 % there.
const LEAST_KEPT: f64 = 1e-3;

/// Share of the yield strength left beside shear: 1 up to half the shear resistance, then 1 − (2v − 1)².
///
/// v = shear over shear resistance + torsional stress over shear strength. EN 1993-1-1 6.2.8(3), (4) and
/// EN 1999-1-1 6.2.8(2), which take v = V/[(1 − τ/τ_Rd)·V_Rd] with torsion; the plain sum is never smaller while the
/// shear check itself holds, and it also sees torsion without shear. At v = 1 nothing is left.
pub(super) fn kept_strength(shear_use: f64) -> f64 {
    if shear_use <= 0.5 {
        return 1.0;
    }
    let over = 2.0 * shear_use.min(1.0) - 1.0;
    (1.0 - over * over).max(LEAST_KEPT)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_the_shear_resistance_costs_nothing_and_all_of_it_everything() {
        assert_eq!(kept_strength(0.5), 1.0);
        // By hand: v = 0.75 → ρ = (1.5 − 1)² = 0.25.
        assert!((kept_strength(0.75) - 0.75).abs() < 1e-15);
        assert_eq!(kept_strength(1.0), LEAST_KEPT);
        assert_eq!(kept_strength(5.0), LEAST_KEPT);
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
