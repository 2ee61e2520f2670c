//! Whether a unit serves anything, and how long the drop is.

use super::{UnitContext, at_most, meets_or};
use crate::assess::check::{Amount, Check, Outcome, Severity};
use crate::assess::code::Code;
use crate::document::ThingId;

/// Checks of what the unit serves.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    if context.known().is_none() {
        let missing = Outcome::NotChecked("place or parts of the unit".to_owned());
        return vec![context.check(Code::ServesFacade, missing)];
    }
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
    let mut checks = vec![check];
    checks.extend(drop_length(context));
    checks
}

fn drop_length(context: &UnitContext<'_>) -> Option<Check> {
    let Some(limit) = &context.plan.basis.rules.longest_drop_m else {
        let why = "the basis limits no drop".to_owned();
        return Some(context.check(Code::DropLength, Outcome::NotApplicable(why)));
    };
    let (frame, unit) = context.known()?;
    let heights = context.unit.serves.iter().filter_map(|served| {
        let facade = context.surroundings.facades.iter().find(|facade| facade.key == served.facade)?;
        Some(frame.level_m + unit.mast.height_m - facade.foot_level_m)
    });
    let longest_m = heights.fold(0.0, f64::max);
    let mut check = context.check(Code::DropLength, meets_or(longest_m <= limit.value, Severity::Blocking));
    check.measured = Some(Amount::length(longest_m));
    check.limit = Some(at_most(limit, Amount::length));
    if longest_m > limit.value {
        "Divide the drop, or use another method there.".clone_into(&mut check.way_out);
    }
    Some(check)
}
