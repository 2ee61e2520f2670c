//! The concrete of an anchorage: strength, cracked or not, and the reinforcement near the fasteners.

use super::fault::{AnchorageFault, positive, positive_if_given};
use super::supplementary::{ShearBars, TensionBars};

/// Concrete and reinforcement round a group; the shape is told by `Around`.
#[derive(Debug, Clone, PartialEq)]
pub struct Concrete {
    /// Characteristic cylinder strength f_ck, Pa (EN 1992-4).
    pub fck_pa: Option<f64>,
    /// Specified compressive strength f'_c, Pa (ACI 318).
    pub specified_pa: Option<f64>,
    /// Cracked unless proven otherwise.
    pub cracking: Cracking,
    /// λ of lightweight concrete (ACI 318), 1 for normal weight. EN 1992-4 covers normal weight only.
    pub lightweight: f64,
    /// Reinforcement near the surface in the zone of the fasteners.
    pub surface_bars: SurfaceBars,
    /// Reinforcement along the edges.
    pub edge_bars: EdgeBars,
    /// Reinforcement against splitting.
    pub splitting_bars: SplittingBars,
    /// Supplementary reinforcement for tension, as the user gives it.
    pub tension_bars: Option<TensionBars>,
    /// Supplementary reinforcement for shear toward one edge, as the user gives it.
    pub shear_bars: Option<ShearBars>,
}

/// Whether the concrete round the fasteners is cracked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cracking {
    /// Cracked, or not proven to be uncracked.
    Cracked,
    /// Proven to be uncracked at all times.
    Uncracked,
}

/// How dense the reinforcement near the surface is (EN 1992-4 7.2.1.4(5)).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SurfaceBars {
    /// Spacing at least 150 mm whatever the bar, or at least 100 mm with bars of at most 10 mm; also no bars.
    Wide,
    /// Denser, or not known: the shell may spall.
    Dense,
}

/// Reinforcement along the edge toward which shear acts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EdgeBars {
    /// None, or not known.
    None,
    /// A straight bar along the edge (ACI: at least No. 4, 13 mm).
    Straight,
    /// A bar along the edge and closely spaced stirrups or mesh: spacing at most 100 mm and at most 2·c_1.
    WithStirrups,
}

/// Whether reinforcement takes splitting forces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SplittingBars {
    /// None, or not known.
    None,
    /// Reinforcement takes the splitting forces and limits cracks to 0.3 mm (EN 1992-4 7.2.1.7).
    LimitsCracks,
}

impl Concrete {
    /// Cracked normal-weight concrete of one strength for either code, with dense surface bars and nothing else.
    pub const fn plain(strength_pa: f64) -> Self {
        Self {
            fck_pa: Some(strength_pa),
            specified_pa: Some(strength_pa),
            cracking: Cracking::Cracked,
            lightweight: 1.0,
            surface_bars: SurfaceBars::Dense,
            edge_bars: EdgeBars::None,
            splitting_bars: SplittingBars::None,
            tension_bars: None,
            shear_bars: None,
        }
    }

    /// Nothing, or the first number that can't be.
    pub fn check(&self) -> Result<(), AnchorageFault> {
        positive_if_given("fck_pa", self.fck_pa)?;
        positive_if_given("specified_pa", self.specified_pa)?;
        positive("lightweight", self.lightweight)?;
        if let Some(bars) = &self.tension_bars {
            bars.bars.check()?;
        }
        self.shear_bars.as_ref().map_or(Ok(()), ShearBars::check)
    }
}
