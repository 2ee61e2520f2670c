//! Looks at every pair of a swept part and something near it: parapets, obstacles, higher roofs, other units.

use glam::DVec2;

use super::assessment::{Against, Over, PairClearance, SweptPart, Way};
use super::clearance::{Clearance, Required, RequiredFault, clearance};
use super::place_phase::Placed;
use super::surroundings::Surroundings;
use super::swept::SweptBand;
use crate::basis::{NeighborRule, Rules};
use crate::catalog::ResolvedUnit;
use crate::document::PlacementId;
use crate::geometry::bounds::Bounds;
use crate::geometry::frame::Frame;
use crate::geometry::mass::VolumeOf;
use crate::geometry::polygons::Polygon;
use crate::geometry::prism::{PlanShape, Prism};

/// How far beyond what is asked for things are still looked at and shown, m.
const SHOWN_BEYOND_M: f64 = 0.5;
/// A part that passes higher than this over something is not worth a line, m.
const SHOWN_HEIGHT_M: f64 = 3.0;

/// Another unit as something to pass.
#[derive(Debug, Clone)]
pub struct Neighbor {
    /// Its id.
    pub id: PlacementId,
    /// Its axes.
    pub frame: Frame,
    /// Its parts.
    pub unit: std::sync::Arc<ResolvedUnit>,
}

impl PartialEq for Neighbor {
    fn eq(&self, other: &Self) -> bool {
        let same_unit = std::sync::Arc::ptr_eq(&self.unit, &other.unit) || self.unit == other.unit;
        self.id == other.id && self.frame == other.frame && same_unit
    }
}

/// Corners of a base's plate in plan.
pub fn plate_outline(unit: &ResolvedUnit, frame: &Frame) -> Vec<DVec2> {
    unit.base.footprint_m().into_iter().map(|corner| frame.plan_from_local(corner)).collect()
}

/// Prisms of what a neighbor leaves in the roof, and of its mast where both may stand at once.
pub(super) fn neighbor_prisms(
    own: &Frame,
    own_outreach_m: f64,
    neighbor: &Neighbor,
    rule: &NeighborRule,
) -> Vec<(Against, Prism)> {
    let level = neighbor.frame.level_m;
    let base = &neighbor.unit.base;
    let mut prisms = Vec::new();
    let plate = PlanShape::Polygon(Polygon::simple(plate_outline(&neighbor.unit, &neighbor.frame)));
    prisms.extend(Prism::new(plate, level, level + base.socket_top_m).ok().map(|p| (Against::Base(neighbor.id), p)));
    let apart = own.at.distance(neighbor.frame.at);
    let stand_at_once = match rule {
        NeighborRule::Any => true,
        NeighborRule::NoneWithinOutreaches => apart >= own_outreach_m + neighbor.unit.arm.outreach_m,
    };
    if stand_at_once {
        let half_arm = neighbor.unit.arm.tube.section.depth_m() / 2.0;
        let mast = PlanShape::Disc { center: neighbor.frame.at, radius_m: base.socket_diameter_m / 2.0 };
        let standing = Prism::new(mast, level, level + neighbor.unit.mast.height_m + half_arm);
        prisms.extend(standing.ok().map(|p| (Against::StandingUnit(neighbor.id), p)));
    }
    prisms
}

/// For each swept part its clearances to parapets, obstacles and higher roofs near it, in order.
pub(super) fn clearances_of_building(
    frame: &Frame,
    swept: &[SweptPart],
    surroundings: &Surroundings,
    rules: &Rules,
) -> Vec<Vec<PairClearance>> {
    let Ok(required) = required(rules) else { return Vec::new() };
    let shown = required.around_m() + SHOWN_BEYOND_M;
    let near = swept.iter().map(|part| part.serving.bounds()).reduce(joined).map(|bounds| bounds.grown(shown));
    let Some(near) = near else { return Vec::new() };
    let things: Vec<(Against, &Prism)> = surroundings
        .solids_near(&near)
        .filter_map(|solid| {
            let against = match solid.volume.of {
                VolumeOf::Parapet(edge) => Against::Parapet(edge),
                VolumeOf::Obstacle(id) => Against::Obstacle(id),
                VolumeOf::Roof(id) if solid.volume.to_level_m > frame.level_m => Against::HigherRoof(id),
                VolumeOf::Roof(_) => return None,
            };
            Some((against, &solid.prism))
        })
        .collect();
    let past = |part| {
        let pairs = things.iter().flat_map(move |&(against, prism)| pairs_of(part, against, prism, required));
        pairs.collect()
    };
    swept.iter().map(past).collect()
}

/// Every pair of a swept part with something near it, in order of part and thing: the building's first, then the neighbors'.
pub(super) fn pair_clearances(
    unit: &ResolvedUnit,
    frame: &Frame,
    placed: &Placed,
    neighbors: &[Neighbor],
    rules: &Rules,
) -> Vec<PairClearance> {
    let Ok(required) = required(rules) else { return Vec::new() };
    let things: Vec<(Against, Prism)> = neighbors
        .iter()
        .flat_map(|neighbor| neighbor_prisms(frame, unit.arm.outreach_m, neighbor, &rules.neighbors))
        .collect();
    let mut pairs = Vec::new();
    for (part, past_building) in placed.swept.iter().zip(&placed.past_building) {
        pairs.extend_from_slice(past_building);
        for (against, prism) in &things {
            pairs.extend(pairs_of(part, *against, prism, required));
        }
    }
    pairs
}

fn required(rules: &Rules) -> Result<Required, RequiredFault> {
    Required::new(rules.clear.height_m.value, rules.clear.around_m.value)
}

fn pairs_of(
    part: &SweptPart,
    against: Against,
    prism: &Prism,
    required: Required,
) -> impl Iterator<Item = PairClearance> {
    let both = [(Over::Serving, &part.serving), (Over::Rest, &part.rest)];
    both.into_iter().filter_map(move |(over, band)| one_pair(part, against, over, band, prism, &required))
}

fn joined(a: Bounds, b: Bounds) -> Bounds {
    Bounds { min_m: a.min_m.min(b.min_m), max_m: a.max_m.max(b.max_m) }
}

fn one_pair(
    part: &SweptPart,
    against: Against,
    over: Over,
    band: &SweptBand,
    prism: &Prism,
    required: &Required,
) -> Option<PairClearance> {
    if band.sweep().is_empty() || !prism.bounds().meets(&band.bounds().grown(required.around_m() + SHOWN_BEYOND_M)) {
        return None;
    }
    let Clearance { vertical, horizontal, conflict, .. } = clearance(band, prism, required);
    let (way, clear_m, limit_m, at, level_m) = match (vertical, horizontal) {
        (Some(v), _) => (Way::Height, v.m, required.vertical_m(), v.at, v.z_m),
        (None, Some(h)) => {
            let radius = h.at.distance(band.pivot());
            let middle = f64::midpoint(band.band().low_m(radius), band.band().high_m(radius));
            (Way::Around, h.m, required.around_m(), h.at, middle)
        }
        (None, None) => return None,
    };
    let beyond = match way {
        Way::Height => SHOWN_HEIGHT_M,
        Way::Around => limit_m + SHOWN_BEYOND_M,
    };
    (conflict || clear_m <= beyond).then_some(PairClearance {
        part: part.part,
        against,
        over,
        way,
        clear_m,
        limit_m,
        conflict,
        at,
        level_m,
    })
}
