//! Whether a unit serves anything, and how long the drop is.

use super::{LENGTH_HAIR_M, PLACE_OR_PARTS, UnitContext, at_most, meets_or};
use crate::assess::check::{Amount, Check, Outcome, Severity};
use crate::assess::code::Code;
use crate::catalog::ResolvedUnit;
use crate::document::ThingId;
use crate::geometry::frame::Frame;

/// Checks of what the unit serves.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let Some((frame, unit)) = context.known() else {
        return context.not_checked(&[Code::ServesFacade, Code::DropLength], PLACE_OR_PARTS);
    };
    let serves = &context.unit.serves;
    let mut check = context.check(Code::ServesFacade, meets_or(!serves.is_empty(), Severity::Caution));
    check.about.extend(serves.iter().map(|served| ThingId::Edge(served.facade)));
    if serves.is_empty() {
        let band = &context.plan.basis.rules.stand_off;
        check.detail = format!(
            "at no slew does the tip hang {:.2} to {:.2} m outside a facade that needs access",
            band.least_m.value, band.most_m.value
        );
        "Change setback or arm so that the tip hangs outside the facade.".clone_into(&mut check.way_out);
    }
    vec![check, drop_length(context, frame, unit)]
}

/// The longest rope from the working line's point down to the foot of a facade that is served.
fn drop_length(context: &UnitContext<'_>, frame: &Frame, unit: &ResolvedUnit) -> Check {
    let Some(limit) = &context.plan.basis.rules.longest_drop_m else {
        let why = "the basis limits no drop".to_owned();
        return context.check(Code::DropLength, Outcome::NotApplicable(why));
    };
    let from_level_m = tip_level_m(frame, unit);
    let drops = context.unit.serves.iter().filter_map(|served| {
        let facade = context.surroundings.facades.iter().find(|facade| facade.key == served.facade)?;
        Some((from_level_m - facade.foot_level_m, facade.key))
    });
    let Some((longest_m, facade)) = drops.max_by(|a, b| a.0.total_cmp(&b.0)) else {
        let why = "the unit serves nothing".to_owned();
        return context.check(Code::DropLength, Outcome::NotApplicable(why));
    };
    let holds = longest_m <= limit.value + LENGTH_HAIR_M;
    let mut check = context.check(Code::DropLength, meets_or(holds, Severity::Blocking));
    check.about.push(ThingId::Edge(facade));
    check.measured = Some(Amount::length(longest_m));
    check.limit = Some(at_most(limit, Amount::length));
    if !holds {
        "Divide the drop, or use another method there.".clone_into(&mut check.way_out);
    }
    check
}

/// Level of the point that the working line hangs from, m.
fn tip_level_m(frame: &Frame, unit: &ResolvedUnit) -> f64 {
    frame.level_m + unit.mast.height_m - unit.arm.points.first().map_or(0.0, |point| point.drop_m)
}
