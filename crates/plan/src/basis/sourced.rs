//! A value with where it comes from and who stands behind it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A value, its source, and whether someone has confirmed it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Law, standard with edition and clause, page, or "practice, from memory".
    pub source: String,
    /// Who stands behind it.
    #[serde(default)]
    pub standing: Confirmation,
}

impl<T> Sourced<T> {
    /// A default that nobody has confirmed yet.
    pub fn default_from(value: T, source: impl Into<String>) -> Self {
        Self { value, source: source.into(), standing: Confirmation::Default }
    }

    /// Whether nobody has confirmed or overridden it.
    pub fn is_unconfirmed(&self) -> bool {
        self.standing == Confirmation::Default
    }
}

/// Who stands behind a value.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Confirmation {
    /// A default: nobody yet.
    #[default]
    Default,
    /// Someone confirmed it as it is.
    Confirmed {
        /// Who.
        by: String,
    },
    /// Someone set another value.
    Overridden {
        /// Why.
        reason: String,
    },
}
