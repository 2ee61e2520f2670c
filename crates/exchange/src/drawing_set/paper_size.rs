//! Sizes of sheets, and how each is divided: margins, the drawing's room, the strip with the title block.

use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

/// Size of a sheet, lying on its long side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PaperSize {
    /// ISO 216 A1: 841 by 594 mm.
    A1,
    /// ISO 216 A3: 420 by 297 mm.
    A3,
    /// ARCH D (ANSI/ASME Y14.1): 36 by 24 inches.
    ArchD,
}

/// A rectangle on a page, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Lower left corner.
    pub min_mm: DVec2,
    /// Upper right corner.
    pub max_mm: DVec2,
}

impl Area {
    /// Width and height, mm.
    pub fn size_mm(self) -> DVec2 {
        self.max_mm - self.min_mm
    }

    /// The same area, smaller by this at every side.
    #[must_use]
    pub fn within(self, by_mm: f64) -> Self {
        Self { min_mm: self.min_mm + DVec2::splat(by_mm), max_mm: self.max_mm - DVec2::splat(by_mm) }
    }
}

/// Margin at which sheets are bound (ISO 5457), mm.
const BOUND_MM: f64 = 20.0;
/// Every other margin (ISO 5457), mm.
const MARGIN_MM: f64 = 10.0;
/// Between the frame and what is drawn, mm.
const INSIDE_MM: f64 = 6.0;

impl PaperSize {
    /// All sizes.
    pub const ALL: [Self; 3] = [Self::A1, Self::A3, Self::ArchD];

    /// The size that goes with a system of units.
    pub const fn usual(units: UnitSystem) -> Self {
        match units {
            UnitSystem::Si => Self::A1,
            UnitSystem::UsCustomary => Self::ArchD,
        }
    }

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A1 => "A1",
            Self::A3 => "A3",
            Self::ArchD => "ARCH D",
        }
    }

    /// Width and height, mm.
    pub const fn size_mm(self) -> DVec2 {
        match self {
            Self::A1 => DVec2::new(841.0, 594.0),
            Self::A3 => DVec2::new(420.0, 297.0),
            Self::ArchD => DVec2::new(914.4, 609.6),
        }
    }

    const fn strip_mm(self) -> f64 {
        match self {
            Self::A1 | Self::ArchD => 130.0,
            Self::A3 => 88.0,
        }
    }

    /// Inside of the frame.
    pub fn frame(self) -> Area {
        let margin = DVec2::splat(MARGIN_MM);
        Area { min_mm: DVec2::new(BOUND_MM, MARGIN_MM), max_mm: self.size_mm() - margin }
    }

    /// The strip at the right, from frame to frame.
    pub fn strip(self) -> Area {
        let frame = self.frame();
        Area { min_mm: DVec2::new(frame.max_mm.x - self.strip_mm(), frame.min_mm.y), ..frame }
    }

    /// Room for what is drawn.
    pub fn room(self) -> Area {
        let frame = self.frame();
        Area { max_mm: DVec2::new(self.strip().min_mm.x, frame.max_mm.y), ..frame }.within(INSIDE_MM)
    }
}
