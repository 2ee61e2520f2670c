//! A check: one rule looked at once, with one of four outcomes. A finding is a check that fails or could not be made.

use glam::DVec2;

use super::code::Code;
use crate::document::ThingId;
use crate::quantity::Kind;

/// How bad a failed check is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Must be solved before anyone hangs there.
    Blocking,
    /// Must be looked at by someone competent.
    Caution,
    /// Worth knowing.
    Note,
}

impl Severity {
    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Blocking => "blocking",
            Self::Caution => "caution",
            Self::Note => "note",
        }
    }
}

/// What came of a check.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// The rule is met.
    Meets,
    /// It is not.
    Fails(Severity),
    /// It could not be looked at; what is missing. Never a pass.
    NotChecked(String),
    /// It does not apply; why.
    NotApplicable(String),
}

/// A value with what it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Amount {
    /// Length, force, ...
    pub kind: Kind,
    /// SI value.
    pub value: f64,
}

impl Amount {
    /// A length, m.
    pub const fn length(value: f64) -> Self {
        Self { kind: Kind::Length, value }
    }

    /// A ratio.
    pub const fn share(value: f64) -> Self {
        Self { kind: Kind::Share, value }
    }
}

/// A limit with where it comes from.
#[derive(Debug, Clone, PartialEq)]
pub struct Limit {
    /// The value compared with.
    pub amount: Amount,
    /// Whether the measured value must not be below it.
    pub is_least: bool,
    /// Its source.
    pub source: String,
}

/// A place on the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// In plan.
    pub at: DVec2,
    /// Level over level zero, where it matters.
    pub level_m: Option<f64>,
}

/// One rule looked at once.
#[derive(Debug, Clone, PartialEq)]
pub struct Check {
    /// Which rule.
    pub code: Code,
    /// The things it is about; the first one owns it.
    pub about: Vec<ThingId>,
    /// Where.
    pub at: Option<Place>,
    /// What came of it.
    pub outcome: Outcome,
    /// What was measured.
    pub measured: Option<Amount>,
    /// What it was compared with.
    pub limit: Option<Limit>,
    /// Particulars in words: which combination, which neighbor; may be empty.
    pub detail: String,
    /// What would resolve it; empty when met.
    pub way_out: String,
}

impl Check {
    /// A check without figures.
    pub fn new(code: Code, about: ThingId, outcome: Outcome) -> Self {
        Self {
            code,
            about: vec![about],
            at: None,
            outcome,
            measured: None,
            limit: None,
            detail: String::new(),
            way_out: String::new(),
        }
    }

    /// Whether it is a finding: it fails or could not be made.
    pub fn is_finding(&self) -> bool {
        matches!(self.outcome, Outcome::Fails(_) | Outcome::NotChecked(_))
    }

    /// Severity for sorting: failed ones first, then what was not checked.
    pub fn rank(&self) -> u8 {
        match self.outcome {
            Outcome::Fails(Severity::Blocking) => 0,
            Outcome::Fails(Severity::Caution) => 1,
            Outcome::NotChecked(_) => 2,
            Outcome::Fails(Severity::Note) => 3,
            Outcome::Meets => 4,
            Outcome::NotApplicable(_) => 5,
        }
    }
}

/// How many checks came to which outcome.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Tally {
    /// Met.
    pub meets: usize,
    /// Failed, blocking.
    pub blocking: usize,
    /// Failed, caution.
    pub caution: usize,
    /// Failed, note.
    pub note: usize,
    /// Could not be made.
    pub not_checked: usize,
    /// Did not apply.
    pub not_applicable: usize,
}

impl std::fmt::Display for Tally {
    /// All four outcomes in one line: silence is never taken for a pass.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            f,
            "{} checks: {} met; {} failed ({} blocking, {} caution, {} note); {} not checked; {} not applicable",
            self.all(),
            self.meets,
            self.fails(),
            self.blocking,
            self.caution,
            self.note,
            self.not_checked,
            self.not_applicable
        )
    }
}

impl Tally {
    /// Counts checks.
    pub fn of<'a>(checks: impl IntoIterator<Item = &'a Check>) -> Self {
        let mut tally = Self::default();
        for check in checks {
            match check.outcome {
                Outcome::Meets => tally.meets += 1,
                Outcome::Fails(Severity::Blocking) => tally.blocking += 1,
                Outcome::Fails(Severity::Caution) => tally.caution += 1,
                Outcome::Fails(Severity::Note) => tally.note += 1,
                Outcome::NotChecked(_) => tally.not_checked += 1,
                Outcome::NotApplicable(_) => tally.not_applicable += 1,
            }
        }
        tally
    }

    /// All checks made or tried.
    pub fn all(&self) -> usize {
        self.meets + self.blocking + self.caution + self.note + self.not_checked + self.not_applicable
    }

    /// All that fail.
    pub fn fails(&self) -> usize {
        self.blocking + self.caution + self.note
    }
}
