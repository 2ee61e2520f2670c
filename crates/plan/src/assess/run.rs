//! `assess`: the phases in a row. It never panics and never refuses a plan that loads: what can't be computed is a finding.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::assessment::{Assessment, SettingOut, UnitAssessment};
use super::clear_zones::{Neighbor, pair_clearances};
use super::facade_phase::assess_facade;
use super::lean::{any_lean, is_square_to_one_facade};
use super::memo::{FacadeSlot, KnownMakeUp, Memo, ServingUnit, UnitInput, UnitSlot};
use super::parts_swept::swept_parts;

use super::reach::Reach;
use super::reaction_phase::reactions;
use super::reactions::Reactions;
use super::rules;
use super::serving::{ServedReach, loaded_slew, serves};
use super::setting_out::setting_out;
use super::standing::{edges_near, room};
use super::surroundings::Surroundings;
use crate::catalog::{MakeUp, ResolvedUnit};
use crate::document::{PlacementId, Plan};
use crate::geometry::bounds::Bounds;
use crate::geometry::facade::FacadeKey;
use crate::geometry::frame::Frame;
use crate::geometry::neighbors::Neighbors;
use crate::geometry::turns::Turns;

/// Everything about a plan. The same plan gives the same assessment to the bit, with or without a memo of earlier ones.
pub fn assess(plan: &Plan, memo: &mut Memo) -> Assessment {
    let surroundings = memo.renew(plan);
    let known: BTreeMap<PlacementId, usize> =
        plan.placements.iter().map(|(&id, placement)| (id, know(plan, memo, id, &placement.make_up))).collect();
    let inputs = unit_inputs(plan, memo, &known);
    memo.units.retain(|id, _| plan.placements.contains_key(id));
    let mut assessment = Assessment::default();
    for (id, input) in inputs {
        let known = known[&id];
        let slot = memo.units.get(&id).filter(|slot| slot.known == known && slot.input == input);
        let result = if let Some(slot) = slot {
            Arc::clone(&slot.result)
        } else {
            let (result, reaches) = assess_unit(plan, id, &input, &mut memo.make_ups[known], &surroundings);
            let (result, reaches) = (Arc::new(result), Arc::new(reaches));
            memo.units.insert(id, UnitSlot { input, known, result: Arc::clone(&result), reaches });
            result
        };
        assessment.units.insert(id, result);
    }
    assess_facades(plan, memo, &surroundings, &mut assessment);
    assessment.plan_checks = rules::plan::checks(plan);
    memo.forget_unused_make_ups();
    assessment
}

/// Index of a make-up among those met before; met for the first time, its parts are looked up.
fn know(plan: &Plan, memo: &mut Memo, id: PlacementId, make_up: &MakeUp) -> usize {
    let wanted = MakeUp { drawn_slew_rad: 0.0, ..make_up.clone() };
    if let Some(slot) = memo.units.get(&id)
        && memo.make_ups[slot.known].make_up == wanted
    {
        return slot.known;
    }
    if let Some(index) = memo.make_ups.iter().position(|known| known.make_up == wanted) {
        return index;
    }
    let resolved = wanted.resolve(plan).map(Arc::new);
    memo.make_ups.push(KnownMakeUp { make_up: wanted, resolved, within_lean: None, any_lean: None });
    memo.make_ups.len() - 1
}

/// Reactions of a make-up. Limits of lean hold for a unit that stands square to the one facade it serves; for any other
/// they are left away.
fn reactions_of(plan: &Plan, known: &mut KnownMakeUp, keeps_lean: bool) -> Option<Arc<Reactions>> {
    let unit = known.resolved.as_ref().ok()?;
    if keeps_lean || plan.basis.cone.lean.is_none() {
        let find = || Arc::new(reactions(unit, &plan.basis, &plan.code));
        return Some(Arc::clone(known.within_lean.get_or_insert_with(find)));
    }
    let find = || Arc::new(reactions(unit, &any_lean(&plan.basis), &plan.code));
    Some(Arc::clone(known.any_lean.get_or_insert_with(find)))
}

