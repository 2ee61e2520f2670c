//! Parts as stored in a catalog: lengths, sections, masses, joints.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::document::PartId;

/// Cross-section of a straight part.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SectionShape {
    /// Round tube.
    RoundTube {
        /// Outside diameter.
        diameter_m: f64,
        /// Wall thickness.
        wall_m: f64,
    },
    /// Rectangular tube; depth stands upright in the arm's plane.
    RectTube {
        /// Depth, in the plane of mast and arm.
        depth_m: f64,
        /// Width, square to that plane.
        width_m: f64,
        /// Wall thickness.
        wall_m: f64,
        /// Outside radius of the corners; zero for sharp, extruded ones.
        #[serde(default)]
        outer_radius_m: f64,
    },
}

impl SectionShape {
    /// Extent in the plane of mast and arm, m.
    pub fn depth_m(self) -> f64 {
        match self {
            Self::RoundTube { diameter_m, .. } => diameter_m,
            Self::RectTube { depth_m, .. } => depth_m,
        }
    }

    /// Extent square to the plane of mast and arm, m.
    pub fn width_m(self) -> f64 {
        match self {
            Self::RoundTube { diameter_m, .. } => diameter_m,
            Self::RectTube { width_m, .. } => width_m,
        }
    }
}

/// What a material is, as far as its design rules differ.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum MaterialKind {
    /// Structural steel; cold-formed tubes buckle to a lower curve than hot-finished ones.
    Steel {
        /// Whether tubes are cold-formed.
        cold_formed: bool,
    },
    /// Aluminum alloy.
    Aluminum {
        /// Buckling class A (heat-treated) rather than B.
        heat_treated: bool,
        /// Factor on the yield strength beside a weld, 0 to 1; missing when parts are welded but no factor is known.
        weld_softening: Option<f64>,
    },
}

/// A material.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Material {
    /// Its name ("steel 355", "aluminum 6082-T6").
    pub name: String,
    /// Steel or aluminum.
    pub kind: MaterialKind,
    /// Modulus of elasticity.
    pub elastic_pa: f64,
    /// Shear modulus.
    pub shear_pa: f64,
    /// Density.
    pub density_kg_m3: f64,
    /// Yield strength, or 0.2 % proof strength.
    pub yield_pa: f64,
    /// Ultimate strength.
    pub ultimate_pa: f64,
}

/// A straight tube of one material.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Tube {
    /// Cross-section.
    pub section: SectionShape,
    /// Name of the material in the family.
    pub material: String,
    /// Stretches beside welds across the tube, which soften aluminum; empty: none.
    #[serde(default)]
    pub welds: Vec<WeldStretch>,
    /// Holes for pins through the tube; none: none.
    #[serde(default)]
    pub pin_holes: Option<PinHoles>,
}

/// A stretch of a tube beside a weld, in the part's own coordinate: up the mast from the base, along the arm from the
/// mast axis outward.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct WeldStretch {
    /// Where it begins.
    pub from_m: f64,
    /// Where it ends.
    pub to_m: f64,
}

/// Pin holes of one diameter, bored across the plane of mast and arm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PinHoles {
    /// Diameter.
    pub diameter_m: f64,
    /// Where they are, in the part's own coordinate.
    pub at_m: Vec<f64>,
}

/// How the arm sits on the mast about the horizontal axis square to the arm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Head {
    /// A pin about that axis, stiff about the other two.
    Pinned,
    /// Stiff about all axes.
    Rigid,
}

/// What keeps a joint together.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Retention {
    /// Nothing.
    Nothing,
    /// Its own weight.
    Gravity,
    /// A pin.
    Pin {
        /// Its design resistance along the joint, if known.
        resistance_n: Option<f64>,
    },
    /// A lock that needs a deliberate act to open.
    Locked {
        /// Its design resistance along the joint, if known.
        resistance_n: Option<f64>,
    },
}

