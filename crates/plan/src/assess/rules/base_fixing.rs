//! What a base asks of roof and slab: it fits the floor build-up, the slab is thick enough, it may be drilled, water stays out.

use super::{LENGTH_HAIR_M, PLACE_OR_PARTS, UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::clear_zones::plate_outline;
use crate::assess::code::Code;
use crate::assess::shared_area::shares_area;
use crate::assess::slab_under::thinnest_m;
use crate::catalog::{BaseKind, ResolvedUnit};
use crate::document::{Roof, ThingId};
use crate::geometry::frame::Frame;
use crate::geometry::polygons::Polygon;

const OF_FIXING: [Code; 5] = [
    Code::BaseFitsBuildUp,
    Code::SlabThickEnough,
    Code::DrillingAllowed,
    Code::SleeveKeepsWaterOut,
    Code::SlabDataConfirmed,
];

/// Checks of what a base asks of roof and slab.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let Some((frame, unit)) = context.known() else {
        return context.not_checked(&OF_FIXING, PLACE_OR_PARTS);
    };
    let Some(roof) = context.plan.roofs.get(&frame.roof) else {
        return context.not_checked(&OF_FIXING, "its roof");
    };
    let mut checks = vec![
        fits_build_up(context, unit, roof),
        thick_enough(context, unit, frame, roof),
        drilling(context, unit, frame, roof),
        water(context, unit),
        confirmed(context, roof),
    ];
    checks.iter_mut().filter(|check| check.is_finding()).for_each(|check| check.about.push(ThingId::Roof(frame.roof)));
    checks
}

/// A flush plate's stack is not higher than the build-up, a pedestal not lower.
fn fits_build_up(context: &UnitContext<'_>, unit: &ResolvedUnit, roof: &Roof) -> Check {
    let code = Code::BaseFitsBuildUp;
    let (height_m, is_least) = match unit.base.kind {
        BaseKind::FlushPlate { stack_height_m, .. } => (stack_height_m, false),
        BaseKind::Pedestal { height_m, .. } => (height_m, true),
        _ => return context.check(code, Outcome::NotApplicable("the base asks nothing of the build-up".to_owned())),
    };
    let above_m = height_m - roof.build_up_m;
    let holds = if is_least { above_m >= -LENGTH_HAIR_M } else { above_m <= LENGTH_HAIR_M };
    let mut check = context.check(code, meets_or(holds, Severity::Caution));
    check.measured = Some(Amount::length(height_m));
    let source = format!("floor build-up of \"{}\"", roof.name);
    check.limit = Some(Limit { amount: Amount::length(roof.build_up_m), is_least, source });
    if !holds {
        let way_out = if is_least {
            "Choose a higher pedestal: its top lies within the floor build-up."
        } else {
            "Choose a flatter plate or another kind of base: the plate stands out of the floor build-up."
        };
        way_out.clone_into(&mut check.way_out);
    }
    check
}

fn thick_enough(context: &UnitContext<'_>, unit: &ResolvedUnit, frame: &Frame, roof: &Roof) -> Check {
    let code = Code::SlabThickEnough;
    match unit.base.kind {
        BaseKind::WallSocket { .. } => {
            return context.check(code, Outcome::NotApplicable("the base stands on a wall".to_owned()));
        }
        BaseKind::OnSteel => {
            return context.check(code, Outcome::NotApplicable("the base stands on structural steel".to_owned()));
        }
        _ => {}
    }
    let of_sleeve = match unit.base.kind {
        BaseKind::CastInSleeve { depth_m, cover_m, .. } => Some((depth_m + cover_m, "sleeve's depth and cover")),
        _ => None,
    };
    let of_base = unit.base.least_slab_m.map(|least_m| (least_m, "least slab of the base"));
    let of_fixing = unit.fixing.as_ref().and_then(|fixing| fixing.least.thickness_m);
    let of_fixing = of_fixing.map(|least_m| (least_m, "least thickness of the fixing"));
    let known = [of_sleeve, of_base, of_fixing].into_iter().flatten();
    let Some((least_m, source)) = known.reduce(|a, b| if b.0 > a.0 { b } else { a }) else {
        return context.check(code, Outcome::NotChecked("least slab thickness of base or fixing".to_owned()));
    };
    let has_m = thinnest_m(roof, &plate_outline(unit, frame));
    let holds = has_m >= least_m - LENGTH_HAIR_M;
    let mut check = context.check(code, meets_or(holds, Severity::Blocking));
    check.measured = Some(Amount::length(has_m));
    check.limit = Some(Limit { amount: Amount::length(least_m), is_least: true, source: source.to_owned() });
    if !holds {
        "Move the base to a thicker part of the slab, or choose a fixing that needs less."
            .clone_into(&mut check.way_out);
    }
    check
}

/// Zones where nothing may be drilled forbid what is drilled, not what is cast in.
fn drilling(context: &UnitContext<'_>, unit: &ResolvedUnit, frame: &Frame, roof: &Roof) -> Check {
    let code = Code::DrillingAllowed;
    let not_applicable = |why: &str| context.check(code, Outcome::NotApplicable(why.to_owned()));
    if matches!(unit.base.kind, BaseKind::WallSocket { .. }) {
        return not_applicable("the wall is drilled and not the slab");
    }
    let Some(kind) = unit.fixing_kind() else {
        return context.check(code, Outcome::NotChecked("how the base is fixed".to_owned()));
    };
    if !kind.is_drilled() {
        return not_applicable("nothing is drilled");
    }
    let plate = plate_outline(unit, frame);
    let zone = roof.slab.no_drill.iter().find(|zone| shares_area(&Polygon::simple(zone.outline.clone()), &plate));
    let mut check = context.check(code, meets_or(zone.is_none(), Severity::Blocking));
    kind.words().clone_into(&mut check.detail);
    if let Some(zone) = zone {
        check.detail = format!("{} where nothing may be drilled: {}", kind.words(), zone.reason);
        "Move the base out of the zone, or choose one that is cast in.".clone_into(&mut check.way_out);
    }
    check
}

fn water(context: &UnitContext<'_>, unit: &ResolvedUnit) -> Check {
    let code = Code::SleeveKeepsWaterOut;
    let BaseKind::CastInSleeve { drained, capped, .. } = unit.base.kind else {
        return context.check(code, Outcome::NotApplicable("no sleeve".to_owned()));
    };
    let lacking: Vec<&str> = [(drained, "drain"), (capped, "cap")]
        .into_iter()
        .filter_map(|(has, what)| (has == Some(false)).then_some(what))
        .collect();
    let unknown = drained.is_none() || capped.is_none();
    let outcome = match (lacking.is_empty(), unknown) {
        (false, _) => Outcome::Fails(Severity::Caution),
        (true, true) => Outcome::NotChecked("whether the sleeve has a drain and a cap".to_owned()),
        (true, false) => Outcome::Meets,
    };
    let mut check = context.check(code, outcome);
    if !lacking.is_empty() {
        check.detail = format!("no {}", lacking.join(", no "));
        "Give the sleeve a drain and a cap: water that stays freezes and rusts it.".clone_into(&mut check.way_out);
    }
    check
}

fn confirmed(context: &UnitContext<'_>, roof: &Roof) -> Check {
    let holds = roof.slab.confirmed;
    let mut check = context.check(Code::SlabDataConfirmed, meets_or(holds, Severity::Caution));
    if !holds {
        check.detail = format!("slab of \"{}\"", roof.name);
        "Look at thickness, strength and zones of the slab and confirm them.".clone_into(&mut check.way_out);
    }
    check
}
