//! Findings: every check that is not met or could not be made, worst first, and how many are met.

use gantline_plan::assess::{Check, Outcome, Severity};
use gantline_plan::quantity::{self, UnitSystem};

use super::blocks::{chapter, paragraph, row, section, strong, table, told, words};
use super::given::Given;
use crate::paper::{Block, Row};
use crate::schedule::findings::tally_words;

/// The chapter.
pub fn findings_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Findings"), paragraph(&tally_words(given.assessment.tally()))];
    let findings = given.assessment.findings();
    if findings.is_empty() {
        blocks.push(paragraph("Of all checks made none failed, and none was left open."));
    }
    for (head, rank) in [("Blocking", 0), ("Caution", 1), ("Not checked, so not met", 2), ("Worth knowing", 3)] {
        let of_rank: Vec<&&Check> = findings.iter().filter(|check| check.rank() == rank).collect();
        if of_rank.is_empty() {
            continue;
        }
        blocks.push(section(&format!("{head}: {}", of_rank.len())));
        let columns = vec![
            told("About", 1.0),
            told("Rule", 1.9),
            told("Measured", 0.8),
            told("Asked for", 1.5),
            told("Particulars, what is missing, way out", 3.0),
        ];
        blocks.extend(table(columns, of_rank.into_iter().map(|check| of_check(given, check)).collect()));
    }
    blocks
}

fn of_check(given: &Given<'_>, check: &Check) -> Row {
    let about: Vec<String> = check.about.iter().map(|&thing| given.name(thing)).collect();
    let measured = check.measured.map(|amount| quantity::number(amount.kind, amount.value, given.units));
    let missing = left_open(check);
    let told = [missing.as_str(), &check.detail, &check.way_out];
    let told: Vec<&str> = told.into_iter().filter(|words| !words.is_empty()).collect();
    let cells = vec![
        words(&about.join(", ")),
        words(&format!("{}: {}", check.code.name(), check.code.asks())),
        words(&measured.unwrap_or_default()),
        words(&asked_for(check, given.units)),
        words(&told.join("; ")),
    ];
    if check.outcome == Outcome::Fails(Severity::Blocking) { strong(cells) } else { row(cells) }
}

fn asked_for(check: &Check, units: UnitSystem) -> String {
    let Some(limit) = &check.limit else { return String::new() };
    let bound = if limit.is_least { "at least" } else { "at most" };
    let figure = quantity::number(limit.amount.kind, limit.amount.value, units);
    if limit.source.is_empty() { format!("{bound} {figure}") } else { format!("{bound} {figure} ({})", limit.source) }
}

/// The state of a check in a word.
pub fn state(check: &Check) -> String {
    match &check.outcome {
        Outcome::Fails(severity) => severity.word(),
        Outcome::NotChecked(_) => "not checked",
        Outcome::Meets => "met",
        Outcome::NotApplicable(_) => "not applicable",
    }
    .to_owned()
}

/// What is missing, or why it does not apply; empty for what was looked at.
pub fn left_open(check: &Check) -> String {
    match &check.outcome {
        Outcome::NotChecked(what) => format!("missing: {what}"),
        Outcome::NotApplicable(why) => why.clone(),
        Outcome::Meets | Outcome::Fails(_) => String::new(),
    }
}
