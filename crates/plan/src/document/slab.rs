//! The structural slab of a roof: thickness, concrete, zones of other thickness and zones without drilling.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The slab under a roof.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Slab {
    /// Structural thickness.
    pub thickness_m: f64,
    /// Characteristic cylinder strength of the concrete, if known.
    #[serde(default)]
    pub cylinder_strength_pa: Option<f64>,
    /// Whether the concrete is taken as cracked; cracked unless shown otherwise.
    #[serde(default = "cracked_unless_shown")]
    pub cracked: bool,
    /// Parts of the slab with another thickness.
    #[serde(default)]
    pub zones: Vec<SlabZone>,
    /// Parts where nothing may be drilled.
    #[serde(default)]
    pub no_drill: Vec<NoDrillZone>,
}

const fn cracked_unless_shown() -> bool {
    true
}

impl Default for Slab {
    fn default() -> Self {
        Self { thickness_m: 0.25, cylinder_strength_pa: None, cracked: true, zones: Vec::new(), no_drill: Vec::new() }
    }
}

/// A part of the slab with another thickness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SlabZone {
    /// Outline in the plan.
    #[schemars(with = "Vec<[f64; 2]>")]
    pub outline: Vec<DVec2>,
    /// Thickness there.
    pub thickness_m: f64,
}

/// A part of the slab where nothing may be drilled, and why ("post-tensioned", "services").
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct NoDrillZone {
    /// Outline in the plan.
    #[schemars(with = "Vec<[f64; 2]>")]
    pub outline: Vec<DVec2>,
    /// The reason in words.
    pub reason: String,
}
