//! Partial factors of EN 1992-4 as data: national annexes differ.

use super::super::fastener::Grade;
use super::super::fault::{AnchorageFault, least, positive};

/// Partial factors and the rules that make those of steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct En1992Factors {
    /// γ_c of concrete.
    pub gamma_c: f64,
    /// γ_Ms in tension is this times f_uk/f_yk …
    pub steel_tension_times: f64,
    /// … and at least this.
    pub steel_tension_least: f64,
    /// γ_Ms in shear is f_uk/f_yk and at least this, for f_uk up to 800 MPa and f_yk/f_uk up to 0.8 …
    pub steel_shear_least: f64,
    /// … and this beyond.
    pub steel_shear_strong: f64,
    /// γ_Ms,re of supplementary reinforcement.
    pub gamma_ms_re: f64,
}

impl En1992Factors {
    /// Recommended values for permanent and transient situations, EN 1992-4 Table 4.1.
    pub const RECOMMENDED: Self = Self {
        gamma_c: 1.5,
        steel_tension_times: 1.2,
        steel_tension_least: 1.4,
        steel_shear_least: 1.25,
        steel_shear_strong: 1.5,
        gamma_ms_re: 1.15,
    };

    /// γ_Ms in tension: 1.2·f_uk/f_yk ≥ 1.4.
    pub fn steel_tension(&self, grade: &Grade) -> f64 {
        (self.steel_tension_times * grade.ultimate_pa / grade.yield_pa).max(self.steel_tension_least)
    }

    /// γ_Ms in shear: f_uk/f_yk ≥ 1.25 for f_uk ≤ 800 MPa and f_yk/f_uk ≤ 0.8, else 1.5.
    pub fn steel_shear(&self, grade: &Grade) -> f64 {
        // A hair of tolerance, so that 640/800 is not above 0.8 for want of a last bit.
        if grade.ultimate_pa <= 800.0e6 * (1.0 + 1e-9) && grade.yield_pa / grade.ultimate_pa <= 0.8 + 1e-9 {
            (grade.ultimate_pa / grade.yield_pa).max(self.steel_shear_least)
        } else {
            self.steel_shear_strong
        }
    }

    /// Nothing, or the first factor that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        least("gamma_c", self.gamma_c, 1.0)?;
        positive("steel_tension_times", self.steel_tension_times)?;
        least("steel_tension_least", self.steel_tension_least, 1.0)?;
        least("steel_shear_least", self.steel_shear_least, 1.0)?;
        least("steel_shear_strong", self.steel_shear_strong, 1.0)?;
        least("gamma_ms_re", self.gamma_ms_re, 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steel_of_grade_8_8_has_the_tables_factors() {
        // Table 4.1: 1.2·800/640 = 1.5 in tension; 800/640 = 1.25 in shear.
        let grade = Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.12) };
        assert!((En1992Factors::RECOMMENDED.steel_tension(&grade) - 1.5).abs() < 1e-12);
        assert!((En1992Factors::RECOMMENDED.steel_shear(&grade) - 1.25).abs() < 1e-12);
        // 10.9: 1.2·1000/900 = 1.33, not below 1.4; too strong for the ratio rule: 1.5.
        let strong = Grade { ultimate_pa: 1000e6, yield_pa: 900e6, rupture_elongation: None };
        assert!((En1992Factors::RECOMMENDED.steel_tension(&strong) - 1.4).abs() < 1e-12);
        assert!((En1992Factors::RECOMMENDED.steel_shear(&strong) - 1.5).abs() < 1e-12);
    }
}
