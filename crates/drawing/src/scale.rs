//! Scale: how many meters one paper millimeter stands for.
//!
//! Texts, ticks, dashes and line widths are in paper millimeters; a drawing is made for one scale, so that what stands
//! beside a thing on paper is at its right distance in meters.

use glam::DVec2;

/// Beyond this a unit is drawn as tag, tick and reach band only, m per mm: on a screen of 3.8 points a millimeter it is
/// four points a meter.
pub const COARSE_M_PER_MM: f64 = 0.95;

/// How many meters one paper millimeter stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    /// Meters for one paper millimeter: 0.1 is a scale of 1 to 100.
    pub m_per_mm: f64,
}

impl Scale {
    /// The scale 1 to `n` on paper. Anything but a positive finite number gives 1 to 100.
    pub fn one_to(n: f64) -> Self {
        let n = if n.is_finite() && n > 0.0 { n } else { 100.0 };
        Self { m_per_mm: n / 1000.0 }
    }

    /// Paper millimeters as meters in the drawing.
    pub fn m(self, paper_mm: f64) -> f64 {
        paper_mm * self.m_per_mm
    }

    /// Meters in the drawing as paper millimeters.
    pub fn mm(self, meters: f64) -> f64 {
        meters / self.m_per_mm
    }

    /// A shift on paper as a shift in the drawing.
    pub fn shift(self, paper_mm: DVec2) -> DVec2 {
        paper_mm * self.m_per_mm
    }

    /// Whether things are too small to be drawn in their parts.
    pub fn is_coarse(self) -> bool {
        self.m_per_mm > COARSE_M_PER_MM
    }
}
