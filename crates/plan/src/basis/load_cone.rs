//! The load cone: every direction in which a rope may pull. It is not the angle to which technicians work.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;

/// Half-angle around straight down, with optional limits of lean relative to the served facade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LoadCone {
    /// Half-angle around straight down, 0 to π ("any direction").
    pub half_angle_rad: Sourced<f64>,
    /// Limits of lean; none for ultimate cases and for units that serve two facades.
    #[serde(default)]
    pub lean: Option<LeanLimits>,
}

/// How far a rope may lean square to the served facade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LeanLimits {
    /// Toward the building.
    pub inward_rad: Sourced<f64>,
    /// Away from the building.
    pub outward_rad: Sourced<f64>,
}
