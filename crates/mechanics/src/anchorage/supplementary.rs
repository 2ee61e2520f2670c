//! Supplementary reinforcement that takes the load out of a cone or an edge, as the user gives it.

use super::fault::{AnchorageFault, finite, positive};

/// Bars that cross the assumed cone or edge body.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarSet {
    /// How many bars count.
    pub count: u32,
    /// Diameter φ, m.
    pub diameter_m: f64,
    /// Yield strength f_yk, Pa; EN 1992-4 takes no more than 600 MPa.
    pub yield_pa: f64,
    /// Length l_1 inside the assumed cone or edge body, m.
    pub anchored_m: f64,
    /// Design bond strength f_bd, Pa (EN 1992-1-1 8.4.2).
    pub bond_pa: f64,
    /// α_1·α_2 of EN 1992-1-1 8.4.4.
    pub alpha: f64,
    /// Shape of the end inside the body.
    pub end: BarEnd,
    /// Distance of the farthest counted bar from the fastener, m.
    pub distance_m: f64,
}

/// Shape of a bar's end inside the body.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BarEnd {
    /// Straight: l_1 at least 10·φ.
    Straight,
    /// Hook, bend or loop: l_1 at least 4·φ.
    Hooked,
}

/// Bars for tension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TensionBars {
    /// Bars beside each fastener.
    pub bars: BarSet,
}

/// Bars for shear toward one edge.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShearBars {
    /// All bars that cross the body toward the edge.
    pub bars: BarSet,
    /// Which of `Around::edges`.
    pub edge: usize,
    /// Distance e_s between bars and shear force, m.
    pub offset_m: f64,
    /// Internal lever arm z, m.
    pub lever_m: f64,
}

impl BarSet {
    /// Nothing, or the first number that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        positive("bar count", f64::from(self.count))?;
        positive("bar diameter_m", self.diameter_m)?;
        positive("bar yield_pa", self.yield_pa)?;
        positive("bar anchored_m", self.anchored_m)?;
        positive("bar bond_pa", self.bond_pa)?;
        positive("bar alpha", self.alpha)?;
        finite("bar distance_m", self.distance_m)
    }
}

impl ShearBars {
    /// Nothing, or the first number that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        self.bars.check()?;
        finite("bar offset_m", self.offset_m)?;
        positive("bar lever_m", self.lever_m)
    }
}
