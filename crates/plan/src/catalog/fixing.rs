//! Fixing products as stored: what an anchor is, and what its approval says of it. What is missing is not guessed.

use std::collections::BTreeSet;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A fixing product in one size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Fixing {
    /// Its name.
    pub name: String,
    /// How it holds.
    pub kind: FixingKind,
    /// Where its values come from: approval or evaluation report with number and date.
    pub source: String,
    /// Diameter of thread or shank.
    pub diameter_m: f64,
    /// Outside diameter in the concrete; none: the same.
    #[serde(default)]
    pub outside_diameter_m: Option<f64>,
    /// Stress area of the thread, m².
    pub stress_area_m2: f64,
    /// Characteristic ultimate strength of its steel.
    pub ultimate_pa: f64,
    /// Characteristic yield strength of its steel.
    pub yield_pa: f64,
    /// Rupture elongation of its steel, a ratio; none: taken as brittle.
    #[serde(default)]
    pub rupture_elongation: Option<f64>,
    /// Head of a cast-in bolt.
    #[serde(default)]
    pub head: Option<BoltHead>,
    /// Least distances.
    #[serde(default)]
    pub least: LeastDistances,
    /// Values to EN 1992-4.
    #[serde(default)]
    pub en: EnValues,
    /// Values to ACI 318-19 chapter 17.
    #[serde(default)]
    pub aci: AciValues,
    /// What its bond strengths stand for.
    #[serde(default)]
    pub bond_cover: Option<BondCover>,
    /// Throat of the fillet weld round the plate; for a weld only.
    #[serde(default)]
    pub weld_throat_m: Option<f64>,
    /// Design tension of one that tests or an approval validate; a proof test must not pull more.
    #[serde(default)]
    pub validated_design_n: Option<f64>,
}

/// How a fixing holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FixingKind {
    /// Post-installed, held by adhesive.
    Bonded,
    /// Post-installed, locked in an undercut.
    Undercut,
    /// Headed bolt set before the pour.
    CastInBolt,
    /// Headed bolts of a cage, set with a template before the pour.
    Cage,
    /// Bolt through slab or wall with a plate behind.
    ThroughBolt,
    /// Tube set before the pour.
    Sleeve,
    /// Bolts in structural steel.
    SteelBolts,
    /// Weld to structural steel.
    Weld,
}

impl FixingKind {
    /// All in order.
    pub const ALL: [Self; 8] = [
        Self::Bonded,
        Self::Undercut,
        Self::CastInBolt,
        Self::Cage,
        Self::ThroughBolt,
        Self::Sleeve,
        Self::SteelBolts,
        Self::Weld,
    ];

    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bonded => "bonded anchors",
            Self::Undercut => "undercut anchors",
            Self::CastInBolt => "cast-in bolts",
            Self::Cage => "cast-in cage",
            Self::ThroughBolt => "through bolts",
            Self::Sleeve => "cast-in sleeve",
            Self::SteelBolts => "bolts in steel",
            Self::Weld => "weld to steel",
        }
    }

    /// Whether hardened concrete is drilled for it.
    pub const fn is_drilled(self) -> bool {
        matches!(self, Self::Bonded | Self::Undercut | Self::ThroughBolt)
    }

    /// Whether it is set before the pour.
    pub const fn is_cast_in(self) -> bool {
        matches!(self, Self::CastInBolt | Self::Cage | Self::Sleeve)
    }

    /// Whether it holds in steel and not in concrete.
    pub const fn is_in_steel(self) -> bool {
        matches!(self, Self::SteelBolts | Self::Weld)
    }
}

/// Head of a cast-in bolt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BoltHead {
    /// Diameter, or that of the circle with the head's area.
    pub diameter_m: f64,
    /// Thickness.
    pub thickness_m: f64,
}

