//! Which facades a unit serves, at which slew, and what it covers of each.

use std::f64::consts::TAU;

use glam::DVec2;

use super::assessment::Served;
use super::coverage::Covered;
use super::reach::{FeetFrom, Reach, Sideways};
use super::stand_off::{ServedLine, StandOff, Tip, clear_of_roofs, serving};
use super::surroundings::Surroundings;
use crate::basis::{ReachRules, Rules};
use crate::catalog::{BraceKind, ResolvedUnit, SlewHold, SlewStops};
use crate::geometry::bounds::Bounds;
use crate::geometry::facade::Facade;
use crate::geometry::frame::Frame;
use crate::geometry::hair::HAIR_M;
use crate::geometry::spans::Spans;
use crate::geometry::strips::Face;
use crate::geometry::turns::Turns;

/// A distance no facade is outside of: used where only the least stand-off counts, m.
const FAR_OUTSIDE_M: f64 = 1.0e6;
/// Detents nearer than this are no detents but a clamp, rad.
const LEAST_DETENT_STEP_RAD: f64 = 1.0e-3;

/// Slew at which a person may hang: whole turn less stops; at a rear foot only as far as it allows. People get on inboard
/// and are slewed out, so detents don't narrow it.
pub fn loaded_slew(unit: &ResolvedUnit) -> Turns {
    let stops = match unit.slew_stops {
        SlewStops::WholeTurn => Turns::whole(),
        SlewStops::Between { from_rad, to_rad } => Turns::between(from_rad, to_rad),
    };
    match unit.brace.as_ref().map(|brace| brace.kind) {
        Some(BraceKind::RearFoot { allowed_turn_rad, .. }) => {
            let (from, to) = (unit.foot_bearing_rad - allowed_turn_rad, unit.foot_bearing_rad + allowed_turn_rad);
            stops.intersect(&Turns::between(from, to))
        }
        _ => stops,
    }
}

/// Loaded slew at which the arm can be left to work: at detents only their angles.
pub fn working_slew(unit: &ResolvedUnit, loaded: &Turns) -> Turns {
    match unit.base.slew_hold {
        SlewHold::Detents { step_rad, .. } if step_rad > LEAST_DETENT_STEP_RAD => {
            let count = (TAU / step_rad).round() as u32;
            loaded.intersect(&Turns::at((0..count).map(|step| f64::from(step) * step_rad)))
        }
        _ => loaded.clone(),
    }
}

/// The rules of reach as the reach model takes them.
pub fn sideways(rules: &ReachRules) -> Sideways {
    Sideways {
        arms_reach_m: rules.arm_m.value,
        angle_rad: rules.angle_rad.value,
        swing_m: Some(rules.swing_m.value),
        plumb_limit_m: rules.from_plumb_m.as_ref().map(|limit| limit.value),
        least_depth_m: rules.least_depth_m.value,
    }
}

/// What a unit serves, with the reach for putting units together.
#[derive(Debug, Clone, PartialEq)]
pub struct ServedReach {
    /// The result shown.
    pub served: Served,
    /// The same as a reach.
    pub reach: Reach,
}

/// Everything a unit serves that needs access.
pub fn serves(
    unit: &ResolvedUnit,
    frame: &Frame,
    loaded: &Turns,
    surroundings: &Surroundings,
    rules: &Rules,
) -> Vec<ServedReach> {
    let working = working_slew(unit, loaded);
    let point = unit.arm.points.first();
    let tip = Tip {
        mast: frame.at,
        outward_rad: frame.outward_rad,
        outreach_m: point.map_or(unit.arm.outreach_m, |point| point.out_m),
        aside_m: point.map_or(0.0, |point| point.sideways_m),
    };
    let tip_level_m = frame.level_m + unit.mast.height_m - point.map_or(0.0, |point| point.drop_m);
    let farthest = tip.radius_m() + rules.stand_off.most_m.value + 20.0;
    let near = Bounds::around(frame.at, farthest);
    surroundings
        .facades_near(&near)
        .filter(|facade| facade.data.needs_access && facade.height_m() > 0.0)
        .filter_map(|facade| serve_one(&tip, tip_level_m, facade, &working, surroundings, rules))
        .collect()
}

fn serve_one(
    tip: &Tip,
    tip_level_m: f64,
    facade: &Facade,
    working: &Turns,
    surroundings: &Surroundings,
    rules: &Rules,
) -> Option<ServedReach> {
    // A quick look first: the facade's line must be within the tip's circle and the stand-off band.
    let behind_m = facade.line.behind_m(tip.mast);
    let offsets = facade.data.profile.iter().map(|step| step.offset_m);
    let (least_offset, most_offset) =
        offsets.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), x| (lo.min(x), hi.max(x)));
    let highest_outside = tip.radius_m() - behind_m;
    let lowest_outside = -tip.radius_m() - behind_m;
    if highest_outside < least_offset + rules.stand_off.least_m.value
        || lowest_outside > most_offset + rules.stand_off.most_m.value
    {
        return None;
    }
    // A tip that goes round outside a roof's box hangs over no part of it.
    let circle = Bounds::around(tip.mast, tip.radius_m()).grown(HAIR_M);
    let in_the_way = surroundings
        .roofs
        .values()
        .filter(|roof| roof.level_m + roof.build_up_m > facade.foot_level_m + 1e-6)
        .filter(|roof| roof.bounds.is_some_and(|bounds| bounds.meets(&circle)))
        .map(|roof| &roof.polygon);
    let mut open = working.intersect(&clear_of_roofs(tip, in_the_way));
    let past_ends_m = rules.reach.past_ends_m.value;
    let mut slew = Turns::none();
    let mut parts = Vec::new();
    for step in &facade.data.profile {
        let line = ServedLine { line: facade.line, offset_m: step.offset_m, past_ends_m };
        let band = StandOff { nearest_m: rules.stand_off.least_m.value, farthest_m: rules.stand_off.most_m.value };
        let here = serving(tip, &open, &line, &band);
        slew = slew.union(&here.slew);
        parts.push(FeetFrom { from_depth_m: step.from_depth_m, feet: here.feet });
        // A rope that reaches a deeper step must hang clear of the steps above it.
        let clear = StandOff { farthest_m: FAR_OUTSIDE_M, ..band };
        open = serving(tip, &open, &line, &clear).slew;
    }
    if slew.is_empty() {
        return None;
    }
    let face = Face { length_m: facade.line.length_m, height_m: facade.height_m() };
    let top_below_tip_m = tip_level_m - facade.top_level_m;
    let reach = Reach::of(&sideways(&rules.reach), top_below_tip_m, &parts, face).ok()?;
    let regions: Vec<Vec<DVec2>> = reach.polygons().into_iter().map(|polygon| polygon.outer).collect();
    let widest = regions
        .iter()
        .map(|region| region.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), p| (lo.min(p.x), hi.max(p.x))));
    let any_depth = Spans::of(widest);
    let alone = Covered::of(face, [&reach]);
    let feet = parts.iter().fold(Spans::none(), |all, part| all.union(&part.feet));
    let straight_rad = facade.line.outward_rad() - tip.outward_rad;
    let top_offset_m = facade.data.profile.first().map_or(0.0, |step| step.offset_m);
    let stand_off_m = -facade.line.behind_m(tip.at(straight_rad)) - top_offset_m;
    let served = Served {
        facade: facade.key,
        slew,
        feet,
        full_height: alone.whole_height,
        any_depth,
        regions,
        area_m2: alone.area_m2,
        top_below_tip_m,
        stand_off_m,
    };
    Some(ServedReach { served, reach })
}
