//! Lays underlays under the plan, scales and turns them by what is known of them, takes them away.

use std::f64::consts::TAU;

use glam::DVec2;

use super::Refused;
use super::apply::{check_point, in_range};
use super::asked::UnderlayPatch;
use crate::document::attachment::LARGEST_ATTACHMENTS_BYTES;
use crate::document::{Attachment, Plan, ThingId, Underlay, UnderlayId};

/// Least and greatest length of one unit of an underlay, m: a pixel of a scanned stamp, a unit of a map in kilometers.
pub const LENGTHS_OF_A_UNIT_M: (f64, f64) = (1.0e-7, 1.0e4);

/// Two places that are known of an underlay must be at least this far apart, m, to tell a length or a direction.
const LEAST_KNOWN_M: f64 = 1.0e-6;

/// Most pages that an attachment can have.
const MOST_PAGES: u32 = 100_000;

/// Most underlays of a plan.
pub const MOST_UNDERLAYS: usize = 200;

/// Checks what an underlay says of itself.
pub(crate) fn check(underlay: &Underlay) -> Result<(), Refused> {
    let (least, most) = LENGTHS_OF_A_UNIT_M;
    in_range("m_per_unit", underlay.m_per_unit, least, most)?;
    in_range("turn_rad", underlay.turn_rad, -TAU, TAU)?;
    in_range("opacity", underlay.opacity, 0.0, 1.0)?;
    in_range("page", f64::from(underlay.page), 1.0, f64::from(MOST_PAGES))?;
    check_point(underlay.origin_m)
}

/// Checks that the attachments of a plan are not too large together.
pub(crate) fn check_sizes(plan: &Plan) -> Result<(), Refused> {
    let has: usize = plan.attachments_in_use().map(|(_, attachment)| attachment.bytes().len()).sum();
    if has > LARGEST_ATTACHMENTS_BYTES {
        return Err(Refused::TooMuchAttached { has, most: LARGEST_ATTACHMENTS_BYTES });
    }
    in_range("number of underlays", plan.underlays.len() as f64, 0.0, MOST_UNDERLAYS as f64)
}

fn check_roof(plan: &Plan, underlay: &Underlay) -> Result<(), Refused> {
    match underlay.roof {
        Some(roof) if !plan.roofs.contains_key(&roof) => Err(Refused::NoSuchThing(ThingId::Roof(roof))),
        _ => Ok(()),
    }
}

/// Lays an attachment under the plan; bytes that are there already are shared.
pub(super) fn add(plan: &mut Plan, underlay: &Underlay, attachment: &Attachment) -> Result<UnderlayId, Refused> {
    check(underlay)?;
    check_roof(plan, underlay)?;
    plan.attachments.entry(attachment.hash()).or_insert_with(|| attachment.clone());
    let id = UnderlayId::from_number(plan.mint());
    plan.underlays.insert(id, Underlay { attachment: attachment.hash(), ..underlay.clone() });
    check_sizes(plan)?;
    Ok(id)
}

fn get_mut(plan: &mut Plan, id: UnderlayId) -> Result<&mut Underlay, Refused> {
    plan.underlays.get_mut(&id).ok_or(Refused::NoSuchThing(ThingId::Underlay(id)))
}

/// The underlay, unless it is locked.
fn get_unlocked(plan: &mut Plan, id: UnderlayId) -> Result<&mut Underlay, Refused> {
    let underlay = get_mut(plan, id)?;
    if underlay.locked { Err(Refused::Locked(ThingId::Underlay(id))) } else { Ok(underlay) }
}

fn put(underlay: &mut Underlay, changed: Underlay) -> Result<(), Refused> {
    check(&changed)?;
    *underlay = changed;
    Ok(())
}

/// Moves it.
pub(super) fn move_by(plan: &mut Plan, id: UnderlayId, by: DVec2) -> Result<(), Refused> {
    let underlay = get_unlocked(plan, id)?;
    let changed = Underlay { origin_m: underlay.origin_m + by, ..underlay.clone() };
    put(underlay, changed)
}

fn known_distance(from: DVec2, to: DVec2) -> Result<f64, Refused> {
    check_point(from)?;
    check_point(to)?;
    let distance_m = from.distance(to);
    if distance_m < LEAST_KNOWN_M { Err(Refused::PlacesCoincide { at: from }) } else { Ok(distance_m) }
}

/// Scales it, so that two of its places, given where they lie now, lie this far apart; the first stays where it is.
pub(super) fn scale(plan: &mut Plan, id: UnderlayId, from: DVec2, to: DVec2, length_m: f64) -> Result<(), Refused> {
    let factor = length_m / known_distance(from, to)?;
    in_range("length_m", length_m, LEAST_KNOWN_M, 2.0 * super::apply::FARTHEST_M)?;
    let underlay = get_unlocked(plan, id)?;
    let changed = underlay.scaled(from, factor);
    put(underlay, changed)
}

/// Turns it, so that the way from one of its places to another, given where they lie now, has this direction; the first
/// stays where it is.
pub(super) fn turn(plan: &mut Plan, id: UnderlayId, from: DVec2, to: DVec2, direction: f64) -> Result<(), Refused> {
    known_distance(from, to)?;
    in_range("direction_rad", direction, -TAU, TAU)?;
    let underlay = get_unlocked(plan, id)?;
    let changed = underlay.turned(from, direction - (to - from).to_angle());
    put(underlay, changed)
}

/// Changes data of it. A locked one can be shown, hidden, dimmed, named and unlocked.
pub(super) fn set(plan: &mut Plan, id: UnderlayId, patch: &UnderlayPatch) -> Result<(), Refused> {
    let underlay = get_mut(plan, id)?;
    let places = patch.page.is_some() || patch.roof.is_some() || patch.m_per_unit.is_some() || patch.turn_rad.is_some();
    if underlay.locked && places && patch.locked != Some(false) {
        return Err(Refused::Locked(ThingId::Underlay(id)));
    }
    let mut changed = underlay.clone();
    if let Some(name) = &patch.name {
        changed.name.clone_from(name);
    }
    if let Some(page) = patch.page {
        changed.page = page;
    }
    if let Some(roof) = patch.roof {
        changed.roof = roof;
    }
    if let Some(m_per_unit) = patch.m_per_unit {
        changed.m_per_unit = m_per_unit;
    }
    if let Some(turn_rad) = patch.turn_rad {
        changed.turn_rad = turn_rad;
    }
    if let Some(opacity) = patch.opacity {
        changed.opacity = opacity;
    }
    if let Some(locked) = patch.locked {
        changed.locked = locked;
    }
    if let Some(shown) = patch.shown {
        changed.shown = shown;
    }
    put(underlay, changed.clone())?;
    check_roof(plan, &changed)
}

/// Takes it away, and its attachment where no other underlay shows that.
pub(super) fn remove(plan: &mut Plan, id: UnderlayId) -> Result<(), Refused> {
    get_unlocked(plan, id)?;
    plan.underlays.remove(&id);
    plan.drop_unused_attachments();
    Ok(())
}
