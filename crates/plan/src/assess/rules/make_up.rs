//! The parts of a unit: whether their data are there and whether the family lists them together.

use super::{LENGTH_HAIR_M, UnitContext, meets_or};
use crate::assess::check::{Amount, Check, Limit, Outcome, Severity};
use crate::assess::code::Code;
use crate::catalog::BraceKind;

/// Checks of the make-up.
pub fn checks(context: &UnitContext<'_>) -> Vec<Check> {
    let unit = match &context.unit.resolved {
        Ok(unit) => unit,
        Err(fault) => {
            let mut check = context.check(Code::MakeUpIsComplete, Outcome::Fails(Severity::Blocking));
            check.detail = fault.to_string();
            "Choose parts that the family has, or correct the family's data.".clone_into(&mut check.way_out);
            let mut checks = vec![check];
            checks.extend(context.not_checked(
                &[Code::CombinationIsListed, Code::BaseTakesMast, Code::FrontBraceMastHeight],
                "parts of the unit",
            ));
            return checks;
        }
    };
    let mut checks = vec![context.check(Code::MakeUpIsComplete, Outcome::Meets)];
    let mut listed = context.check(Code::CombinationIsListed, meets_or(unit.listed, Severity::Blocking));
    if !unit.listed {
        let brace = unit.brace.as_ref().map_or("no brace", |brace| brace.name.as_str());
        listed.detail = format!("{}, {}, {brace}", unit.mast.name, unit.arm.name);
        "Choose a combination that the family lists.".clone_into(&mut listed.way_out);
    }
    checks.push(listed);
    let mut takes = context.check(Code::BaseTakesMast, meets_or(unit.base_takes_mast, Severity::Blocking));
    if !unit.base_takes_mast {
        takes.detail = format!("{} in {}", unit.mast.name, unit.base.name);
        "Choose a base that takes this mast.".clone_into(&mut takes.way_out);
    }
    checks.push(takes);
    checks.push(front_brace(context, unit));
    checks
}

fn front_brace(context: &UnitContext<'_>, unit: &crate::catalog::ResolvedUnit) -> Check {
    let has_front = unit.brace.as_ref().is_some_and(|brace| matches!(brace.kind, BraceKind::Front { .. }));
    let (true, Some(limit_m)) = (has_front, unit.front_brace_tallest_mast_m) else {
        let why = if has_front { "the family sets no limit" } else { "no front brace" };
        return context.check(Code::FrontBraceMastHeight, Outcome::NotApplicable(why.to_owned()));
    };
    let height_m = unit.mast.height_m;
    let holds = height_m <= limit_m + LENGTH_HAIR_M;
    let mut check = context.check(Code::FrontBraceMastHeight, meets_or(holds, Severity::Blocking));
    check.measured = Some(Amount::length(height_m));
    check.limit = Some(Limit {
        amount: Amount::length(limit_m),
        is_least: false,
        source: format!("limit of the family \"{}\"", unit.family),
    });
    if !holds {
        "Choose a lower mast or a rear brace.".clone_into(&mut check.way_out);
    }
    check
}
