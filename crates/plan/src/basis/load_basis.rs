//! The load basis: where the numbers come from, what pulls, and the working rules.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{CaseId, Combined, CombinedFault, LoadCase, LoadCone, MemberCode, Rules, Sourced, TestDuty};
use crate::catalog::FixingKind;

/// A load basis, stored in the plan and editable.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LoadBasis {
    /// Its name.
    pub name: String,
    /// Law or standard with edition, and what was read of it.
    pub regime: Sourced<String>,
    /// Cases by name.
    pub cases: BTreeMap<CaseId, LoadCase>,
    /// Which of them act together.
    pub combinations: Vec<Combined>,
    /// Every direction in which a rope may pull.
    pub cone: LoadCone,
    /// Factors on self-weight at the design level.
    pub weight: WeightFactors,
    /// Whether resistances are reduced by partial factors as well; printed on every sheet.
    pub resistance_factors: Sourced<bool>,
    /// The family of codes whose resistance factors go with these load factors, if the source names one.
    #[serde(default)]
    pub goes_with: Option<MemberCode>,
    /// How each kind of fixing is tested before it is used.
    #[serde(default)]
    pub tests: BTreeMap<FixingKind, Sourced<TestDuty>>,
    /// Working rules with their limits.
    pub rules: Rules,
}

/// Factors on self-weight at the design level.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeightFactors {
    /// Where weight makes things worse.
    pub unfavorable: Sourced<f64>,
    /// Where weight helps.
    pub favorable: Sourced<f64>,
}

impl LoadBasis {
    /// Checks every combination against the cases.
    pub fn check(&self) -> Result<(), CombinedFault> {
        self.combinations.iter().try_for_each(|combined| combined.check(&self.cases))
    }

    /// The name of a combination by its place; empty where there is none.
    pub fn combination_name(&self, index: usize) -> &str {
        self.combinations.get(index).map_or("", |combined| combined.name.as_str())
    }

    /// What is asked of the test of a kind of fixing, in words; what the basis says nothing of is not known, and not "none".
    pub fn test_words(&self, kind: FixingKind) -> String {
        self.tests.get(&kind).map_or_else(|| "the basis says nothing of it".to_owned(), |duty| duty.value.words())
    }
}
