//! Pull-out of one fastener, ACI 318-19 17.6.3.

use super::super::fastener::{Fastener, FastenerKind};
use super::super::line::{newtons, number, pascals, square_meters};
use super::super::product::PullOut;
use super::super::record::{NotChecked, Symbol};
use super::material::Material;

/// What pull-out is here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Pulled {
    /// N_pn = ψ_c,P·8·A_brg·f'_c of a head, N.
    Head { area_m2: f64, psi_c: f64, strength_n: f64 },
    /// N_pn of the product's tests, N.
    Product(f64),
    /// It does not decide, and why.
    Never(&'static str),
}

impl Pulled {
    /// Headed: N_pn = ψ_c,P·8·A_brg·f'_c, (17.6.3.1), (17.6.3.2.2a), ψ_c,P = 1.4 uncracked; undercut: from its tests
    /// (17.6.3.2.1); adhesive: bond instead.
    pub(super) fn new(fastener: &Fastener, material: &Material) -> Result<Self, NotChecked> {
        let product = &fastener.product.aci;
        match fastener.kind {
            FastenerKind::CastIn(_) => {
                let area_m2 = fastener.head_area_m2().unwrap_or(0.0);
                let psi_c = material.by_cracking(1.0, 1.4);
                Ok(Self::Head { area_m2, psi_c, strength_n: psi_c * 8.0 * area_m2 * material.strength_pa })
            }
            FastenerKind::Undercut => {
                let cracked = material.by_cracking(1.0, 0.0) > 0.0;
                let (value, field) = if cracked {
                    (product.pull_out_cracked, "ACI pull_out_cracked")
                } else {
                    (product.pull_out_uncracked, "ACI pull_out_uncracked")
                };
                match value {
                    Some(PullOut::Characteristic(strength_n)) => Ok(Self::Product(strength_n)),
                    Some(PullOut::NotDecisive) => Ok(Self::Never("does not decide by the product's tests")),
                    None => Err(NotChecked::MissingData { field }),
                }
            }
            FastenerKind::Bonded => Ok(Self::Never("adhesive anchors are checked for bond")),
            FastenerKind::ThroughBolt | FastenerKind::Sleeve => {
                Err(NotChecked::StructuralEngineer { what: "through bolts and sleeves in concrete" })
            }
        }
    }

    pub(super) fn symbols(&self, material: &Material, phi: f64) -> [Symbol; 5] {
        let (area_m2, psi_c, strength_n) = match *self {
            Self::Head { area_m2, psi_c, strength_n } => (area_m2, psi_c, strength_n),
            Self::Product(strength_n) => (f64::NAN, f64::NAN, strength_n),
            Self::Never(_) => (f64::NAN, f64::NAN, f64::NAN),
        };
        [
            newtons("Npn", strength_n),
            number("phi", phi),
            square_meters("Abrg", area_m2),
            number("psi_c,P", psi_c),
            pascals("f'c", material.strength_pa),
        ]
    }
}
