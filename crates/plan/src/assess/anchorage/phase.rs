//! The base phase: base, foot, plate and slab of one unit at its place.

use super::forces::Forces;
use super::found::{BaseAssessment, BaseUse, Fixed, Used};
use super::in_concrete::{self, InConcrete};
use super::place::{self, Place, Stands};
use super::states::AnchorForces;
use super::{plate, slab};
use crate::catalog::{Base, BaseKind, Material, PedestalBody};

/// Everything about a unit's base and foot.
pub(in crate::assess) fn assess_base(stands: &Stands<'_>, forces: &Forces) -> BaseAssessment {
    let unit = stands.unit;
    let mut found = BaseAssessment {
        uses: Vec::new(),
        governs: None,
        edges: Vec::new(),
        thickness_m: None,
        sustained_share: forces.base.as_ref().ok().map(|forces| forces.sustained_share),
        bond_is_default: forces.base.as_ref().is_ok_and(|forces| forces.bond_is_default),
        handed_on: Vec::new(),
    };
    let fixed = Fixing { of: Fixed::Base, base: &unit.base, material: unit.plate_material.as_ref() };
    let in_concrete = !matches!(unit.base.kind, BaseKind::OnSteel | BaseKind::CastInSleeve { .. });
    if in_concrete {
        let InConcrete { uses, edges, thickness_m } =
            in_concrete_of(stands, &fixed, forces.base.as_ref().map_err(String::as_str), &place::of_base(stands));
        found.uses = uses;
        (found.edges, found.thickness_m) = (edges, thickness_m);
    }
    if let (Some(of_foot), Some(foot)) = (&forces.foot, &unit.foot) {
        let fixed = Fixing { of: Fixed::Foot, base: &foot.base, material: foot.plate_material.as_ref() };
        let of_foot = of_foot.as_ref().map_err(String::as_str);
        found.uses.extend(in_concrete_of(stands, &fixed, of_foot, &place::of_foot(stands)).uses);
    }
    found.governs = worst(&found.uses);
    found
}

/// A base or a foot.
struct Fixing<'a> {
    of: Fixed,
    base: &'a Base,
    material: Option<&'a Material>,
}

/// Anchors, plate and slab of a fixing in concrete.
fn in_concrete_of(
    stands: &Stands<'_>,
    fixed: &Fixing<'_>,
    forces: Result<&AnchorForces, &str>,
    place: &Result<Place, String>,
) -> InConcrete {
    let code = &stands.plan.code;
    let forces = match forces {
        Ok(forces) => forces,
        Err(what) => return in_concrete::not_judged(fixed.of, what),
    };
    let mut found = in_concrete::judge(fixed.of, forces, place, code);
    found.uses.push(plate::bends(fixed.of, fixed.base, fixed.material, forces, code));
    if let Ok(place) = place
        && place.is_in_plan
        && let Some(roof) = stands.plan.roofs.get(&stands.frame.roof)
    {
        let plinth = match &fixed.base.kind {
            BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { corners_m } } => Some((*height_m, corners_m)),
            _ => None,
        };
        let loaded = slab::Loaded {
            outline: plinth.map_or(&fixed.base.plate_m, |(_, corners)| corners),
            over_slab_m: plinth.map_or(0.0, |(height, _)| height),
            embedment_m: if plinth.is_some() { f64::INFINITY } else { forces.group.fastener.embedment_m },
        };
        let slab_place = if plinth.is_some() { place::of_slab(stands) } else { Ok(place.clone()) };
        found.uses.extend(slab::punches(fixed.of, forces, &slab_place, roof, &loaded, code));
    }
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
