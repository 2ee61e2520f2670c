//! `gantline check`: every finding of a plan, and whether something blocks.

use std::fmt::Write as _;

use gantline_exchange::answers::CheckAnswer;
use gantline_exchange::answers::plan_named::CAUTION;
use gantline_exchange::disk::plan_file::open;
use gantline_plan::assess::{Amount, Assessment, Check, Memo, Outcome, Tally, assess};
use gantline_plan::document::Plan;
use gantline_plan::quantity::{UnitSystem, area, length, number};

use super::args::CheckArgs;
use super::ending::{Ending, NoAnswer};
use super::tally::tally_line;
use super::told::{tell, tell_beside};
use gantline_exchange::answers::names::name_of;

/// Checks a plan.
pub fn check(args: &CheckArgs) -> Result<Ending, NoAnswer> {
    let plan = open(&args.plan)?.plan;
    let assessment = assess(&plan, &mut Memo::new());
    let tally = assessment.tally();
    if args.json {
        tell(&(serde_json::to_string_pretty(&CheckAnswer::of(&plan, &assessment))? + "\n"))?;
        tell_beside(&tally_line(tally))?;
    } else {
        tell(&words(&plan, &assessment, args.units.system()))?;
    }
    Ok(ending(tally, args.strict))
}

/// Something blocks when a blocking check fails; strictly, also when one could not be made.
pub fn ending(tally: Tally, strict: bool) -> Ending {
    if tally.blocking > 0 || (strict && tally.not_checked > 0) { Ending::Blocked } else { Ending::Clear }
}

/// The answer for people to read.
fn words(plan: &Plan, assessment: &Assessment, units: UnitSystem) -> String {
    let mut text = format!("{}\n{CAUTION}\n\n", plan.title.job);
    for finding in assessment.findings() {
        finding_words(&mut text, plan, finding, units);
    }
    text.push_str("\nFacades that need access\n");
    for found in assessment.facades.values().filter(|found| found.facade.data.needs_access) {
        let share = if found.area_m2 > 0.0 { 100.0 * found.covered_m2 / found.area_m2 } else { 0.0 };
        let _ = writeln!(
            text,
            "  {}: {} × {}, {} reached of {} ({share:.1} %), gaps: {}",
            found.facade.key,
            length(found.facade.line.length_m, units),
            length(found.facade.height_m(), units),
            area(found.covered_m2, units),
            area(found.area_m2, units),
            found.gaps.len()
        );
    }
    text.push('\n');
    text.push_str(&tally_line(assessment.tally()));
    text
}

fn finding_words(text: &mut String, plan: &Plan, check: &Check, units: UnitSystem) {
    let shown = |amount: Amount| number(amount.kind, amount.value, units);
    let kind = match &check.outcome {
        Outcome::Fails(severity) => severity.word(),
        Outcome::NotChecked(_) => "not checked",
        Outcome::Meets => "met",
        Outcome::NotApplicable(_) => "not applicable",
    };
    let about: Vec<String> = check.about.iter().map(|&thing| name_of(plan, thing)).collect();
    let _ = write!(text, "{kind}: {}: {}", check.code.name(), about.join(", "));
    if let Some(place) = &check.at {
        let _ = write!(text, ", at ({}, {})", length(place.at.x, units), length(place.at.y, units));
    }
    text.push('\n');
    if let Outcome::NotChecked(missing) = &check.outcome {
        let _ = writeln!(text, "    missing: {missing}");
    }
    if let Some(measured) = check.measured {
        let _ = write!(text, "    {}", shown(measured));
        if let Some(limit) = &check.limit {
            let bound = if limit.is_least { "at least" } else { "at most" };
            let _ = write!(text, ", {bound} {} ({})", shown(limit.amount), limit.source);
        }
        text.push('\n');
    }
    for more in [&check.detail, &check.way_out].into_iter().filter(|more| !more.is_empty()) {
        let _ = writeln!(text, "    {more}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_could_not_be_checked_blocks_only_when_asked_strictly() {
        let open = Tally { meets: 3, not_checked: 1, caution: 2, ..Tally::default() };
        assert_eq!(ending(open, false), Ending::Clear);
        assert_eq!(ending(open, true), Ending::Blocked);
        assert_eq!(ending(Tally { blocking: 1, ..Tally::default() }, false), Ending::Blocked);
        assert_eq!(ending(Tally { meets: 1, note: 1, not_applicable: 5, ..Tally::default() }, true), Ending::Clear);
    }
}
