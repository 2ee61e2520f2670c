//! Concrete as chapter 17 takes it: capped strength, lightweight factor, cracked or not, and φ.

use super::super::concrete::{Concrete, Cracking, SplittingBars};
use super::super::fastener::{Fastener, FastenerKind};
use super::super::product::AciCategory;
use super::super::record::NotChecked;
use super::factors::{Aci318Factors, by_category};

/// Most f'_c for cast-in anchors, Pa (17.3.1).
const MOST_CAST_IN_PA: f64 = 70e6;
/// Least f'_c of structural concrete, Pa (19.2.1.1).
const LEAST_PA: f64 = 17e6;
/// Least and most embedment of adhesive anchors over their diameter (17.3.3).
const ADHESIVE: [f64; 2] = [4.0, 20.0];
/// Most f'_c for post-installed anchors, Pa (17.3.1).
const MOST_POST_PA: f64 = 55e6;

/// What the concrete modes share.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Material {
    /// f'_c, not above what 17.3.1 allows, Pa.
    pub strength_pa: f64,
    /// λ_a of concrete failure.
    pub lambda_a: f64,
    /// λ_a of bond failure.
    pub lambda_bond: f64,
    /// Cracked or not.
    pub cracking: Cracking,
    /// Whether bars hold splitting cracks, so that ψ_cp is 1.
    pub splitting_held: bool,
    /// φ of breakout, bond and blow-out in tension; missing without the category of a post-installed anchor.
    pub phi_tension: Result<f64, NotChecked>,
    /// φ of pull-out.
    pub phi_pull_out: Result<f64, NotChecked>,
}

impl Material {
    /// What the concrete modes share, or why none of them can be checked.
    pub(super) fn new(fastener: &Fastener, concrete: &Concrete, factors: &Aci318Factors) -> Result<Self, NotChecked> {
        if fastener.is_steel_only() {
            return Err(NotChecked::StructuralEngineer { what: "through bolts and sleeves in concrete" });
        }
        let Some(specified) = concrete.specified_pa else {
            return Err(NotChecked::MissingData { field: "specified_pa" });
        };
        if specified < LEAST_PA {
            return Err(NotChecked::StructuralEngineer { what: "concrete below 17 MPa (19.2.1.1)" });
        }
        let adhesive = matches!(fastener.kind, FastenerKind::Bonded);
        // A hair of tolerance for quotients.
        let slenderness = fastener.embedment_m / fastener.diameter_m;
        if adhesive && !(ADHESIVE[0] - 1e-9..=ADHESIVE[1] + 1e-9).contains(&slenderness) {
            return Err(NotChecked::StructuralEngineer {
                what: "adhesive anchors not 4 to 20 diameters deep (17.3.3)",
            });
        }
        let category = fastener.product.aci.category.ok_or(NotChecked::MissingData { field: "ACI category" });
        let supplemented = concrete.tension_bars.is_some();
        let phi = |cast_in: f64, table: [f64; 3]| {
            if fastener.is_post_installed() {
                category.map(|c: AciCategory| by_category(table, c))
            } else {
                Ok(cast_in)
            }
        };
        let (cast_in, post) = if supplemented {
            (factors.cast_in_supplemented, factors.post_supplemented)
        } else {
            (factors.cast_in_plain, factors.post_plain)
        };
        let most = if fastener.is_post_installed() { MOST_POST_PA } else { MOST_CAST_IN_PA };
        Ok(Self {
            strength_pa: specified.min(most),
            lambda_a: lambda(concrete.lightweight, if adhesive { 0.8 } else { 1.0 }),
            lambda_bond: lambda(concrete.lightweight, 0.6),
            cracking: concrete.cracking,
            splitting_held: concrete.splitting_bars == SplittingBars::LimitsCracks,
            phi_tension: phi(cast_in, post),
            phi_pull_out: phi(factors.cast_in_pull_out, factors.post_pull_out),
        })
    }

    /// One of two values by cracking.
    pub(super) const fn by_cracking(&self, cracked: f64, uncracked: f64) -> f64 {
        match self.cracking {
            Cracking::Cracked => cracked,
            Cracking::Uncracked => uncracked,
        }
    }

    /// √f'_c with f'_c in MPa.
    pub(super) fn root(&self) -> f64 {
        (self.strength_pa * 1e-6).sqrt()
    }
}

/// λ_a of table 17.2.4.1: λ times 1.0, 0.8 or 0.6 by anchor and mode in lightweight concrete, 1 in normal weight.
fn lambda(lightweight: f64, times: f64) -> f64 {
    if lightweight < 1.0 { times * lightweight } else { 1.0 }
}
