//! Which mast, arm and brace exist together, and what their maker declares for them.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::document::PartId;

/// An allowed combination.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Combination {
    /// The mast.
    pub mast: PartId,
    /// The arm.
    pub arm: PartId,
    /// The brace; none for an arm that is rigid on its mast.
    pub brace: Option<PartId>,
    /// What is declared for it; none: nothing is.
    pub rating: Option<Rating>,
}

/// A declared rating: a datum of whoever makes the unit, shown beside what is calculated.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rating {
    /// Rated load on the rope.
    pub rated_n: f64,
    /// Persons.
    pub persons: u32,
    /// Who declares it.
    pub declared_by: String,
}
