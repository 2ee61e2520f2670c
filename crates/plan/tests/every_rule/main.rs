//! Every rule fails once and is silent once: for each code one plan that fails by a hair and one that meets by a hair.
//!
//! A hair is a millimeter of length, a thousandth of a force or an angle; where a rule asks yes or no, one word differs. Limits
//! are hand values and stand beside the cases. A code without both entries is a failure of this test.

mod anchor_bars;
mod case;
mod cases;
mod courtyards;
mod missing;
mod site;

use std::collections::BTreeMap;

use case::{Case, Wanted};
use gantline_plan::assess::{Check, Code, Memo, Outcome, assess};
use gantline_plan::document::ThingId;

/// Codes that can never fail, and why: their worst outcome is "not checked".
const NEVER_FAIL: [(Code, &str); 3] = [
    (
        Code::CombinationComputed,
        "a combination without figures is one that could not be looked at, which is no verdict",
    ),
    (Code::MastInSocket, "the method gives a lower bound of resistance: beyond it nothing is shown either way"),
    (Code::LeftOpen, "effects that this program does not look at; it has no entry that meets either"),
];

/// Codes that can never be met.
const NEVER_MEET: [Code; 2] = [Code::LeftOpen, Code::SleeveHolds];

#[test]
fn every_rule_fails_once_and_is_silent_once() {
    let mut failing: BTreeMap<Code, usize> = BTreeMap::new();
    let mut silent: BTreeMap<Code, usize> = BTreeMap::new();
    let mut wrong = Vec::new();
    for case in cases::all() {
        let counted = if matches!(case.wanted, Wanted::Meets) { &mut silent } else { &mut failing };
        *counted.entry(case.code).or_default() += 1;
        if matches!(case.wanted, Wanted::NotChecked) && !NEVER_FAIL.iter().any(|(code, _)| *code == case.code) {
            wrong.push(format!("{}: {} can fail, so the case must", case.code.name(), case.says));
        }
        wrong.extend(look_at(&case));
    }
    for code in Code::ALL {
        if !failing.contains_key(&code) {
            wrong.push(format!("{}: no case fails", code.name()));
        }
        if !silent.contains_key(&code) && !NEVER_MEET.contains(&code) {
            wrong.push(format!("{}: no case meets", code.name()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What is wrong with the outcome of one case.
fn look_at(case: &Case) -> Vec<String> {
    let assessment = assess(&case.plan, &mut Memo::new());
    let here: Vec<&Check> = assessment.checks().filter(|check| check.code == case.code).collect();
    let findings: Vec<&&Check> = here.iter().filter(|check| check.is_finding()).collect();
    let met: Vec<&&Check> = here.iter().filter(|check| check.outcome == Outcome::Meets).collect();
    let judged = match case.wanted {
        Wanted::Meets => met.clone(),
        Wanted::Fails(severity) => {
            findings.iter().copied().filter(|check| check.outcome == Outcome::Fails(severity)).collect()
        }
        Wanted::NotChecked => {
            findings.iter().copied().filter(|check| matches!(check.outcome, Outcome::NotChecked(_))).collect()
        }
    };
    let told = format!("{here:#?}");
    let mut wrong = Vec::new();
    if judged.is_empty() {
        wrong.push(format!("no check came to {:?}", case.wanted));
    }
    if matches!(case.wanted, Wanted::Meets) && !findings.is_empty() {
        wrong.push("something else is found".to_owned());
    }
    if matches!(case.wanted, Wanted::Fails(_)) {
        wrong.extend(judged.iter().flat_map(|check| unfinished(check)));
    }
    if let Some((value, within)) = case.measured
        && !judged.iter().any(|check| check.measured.is_some_and(|found| (found.value - value).abs() <= within))
    {
        wrong.push(format!("{value} was not measured"));
    }
    wrong.into_iter().map(|what| format!("{}: {}: {what}\n{told}", case.code.name(), case.says)).collect()
}

/// What a failed check lacks: someone must know what it is about, where, and what to do.
fn unfinished(check: &Check) -> Vec<String> {
    let mut lacking = Vec::new();
    if check.way_out.is_empty() {
        lacking.push("a failed check without a way out".to_owned());
    }
    if check.about.is_empty() {
        lacking.push("a failed check about nothing".to_owned());
    }
    let of_plan = check.about.contains(&ThingId::Plan) || check.code == Code::TagIsUnique;
    if check.at.is_none() && !of_plan {
        lacking.push("a failed check without a place".to_owned());
    }
    lacking
}
