//! A fastener as the anchorage formulas see it: kind, sizes, steel, embedment and what its approval says of it.

use super::fault::{AnchorageFault, least, positive};
use super::product::Product;

/// One fastener; all fasteners of a group are alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Fastener {
    /// How it holds in the concrete.
    pub kind: FastenerKind,
    /// Diameter d of the thread or shank, m.
    pub diameter_m: f64,
    /// Outside diameter d_nom in the concrete, m; the same as d unless a sleeve surrounds it.
    pub outside_diameter_m: f64,
    /// Stress area A_s, m².
    pub stress_area_m2: f64,
    /// Steel.
    pub grade: Grade,
    /// Effective embedment h_ef, m.
    pub embedment_m: f64,
    /// What the product's approval or evaluation report says; what is missing there is not checked.
    pub product: Product,
}

/// How a fastener holds in the concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FastenerKind {
    /// Post-installed, held by adhesive over its length.
    Bonded,
    /// Post-installed, locked in an undercut of the hole.
    Undercut,
    /// Headed stud, bolt or cage bolt set before the pour.
    CastIn(Head),
    /// Bolt through a wall or slab with a plate behind it: only its steel is checked.
    ThroughBolt,
    /// Tube set in the pour: only its steel is checked.
    Sleeve,
}

/// Head of a cast-in bolt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Head {
    /// Diameter d_h of the head, or of the circle with the head's area, m.
    pub diameter_m: f64,
    /// Thickness t_h of the head, m.
    pub thickness_m: f64,
}

/// Steel of a fastener.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grade {
    /// Characteristic ultimate strength f_uk (f_uta), Pa.
    pub ultimate_pa: f64,
    /// Characteristic yield strength f_yk (f_ya), Pa.
    pub yield_pa: f64,
    /// Rupture elongation A_5, a ratio (0.12 for 12 %). Missing: taken as brittle.
    pub rupture_elongation: Option<f64>,
}

impl Fastener {
    /// Whether it is set into a hole drilled in hardened concrete.
    pub const fn is_post_installed(&self) -> bool {
        matches!(self.kind, FastenerKind::Bonded | FastenerKind::Undercut)
    }

    /// Whether only its steel is checked, because the codes' concrete modes don't know its kind.
    pub const fn is_steel_only(&self) -> bool {
        matches!(self.kind, FastenerKind::ThroughBolt | FastenerKind::Sleeve)
    }

    /// Bearing area of the head, m²: A_h = π/4·(d_h² − d²), d_h not taken above 6·t_h + d. EN 1992-4 7.2.1.5; the limit
    /// on d_h is from memory, to be confirmed. `None` for a fastener without a head.
    pub fn head_area_m2(&self) -> Option<f64> {
        match self.kind {
            FastenerKind::CastIn(head) => {
                let d_h = head.diameter_m.min(6.0 * head.thickness_m + self.diameter_m);
                Some(std::f64::consts::FRAC_PI_4 * (d_h * d_h - self.diameter_m * self.diameter_m))
            }
            FastenerKind::Bonded | FastenerKind::Undercut | FastenerKind::ThroughBolt | FastenerKind::Sleeve => None,
        }
    }

    pub(super) fn check(&self) -> Result<(), AnchorageFault> {
        positive("diameter_m", self.diameter_m)?;
        least("outside_diameter_m", self.outside_diameter_m, self.diameter_m)?;
        positive("stress_area_m2", self.stress_area_m2)?;
        positive("embedment_m", self.embedment_m)?;
        positive("ultimate_pa", self.grade.ultimate_pa)?;
        positive("yield_pa", self.grade.yield_pa)?;
        least("ultimate_pa", self.grade.ultimate_pa, self.grade.yield_pa)?;
        if let Some(elongation) = self.grade.rupture_elongation {
            positive("rupture_elongation", elongation)?;
        }
        if let FastenerKind::CastIn(head) = self.kind {
            positive("head thickness_m", head.thickness_m)?;
            positive("head diameter_m", head.diameter_m)?;
            if head.diameter_m <= self.diameter_m {
                return Err(AnchorageFault::TooSmall {
                    field: "head diameter_m",
                    value: head.diameter_m,
                    least: self.diameter_m,
                });
            }
        }
        self.product.check()
    }
}
