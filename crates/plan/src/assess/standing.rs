//! Room for people at a unit: where the operator stands, and where the mast is laid down and tilted in.

use glam::DVec2;

use super::assessment::Room;
use super::clear_zones::{Neighbor, plate_outline};
use super::shared_area::{lies_within, shares_area};
use super::surroundings::{RoofPlate, Surroundings};
use crate::basis::PeopleRules;
use crate::catalog::{BraceKind, ResolvedUnit};
use crate::document::{EdgeId, Plan, RoofId};
use crate::geometry::bounds::Bounds;
use crate::geometry::frame::Frame;
use crate::geometry::mass::VolumeOf;
use crate::geometry::polygons::Polygon;
use crate::geometry::rings;
use crate::geometry::segments::nearest_between_segments;

/// Directions from the mast, in the base's axes, in which places are tried: behind, then slanting, then beside.
const TRIED_DEG: [f64; 5] = [180.0, 135.0, 225.0, 90.0, 270.0];

/// Free width between the socket and the place where someone stands, m: room for hands on the mast.
const BESIDE_SOCKET_M: f64 = 0.15;

/// The first free standing place and erection strip, each with whether it is free; else the first tried.
pub fn room(
    unit: &ResolvedUnit,
    frame: &Frame,
    neighbors: &[Neighbor],
    surroundings: &Surroundings,
    people: &PeopleRules,
) -> Option<FoundRoom> {
    let roof = surroundings.roofs.get(&frame.roof)?;
    let side = people.standing_side_m.value;
    let from_mast = unit.base.socket_diameter_m / 2.0 + BESIDE_SOCKET_M;
    let behind_is_taken = unit.brace.as_ref().is_some_and(|brace| !matches!(brace.kind, BraceKind::Front { .. }));
    let standing_tried = TRIED_DEG
        .iter()
        .filter(|&&degrees| !(behind_is_taken && degrees == 180.0))
        .map(|degrees| strip(frame, degrees.to_radians(), from_mast, side, side));
    let headroom = people.headroom_m.value;
    let (standing, standing_free) = first_free(standing_tried, roof, frame, surroundings, neighbors, headroom)?;
    let length = unit.mast.height_m;
    let erection_tried =
        TRIED_DEG.iter().map(|degrees| strip(frame, degrees.to_radians(), 0.0, length, people.erection_width_m.value));
    let above_lying = unit.mast.tube.section.depth_m().max(0.5);
    let (erection, erection_free) = first_free(erection_tried, roof, frame, surroundings, neighbors, above_lying)?;
    Some(FoundRoom { room: Room { standing, erection, to_edge: None }, standing_free, erection_free })
}

/// Room with whether it is free.
#[derive(Debug, Clone, PartialEq)]
pub struct FoundRoom {
    /// The places.
    pub room: Room,
    /// Whether the standing place is on the roof and free.
    pub standing_free: bool,
    /// Whether the erection strip is on the roof and free.
    pub erection_free: bool,
}

/// A rectangle that starts at a distance from the mast and goes away from it.
fn strip(frame: &Frame, direction_rad: f64, from_m: f64, length_m: f64, width_m: f64) -> Vec<DVec2> {
    let axis = DVec2::from_angle(direction_rad);
    [(from_m, -0.5), (from_m + length_m, -0.5), (from_m + length_m, 0.5), (from_m, 0.5)]
        .into_iter()
        .map(|(out, side)| frame.plan_from_local(axis * out + axis.perp() * (side * width_m)))
        .collect()
}

fn first_free(
    tried: impl Iterator<Item = Vec<DVec2>>,
    roof: &RoofPlate,
    frame: &Frame,
    surroundings: &Surroundings,
    neighbors: &[Neighbor],
    height_m: f64,
) -> Option<(Vec<DVec2>, bool)> {
    let mut first = None;
    for outline in tried {
        if lies_within(&roof.polygon, &outline) && is_free(&outline, roof, frame, surroundings, neighbors, height_m) {
            return Some((outline, true));
        }
        first.get_or_insert(outline);
    }
    first.map(|outline| (outline, false))
}

fn is_free(
    outline: &[DVec2],
    roof: &RoofPlate,
    frame: &Frame,
    surroundings: &Surroundings,
    neighbors: &[Neighbor],
    height_m: f64,
) -> bool {
    let Some(near) = Bounds::of(outline.iter().copied()) else { return false };
    let floor = roof.level_m + roof.build_up_m;
    let blocked = surroundings.solids_near(&near).any(|solid| {
        let volume = &solid.volume;
        let own_roof = volume.of == VolumeOf::Roof(frame.roof);
        !own_roof
            && volume.to_level_m > floor + 1e-9
            && volume.from_level_m < floor + height_m - 1e-9
            && shares_area(&volume.polygon, outline)
    });
    let on_a_base = neighbors.iter().any(|neighbor| {
        neighbor.frame.level_m + neighbor.unit.base.socket_top_m > floor + 1e-9
            && shares_area(&Polygon::simple(plate_outline(&neighbor.unit, &neighbor.frame)), outline)
    });
    !blocked && !on_a_base
}

/// The edges of a roof within a distance of an outline, each with its distance.
pub fn edges_near(plan: &Plan, roof: RoofId, outline: &[DVec2], within_m: f64) -> Vec<(f64, EdgeId)> {
    let Some(roof) = plan.roofs.get(&roof) else { return Vec::new() };
    let mut near = Vec::new();
    for ring in roof.rings() {
        for index in 0..ring.len() {
            let (a, b) = ring.ends(index);
            let distance = rings::segments(outline)
                .map(|(c, d)| {
                    let (p, q) = nearest_between_segments(a, b, c, d);
                    p.distance(q)
                })
                .fold(f64::INFINITY, f64::min);
            if distance <= within_m {
                near.push((distance, ring.edge(index).id));
            }
        }
    }
    near
}
