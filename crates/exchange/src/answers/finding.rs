//! Findings: checks that fail or could not be made, and how many checks came to which outcome.

use gantline_plan::assess::{Check, Outcome, Severity, Tally};
use gantline_plan::document::ThingId;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Amount, Figure, point};

/// A finding.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FindingAnswer {
    /// The rule's stable name.
    pub code: String,
    /// What the rule asks for.
    pub asks: String,
    /// What came of it.
    pub outcome: FindingOutcome,
    /// The things it is about; the first one owns it.
    pub about: Vec<ThingId>,
    /// Where, if it has a place.
    pub at: Option<PlaceAnswer>,
    /// What was measured.
    pub measured: Option<Amount>,
    /// Whether nothing resists: the share measured is then beyond every number, and null. Never a pass.
    pub nothing_resists: bool,
    /// What it was compared with.
    pub limit: Option<LimitAnswer>,
    /// Particulars in words; may be empty.
    pub detail: String,
    /// What would resolve it; may be empty.
    pub way_out: String,
}

/// What came of a check that is a finding.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FindingOutcome {
    /// The rule is not met.
    Fails(SeverityName),
    /// The rule could not be looked at; what is missing. Never a pass.
    NotChecked(String),
}

/// How bad a failed check is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum SeverityName {
    /// Must be solved before anyone hangs there.
    Blocking,
    /// Must be looked at by someone competent.
    Caution,
    /// Worth knowing.
    Note,
}

/// A place on the plan.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlaceAnswer {
    /// In the plan.
    pub at_m: [Figure; 2],
    /// Over level zero, where it matters.
    pub level_m: Option<Figure>,
}

/// A limit with its source.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LimitAnswer {
    /// The value compared with.
    pub amount: Amount,
    /// Whether the measured value must not be below it; else it must not be above.
    pub is_least: bool,
    /// Its source.
    pub source: String,
}

/// How many checks came to which outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TallyAnswer {
    /// All checks made or tried.
    pub checks: usize,
    /// Met.
    pub meets: usize,
    /// Not met, of any severity.
    pub fails: usize,
    /// Of those not met: blocking.
    pub fails_blocking: usize,
    /// Of those not met: to be looked at.
    pub fails_caution: usize,
    /// Of those not met: worth knowing.
    pub fails_note: usize,
    /// Could not be made.
    pub not_checked: usize,
    /// Did not apply.
    pub not_applicable: usize,
}

impl FindingAnswer {
    /// A check as a finding; none when it is met or does not apply.
    pub fn of(check: &Check) -> Option<Self> {
        let outcome = match &check.outcome {
            Outcome::Fails(severity) => FindingOutcome::Fails(match severity {
                Severity::Blocking => SeverityName::Blocking,
                Severity::Caution => SeverityName::Caution,
                Severity::Note => SeverityName::Note,
            }),
            Outcome::NotChecked(what) => FindingOutcome::NotChecked(what.clone()),
            Outcome::Meets | Outcome::NotApplicable(_) => return None,
        };
        Some(Self {
            code: check.code.name().to_owned(),
            asks: check.code.asks().to_owned(),
            outcome,
            about: check.about.clone(),
            at: check.at.map(|place| PlaceAnswer { at_m: point(place.at), level_m: place.level_m.map(Figure::of) }),
            measured: check.measured.map(Amount::of),
            nothing_resists: check
                .measured
                .is_some_and(|measured| Figure::of(measured.value).says_nothing_resists(measured.kind)),
            limit: check.limit.as_ref().map(|limit| LimitAnswer {
                amount: Amount::of(limit.amount),
                is_least: limit.is_least,
                source: limit.source.clone(),
            }),
            detail: check.detail.clone(),
            way_out: check.way_out.clone(),
        })
    }
}

impl TallyAnswer {
    /// A tally.
    pub fn of(tally: Tally) -> Self {
        Self {
            checks: tally.all(),
            meets: tally.meets,
            fails: tally.fails(),
            fails_blocking: tally.blocking,
            fails_caution: tally.caution,
            fails_note: tally.note,
            not_checked: tally.not_checked,
            not_applicable: tally.not_applicable,
        }
    }
}
