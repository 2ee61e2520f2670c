//! Where the base stands: between the ends of its edge, wholly on its roof, not in anything.

use glam::DVec2;

use super::{LENGTH_HAIR_M, PLACE_OR_PARTS, UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::clear_zones::plate_outline;
use crate::assess::code::Code;
use crate::assess::shared_area::{lies_within, shares_area};
use crate::catalog::ResolvedUnit;
use crate::document::{Standing, ThingId};
use crate::geometry::bounds::Bounds;
use crate::geometry::frame::Frame;
use crate::geometry::mass::VolumeOf;
use crate::geometry::polygons::Polygon;

/// Checks of the base's place.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let mut checks = vec![between_ends(context)];
    if let Some((frame, unit)) = context.known() {
        let plate = plate_outline(unit, frame);
        checks.push(on_roof(context, &plate));
        checks.push(clear_of_things(context, frame, unit, &plate));
    } else {
        checks.extend(context.not_checked(&[Code::BaseOnRoof, Code::BaseClearOfObstacles], PLACE_OR_PARTS));
    }
    checks
}

fn between_ends(context: &UnitContext<'_>) -> Check {
    let Some(out) = context.unit.setting_out else {
        let stands = context.plan.placements.get(&context.id).map(|placement| &placement.stands);
        let outcome = match stands {
            Some(Standing::Free { .. }) => Outcome::NotApplicable("the unit stands free".to_owned()),
            _ => Outcome::NotChecked("the edge that the unit stands on".to_owned()),
        };
        return context.check(Code::StandsPastEdgeEnd, outcome);
    };
    let past_m = (-out.from_start_m).max(-out.to_end_m).max(0.0);
    let mut check = context.check(Code::StandsPastEdgeEnd, meets_or(past_m <= LENGTH_HAIR_M, Severity::Blocking));
    check.about.push(ThingId::Edge(out.edge));
    check.measured = Some(Amount::length(past_m));
    check.limit = Some(Limit {
        amount: Amount::length(0.0),
        is_least: false,
        source: "a unit stands between the ends of its edge".to_owned(),
    });
    if past_m > LENGTH_HAIR_M {
        check.detail = format!("{past_m:.3} m past the end of its edge");
        "Move the unit back between the ends of its edge, or lengthen the edge.".clone_into(&mut check.way_out);
    }
    check
}

fn on_roof(context: &UnitContext<'_>, plate: &[DVec2]) -> Check {
    let Some(frame) = context.unit.frame else {
        return context.check(Code::BaseOnRoof, Outcome::NotChecked("place of the unit".to_owned()));
    };
    let Some(roof) = context.surroundings.roofs.get(&frame.roof) else {
        return context.check(Code::BaseOnRoof, Outcome::NotChecked("its roof".to_owned()));
    };
    let holds = lies_within(&roof.polygon, plate);
    let mut check = context.check(Code::BaseOnRoof, meets_or(holds, Severity::Blocking));
    check.about.push(ThingId::Roof(frame.roof));
    if !holds {
        "Move the base back onto the roof.".clone_into(&mut check.way_out);
    }
    check
}

/// Obstacles, parapets, higher roofs and other bases that share area with the plate.
fn clear_of_things(context: &UnitContext<'_>, frame: &Frame, unit: &ResolvedUnit, plate: &[DVec2]) -> Check {
    let mut hit: Vec<(ThingId, &'static str)> = Vec::new();
    let top_m = frame.level_m + unit.base.socket_top_m;
    let near = Bounds::of(plate.iter().copied()).unwrap_or(Bounds::around(frame.at, 0.0));
    for solid in context.surroundings.solids_near(&near) {
        let volume = &solid.volume;
        let stands_there = volume.to_level_m > frame.level_m + LENGTH_HAIR_M && volume.from_level_m < top_m;
        if stands_there && shares_area(&volume.polygon, plate) {
            hit.push(match volume.of {
                VolumeOf::Parapet(edge) => (ThingId::Edge(edge), "a parapet"),
                VolumeOf::Obstacle(id) => (ThingId::Obstacle(id), "an obstacle"),
                VolumeOf::Roof(id) => (ThingId::Roof(id), "a higher part of the building"),
            });
        }
    }
    for neighbor in context.neighbors {
        let level_m = neighbor.frame.level_m;
        let beside = level_m < top_m && frame.level_m < level_m + neighbor.unit.base.socket_top_m;
        let other = Polygon::simple(plate_outline(&neighbor.unit, &neighbor.frame));
        if beside && shares_area(&other, plate) {
            hit.push((ThingId::Placement(neighbor.id), "another base"));
        }
    }
    let mut check = context.check(Code::BaseClearOfObstacles, meets_or(hit.is_empty(), Severity::Blocking));
    if let Some(first) = hit.first() {
        check.detail = format!("the base stands in {}", first.1);
        "Move the base, or what it stands in.".clone_into(&mut check.way_out);
        check.about.extend(hit.iter().map(|(thing, _)| *thing));
    }
    check
}
