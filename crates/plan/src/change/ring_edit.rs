//! Moves, splits and joins the corners of a ring, and keeps what is anchored to its edges in place.

use glam::DVec2;

use super::Refused;
use super::apply::{check_point, roof_mut};
use crate::document::{
    Corner, Edge, EdgeId, PlacementId, Plan, Ring, Roof, RoofId, Standing, Station, ThingId, ring::check_outline,
};
use crate::geometry::frame::{EdgeLine, Frame};
use crate::geometry::rings;

/// A ring from points in either direction: counter-clockwise for an outline, clockwise for a hole.
pub(super) fn new_ring(
    plan: &mut Plan,
    points: &[DVec2],
    counter_clockwise: bool,
    like: Option<&Edge>,
) -> Result<Ring, Refused> {
    points.iter().try_for_each(|&point| check_point(point))?;
    check_outline(points)?;
    let mut points = points.to_vec();
    if (rings::signed_area_m2(&points) > 0.0) != counter_clockwise {
        points.reverse();
    }
    let corners = points.into_iter().map(|at| {
        let id = EdgeId::from_number(plan.mint());
        let edge = like.map_or_else(|| Edge::sketched(id), |edge| Edge { id, ..edge.clone() });
        Corner { at, edge }
    });
    Ok(Ring::new(corners.collect())?)
}

/// Adds a hole and gives its first edge.
pub(super) fn add_hole(plan: &mut Plan, roof: RoofId, outline: &[DVec2]) -> Result<EdgeId, Refused> {
    roof_mut(plan, roof)?;
    let hole = new_ring(plan, outline, false, None)?;
    let first = hole.edge(0).id;
    let roof = roof_mut(plan, roof)?;
    roof.holes.push(hole);
    check_rings(roof)?;
    Ok(first)
}

/// Checks that the holes of a roof lie inside its outline and apart from each other.
pub(crate) fn check_rings(roof: &Roof) -> Result<(), Refused> {
    let outlines: Vec<Vec<DVec2>> = roof.rings().map(Ring::points).collect();
    for (index, hole) in outlines.iter().enumerate().skip(1) {
        for other in &outlines[..index] {
            if let Some(rings::RingFault::Crossing { at, .. }) = rings::crossing_between(other, hole) {
                return Err(Refused::HoleLeavesRoof { at });
            }
        }
        let inside_another = outlines[1..index]
            .iter()
            .any(|other| rings::ring_contains(other, hole[0]) || rings::ring_contains(hole, other[0]));
        if inside_another || !rings::ring_contains(&outlines[0], hole[0]) {
            return Err(Refused::HoleLeavesRoof { at: hole[0] });
        }
    }
    Ok(())
}

/// Finds the ring that owns an edge, to change it.
fn ring_of(plan: &mut Plan, edge: EdgeId) -> Result<(RoofId, &mut Ring, usize), Refused> {
    for (&id, roof) in &mut plan.roofs {
        if roof.find_edge(edge).is_some() {
            if roof.locked {
                return Err(Refused::Locked(ThingId::Roof(id)));
            }
            for ring in roof.rings_mut() {
                if let Some(index) = ring.index_of(edge) {
                    return Ok((id, ring, index));
                }
            }
        }
    }
    Err(Refused::NoSuchThing(ThingId::Edge(edge)))
}

fn move_points(plan: &mut Plan, edge: EdgeId, moved: impl Fn(usize, usize, DVec2) -> DVec2) -> Result<(), Refused> {
    let (roof_id, ring, index) = ring_of(plan, edge)?;
    let count = ring.len();
    let after = |corner: usize| (corner + count - index) % count;
    let points: Vec<DVec2> =
        ring.points().iter().enumerate().map(|(corner, &at)| moved(after(corner), count, at)).collect();
    points.iter().try_for_each(|&point| check_point(point))?;
    let counter_clockwise = ring.signed_area_m2() > 0.0;
    let moved_ring = ring.with_points(&points)?;
    if (moved_ring.signed_area_m2() > 0.0) != counter_clockwise {
        return Err(Refused::Outline(crate::document::RingFault::NoArea));
    }
    *ring = moved_ring;
    check_rings(roof_mut(plan, roof_id)?)
}

