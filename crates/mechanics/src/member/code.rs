//! The design code of a member, with its partial or resistance factors as data: no formula holds a factor of its own.

use thiserror::Error;

/// Which code judges a member, and with which factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MemberCode {
    /// EN 1993-1-1, steel.
    En1993(En1993Factors),
    /// EN 1999-1-1, aluminum.
    En1999(En1999Factors),
    /// AISC 360, steel tubes.
    Aisc360(Aisc360Factors),
}

/// Partial factors of EN 1993-1-1 6.1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct En1993Factors {
    /// γ_M0, cross-sections.
    pub gamma_m0: f64,
    /// γ_M1, instability.
    pub gamma_m1: f64,
    /// γ_M2, net sections to fracture.
    pub gamma_m2: f64,
}

/// Partial factors of EN 1999-1-1 6.1.3.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct En1999Factors {
    /// γ_M1, cross-sections and instability.
    pub gamma_m1: f64,
    /// γ_M2, net sections and heat-affected zones to fracture.
    pub gamma_m2: f64,
}

/// Resistance factors of AISC 360: φ for load and resistance factor design, 1/Ω for allowable strength design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aisc360Factors {
    /// Compression (φ_c).
    pub compression: f64,
    /// Bending (φ_b).
    pub bending: f64,
    /// Shear (φ_v).
    pub shear: f64,
    /// Torsion (φ_T).
    pub torsion: f64,
    /// Tension, yielding (φ_t).
    pub tension_yield: f64,
    /// Tension, rupture (φ_t).
    pub tension_rupture: f64,
    /// α of C2 and Appendix 8: 1.0 for load and resistance factor design, 1.6 for allowable strength design.
    pub second_order: f64,
}

/// Why a factor can't be used.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("factor {field} must be a positive number, found {value}")]
pub struct FactorFault {
    /// Name of the factor.
    pub field: &'static str,
    /// What was found.
    pub value: f64,
}

impl MemberCode {
    /// Nothing, or the first factor that is not a positive number.
    pub fn check(&self) -> Result<(), FactorFault> {
        match self {
            Self::En1993(f) => {
                all_positive(&[("gamma_m0", f.gamma_m0), ("gamma_m1", f.gamma_m1), ("gamma_m2", f.gamma_m2)])
            }
            Self::En1999(f) => all_positive(&[("gamma_m1", f.gamma_m1), ("gamma_m2", f.gamma_m2)]),
            Self::Aisc360(f) => all_positive(&[
                ("compression", f.compression),
                ("bending", f.bending),
                ("shear", f.shear),
                ("torsion", f.torsion),
                ("tension_yield", f.tension_yield),
                ("tension_rupture", f.tension_rupture),
                ("second_order", f.second_order),
            ]),
        }
    }
}

fn all_positive(factors: &[(&'static str, f64)]) -> Result<(), FactorFault> {
    for &(field, value) in factors {
        if !(value.is_finite() && value > 0.0) {
            return Err(FactorFault { field, value });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_factor_of_zero_is_named() {
        let code = MemberCode::En1999(En1999Factors { gamma_m1: 1.1, gamma_m2: 0.0 });
        assert_eq!(code.check(), Err(FactorFault { field: "gamma_m2", value: 0.0 }));
    }
}
