//! Pull-out of one fastener, EN 1992-4 7.2.1.5.

use super::super::concrete::Cracking;
use super::super::fastener::{Fastener, FastenerKind};
use super::super::product::PullOut;
use super::super::record::NotChecked;
use super::material::ConcreteTerms;

/// N_Rk,p of one fastener that is not bonded.
///
/// Headed: N_Rk,p = k_2·A_h·f_ck, (7.11), k_2 = 7.5 cracked and 10.5 uncracked. Undercut: from the product.
pub(super) fn pull_out(fastener: &Fastener, terms: &ConcreteTerms) -> Result<PullOut, NotChecked> {
    match fastener.kind {
        FastenerKind::CastIn(_) => match fastener.head_area_m2() {
            Some(area) => Ok(PullOut::Characteristic(k2(terms) * area * terms.fck_pa)),
            None => Err(NotChecked::MissingData { field: "head" }),
        },
        FastenerKind::Bonded | FastenerKind::Undercut | FastenerKind::ThroughBolt | FastenerKind::Sleeve => {
            match terms.cracking {
                Cracking::Cracked => fastener.product.en.pull_out_cracked,
                Cracking::Uncracked => fastener.product.en.pull_out_uncracked,
            }
            .ok_or(NotChecked::MissingData { field: "pull_out" })
        }
    }
}

/// k_2 of headed fasteners.
pub(super) const fn k2(terms: &ConcreteTerms) -> f64 {
    terms.by_cracking(7.5, 10.5)
}
