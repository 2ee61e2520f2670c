//! The base phase: base, foot, plate, slab, sleeve and steel of one unit at its place.

use std::sync::Arc;

use gantline_mechanics::wrench::Wrench;
use glam::{DVec2, DVec3};

use super::forces::Forces;
use super::found::{BaseAssessment, BaseUse, Fixed, HandedOn};
use super::place::{self, Stands};
use super::site::{OnSite, Site};
use super::sleeve::{self, largest_moment};
use super::{in_concrete, steel};
use crate::assess::reactions::Reactions;
use crate::basis::DesignCode;
use crate::catalog::{BaseKind, PedestalBody, ResolvedUnit};

/// The sites of a unit's base and foot; none where nothing stands in concrete, or what acts is not known.
#[derive(Debug, Clone, Default)]
pub(in crate::assess) struct BaseSites {
    pub base: Option<Site>,
    pub foot: Option<Site>,
}

impl BaseSites {
    /// The sites where a unit stands.
    pub fn of(stands: &Stands<'_>, forces: &Forces) -> Self {
        let in_concrete = !matches!(stands.unit.base.kind, BaseKind::CastInSleeve { .. } | BaseKind::OnSteel);
        let base = forces.base.as_ref().ok().filter(|_| in_concrete).map(|forces| {
            let place = place::of_base(stands);
            Site::of(Fixed::Base, &stands.unit.base, forces, stands, place.as_ref())
        });
        let foot = forces.foot.as_ref().and_then(|forces| forces.as_ref().ok()).zip(stands.unit.foot.as_ref());
        let foot = foot.map(|(forces, foot)| {
            let place = place::of_foot(stands);
            Site::of(Fixed::Foot, &foot.base, forces, stands, place.as_ref())
        });
        Self { base, foot }
    }

    /// What is found on them, judged here and now.
    fn judged(&self, stands: &Stands<'_>, forces: &Forces) -> OnSites {
        let each = |site: &Option<Site>| {
            site.as_ref().and_then(|site| site_judged(site, stands.unit, forces, &stands.plan.code))
        };
        OnSites { base: each(&self.base).map(Arc::new), foot: each(&self.foot).map(Arc::new) }
    }
}

/// What is found on the sites of base and foot.
#[derive(Debug, Clone, Default)]
pub(in crate::assess) struct OnSites {
    pub base: Option<Arc<OnSite>>,
    pub foot: Option<Arc<OnSite>>,
}

/// What is found on a site of a base or foot of this make-up.
pub(in crate::assess) fn site_judged(
    site: &Site,
    unit: &ResolvedUnit,
    forces: &Forces,
    code: &DesignCode,
) -> Option<OnSite> {
    match site.of {
        Fixed::Base => Some(site.judge(&unit.base, forces.base.as_ref().ok()?, code)),
        Fixed::Foot => Some(site.judge(&unit.foot.as_ref()?.base, forces.foot.as_ref()?.as_ref().ok()?, code)),
    }
}

/// What is missing where nothing was found on a site: no base is ever passed over in silence.
const NO_SITE: &str = "what was found where it stands";

/// Everything about a unit's base and foot.
pub(in crate::assess) fn assess_base(stands: &Stands<'_>, forces: &Forces, reactions: &Reactions) -> BaseAssessment {
    let found = BaseSites::of(stands, forces).judged(stands, forces);
    assess_on_sites(stands, forces, reactions, &found)
}

/// The same with what is found on their sites.
pub(in crate::assess) fn assess_on_sites(
    stands: &Stands<'_>,
    forces: &Forces,
    reactions: &Reactions,
    on_sites: &OnSites,
) -> BaseAssessment {
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
            match (&on_sites.base, of_base) {
                (Some(base), _) => {
                    found.uses.clone_from(&base.uses);
                    let plate = place::plate_frame(stands.frame, DVec2::ZERO, 0.0);
                    found.edges = base.edges.iter().map(|edge| edge.in_plane(&plate)).collect();
                    found.thickness_m = base.thickness_m;
                }
                (None, Err(what)) => found.uses = in_concrete::not_judged(Fixed::Base, what).uses,
                (None, Ok(_)) => found.uses = in_concrete::not_judged(Fixed::Base, NO_SITE).uses,
            }
            if let Some((root, at)) = root_of(stands, kind) {
                found.handed_on.extend(handed_on(reactions, root, at));
            }
        }
    }
    match (&on_sites.foot, &forces.foot) {
        (Some(foot), _) => found.uses.extend(foot.uses.iter().cloned()),
        (None, Some(Err(what))) if unit.foot.is_some() => {
            found.uses.extend(in_concrete::not_judged(Fixed::Foot, what).uses);
        }
        (None, Some(Ok(_))) if unit.foot.is_some() => {
            found.uses.extend(in_concrete::not_judged(Fixed::Foot, NO_SITE).uses);
        }
        (None, _) => {}
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

/// The use with the largest share; the first of those alike. Least distances that are kept say nothing about what is used.
fn worst(uses: &[BaseUse]) -> Option<usize> {
    let shares = uses.iter().enumerate().filter_map(|(index, used)| {
        let share = used.share()?;
        (share > 1.0 || !used.look.is_distance()).then_some((index, share))
    });
    shares.reduce(|worst, next| if next.1 > worst.1 { next } else { worst }).map(|(index, _)| index)
}
