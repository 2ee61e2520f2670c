//! The answer of `check`: what is reached, how near things come, and everything that was found.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use schemars::JsonSchema;
use serde::Serialize;

use super::facade::FacadeAnswer;
use super::finding::{FindingAnswer, TallyAnswer};
use super::plan_named::{CAUTION, PlanNamed};
use super::unit_reach::UnitReach;

/// Everything that `check` says about a plan.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CheckAnswer {
    /// `gantline-check`.
    pub format: &'static str,
    /// Version of this answer's form.
    pub version: u32,
    /// What may be done with it.
    pub caution: &'static str,
    /// The plan it is about.
    pub plan: PlanNamed,
    /// How many checks came to which outcome.
    pub tally: TallyAnswer,
    /// Checks that fail or could not be made, worst first.
    pub findings: Vec<FindingAnswer>,
    /// Facades by their first edge.
    pub facades: Vec<FacadeAnswer>,
    /// Units by id.
    pub units: Vec<UnitReach>,
}

impl CheckAnswer {
    /// The name of the form.
    pub const FORMAT: &'static str = "gantline-check";
    /// The version of the form.
    pub const VERSION: u32 = 3;

    /// The answer about a plan and its assessment.
    pub fn of(plan: &Plan, assessment: &Assessment) -> Self {
        Self {
            format: Self::FORMAT,
            version: Self::VERSION,
            caution: CAUTION,
            plan: PlanNamed::of(plan),
            tally: TallyAnswer::of(assessment.tally()),
            findings: assessment.findings().into_iter().filter_map(FindingAnswer::of).collect(),
            facades: assessment.facades.values().map(|facade| FacadeAnswer::of(facade)).collect(),
            units: assessment.units.iter().map(|(&id, unit)| UnitReach::of(plan, id, unit)).collect(),
        }
    }
}
