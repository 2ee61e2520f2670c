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
    /// Characteristic cylinder strength of the concrete, f_ck, if known.
    #[serde(default)]
    pub cylinder_strength_pa: Option<f64>,
    /// Specified compressive strength of the concrete, f'_c, if known.
    #[serde(default)]
    pub specified_strength_pa: Option<f64>,
    /// Whether the concrete is taken as cracked; cracked unless shown otherwise.
    #[serde(default = "cracked_unless_shown")]
    pub cracked: bool,
    /// Reinforcement, as far as it is known.
    #[serde(default)]
    pub bars: SlabBars,
    /// What lies under it, in words ("plant room", "canopy, open below"); empty: not stated.
    #[serde(default)]
    pub under: String,
    /// Whether someone has looked at the slab's data and said they are right.
    #[serde(default)]
    pub confirmed: bool,
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
        Self {
            thickness_m: 0.25,
            cylinder_strength_pa: None,
            specified_strength_pa: None,
            cracked: true,
            bars: SlabBars::default(),
            under: String::new(),
            confirmed: false,
            zones: Vec::new(),
            no_drill: Vec::new(),
        }
    }
}

/// Reinforcement of a slab, as far as it is known; what is missing counts as the less favorable.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct SlabBars {
    /// Depth of the bars' axis under the nearer face; with it the effective depth for punching is known.
    pub axis_depth_m: Option<f64>,
    /// Ratio of bars that are anchored past the base, both ways, per face.
    pub ratio: Option<f64>,
    /// Whether bars near the surface are wide apart: 150 mm or more, or 100 mm or more with bars up to 10 mm.
    pub wide_apart: Option<bool>,
    /// Bars along the edges.
    pub along_edges: EdgeBars,
    /// Whether bars take splitting forces and limit cracks to 0.3 mm.
    pub limit_splitting: Option<bool>,
}

/// Bars along the edges of a slab.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum EdgeBars {
    /// None, or not known.
    #[default]
    NoneKnown,
    /// A straight bar along the edge.
    Straight,
    /// The same, with stirrups at close spacing.
    WithStirrups,
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
