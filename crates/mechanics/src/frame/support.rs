//! What holds a node: each degree of freedom free, rigidly held, or on a spring.

use super::fault::{FrameFault, Quantity};

/// How one degree of freedom is held.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Hold {
    /// Not held.
    #[default]
    Free,
    /// Held without give.
    Rigid,
    /// Held by a linear spring: N/m for a displacement, N·m/rad for a rotation; positive.
    Spring(f64),
}

/// How the six degrees of freedom of a node are held, in global axes: x, y, z, then rotations.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Support(pub [Hold; 6]);

impl Support {
    /// Everything held without give.
    pub const FIXED: Self = Self([Hold::Rigid; 6]);

    /// Displacements held without give, rotations free.
    pub const PINNED: Self = Self([Hold::Rigid, Hold::Rigid, Hold::Rigid, Hold::Free, Hold::Free, Hold::Free]);

    pub(super) fn check(&self, index: usize) -> Result<(), FrameFault> {
        for hold in self.0 {
            if let Hold::Spring(value) = hold {
                if !value.is_finite() {
                    return Err(FrameFault::NotFinite { quantity: Quantity::SupportSpring, index, value });
                }
                if value <= 0.0 {
                    return Err(FrameFault::NotPositive { quantity: Quantity::SupportSpring, index, value });
                }
            }
        }
        Ok(())
    }
}
