//! Room and protection for people at a unit.

use glam::DVec2;

use super::{LENGTH_HAIR_M, PLACE_OR_PARTS, UnitContext, at_least, meets_or};
use crate::assess::check::{Amount, Check, Outcome, Place, Severity};
use crate::assess::code::Code;
use crate::assess::standing::edges_near;
use crate::document::{EdgeId, RoofId, ThingId};
use crate::geometry::bounds::Bounds;
use crate::geometry::rings::segments;
use crate::geometry::segments::nearest_between_segments;

/// Checks of the room that people need.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let (Some(found), Some(frame)) = (context.rooms, context.unit.frame) else {
        return context
            .not_checked(&[Code::StandingPlaceFree, Code::ErectionStripInboard, Code::GuardNearEdge], PLACE_OR_PARTS);
    };
    let mut standing = context.check(Code::StandingPlaceFree, meets_or(found.standing_free, Severity::Caution));
    standing.at = middle_of(&found.room.standing, frame.level_m).or(standing.at);
    if !found.standing_free {
        "Move the unit, or what stands around it, so that an operator has a place beside the mast."
            .clone_into(&mut standing.way_out);
    }
    let mut erection = context.check(Code::ErectionStripInboard, meets_or(found.erection_free, Severity::Caution));
    erection.at = middle_of(&found.room.erection, frame.level_m).or(erection.at);
    if !found.erection_free {
        "Make room for the mast to be laid down and tilted in wholly inboard.".clone_into(&mut erection.way_out);
    }
    vec![standing, erection, guard(context, &found.room.standing, frame.roof)]
}

/// The middle of an outline.
fn middle_of(outline: &[DVec2], level_m: f64) -> Option<Place> {
    let bounds = Bounds::of(outline.iter().copied())?;
    Some(Place { at: bounds.min_m.midpoint(bounds.max_m), level_m: Some(level_m) })
}

/// The point of an edge's line that is nearest to an outline, at the edge's own level.
fn nearest_of(context: &UnitContext<'_>, edge: EdgeId, outline: &[DVec2]) -> Option<Place> {
    let place = context.plan.find_edge(edge)?;
    let (a, b) = place.ring.ends(place.index);
    let pairs = segments(outline).map(|(c, d)| nearest_between_segments(a, b, c, d));
    let (at, _) = pairs.min_by(|one, other| one.0.distance(one.1).total_cmp(&other.0.distance(other.1)))?;
    Some(Place { at, level_m: Some(place.roof.level_m) })
}

/// The lowest protection, over the finish, of the edges near the standing place.
fn guard(context: &UnitContext<'_>, standing: &[DVec2], roof_id: RoofId) -> Check {
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
    check.at = nearest_of(context, edge, standing).or(check.at);
    check.measured = Some(Amount::length(over_finish_m));
    check.limit = Some(at_least(&people.guard_height_m, Amount::length));
    "parapet over the finish".clone_into(&mut check.detail);
    if !holds {
        "Guard the edge, or restrain the operator by a line to an anchor inboard.".clone_into(&mut check.way_out);
    }
    check
}