/// Moves the corner that an edge leaves.
pub(super) fn move_corner(plan: &mut Plan, edge: EdgeId, to: DVec2) -> Result<(), Refused> {
    move_points(plan, edge, |after, _, at| if after == 0 { to } else { at })
}

/// Moves an edge as a whole: both its corners.
pub(super) fn move_edge(plan: &mut Plan, edge: EdgeId, by: DVec2) -> Result<(), Refused> {
    move_points(plan, edge, |after, _, at| if after <= 1 { at + by } else { at })
}

/// The units anchored to an edge, with where they stand in the plan.
fn anchored(plan: &Plan, edges: &[EdgeId]) -> Vec<(PlacementId, Frame)> {
    let on_these = |standing: &Standing| matches!(standing, Standing::OnEdge { edge, .. } if edges.contains(edge));
    plan.placements
        .iter()
        .filter(|(_, placement)| on_these(&placement.stands))
        .filter_map(|(&id, placement)| Frame::of(plan, &placement.stands).map(|frame| (id, frame)))
        .collect()
}

/// Anchors a unit to an edge so that it stays where it is.
fn anchor(plan: &mut Plan, id: PlacementId, frame: Frame, edge: EdgeId) {
    let Some(line) = EdgeLine::of(plan, edge) else {
        return;
    };
    let standing = Standing::OnEdge {
        edge,
        station: Station::nearest(line.along_m(frame.at), line.length_m),
        setback_m: line.behind_m(frame.at),
        turn_rad: frame.turn_from(line),
    };
    if let Some(placement) = plan.placements.get_mut(&id) {
        placement.stands = standing;
    }
}

/// Splits an edge and gives the new second part. Each unit goes to the part it stands on, its place unchanged.
pub(super) fn insert_corner(plan: &mut Plan, edge: EdgeId, at: DVec2) -> Result<EdgeId, Refused> {
    check_point(at)?;
    let whole = EdgeLine::of(plan, edge).ok_or(Refused::NoSuchThing(ThingId::Edge(edge)))?;
    let standing_there = anchored(plan, &[edge]);
    let second = EdgeId::from_number(plan.mint());
    let (roof_id, ring, index) = ring_of(plan, edge)?;
    let mut corners = ring.corners().to_vec();
    let copy = Edge { id: second, ..corners[index].edge.clone() };
    corners.insert(index + 1, Corner { at, edge: copy });
    *ring = Ring::new(corners)?;
    check_rings(roof_mut(plan, roof_id)?)?;
    let cut_m = whole.along_m(at);
    for (id, frame) in standing_there {
        let part = if whole.along_m(frame.at) <= cut_m { edge } else { second };
        anchor(plan, id, frame, part);
    }
    for placement in plan.placements.values_mut() {
        if let Standing::Free { serves, .. } = &mut placement.stands
            && serves.contains(&edge)
        {
            serves.push(second);
        }
    }
    Ok(second)
}

/// Joins an edge to the one before it by taking away the corner between them. Says which data it dropped.
pub(super) fn remove_corner(plan: &mut Plan, edge: EdgeId) -> Result<Option<String>, Refused> {
    let (_, ring, index) = ring_of(plan, edge)?;
    let kept = ring.edge(index + ring.len() - 1).clone();
    let dropped = ring.edge(index).clone();
    let standing_there = anchored(plan, &[kept.id, edge]);
    let (roof_id, ring, index) = ring_of(plan, edge)?;
    let mut corners = ring.corners().to_vec();
    corners.remove(index);
    *ring = Ring::new(corners)?;
    check_rings(roof_mut(plan, roof_id)?)?;
    for (id, frame) in standing_there {
        anchor(plan, id, frame, kept.id);
    }
    for placement in plan.placements.values_mut() {
        if let Standing::Free { serves, .. } = &mut placement.stands
            && let Some(position) = serves.iter().position(|&served| served == edge)
        {
            serves.remove(position);
            if !serves.contains(&kept.id) {
                serves.push(kept.id);
            }
        }
    }
    let same = Edge { id: kept.id, ..dropped.clone() } == kept;
    Ok((!same).then(|| {
        format!(
            "{} joined to {}: parapet {:.3} m and facade data of {} kept, those of {} dropped",
            edge, kept.id, kept.parapet.height_m, kept.id, edge
        )
    }))
}