fn unit_inputs(plan: &Plan, memo: &Memo, known: &BTreeMap<PlacementId, usize>) -> Vec<(PlacementId, UnitInput)> {
    let setting_out: BTreeMap<PlacementId, SettingOut> = setting_out(plan);
    let all: Vec<(PlacementId, Option<Frame>, Option<Arc<ResolvedUnit>>)> = plan
        .placements
        .iter()
        .map(|(&id, placement)| {
            let resolved = memo.make_ups[known[&id]].resolved.as_ref().ok().cloned();
            (id, Frame::of(plan, &placement.stands), resolved)
        })
        .collect();
    let standing: Vec<(PlacementId, Frame, &Arc<ResolvedUnit>)> =
        all.iter().filter_map(|(id, frame, resolved)| Some((*id, (*frame)?, resolved.as_ref()?))).collect();
    let grid = Neighbors::of(standing.iter().map(|(_, frame, unit)| around(frame, unit)).collect());
    all.iter()
        .map(|(id, frame, resolved)| {
            let near = match (frame, resolved) {
                (Some(frame), Some(unit)) => grid.near(&around(frame, unit)),
                _ => Vec::new(),
            };
            let neighbors = near
                .into_iter()
                .filter(|&index| standing[index].0 != *id)
                .map(|index| {
                    let (id, frame, unit) = standing[index];
                    Neighbor { id, frame, unit: Arc::clone(unit) }
                })
                .collect();
            let make_up = memo.make_ups[known[id]].make_up.clone();
            let setting_out = setting_out.get(id).copied();
            (*id, UnitInput { make_up, frame: *frame, setting_out, neighbors })
        })
        .collect()
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

fn assess_unit(
    plan: &Plan,
    id: PlacementId,
    input: &UnitInput,
    known: &mut KnownMakeUp,
    surroundings: &Surroundings,
) -> (UnitAssessment, Vec<ServedReach>) {
    let mut result = UnitAssessment {
        frame: input.frame,
        resolved: known.resolved.clone(),
        reactions: None,
        loaded: Turns::none(),
        serving: Turns::none(),
        serves: Vec::new(),
        setting_out: input.setting_out,
        swept: Vec::new(),
        clearances: Vec::new(),
        room: None,
        checks: Vec::new(),
    };
    let mut reaches = Vec::new();
    let mut rooms = None;
    if let (Some(frame), Ok(unit)) = (&input.frame, &known.resolved) {
        let working = &plan.basis.rules;
        result.loaded = loaded_slew(unit);
        reaches = serves(unit, frame, &result.loaded, surroundings, working);
        result.serves = reaches.iter().map(|reach| reach.served.clone()).collect();
        result.serving = result.serves.iter().fold(Turns::none(), |all, served| all.union(&served.slew));
        result.swept = swept_parts(unit, frame, &result.loaded, &result.serving);
        result.clearances = pair_clearances(unit, frame, &result.swept, &input.neighbors, surroundings, working);
        rooms = room(unit, frame, &input.neighbors, surroundings, &working.people);
        if let Some(found) = &mut rooms {
            let near = edges_near(plan, frame.roof, &found.room.standing, f64::INFINITY);
            found.room.to_edge = near.into_iter().min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        }
    }
    let keeps_lean =
        input.frame.is_some_and(|frame| is_square_to_one_facade(&frame, &result.serves, &surroundings.facades));
    result.reactions = reactions_of(plan, known, keeps_lean);
    result.room = rooms.as_ref().map(|found| found.room.clone());
    let context = rules::UnitContext {
        plan,
        id,
        unit: &result,
        rooms: rooms.as_ref(),
        neighbors: &input.neighbors,
        surroundings,
    };
    result.checks = rules::unit_checks(&context);
    (result, reaches)
}

fn assess_facades(plan: &Plan, memo: &mut Memo, surroundings: &Surroundings, assessment: &mut Assessment) {
    let mut serving: BTreeMap<FacadeKey, Vec<ServingUnit>> = BTreeMap::new();
    for (&id, slot) in &memo.units {
        for reach in slot.reaches.iter() {
            serving.entry(reach.served.facade).or_default().push((id, Arc::clone(&slot.reaches)));
        }
    }
    memo.facades.retain(|key, _| surroundings.facades.iter().any(|facade| facade.key == *key));
    for facade in &surroundings.facades {
        let input = serving.remove(&facade.key).unwrap_or_default();
        let same = |slot: &&FacadeSlot| {
            slot.input.len() == input.len()
                && slot.input.iter().zip(&input).all(|(a, b)| a.0 == b.0 && Arc::ptr_eq(&a.1, &b.1))
        };
        let result = if let Some(slot) = memo.facades.get(&facade.key).filter(same) {
            Arc::clone(&slot.result)
        } else {
            let reaches: Vec<(PlacementId, &Reach)> = input
                .iter()
                .flat_map(|(id, reaches)| {
                    let here = reaches.iter().filter(|reach| reach.served.facade == facade.key);
                    here.map(move |reach| (*id, &reach.reach))
                })
                .collect();
            let mut result = assess_facade(facade, &reaches);
            result.checks = rules::facade::checks(plan, &result);
            let result = Arc::new(result);
            memo.facades.insert(facade.key, FacadeSlot { input, result: Arc::clone(&result) });
            result
        };
        assessment.facades.insert(facade.key, result);
    }
}
