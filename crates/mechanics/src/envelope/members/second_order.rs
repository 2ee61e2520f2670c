//! How much second-order effects raise first-order moments.

use thiserror::Error;

/// From this α_cr on first-order moments stand: EN 1993-1-1 5.2.1(3), elastic analysis.
const FIRST_ORDER_ENOUGH: f64 = 10.0;
/// Down to this α_cr amplifying first-order moments is allowed: EN 1993-1-1 5.2.2(5).
const LEAST_ALPHA_CR: f64 = 3.0;

/// A factor on bending moments, at least 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SecondOrder(f64);

/// The structure is too soft for its moments to be amplified.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("alpha_cr is {alpha_cr}: below 3 moments can't be amplified, a second-order analysis is needed")]
pub struct TooSoft {
    /// The value found.
    pub alpha_cr: f64,
}

impl SecondOrder {
    /// Moments as they are.
    pub const FIRST: Self = Self(1.0);

    /// 1 from α_cr = 10 on, 1/(1 − 1/α_cr) from 3 on, EN 1993-1-1 5.2.2(5); below 3 there is no factor.
    pub fn of_alpha_cr(alpha_cr: f64) -> Result<Self, TooSoft> {
        if alpha_cr >= FIRST_ORDER_ENOUGH {
            Ok(Self::FIRST)
        } else if alpha_cr >= LEAST_ALPHA_CR {
            Ok(Self(1.0 / (1.0 - 1.0 / alpha_cr)))
        } else {
            Err(TooSoft { alpha_cr })
        }
    }

    /// The factor.
    pub const fn factor(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stiff_units_are_not_amplified_and_soft_ones_are_refused() {
        assert_eq!(SecondOrder::of_alpha_cr(f64::INFINITY).map(SecondOrder::factor), Ok(1.0));
        assert_eq!(SecondOrder::of_alpha_cr(10.0).map(SecondOrder::factor), Ok(1.0));
        // By hand: 1/(1 − 1/5) = 1.25, and 1.5 at 3.
        assert_eq!(SecondOrder::of_alpha_cr(5.0).map(SecondOrder::factor), Ok(1.25));
        assert!((SecondOrder::of_alpha_cr(3.0).unwrap().factor() - 1.5).abs() < 1e-15);
        assert!(SecondOrder::of_alpha_cr(2.9).is_err());
        assert!(SecondOrder::of_alpha_cr(f64::NAN).is_err());
    }
}
