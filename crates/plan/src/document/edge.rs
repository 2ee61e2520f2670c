//! An edge of a roof: its parapet, and the facade below it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{EdgeId, RoofId};

/// One edge with its data. Its line runs from the corner that owns it to the next corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Edge {
    /// Stable name of the edge.
    pub id: EdgeId,
    /// The parapet on it.
    pub parapet: Parapet,
    /// The facade below it.
    pub facade: FacadeData,
    /// Whether someone has looked at parapet and facade data and said they are right.
    #[serde(default)]
    pub confirmed: bool,
}

impl Edge {
    /// An edge with the unconfirmed defaults of a freshly sketched roof.
    pub fn sketched(id: EdgeId) -> Self {
        Self { id, parapet: Parapet::default(), facade: FacadeData::default(), confirmed: false }
    }
}

/// A parapet along an edge; a height of zero is an edge without one.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Parapet {
    /// Top of the coping over the structural slab.
    pub height_m: f64,
    /// Thickness from outer to inner face.
    pub thickness_m: f64,
    /// How far the outer face stands behind the outline.
    pub inset_m: f64,
    /// Its concrete, where bases stand on its face; none: not known, or no concrete.
    #[serde(default)]
    pub concrete: Option<WallConcrete>,
}

/// Concrete of a wall.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WallConcrete {
    /// Characteristic cylinder strength, f_ck, if known.
    pub cylinder_strength_pa: Option<f64>,
    /// Specified compressive strength, f'_c, if known.
    pub specified_strength_pa: Option<f64>,
    /// Whether it is taken as cracked.
    pub cracked: bool,
}

impl Default for Parapet {
    fn default() -> Self {
        Self { height_m: 1.10, thickness_m: 0.20, inset_m: 0.0, concrete: None }
    }
}

/// The facade that hangs below an edge.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FacadeData {
    /// Whether technicians must reach it.
    pub needs_access: bool,
    /// Where the facade's face lies outside the outline, by depth below the top of the parapet.
    /// Steps in order of depth; the first begins at depth 0.
    pub profile: Vec<FacadeStep>,
    /// Where it ends below.
    pub ends_at: FacadeFoot,
}

impl Default for FacadeData {
    fn default() -> Self {
        Self {
            needs_access: true,
            profile: vec![FacadeStep { from_depth_m: 0.0, offset_m: 0.0 }],
            ends_at: FacadeFoot::Ground,
        }
    }
}

/// A stretch of depth with one offset.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FacadeStep {
    /// Depth below the top of the parapet at which this offset begins.
    pub from_depth_m: f64,
    /// Facade face outside the outline (negative: behind it).
    pub offset_m: f64,
}

/// Where a facade ends.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FacadeFoot {
    /// At level zero.
    Ground,
    /// On another, lower roof.
    Roof(RoofId),
    /// At this level over level zero.
    LevelM(f64),
}
