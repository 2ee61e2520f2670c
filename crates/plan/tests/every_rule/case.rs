//! One entry of the table: a plan, the rule looked at, and what must come of it.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::document::Plan;

/// What must come of a rule.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wanted {
    /// It is met, and nothing is found under its code.
    Meets,
    /// It fails with this severity.
    Fails(Severity),
    /// It could not be made.
    NotChecked,
}

/// One entry.
pub struct Case {
    /// The rule.
    pub code: Code,
    /// What is special about the plan.
    pub says: String,
    /// The plan.
    pub plan: Plan,
    /// What must come of it.
    pub wanted: Wanted,
    /// The hand value of what is measured, and within what it must be met.
    pub measured: Option<(f64, f64)>,
}

impl Case {
    /// A case without a figure.
    pub fn new(code: Code, says: impl Into<String>, plan: Plan, wanted: Wanted) -> Self {
        Self { code, says: says.into(), plan, wanted, measured: None }
    }

    /// The same with the hand value of what is measured: rounding of lengths near 10 m and forces near 10 kN alone differs.
    pub fn measures(self, value: f64) -> Self {
        self.measures_within(value, 1e-7 * value.abs().max(1.0))
    }

    /// The same with a hand value that holds within something.
    pub fn measures_within(self, value: f64, within: f64) -> Self {
        Self { measured: Some((value, within)), ..self }
    }
}
