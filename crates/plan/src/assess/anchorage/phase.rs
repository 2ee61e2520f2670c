//! The base phase: base, foot, plate, slab, sleeve and steel of one unit at its place.

use gantline_mechanics::wrench::Wrench;
use glam::DVec3;

use super::forces::Forces;
use super::found::{BaseAssessment, BaseUse, Fixed, HandedOn};
use super::in_concrete::{self, InConcrete};
use super::place::{self, Place, Stands};
use super::sleeve::{self, largest_moment};
use super::states::AnchorForces;
use super::{plate, slab, steel};
use crate::assess::reactions::Reactions;
use crate::catalog::{Base, BaseKind, PedestalBody};

/// Everything about a unit's base and foot.
pub(in crate::assess) fn assess_base(stands: &Stands<'_>, forces: &Forces, reactions: &Reactions) -> BaseAssessment {
    let unit = stands.unit;
    let of_base = forces.base.as_ref().map_err(String::as_str);
    let mut found = BaseAssessment {
        uses: Vec::new(),
        governs: None,
        edges: Vec::new(),
        thickness_m: None,
        sustained_share: of_base.ok().map(|forces| forces.sustained_share),
        bond_is_default: of_base.is_ok_and(|forces| forces.bond_is_default),
        handed_on: Vec::new(),
    };
    let code = &stands.plan.code;
    match &unit.base.kind {
        BaseKind::CastInSleeve { depth_m, .. } => {
            if let Some(roof) = stands.plan.roofs.get(&stands.frame.roof) {
                let tube = (unit.base.socket_diameter_m, *depth_m);
                let (uses, couple) = sleeve::uses(tube, reactions, &roof.slab, code);
                found.uses = uses;
                found.handed_on.extend(couple);
                found.thickness_m = Some(crate::assess::slab_under::thinnest_m(
                    roof,
                    &crate::assess::clear_zones::plate_outline(unit, stands.frame),
                ));
            }
        }
        BaseKind::OnSteel => {
            let (fixing, material) = (unit.fixing.as_ref(), unit.plate_material.as_ref());
            found.uses.push(steel::used(&unit.base, fixing, material, of_base, reactions, code));
            found.uses.extend(of_base.ok().into_iter().flat_map(|forces| forces.bends.clone()));
            found.handed_on.extend(handed_on(reactions, "steel under the plate", DVec3::ZERO));
        }
        kind => {
            let fixed = Fixing { of: Fixed::Base, base: &unit.base };
            let InConcrete { uses, edges, thickness_m } =
                in_concrete_of(stands, &fixed, of_base, &place::of_base(stands));
            found.uses = uses;
            (found.edges, found.thickness_m) = (edges, thickness_m);
            if let Some((root, at)) = root_of(stands, kind) {
                found.handed_on.extend(handed_on(reactions, root, at));
            }
        }
    }
    if let (Some(of_foot), Some(foot)) = (&forces.foot, &unit.foot) {
        let fixed = Fixing { of: Fixed::Foot, base: &foot.base };
        let of_foot = of_foot.as_ref().map_err(String::as_str);
        found.uses.extend(in_concrete_of(stands, &fixed, of_foot, &place::of_foot(stands)).uses);
    }
    found.governs = worst(&found.uses);
    found
}

/// Where the actions of a base on a wall or plinth reach the slab, in the base's axes.
fn root_of(stands: &Stands<'_>, kind: &BaseKind) -> Option<(&'static str, DVec3)> {
    match kind {
        BaseKind::WallSocket { eccentricity_m, .. } => {
            let edge = stands.plan.find_edge(stands.edge?)?;
            let into_wall_m = edge.edge().parapet.thickness_m / 2.0;
            Some(("root of the parapet, in its middle plane", DVec3::X * (eccentricity_m + into_wall_m)))
        }
        BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { .. } } => {
            Some(("root of the plinth", DVec3::NEG_Z * *height_m))
        }
        _ => None,
    }
}

/// The set with the largest moment, seen from another place.
fn handed_on(reactions: &Reactions, what: &str, at: DVec3) -> Option<HandedOn> {
    let set = largest_moment(reactions)?;
    let action = Wrench::from_six(set.concurrent).moved(DVec3::ZERO, at).six();
    Some(HandedOn { at: what.to_owned(), action, combination: set.combination })
}

/// A base or a foot.
struct Fixing<'a> {
    of: Fixed,
    base: &'a Base,
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
    found.uses.extend(forces.bends.clone());
    let concrete = place.as_ref().map(|place| &place.concrete).map_err(String::as_str);
    found.uses.push(plate::presses(fixed.of, fixed.base, forces, concrete, code));
    let (Ok(place), Some(roof)) = (place, stands.plan.roofs.get(&stands.frame.roof)) else { return found };
    if !place.is_in_plan {
        return found;
    }
    let plinth = match &fixed.base.kind {
        BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { corners_m } } => Some((*height_m, corners_m)),
        _ => None,
    };
    let (loaded, slab_place) = if let Some((over_slab_m, outline)) = plinth {
        (slab::Loaded { outline, over_slab_m, embedment_m: f64::INFINITY }, place::of_slab(stands))
    } else {
        let embedment_m = forces.group.fastener.embedment_m;
        (slab::Loaded { outline: &fixed.base.plate_m, over_slab_m: 0.0, embedment_m }, Ok(place.clone()))
    };
    found.uses.extend(slab::punches(fixed.of, forces, &slab_place, roof, &loaded, code));
    found
}

/// The use with the largest share; the first of those alike. Least distances that are kept say nothing about what is used.
fn worst(uses: &[BaseUse]) -> Option<usize> {
    let shares = uses.iter().enumerate().filter_map(|(index, used)| {
        let share = used.share()?;
        (share > 1.0 || !used.look.is_distance()).then_some((index, share))
    });
    shares.reduce(|worst, next| if next.1 > worst.1 { next } else { worst }).map(|(index, _)| index)
}
