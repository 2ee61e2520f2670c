//! A base on a wall's face: the wall is thick enough, reaches far enough past the plate, and is where the base needs it.

use super::{LENGTH_HAIR_M, PLACE_OR_PARTS, UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::catalog::{BaseKind, ResolvedUnit, WallSide};
use crate::document::{Parapet, Standing, ThingId};

/// How far the mast axis may be from where plate and face meet, m: the width of a line on site (no source).
const SET_OUT_M: f64 = 0.002;

/// How far a plate may be turned from the face, rad: 2 mm over a plate of 0.4 m (no source).
const SET_OUT_RAD: f64 = 0.005;

/// Checks of a wall base.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let code = Code::WallTakesBase;
    let Some((_, unit)) = context.known() else {
        return context.not_checked(&[code], PLACE_OR_PARTS);
    };
    let BaseKind::WallSocket { side, eccentricity_m, plate_middle_m, least_wall_m, least_to_top_m, least_to_ends_m } =
        unit.base.kind
    else {
        return vec![context.check(code, Outcome::NotApplicable("the base stands on no wall".to_owned()))];
    };
    let (Some((parapet, setback_m, turn_rad)), Some(out), WallSide::WallInFront) =
        (parapet_of(context), context.unit.setting_out, side)
    else {
        return context.not_checked(&[code], "the wall that carries the base: only a parapet of its own edge is known");
    };
    let half = half_plate_m(unit);
    let to_end_m = out.from_start_m.min(out.to_end_m) - half.0;
    let mut checks = vec![
        least(context, "thickness of the wall", parapet.thickness_m, least_wall_m),
        least(context, "plate to the wall's top", parapet.height_m - plate_middle_m - half.1, least_to_top_m),
        least(context, "plate to the wall's end", to_end_m, least_to_ends_m),
        on_face(context, setback_m - parapet.inset_m - parapet.thickness_m - eccentricity_m, turn_rad),
    ];
    for check in &mut checks {
        check.about.push(ThingId::Edge(out.edge));
    }
    checks
}

fn parapet_of(context: &UnitContext<'_>) -> Option<(Parapet, f64, f64)> {
    let placement = context.plan.placements.get(&context.id)?;
    let Standing::OnEdge { edge, setback_m, turn_rad, .. } = placement.stands else { return None };
    Some((context.plan.find_edge(edge)?.edge().parapet, setback_m, turn_rad))
}

/// Half width and half height of the plate, m.
fn half_plate_m(unit: &ResolvedUnit) -> (f64, f64) {
    let corners = &unit.base.plate_m;
    let far = |of: fn(&glam::DVec2) -> f64| corners.iter().map(of).fold(0.0_f64, |a, b| a.max(b.abs()));
    (far(|corner| corner.x), far(|corner| corner.y))
}

fn least(context: &UnitContext<'_>, what: &str, has_m: f64, least_m: f64) -> Check {
    let holds = has_m >= least_m - LENGTH_HAIR_M;
    let mut check = context.check(Code::WallTakesBase, meets_or(holds, Severity::Blocking));
    what.clone_into(&mut check.detail);
    check.measured = Some(Amount::length(has_m));
    let source = "least distances of the base".to_owned();
    check.limit = Some(Limit { amount: Amount::length(least_m), is_least: true, source });
    if !holds {
        "Move the base along the wall, or choose a wall or base that suits the other.".clone_into(&mut check.way_out);
    }
    check
}

fn on_face(context: &UnitContext<'_>, off_m: f64, turn_rad: f64) -> Check {
    let holds = off_m.abs() <= SET_OUT_M && turn_rad.abs() <= SET_OUT_RAD;
    let mut check = context.check(Code::WallTakesBase, meets_or(holds, Severity::Blocking));
    "plate on the wall's face".clone_into(&mut check.detail);
    check.measured = Some(Amount::length(off_m.abs()));
    let source = "plate and face touch, within setting out".to_owned();
    check.limit = Some(Limit { amount: Amount::length(SET_OUT_M), is_least: false, source });
    if !holds {
        check.way_out =
            format!("Move the mast axis by {:.3} m, square to the edge, so that the plate lies on the wall.", -off_m);
    }
    check
}
