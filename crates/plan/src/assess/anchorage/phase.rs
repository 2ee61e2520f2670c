//! The base phase: base, foot, plate, slab and sleeve of one unit at its place.

use super::found::{BaseAssessment, BaseUse, Fixed, Used};
use super::forces::Forces;
use super::in_concrete::{self, InConcrete};
use super::place::{self, Stands};
use crate::catalog::BaseKind;

/// Everything about a unit's base and foot.
pub(in crate::assess) fn assess_base(stands: &Stands<'_>, forces: &Forces) -> BaseAssessment {
    let code = &stands.plan.code;
    let mut found = BaseAssessment {
        uses: Vec::new(),
        governs: None,
        edges: Vec::new(),
        thickness_m: None,
        sustained_share: forces.base.as_ref().ok().map(|forces| forces.sustained_share),
        bond_is_default: forces.base.as_ref().is_ok_and(|forces| forces.bond_is_default),
        handed_on: Vec::new(),
    };
    let in_concrete = !matches!(stands.unit.base.kind, BaseKind::OnSteel | BaseKind::CastInSleeve { .. });
    if in_concrete {
        let place = place::of_base(stands);
        let InConcrete { uses, edges, thickness_m } = match &forces.base {
            Ok(forces) => in_concrete::judge(Fixed::Base, forces, &place, code),
            Err(what) => in_concrete::not_judged(Fixed::Base, what),
        };
        found.uses.extend(uses);
        (found.edges, found.thickness_m) = (edges, thickness_m);
    }
    if let Some(of_foot) = &forces.foot {
        let place = place::of_foot(stands);
        let judged = match of_foot {
            Ok(forces) => in_concrete::judge(Fixed::Foot, forces, &place, code),
            Err(what) => in_concrete::not_judged(Fixed::Foot, what),
        };
        found.uses.extend(judged.uses);
    }
    found.governs = worst(&found.uses);
    found
}

/// The use with the largest share; the first of those alike.
fn worst(uses: &[BaseUse]) -> Option<usize> {
    let shares = uses.iter().enumerate().filter_map(|(index, used)| match used.outcome {
        Used::Share(share) => Some((index, share)),
        Used::NotChecked(_) | Used::NotApplicable(_) => None,
    });
    shares.reduce(|worst, next| if next.1 > worst.1 { next } else { worst }).map(|(index, _)| index)
}
