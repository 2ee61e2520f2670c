//! What EN 1992-4 takes from concrete and fastener for all its concrete modes, or why it has no rule.

use super::super::concrete::{Concrete, Cracking, SurfaceBars};
use super::super::fastener::{Fastener, FastenerKind};
use super::super::record::NotChecked;

/// Strength and coefficients that every concrete mode uses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ConcreteTerms {
    /// f_ck, Pa.
    pub fck_pa: f64,
    /// Whether it counts as cracked.
    pub cracking: Cracking,
    /// Whether the shell may spall.
    pub surface_bars: SurfaceBars,
}

impl ConcreteTerms {
    /// One of two values by whether the concrete is cracked.
    pub(super) const fn by_cracking(&self, cracked: f64, uncracked: f64) -> f64 {
        match self.cracking {
            Cracking::Cracked => cracked,
            Cracking::Uncracked => uncracked,
        }
    }

    /// √f_ck in √(N/mm²).
    pub(super) fn root_fck(&self) -> f64 {
        (self.fck_pa / 1e6).sqrt()
    }

    /// k_1 of the cone, (7.2): cast-in 8.9 cracked and 12.7 uncracked, post-installed 7.7 and 11.0.
    pub(super) const fn k1(&self, fastener: &Fastener) -> f64 {
        match fastener.kind {
            FastenerKind::CastIn(_) => self.by_cracking(8.9, 12.7),
            FastenerKind::Bonded | FastenerKind::Undercut | FastenerKind::ThroughBolt | FastenerKind::Sleeve => {
                self.by_cracking(7.7, 11.0)
            }
        }
    }

    /// ψ_re = 0.5 + h_ef/200 mm ≤ 1 where dense bars may let the shell spall, else 1, (7.5).
    pub(super) fn psi_re(&self, embedment_m: f64) -> f64 {
        match self.surface_bars {
            SurfaceBars::Wide => 1.0,
            SurfaceBars::Dense => (0.5 + embedment_m * 1e3 / 200.0).min(1.0),
        }
    }
}

/// The terms, or why no concrete mode can be checked.
///
/// f_ck is not taken above 60 MPa for cast-in and 50 MPa for post-installed fasteners (the range of product
/// assessments; from memory, to be confirmed).
pub(super) fn concrete_terms(
    fastener: &Fastener,
    concrete: &Concrete,
    thickness_m: f64,
) -> Result<ConcreteTerms, NotChecked> {
    match fastener.kind {
        FastenerKind::ThroughBolt => return Err(NotChecked::StructuralEngineer { what: "concrete at a through bolt" }),
        FastenerKind::Sleeve => return Err(NotChecked::StructuralEngineer { what: "concrete at a cast-in sleeve" }),
        FastenerKind::Bonded | FastenerKind::Undercut | FastenerKind::CastIn(_) => {}
    }
    if fastener.embedment_m >= thickness_m {
        return Err(NotChecked::StructuralEngineer { what: "concrete no thicker than the embedment" });
    }
    if concrete.lightweight != 1.0 {
        return Err(NotChecked::NotCovered { what: "lightweight concrete" });
    }
    let Some(fck_pa) = concrete.fck_pa else { return Err(NotChecked::MissingData { field: "fck_pa" }) };
    if fck_pa < 12e6 {
        return Err(NotChecked::NotCovered { what: "concrete strength below 12 MPa" });
    }
    let most = if fastener.is_post_installed() { 50e6 } else { 60e6 };
    Ok(ConcreteTerms { fck_pa: fck_pa.min(most), cracking: concrete.cracking, surface_bars: concrete.surface_bars })
}
