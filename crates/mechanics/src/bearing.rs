//! How much pressure concrete bears under a plate or beside a sleeve; no gain from concrete around is counted.

use thiserror::Error;

/// The code with its factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BearingCode {
    /// EN 1992-1-1: f_cd = α_cc·f_ck/γ_C (3.15), which 6.7 raises where concrete around helps.
    En1992 {
        /// γ_C.
        gamma_c: f64,
        /// α_cc.
        alpha_cc: f64,
    },
    /// ACI 318-19 22.8.3.2: φ·0.85·f'c, which the code raises where concrete around helps.
    Aci318 {
        /// φ for bearing, Table 21.2.1.
        phi: f64,
    },
}

/// A strength or factor that is none.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("bearing {field} must be a positive number, found {value}")]
pub struct BearingFault {
    /// Name of the field.
    pub field: &'static str,
    /// What was found.
    pub value: f64,
}

impl BearingCode {
    /// Recommended factors of EN 1992-1-1.
    pub const EN_RECOMMENDED: Self = Self::En1992 { gamma_c: 1.5, alpha_cc: 1.0 };
    /// φ = 0.65 of ACI 318-19 Table 21.2.1 (from memory).
    pub const ACI_STANDARD: Self = Self::Aci318 { phi: 0.65 };

    /// Design pressure that concrete of a characteristic or specified strength bears, Pa.
    pub fn strength_pa(self, concrete_pa: f64) -> Result<f64, BearingFault> {
        let (field, factor, divisor) = match self {
            Self::En1992 { gamma_c, alpha_cc } => ("gamma_c", alpha_cc, gamma_c),
            Self::Aci318 { phi } => ("phi", 0.85 * phi, 1.0),
        };
        let strength = concrete_pa * factor / divisor;
        for (field, value) in [("concrete strength", concrete_pa), (field, divisor), (field, factor)] {
            if !(value.is_finite() && value > 0.0) {
                return Err(BearingFault { field, value });
            }
        }
        Ok(strength)
    }

    /// Its clause.
    pub const fn clause(self) -> &'static str {
        match self {
            Self::En1992 { .. } => "EN 1992-1-1 3.1.6 (3.15), 6.7 without its increase",
            Self::Aci318 { .. } => "ACI 318-19 22.8.3.2 without its increase",
        }
    }

    /// Its formula.
    pub const fn formula(self) -> &'static str {
        match self {
            Self::En1992 { .. } => "sigma <= alpha_cc*f_ck/gamma_C",
            Self::Aci318 { .. } => "sigma <= phi*0.85*f'c",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: C30/37: 30/1.5 = 20 MPa; f'c 4000 psi (27.58 MPa): 0.65·0.85·27.58 = 15.24 MPa.
    #[test]
    fn concrete_bears_by_hand() {
        assert!((BearingCode::EN_RECOMMENDED.strength_pa(30e6).unwrap() - 20e6).abs() < 1e-6);
        assert!((BearingCode::ACI_STANDARD.strength_pa(27.58e6).unwrap() - 15.238e6).abs() < 1e3);
        assert!(BearingCode::EN_RECOMMENDED.strength_pa(0.0).is_err());
        assert!(BearingCode::En1992 { gamma_c: f64::NAN, alpha_cc: 1.0 }.strength_pa(30e6).is_err());
    }
}
