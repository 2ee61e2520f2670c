//! Reduction factors for flexural buckling: how much of a bar's squash load a slender bar keeps.
//!
//! All functions take numbers that a checked section and material already produced: positive strengths, slenderness
//! at or above zero. A slenderness of 0 (no length) gives the full strength; NaN stays NaN.

use std::f64::consts::PI;

use crate::material::BucklingClass;

/// A buckling curve of EN 1993-1-1 Table 6.1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SteelCurve {
    /// α = 0.13
    A0,
    /// α = 0.21
    A,
    /// α = 0.34
    B,
    /// α = 0.49
    C,
    /// α = 0.76 (from memory, to be confirmed)
    D,
}

impl SteelCurve {
    /// Imperfection factor α (EN 1993-1-1 Table 6.1).
    pub const fn imperfection(self) -> f64 {
        match self {
            Self::A0 => 0.13,
            Self::A => 0.21,
            Self::B => 0.34,
            Self::C => 0.49,
            Self::D => 0.76,
        }
    }
}

/// Slenderness up to which steel keeps its full strength (EN 1993-1-1 6.3.1.2 and 6.3.2.2).
const STEEL_PLATEAU: f64 = 0.2;

/// Euler's critical load N_cr = π²·EI/L_cr², N. `ei_nm2` in N·m², `buckling_length_m` in m; infinite for length 0.
pub fn euler_load_n(ei_nm2: f64, buckling_length_m: f64) -> f64 {
    PI * PI * ei_nm2 / (buckling_length_m * buckling_length_m)
}

/// Relative slenderness λ̄ = √(N_c/N_cr): squash load (effective area × strength) over Euler's load.
/// EN 1993-1-1 6.3.1.2(1), EN 1999-1-1 6.3.1.2. 0 for a bar without length.
pub fn relative_slenderness(squash_load_n: f64, euler_load_n: f64) -> f64 {
    (squash_load_n / euler_load_n).sqrt()
}

/// χ of steel: Φ = ½·[1 + α·(λ̄ − 0.2) + λ̄²], χ = 1/(Φ + √(Φ² − λ̄²)) ≤ 1.
/// EN 1993-1-1 6.3.1.2 (6.49); the same form with λ̄_LT is 6.3.2.2 (6.56), the general case of lateral-torsional buckling.
pub fn chi_en1993(relative_slenderness: f64, curve: SteelCurve) -> f64 {
    perry(relative_slenderness, curve.imperfection(), STEEL_PLATEAU)
}

/// χ of aluminum: the same form with α = 0.20, λ̄_0 = 0.10 for class A and α = 0.32, λ̄_0 = 0 for class B.
/// EN 1999-1-1 6.3.1.2 (6.50), Table 6.6; class B from memory, to be confirmed.
pub fn chi_en1999(relative_slenderness: f64, class: BucklingClass) -> f64 {
    match class {
        BucklingClass::A => perry(relative_slenderness, 0.20, 0.10),
        BucklingClass::B => perry(relative_slenderness, 0.32, 0.0),
    }
}

/// F_cr/F_y by AISC 360 E3: F_e = π²E/(KL/r)²; 0.658^(F_y/F_e) while F_y/F_e ≤ 2.25, else 0.877·F_e/F_y.
/// (E3-2), (E3-3); the second branch from memory, to be confirmed. Takes λ̄ = √(F_y/F_e).
pub fn chi_aisc360(relative_slenderness: f64) -> f64 {
    let yield_over_euler = relative_slenderness * relative_slenderness;
    if yield_over_euler <= 2.25 { 0.658_f64.powf(yield_over_euler) } else { 0.877 / yield_over_euler }
}

