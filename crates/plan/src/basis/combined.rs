//! Combinations: which cases act together, at one level.
//!
//! Levels never mix: a combination is built only from cases that have a value at its level.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{CaseId, CaseLoad, LoadCase, Tension};

/// At which level loads are meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LoadLevel {
    /// As they are, without load factors.
    Service,
    /// Design level: load factors, or anchor loads with factors inside.
    Ultimate,
    /// A multiple of the rated load.
    MultipleOfRated,
}

impl LoadLevel {
    /// The level's name as shown.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Service => "service",
            Self::Ultimate => "ultimate",
            Self::MultipleOfRated => "multiple of rated",
        }
    }
}

/// Cases that act together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Combined {
    /// Its name in words.
    pub name: String,
    /// The level of all its terms.
    pub level: LoadLevel,
    /// What acts together.
    pub terms: Vec<Term>,
}

/// A case with its combination factor.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The case.
    pub case: CaseId,
    /// Combination factor; 1 for anchor loads with factors inside.
    pub factor: f64,
}

/// Why a combination can't be used.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum CombinedFault {
    /// A case that the basis does not have.
    #[error("combination \"{combination}\" names the case \"{case}\", which the basis does not have")]
    NoCase {
        /// The combination.
        combination: String,
        /// The case asked for.
        case: String,
    },
    /// A case without a value at the combination's level.
    #[error("combination \"{combination}\" is at {level} level; the case \"{case}\" has no value at that level")]
    MixedLevels {
        /// The combination.
        combination: String,
        /// The case.
        case: String,
        /// The combination's level.
        level: &'static str,
    },
    /// A factor on a load that has its factors inside.
    #[error("combination \"{combination}\" puts a factor {factor} on \"{case}\", whose factors are inside it")]
    FactoredTwice {
        /// The combination.
        combination: String,
        /// The case.
        case: String,
        /// The factor found.
        factor: f64,
    },
    /// A factor that is no usable number.
    #[error("combination \"{combination}\" has the factor {factor} on \"{case}\"; it must be a positive number")]
    BadFactor {
        /// The combination.
        combination: String,
        /// The case.
        case: String,
        /// The factor found.
        factor: f64,
    },
}

impl Combined {
    /// Checks the terms against the cases of a basis.
    pub fn check(&self, cases: &BTreeMap<CaseId, LoadCase>) -> Result<(), CombinedFault> {
        for term in &self.terms {
            let combination = self.name.clone();
            let case = term.case.0.clone();
            let found = cases
                .get(&term.case)
                .ok_or_else(|| CombinedFault::NoCase { combination: combination.clone(), case: case.clone() })?;
            if !(term.factor.is_finite() && term.factor > 0.0) {
                return Err(CombinedFault::BadFactor { combination, case, factor: term.factor });
            }
            if !has_level(&found.load, self.level) {
                return Err(CombinedFault::MixedLevels { combination, case, level: self.level.name() });
            }
            let factors_inside = matches!(tension(&found.load), Some(Tension::Ultimate { .. }));
            if factors_inside && term.factor != 1.0 {
                return Err(CombinedFault::FactoredTwice { combination, case, factor: term.factor });
            }
        }
        Ok(())
    }
}

fn tension(load: &CaseLoad) -> Option<&Tension> {
    match load {
        CaseLoad::Rope { tension, .. } | CaseLoad::Tether { tension } => Some(tension),
        CaseLoad::Wind { .. } => None,
    }
}

fn has_level(load: &CaseLoad, level: LoadLevel) -> bool {
    matches!(
        (tension(load), level),
        (None | Some(Tension::Service { .. }), LoadLevel::Service | LoadLevel::Ultimate)
            | (Some(Tension::Ultimate { .. }), LoadLevel::Ultimate)
            | (Some(Tension::MultipleOfRated { .. }), LoadLevel::MultipleOfRated)
    )
}