/// A mast.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Mast {
    /// Its name.
    pub name: String,
    /// From the underside of the base plate to the arm's axis, when it stands in its base.
    pub height_m: f64,
    /// Its tube.
    pub tube: Tube,
    /// Its mass.
    pub mass_kg: f64,
    /// What keeps it in its socket.
    pub retention: Retention,
}

/// A point of the arm that takes a rope.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RopePoint {
    /// Its name on the arm.
    pub name: String,
    /// Distance in front of the mast axis.
    pub out_m: f64,
    /// Distance to the left of the arm's axis, seen from the mast.
    pub sideways_m: f64,
    /// Distance below the arm's axis.
    pub drop_m: f64,
    /// Rated load of the point itself, if declared.
    pub rated_n: Option<f64>,
}

/// An arm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Arm {
    /// Its name.
    pub name: String,
    /// From the mast axis to the rope at the tip.
    pub outreach_m: f64,
    /// From the mast axis back to the end of the tail; zero without a tail.
    pub tail_m: f64,
    /// Its tube.
    pub tube: Tube,
    /// Its mass.
    pub mass_kg: f64,
    /// How it sits on the mast.
    pub head: Head,
    /// What keeps it on the mast.
    pub retention: Retention,
    /// Points that take ropes; the first is the working line's.
    pub points: Vec<RopePoint>,
}

/// Whether a brace can also push.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum BraceAction {
    /// Pulls and pushes.
    PullAndPush,
    /// Pulls only and goes slack when pressed.
    PullOnly,
}

/// Where a rear foot's strut leaves the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FootFrom {
    /// The mast's head; it need not turn with the arm.
    MastHead,
    /// The arm's tail.
    ArmTail,
}

/// What a brace spans.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BraceKind {
    /// From the arm's tail to the mast.
    RearToMast {
        /// Pin on the tail, behind the mast axis.
        tail_at_m: f64,
        /// Pin on the mast, below the arm's axis.
        below_arm_m: f64,
    },
    /// From the arm's tail to a lug on the turning collar of the base.
    RearToBase {
        /// Pin on the tail, behind the mast axis.
        tail_at_m: f64,
        /// Lug behind the mast axis, at the underside of the base plate.
        base_at_m: f64,
    },
    /// From the mast up to the arm in front.
    Front {
        /// Pin on the arm, in front of the mast axis.
        arm_at_m: f64,
        /// Pin on the mast, below the arm's axis.
        below_arm_m: f64,
    },
    /// To a foot of its own on the roof.
    RearFoot {
        /// Where it leaves the unit.
        from: FootFrom,
        /// Foot behind the mast axis.
        distance_m: f64,
        /// How far the arm may turn from the foot's line.
        allowed_turn_rad: f64,
    },
}

/// A brace.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Brace {
    /// Its name.
    pub name: String,
    /// What it spans.
    pub kind: BraceKind,
    /// Its tube.
    pub tube: Tube,
    /// Its mass.
    pub mass_kg: f64,
    /// Whether it can push.
    pub action: BraceAction,
    /// What keeps its pins.
    pub retention: Retention,
    /// The base of kind brace foot that a rear foot stands on; none: its fixing is not known.
    #[serde(default)]
    pub foot: Option<PartId>,
}

/// An eye on a base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Eye {
    /// Its height over the underside of the base plate.
    pub height_m: f64,
    /// The load at which a person may be tied to it; none: nobody may.
    pub person_n: Option<f64>,
}

/// What holds the slew.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SlewHold {
    /// Nothing: the arm follows the rope's sideways pull and passes no twist to the base.
    Free,
    /// Detents at equal steps from the base's x axis.
    Detents {
        /// Angle between detents.
        step_rad: f64,
        /// Twist that they hold.
        rated_torque_nm: f64,
    },
    /// A clamp at any angle.
    Clamp {
        /// Twist that it holds.
        rated_torque_nm: f64,
    },
}