/// The Ayrton–Perry form that the Eurocodes share. Below the plateau the full strength is kept.
fn perry(slenderness: f64, imperfection: f64, plateau: f64) -> f64 {
    if slenderness <= plateau {
        return 1.0;
    }
    let phi = 0.5 * (1.0 + imperfection * (slenderness - plateau) + slenderness * slenderness);
    (1.0 / (phi + (phi * phi - slenderness * slenderness).sqrt())).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::section::Section;

    const CURVES: [SteelCurve; 5] = [SteelCurve::A0, SteelCurve::A, SteelCurve::B, SteelCurve::C, SteelCurve::D];

    #[test]
    fn a_hot_finished_column_has_the_published_chi() {
        // Published case D9: 244.5 × 10, f_y 355, L_cr 4 m, curve a: chi = 0.877914543 printed to 9 digits
        // (regression value of a public finite element library, after a published benchmark).
        let p = Section::RoundTube { diameter_m: 0.2445, wall_m: 0.010 }.properties().unwrap();
        let slenderness = relative_slenderness(p.area_m2 * 355e6, euler_load_n(210e9 * p.i_y_m4, 4.0));
        assert!((slenderness - 0.6308444254).abs() < 1e-9);
        assert!((chi_en1993(slenderness, SteelCurve::A) - 0.877914543).abs() < 1e-8);
    }

    #[test]
    fn another_programs_pipe_has_the_same_chi() {
        // A commercial program's published verification of EN 1993-1-1: tube 114.3 × 8, S275, 6 m, λ̄ = 1.834,
        // curve a, χ = 0.2611. λ̄ is printed to ±0.0005, and dχ/dλ̄ = −0.26 there: ±1.3e-4, and half a digit of χ.
        assert!((chi_en1993(1.834, SteelCurve::A) - 0.2611).abs() < 2e-4);
    }

    #[test]
    fn an_aluminum_column_has_the_published_chi() {
        // Published case D13 (TALAT Lecture 2301, example 5.1): λ̄ = 0.547, chi = 0.891; three digits are printed.
        assert!((chi_en1999(0.547, BucklingClass::A) - 0.891).abs() < 1e-3);
    }

    #[test]
    fn a_standard_pipe_column_has_the_published_strength() {
        // Published case D11 (AISC Design Examples v14.0, E.11): A 11.5 in², KL/r 97.8, F_y 35 ksi: φP_n = 221 kip.
        // The book rounds the table's radius of gyration, hence half a percent.
        let (fy, e): (f64, f64) = (35.0, 29000.0);
        let fe = PI * PI * e / 97.8_f64.powi(2);
        let design = 0.9 * chi_aisc360((fy / fe).sqrt()) * fy * 11.5;
        assert!((design - 221.0).abs() < 0.005 * 221.0, "{design}");
    }

    #[test]
    fn a_stocky_bar_keeps_its_strength_and_a_slender_one_tends_to_euler() {
        for curve in CURVES {
            assert_eq!(chi_en1993(0.0, curve), 1.0);
            assert_eq!(chi_en1993(0.2, curve), 1.0);
            // For λ̄ → ∞, χ·λ̄² → 1 from below; the distance is α/λ̄ to first order.
            let far = chi_en1993(1e4, curve) * 1e8;
            assert!(far < 1.0 && far > 1.0 - 2.0 * curve.imperfection() / 1e4);
        }
        assert_eq!(chi_en1999(0.0, BucklingClass::B), 1.0);
        assert_eq!(chi_aisc360(0.0), 1.0);
        assert!((chi_aisc360(1e3) * 1e6 - 0.877).abs() < 1e-12);
    }

    #[test]
    fn the_two_branches_of_aisc_meet() {
        // 0.658^2.25 = 0.3899 and 0.877/2.25 = 0.3898: the specification's own rounding leaves 3e-4 relative.
        let below = chi_aisc360(1.5);
        let above = chi_aisc360(1.5 + 1e-12);
        assert!((below - above).abs() < 5e-4 * below);
    }

    #[test]
    fn no_curve_ever_rises_with_slenderness_and_worse_curves_lie_lower() {
        let mut last = [1.0; 8];
        for step in 0..400 {
            let s = f64::from(step) * 0.01;
            let mut now = [0.0; 8];
            for (slot, curve) in CURVES.iter().enumerate() {
                now[slot] = chi_en1993(s, *curve);
            }
            now[5] = chi_en1999(s, BucklingClass::A);
            now[6] = chi_en1999(s, BucklingClass::B);
            now[7] = chi_aisc360(s);
            for (before, after) in last.iter().zip(now) {
                assert!(after <= before + 1e-12);
            }
            assert!(now[..5].windows(2).all(|pair| pair[1] <= pair[0]));
            assert!(now[6] <= now[5]);
            last = now;
        }
    }
}
