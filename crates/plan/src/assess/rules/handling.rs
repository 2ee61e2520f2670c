//! Who lifts what.

use super::{UnitContext, at_most, meets_or};
use crate::assess::check::{Amount, Check, Severity};
use crate::assess::code::Code;
use crate::quantity::Kind;

/// One check for each portable part.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let Ok(unit) = &context.unit.resolved else {
        return context.not_checked(&[Code::PartMass], "parts of the unit");
    };
    let rules = &context.plan.basis.rules.handling;
    let mass = |value: f64| Amount { kind: Kind::Mass, value };
    let mut parts = vec![(&unit.mast.name, unit.mast.mass_kg), (&unit.arm.name, unit.arm.mass_kg)];
    parts.extend(unit.brace.as_ref().map(|brace| (&brace.name, brace.mass_kg)));
    parts
        .into_iter()
        .map(|(name, mass_kg)| {
            let too_heavy_for_two = mass_kg > rules.two_persons_kg.value;
            let limit = if too_heavy_for_two { &rules.two_persons_kg } else { &rules.one_person_kg };
            let severity = if too_heavy_for_two { Severity::Caution } else { Severity::Note };
            let mut check = context.check(Code::PartMass, meets_or(mass_kg <= limit.value, severity));
            check.detail.clone_from(name);
            check.measured = Some(mass(mass_kg));
            check.limit = Some(at_most(limit, mass));
            if mass_kg > limit.value {
                let way = if too_heavy_for_two { "Use a lifting aid." } else { "Two persons lift it." };
                way.clone_into(&mut check.way_out);
            }
            check
        })
        .collect()
}