/// Distances below which the product may not be set.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LeastDistances {
    /// Least spacing.
    pub spacing_m: Option<f64>,
    /// Least edge distance.
    pub edge_m: Option<f64>,
    /// Least thickness of the concrete.
    pub thickness_m: Option<f64>,
}

/// Pull-out resistance of one fastener.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PullOut {
    /// The approval gives a resistance.
    Resistance {
        /// Characteristic (EN) or nominal (ACI) value.
        resistance_n: f64,
    },
    /// The approval says that pull-out does not decide.
    NotDecisive,
}

/// Values to EN 1992-4, for the concrete strength of the plan.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct EnValues {
    /// Steel in tension; none: from area and strength.
    pub steel_tension_n: Option<f64>,
    /// Steel in shear without lever arm; none: from area and strength.
    pub steel_shear_n: Option<f64>,
    /// Steel in bending; none: from section and strength.
    pub steel_moment_nm: Option<f64>,
    /// Installation factor.
    pub gamma_inst: Option<f64>,
    /// Pull-out in cracked concrete.
    pub pull_out_cracked: Option<PullOut>,
    /// Pull-out in uncracked concrete.
    pub pull_out_uncracked: Option<PullOut>,
    /// Bond strength in cracked concrete.
    pub bond_cracked_pa: Option<f64>,
    /// Bond strength in uncracked concrete.
    pub bond_uncracked_pa: Option<f64>,
    /// Bond strength in uncracked concrete C20/25.
    pub bond_uncracked_c20_pa: Option<f64>,
    /// Sustained-load ratio of the bond.
    pub sustained_ratio: Option<f64>,
    /// Characteristic spacing against splitting.
    pub splitting_spacing_m: Option<f64>,
    /// Characteristic edge distance against splitting.
    pub splitting_edge_m: Option<f64>,
    /// Factor of pry-out.
    pub k8: Option<f64>,
}

/// Values to ACI 318-19 chapter 17.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AciValues {
    /// Category from the tests, 1 to 3.
    pub category: Option<AciCategory>,
    /// Characteristic bond stress in cracked concrete.
    pub bond_cracked_pa: Option<f64>,
    /// Characteristic bond stress in uncracked concrete.
    pub bond_uncracked_pa: Option<f64>,
    /// Pull-out in cracked concrete.
    pub pull_out_cracked: Option<PullOut>,
    /// Pull-out in uncracked concrete.
    pub pull_out_uncracked: Option<PullOut>,
    /// Critical edge distance.
    pub critical_edge_m: Option<f64>,
    /// Load-bearing length in shear.
    pub bearing_length_m: Option<f64>,
}

/// Anchor category of ACI 355.2 and 355.4.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum AciCategory {
    /// Low sensitivity to installation.
    One,
    /// Medium.
    Two,
    /// High.
    Three,
}

/// How a hole is drilled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Drilling {
    /// Hammer drill.
    Hammer,
    /// Hammer drill with a hollow bit that draws the dust off.
    HollowBit,
    /// Diamond core.
    Diamond,
    /// Diamond core, roughened.
    DiamondRoughened,
}

/// What stands in the hole while the adhesive is filled in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum HoleCondition {
    /// Dry concrete.
    Dry,
    /// Wet concrete.
    Wet,
    /// Full of water.
    Flooded,
}

/// Which way a fastener is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Orientation {
    /// Downward, into a floor.
    Down,
    /// Horizontally, into a wall.
    Horizontal,
    /// Upward, into a soffit.
    Overhead,
}

/// What the bond strengths of a product stand for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BondCover {
    /// Largest long-term temperature, °C.
    pub long_term_c: f64,
    /// Largest short-term temperature, °C.
    pub short_term_c: f64,
    /// Ways of drilling.
    pub drilling: BTreeSet<Drilling>,
    /// Conditions of the hole.
    pub holes: BTreeSet<HoleCondition>,
    /// Directions of setting.
    pub orientations: BTreeSet<Orientation>,
}
