//! What each unit's phases hang on, gathered for all units at once: place, setting-out, neighbors. Where neither a unit
//! nor anything near it has changed since the last time, nothing is gathered again.

use std::sync::Arc;

use super::clear_zones::Neighbor;
use super::memo::{Memo, UnitInput, UnitSlot};
use super::setting_out::setting_out;
use super::surroundings::Surroundings;
use crate::catalog::ResolvedUnit;
use crate::document::{PlacementId, Plan};
use crate::geometry::bounds::Bounds;
use crate::geometry::frame::Frame;
use crate::geometry::neighbors::Neighbors;

/// Up to so many comparisons of boxes cost less than a grid.
const CHEAPER_THAN_A_GRID: usize = 20_000;

/// A unit whose phases have to be gone through again.
pub(super) struct Stale {
    pub id: PlacementId,
    pub known: usize,
    pub input: UnitInput,
}

/// A unit of the plan with its place and the box within which it can come near others.
struct Standing {
    id: PlacementId,
    known: usize,
    frame: Option<Frame>,
    unit: Option<Arc<ResolvedUnit>>,
    around: Option<Bounds>,
}

/// The units whose make-up, place or neighbors differ from what the memo holds, in order.
pub(super) fn stale_units(plan: &Plan, memo: &mut Memo, surroundings: &Surroundings) -> Vec<Stale> {
    let mut all: Vec<Standing> = Vec::with_capacity(plan.placements.len());
    for (&id, placement) in &plan.placements {
        let known = memo.know(plan, id, &placement.make_up);
        let unit = memo.make_ups[known].resolved.as_ref().ok().cloned();
        let on_slab = surroundings.frame_of(&placement.stands);
        let frame = on_slab.map(|frame| unit.as_deref().map_or(frame, |unit| frame.over_slab(unit)));
        let around = frame.as_ref().zip(unit.as_deref()).map(|(frame, unit)| around(frame, unit));
        all.push(Standing { id, known, frame, unit, around });
    }
    let changed = changed_places(&all, memo);
    let setting_out = setting_out(plan, surroundings);
    let asked: Vec<&Standing> = all
        .iter()
        .filter(|unit| {
            let out = setting_out.get(&unit.id).copied();
            let slot = memo.units.get(&unit.id).filter(|slot| slot.is_of(unit.known, unit.frame.as_ref()));
            let as_before = slot.is_some_and(|slot| slot.input.setting_out == out);
            !as_before || unit.around.is_some_and(|own| changed.iter().any(|place| meets(place, &own)))
        })
        .collect();
    let near = Near::of(&all, asked.len());
    let gathered = asked.into_iter().map(|unit| {
        let input = UnitInput {
            frame: unit.frame,
            setting_out: setting_out.get(&unit.id).copied(),
            neighbors: near.neighbors_of(unit),
        };
        Stale { id: unit.id, known: unit.known, input }
    });
    let as_before = |unit: &Stale| {
        memo.units.get(&unit.id).is_some_and(|slot| slot.known == unit.known && slot.input == unit.input)
    };
    gathered.filter(|unit| !as_before(unit)).collect()
}

/// Boxes around the old and new places of everything that was put, taken, moved or made up in another way.
fn changed_places(all: &[Standing], memo: &Memo) -> Vec<Bounds> {
    let mut changed = Vec::new();
    let mut met = 0;
    for unit in all {
        let slot = memo.units.get(&unit.id);
        met += usize::from(slot.is_some());
        if slot.is_none_or(|slot| !slot.is_of(unit.known, unit.frame.as_ref())) {
            changed.extend(unit.around);
            changed.extend(slot.and_then(|slot| was_around(slot, memo)));
        }
    }
    if met < memo.units.len() {
        let present = |id: &PlacementId| all.binary_search_by_key(id, |unit| unit.id).is_ok();
        let taken = memo.units.iter().filter(|(id, _)| !present(id));
        changed.extend(taken.filter_map(|(_, slot)| was_around(slot, memo)));
    }
    // Where much has changed everything is looked at; telling apart would cost more.
    if changed.len() * all.len() > CHEAPER_THAN_A_GRID {
        return vec![Bounds::around(glam::DVec2::ZERO, f64::INFINITY)];
    }
    changed
}

fn was_around(slot: &UnitSlot, memo: &Memo) -> Option<Bounds> {
    let unit = memo.make_ups[slot.known].resolved.as_ref().ok()?;
    slot.input.frame.as_ref().map(|frame| around(frame, unit))
}

/// A box without a finite place meets every other: better looked at too often than never.
fn meets(a: &Bounds, b: &Bounds) -> bool {
    !a.is_finite() || !b.is_finite() || a.meets(b)
}

/// A box within which a unit can come near others.
pub(super) fn around(frame: &Frame, unit: &ResolvedUnit) -> Bounds {
    let foot = match unit.brace.as_ref().map(|brace| brace.kind) {
        Some(crate::catalog::BraceKind::RearFoot { distance_m, .. }) => distance_m,
        _ => 0.0,
    };
    let farthest = unit.arm.outreach_m.max(unit.arm.tail_m).max(unit.mast.height_m).max(foot);
    Bounds::around(frame.at, farthest + 0.5)
}

/// The units that stand, and a grid over them where many ask.
struct Near<'a> {
    standing: Vec<(PlacementId, Frame, &'a Arc<ResolvedUnit>, Bounds)>,
    grid: Option<Neighbors>,
}

impl<'a> Near<'a> {
    fn of(all: &'a [Standing], asking: usize) -> Self {
        let standing: Vec<_> =
            all.iter().filter_map(|unit| Some((unit.id, unit.frame?, unit.unit.as_ref()?, unit.around?))).collect();
        let many = asking * standing.len() > CHEAPER_THAN_A_GRID;
        let grid = many.then(|| Neighbors::of(standing.iter().map(|unit| unit.3).collect()));
        Self { standing, grid }
    }

    /// In the order of ids.
    fn neighbors_of(&self, unit: &Standing) -> Vec<Neighbor> {
        let Some(own) = &unit.around else { return Vec::new() };
        let near = match &self.grid {
            Some(grid) => grid.near(own),
            None => (0..self.standing.len()).filter(|&at| !own.is_finite() || self.standing[at].3.meets(own)).collect(),
        };
        near.into_iter()
            .map(|at| self.standing[at])
            .filter(|(id, ..)| *id != unit.id)
            .map(|(id, frame, unit, _)| Neighbor { id, frame, unit: Arc::clone(unit) })
            .collect()
    }
}
