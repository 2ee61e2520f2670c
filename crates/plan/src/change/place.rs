//! Places units, moves them, changes their parts.

use super::Refused;
use super::apply::{check_point, in_range};
use super::asked::PlacementPatch;
use crate::catalog::MakeUp;
use crate::document::{EdgeId, PartId, Placement, PlacementId, Plan, Standing, Station, Tag, ThingId, tag};
use crate::geometry::frame::EdgeLine;

/// Greatest setback, m; also how far past an edge's end a station may be set.
const FARTHEST_FROM_EDGE_M: f64 = 200.0;

/// Places a unit.
pub(super) fn place(
    plan: &mut Plan,
    make_up: &MakeUp,
    stands: &Standing,
    wanted: Option<&Tag>,
) -> Result<PlacementId, Refused> {
    check_family(plan, make_up)?;
    check_standing(plan, stands)?;
    let tag = wanted.cloned().unwrap_or_else(|| tag::next_free(&plan.placements));
    let id = PlacementId::from_number(plan.mint());
    plan.placements.insert(id, Placement { tag, make_up: make_up.clone(), stands: stands.clone(), locked: false });
    Ok(id)
}

fn check_family(plan: &Plan, make_up: &MakeUp) -> Result<(), Refused> {
    if plan.families.contains_key(&make_up.family) { Ok(()) } else { Err(Refused::NoSuchFamily(make_up.family)) }
}

fn edge_length(plan: &Plan, edge: EdgeId) -> Result<f64, Refused> {
    EdgeLine::of(plan, edge).map(|line| line.length_m).ok_or(Refused::NoSuchThing(ThingId::Edge(edge)))
}

fn check_standing(plan: &Plan, stands: &Standing) -> Result<(), Refused> {
    match stands {
        Standing::OnEdge { edge, station, setback_m, turn_rad } => {
            let length = edge_length(plan, *edge)?;
            in_range("station.distance_m", station.distance_m, -FARTHEST_FROM_EDGE_M, length + FARTHEST_FROM_EDGE_M)?;
            in_range("setback_m", *setback_m, -FARTHEST_FROM_EDGE_M, FARTHEST_FROM_EDGE_M)?;
            in_range("turn_rad", *turn_rad, -std::f64::consts::TAU, std::f64::consts::TAU)
        }
        Standing::Free { roof, at, outward_rad, serves } => {
            if !plan.roofs.contains_key(roof) {
                return Err(Refused::NoSuchThing(ThingId::Roof(*roof)));
            }
            check_point(*at)?;
            in_range("outward_rad", *outward_rad, -std::f64::consts::TAU, std::f64::consts::TAU)?;
            serves.iter().try_for_each(|&edge| edge_length(plan, edge).map(|_| ()))
        }
    }
}

fn get_mut(plan: &mut Plan, id: PlacementId) -> Result<&mut Placement, Refused> {
    plan.placements.get_mut(&id).ok_or(Refused::NoSuchThing(ThingId::Placement(id)))
}

/// Puts a unit elsewhere.
pub(super) fn set_standing(plan: &mut Plan, id: PlacementId, stands: &Standing) -> Result<(), Refused> {
    check_standing(plan, stands)?;
    let placement = get_mut(plan, id)?;
    if placement.locked {
        return Err(Refused::Locked(ThingId::Placement(id)));
    }
    placement.stands = stands.clone();
    Ok(())
}

/// Takes units away; locked ones refuse.
pub(super) fn remove(plan: &mut Plan, ids: &[PlacementId]) -> Result<(), Refused> {
    for &id in ids {
        if get_mut(plan, id)?.locked {
            return Err(Refused::Locked(ThingId::Placement(id)));
        }
        plan.placements.remove(&id);
    }
    Ok(())
}

/// Changes data of units.
pub(super) fn set_placements(plan: &mut Plan, ids: &[PlacementId], patch: &PlacementPatch) -> Result<(), Refused> {
    for &id in ids {
        let placement = get_mut(plan, id)?;
        let unlocking = patch.locked == Some(false);
        if placement.locked && !unlocking && patch.locked.is_none() {
            return Err(Refused::Locked(ThingId::Placement(id)));
        }
        patch_make_up(&mut placement.make_up, patch)?;
        if let Some(tag) = &patch.tag {
            placement.tag = tag.clone();
        }
        if let Some(locked) = patch.locked {
            placement.locked = locked;
        }
        let make_up = placement.make_up.clone();
        check_family(plan, &make_up)?;
        patch_standing(plan, id, patch)?;
    }
    Ok(())
}

/// Fixes units by another product.
pub(super) fn set_fixing(plan: &mut Plan, ids: &[PlacementId], fixing: Option<&PartId>) -> Result<(), Refused> {
    for &id in ids {
        let placement = get_mut(plan, id)?;
        if placement.locked {
            return Err(Refused::Locked(ThingId::Placement(id)));
        }
        placement.make_up.fixing = fixing.cloned();
    }
    Ok(())
}

fn patch_make_up(make_up: &mut MakeUp, patch: &PlacementPatch) -> Result<(), Refused> {
    if let Some(whole) = &patch.make_up {
        *make_up = whole.clone();
    }
    if let Some(mast) = &patch.mast {
        make_up.mast = mast.clone();
    }
    if let Some(arm) = &patch.arm {
        make_up.arm = arm.clone();
    }
    if let Some(brace) = &patch.brace {
        make_up.brace.clone_from(brace);
    }
    if let Some(base) = &patch.base {
        make_up.base = base.clone();
    }
    if let Some(stops) = patch.slew_stops {
        make_up.slew_stops = stops;
    }
    if let Some(slew) = patch.drawn_slew_rad {
        in_range("drawn_slew_rad", slew, -std::f64::consts::TAU, std::f64::consts::TAU)?;
        make_up.drawn_slew_rad = slew;
    }
    if let Some(bearing) = patch.foot_bearing_rad {
        in_range("foot_bearing_rad", bearing, -std::f64::consts::PI, std::f64::consts::PI)?;
        make_up.foot_bearing_rad = bearing;
    }
    if let Some(level) = patch.foot_level_m {
        in_range("foot_level_m", level, -5.0, 5.0)?;
        make_up.foot_level_m = level;
    }
    Ok(())
}

fn patch_standing(plan: &mut Plan, id: PlacementId, patch: &PlacementPatch) -> Result<(), Refused> {
    if patch.setback_m.is_none() && patch.along_m.is_none() && patch.turn_rad.is_none() {
        return Ok(());
    }
    let mut stands = get_mut(plan, id)?.stands.clone();
    let Standing::OnEdge { edge, station, setback_m, turn_rad } = &mut stands else {
        return Err(Refused::StandsFree(ThingId::Placement(id)));
    };
    if let Some(along_m) = patch.along_m {
        *station = Station::nearest(along_m, edge_length(plan, *edge)?);
    }
    if let Some(setback) = patch.setback_m {
        *setback_m = setback;
    }
    if let Some(turn) = patch.turn_rad {
        *turn_rad = turn;
    }
    check_standing(plan, &stands)?;
    get_mut(plan, id)?.stands = stands;
    Ok(())
}
