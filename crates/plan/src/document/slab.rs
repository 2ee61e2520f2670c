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
            thickness_m: 0.30,
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
    /// Bars beside each anchor that take its tension in place of the concrete cone (see [`AnchorBars`]).
    pub tension: Option<AnchorBars>,
    /// Bars toward the nearest edge that take the shear toward it in place of the concrete (see [`AnchorBars`]).
    pub shear: Option<EdgeAnchorBars>,
}

/// Bars for anchors: supplementary reinforcement of EN 1992-4 7.2.1.2 and 7.2.2.2, as the structural engineer details it.
///
/// They hold only where such bars are placed at every base and foot that stands in this slab. A base on a plinth or a wall gets
/// none of them. How they are anchored outside the body that breaks out is the structural engineer's. Where the code for
/// anchors is ACI 318-19, the concrete is checked as if they were not there.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AnchorBars {
    /// How many bars count: beside each anchor for tension, all those toward the edge for shear.
    pub count: u32,
    /// Diameter of a bar.
    pub diameter_m: f64,
    /// Yield strength of the bars, f_yk.
    pub yield_pa: f64,
    /// Length of each bar inside the body that would break out, l_1.
    pub anchored_m: f64,
    /// Design bond strength, f_bd of EN 1992-1-1 8.4.2.
    pub bond_pa: f64,
    /// α_1·α_2 of EN 1992-1-1 8.4.4, for the shape of the bars and their cover.
    pub alpha: f64,
    /// Whether the bars end in a hook, a bend or a loop inside that body; straight otherwise.
    pub hooked: bool,
    /// Distance of the farthest counted bar from its anchor.
    pub distance_m: f64,
}

/// Bars toward the edge that is nearest to the anchors of a base. Where two edges are as near to within a millimeter, nobody
/// says which of them is meant, and no bars count.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EdgeAnchorBars {
    /// The bars.
    pub bars: AnchorBars,
    /// Distance between the bars and the line of the shear, e_s.
    pub offset_m: f64,
    /// Internal lever arm between the bars and what presses, z.
    pub lever_m: f64,
}

impl AnchorBars {
    /// What a form begins with: every value at the end of its range that helps least, and the bars too short and too far away
    /// to count, so that nothing holds by them until someone says what they are.
    pub const UNSAID: Self = Self {
        count: 1,
        diameter_m: 0.006,
        yield_pa: 200e6,
        anchored_m: 0.01,
        bond_pa: 0.1e6,
        alpha: 1.0,
        hooked: false,
        distance_m: 2.0,
    };
}

impl EdgeAnchorBars {
    /// What a form begins with (see [`AnchorBars::UNSAID`]).
    pub const UNSAID: Self = Self { bars: AnchorBars::UNSAID, offset_m: 1.0, lever_m: 0.02 };
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
