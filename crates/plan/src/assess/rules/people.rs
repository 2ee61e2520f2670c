//! Room and protection for people at a unit.

use super::{LENGTH_HAIR_M, UnitContext, at_least, meets_or};
use crate::assess::check::{Amount, Check, Outcome, Severity};
use crate::assess::code::Code;
use crate::assess::standing::edges_near;
use crate::document::ThingId;

/// Checks of the room that people need.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let (Some(found), Some(frame)) = (context.rooms, context.unit.frame) else {
        let missing = || Outcome::NotChecked("place or parts of the unit".to_owned());
        return [Code::StandingPlaceFree, Code::ErectionStripInboard, Code::GuardNearEdge]
            .into_iter()
            .map(|code| context.check(code, missing()))
            .collect();
    };
    let mut standing = context.check(Code::StandingPlaceFree, meets_or(found.standing_free, Severity::Caution));
    if !found.standing_free {
        "Move the unit, or what stands around it, so that an operator has a place beside the mast."
            .clone_into(&mut standing.way_out);
    }
    let mut erection = context.check(Code::ErectionStripInboard, meets_or(found.erection_free, Severity::Caution));
    if !found.erection_free {
        "Make room for the mast to be laid down and tilted in wholly inboard.".clone_into(&mut erection.way_out);
    }
    vec![standing, erection, guard(context, &found.room.standing, frame.roof)]
}

/// The lowest protection, over the finish, of the edges near the standing place.
fn guard(context: &UnitContext<'_>, standing: &[glam::DVec2], roof_id: crate::document::RoofId) -> Check {
    let people = &context.plan.basis.rules.people;
    let near = edges_near(context.plan, roof_id, standing, people.near_edge_m.value);
    let build_up_m = context.surroundings.roofs.get(&roof_id).map_or(0.0, |roof| roof.build_up_m);
    let lowest = near
        .iter()
        .filter_map(|&(_, edge)| {
            let parapet = context.plan.find_edge(edge)?.edge().parapet;
            Some((parapet.height_m - build_up_m, edge))
        })
        .min_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    let Some((over_finish_m, edge)) = lowest else {
        let why = "no edge is near the standing place".to_owned();
        return context.check(Code::GuardNearEdge, Outcome::NotApplicable(why));
    };
    let holds = over_finish_m >= people.guard_height_m.value - LENGTH_HAIR_M;
    let mut check = context.check(Code::GuardNearEdge, meets_or(holds, Severity::Caution));
    check.about.push(ThingId::Edge(edge));
    check.measured = Some(Amount::length(over_finish_m));
    check.limit = Some(at_least(&people.guard_height_m, Amount::length));
    "parapet over the finish".clone_into(&mut check.detail);
    if !holds {
        "Guard the edge, or restrain the operator by a line to an anchor inboard.".clone_into(&mut check.way_out);
    }
    check
}
