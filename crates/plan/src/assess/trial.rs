//! What the checks of a unit would say with other make-ups, while everything around it stays.

use super::check::Check;
use super::memo::Memo;
use super::run::assess;
use super::unit_inputs::around;
use crate::catalog::MakeUp;
use crate::document::{PlacementId, Plan};
use crate::geometry::bounds::Bounds;
use crate::geometry::frame::Frame;

/// The checks of a unit for each of these make-ups, in order. Units too far away to come near any of them are left out of
/// the trial: they can't change what the checks say.
pub fn try_make_ups(plan: &Plan, id: PlacementId, make_ups: &[MakeUp]) -> Vec<Vec<Check>> {
    let mut tried = plan.clone();
    leave_out_the_far(&mut tried, id, make_ups);
    let mut memo = Memo::new();
    make_ups
        .iter()
        .map(|make_up| {
            if let Some(placement) = tried.placements.get_mut(&id) {
                placement.make_up.clone_from(make_up);
            }
            assess(&tried, &mut memo).units.get(&id).map_or_else(Vec::new, |unit| unit.checks.clone())
        })
        .collect()
}

fn leave_out_the_far(plan: &mut Plan, id: PlacementId, make_ups: &[MakeUp]) {
    let box_of = |plan: &Plan, of: PlacementId, make_up: &MakeUp| -> Option<Bounds> {
        let frame = Frame::of(plan, &plan.placements.get(&of)?.stands)?;
        Some(around(&frame, &make_up.resolve(plan).ok()?))
    };
    let own: Vec<Bounds> = make_ups.iter().filter_map(|make_up| box_of(plan, id, make_up)).collect();
    let near = |other: PlacementId, make_up: &MakeUp| {
        box_of(plan, other, make_up).is_some_and(|theirs| own.iter().any(|mine| mine.meets(&theirs)))
    };
    // Units of the same edge stay: setting-out is measured to them.
    let edge = plan.placements.get(&id).and_then(|placement| placement.stands.edge());
    let kept: Vec<PlacementId> = plan
        .placements
        .iter()
        .filter(|(other, placement)| {
            **other == id || edge.is_some() && placement.stands.edge() == edge || near(**other, &placement.make_up)
        })
        .map(|(&other, _)| other)
        .collect();
    plan.placements.retain(|other, _| kept.contains(other));
}
