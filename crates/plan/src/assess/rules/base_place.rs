//! Where the base stands: between the ends of its edge, wholly on its roof, not in anything.

use super::{LENGTH_HAIR_M, UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Outcome, Severity};
use crate::assess::clear_zones::plate_outline;
use crate::assess::code::Code;
use crate::assess::standing::{lies_on, overlap};
use crate::document::ThingId;
use crate::geometry::bounds::Bounds;
use crate::geometry::mass::VolumeOf;

/// Checks of the base's place.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let mut checks = vec![between_ends(context)];
    if let Some((frame, unit)) = context.known() {
        let plate = plate_outline(unit, frame);
        checks.push(on_roof(context, &plate));
        checks.push(clear_of_things(context, &plate));
    } else {
        let missing = || Outcome::NotChecked("place or parts of the unit".to_owned());
        checks.push(context.check(Code::BaseOnRoof, missing()));
        checks.push(context.check(Code::BaseClearOfObstacles, missing()));
    }
    checks
}

fn between_ends(context: &UnitContext<'_>) -> Check {
    let Some(out) = context.unit.setting_out else {
        return context.check(Code::StandsPastEdgeEnd, Outcome::NotApplicable("the unit stands free".to_owned()));
    };
    let past_m = (-out.from_start_m).max(-out.to_end_m).max(0.0);
    let mut check = context.check(Code::StandsPastEdgeEnd, meets_or(past_m <= LENGTH_HAIR_M, Severity::Blocking));
    check.about.push(ThingId::Edge(out.edge));
    if past_m > LENGTH_HAIR_M {
        check.measured = Some(Amount::length(past_m));
        check.detail = format!("{past_m:.3} m past the end of its edge");
        "Move the unit back between the ends of its edge, or lengthen the edge.".clone_into(&mut check.way_out);
    }
    check
}

fn on_roof(context: &UnitContext<'_>, plate: &[glam::DVec2]) -> Check {
    let Some(frame) = context.unit.frame else {
        return context.check(Code::BaseOnRoof, Outcome::NotChecked("place of the unit".to_owned()));
    };
    let Some(roof) = context.surroundings.roofs.get(&frame.roof) else {
        return context.check(Code::BaseOnRoof, Outcome::NotChecked("its roof".to_owned()));
    };
    let holds = lies_on(&roof.polygon, plate);
    let mut check = context.check(Code::BaseOnRoof, meets_or(holds, Severity::Blocking));
    check.about.push(ThingId::Roof(frame.roof));
    if !holds {
        "Move the base back onto the roof.".clone_into(&mut check.way_out);
    }
    check
}

/// Obstacles, parapets, higher roofs and other bases that share area with the plate.
fn clear_of_things(context: &UnitContext<'_>, plate: &[glam::DVec2]) -> Check {
    let mut hit: Vec<(ThingId, &'static str)> = Vec::new();
    if let (Some(frame), Some(near)) = (context.unit.frame, Bounds::of(plate.iter().copied())) {
        for solid in context.surroundings.solids_near(&near) {
            let volume = &solid.volume;
            let stands_there = volume.to_level_m > frame.level_m + LENGTH_HAIR_M
                && volume.from_level_m < frame.level_m + context.known().map_or(0.0, |(_, u)| u.base.socket_top_m);
            if stands_there && overlap(&volume.polygon.outer, plate) {
                hit.push(match volume.of {
                    VolumeOf::Parapet(edge) => (ThingId::Edge(edge), "a parapet"),
                    VolumeOf::Obstacle(id) => (ThingId::Obstacle(id), "an obstacle"),
                    VolumeOf::Roof(id) => (ThingId::Roof(id), "a higher part of the building"),
                });
            }
        }
        for neighbor in context.neighbors {
            if neighbor.frame.level_m == frame.level_m
                && overlap(&plate_outline(&neighbor.unit, &neighbor.frame), plate)
            {
                hit.push((ThingId::Placement(neighbor.id), "another base"));
            }
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
