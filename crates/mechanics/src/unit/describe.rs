//! A unit as plain data: lengths, stiffnesses, joints, where ropes attach, what weighs.

use glam::DVec3;

use crate::stiffness::BarStiffness;

/// A mast standing in a base, an arm on top of it, and what braces the arm.
#[derive(Debug, Clone, PartialEq)]
pub struct Unit {
    /// Mast; its local y is square to the arm, so `ei_y_nm2` resists bending in the arm's plane.
    pub mast: BarStiffness,
    /// H: from the structure to the arm's axis, m.
    pub mast_height_m: f64,
    /// How the mast's foot is held against tilting.
    pub base: BaseFixity,
    /// Arm; `ei_y_nm2` resists bending in the vertical plane.
    pub arm: BarStiffness,
    /// a: from the mast axis to the arm's tip, m.
    pub outreach_m: f64,
    /// t: from the mast axis back to the arm's tail, m; 0 if there is none.
    pub tail_m: f64,
    /// How the arm sits on the mast.
    pub head: HeadJoint,
    /// What braces the arm.
    pub brace: Brace,
    /// Where the brace's pins stand off the members' axes.
    pub pins: PinOffsets,
    /// Where ropes pull.
    pub points: Vec<RopePoint>,
    /// Masses beside those of the bars.
    pub lumps: Vec<Lump>,
}

/// How the mast's foot is held. Displacements and twist are always held without give.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum BaseFixity {
    /// No give.
    #[default]
    Rigid,
    /// Tilts alike in every direction, N·m/rad.
    TiltSpring(f64),
}

/// How the arm sits on the mast.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeadJoint {
    /// A pin about the horizontal axis square to the arm, stiff about the other two.
    Pinned,
    /// Stiff about all three.
    Rigid,
}

/// What braces the arm. Distances are counted from the mast axis or the structure, positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Brace {
    /// Nothing; the head must be rigid.
    None,
    /// From the arm's tail down to the mast.
    RearToMast {
        /// Pin on the arm behind the mast axis, m.
        tail_at_m: f64,
        /// h_b: pin on the mast over the structure, m.
        mast_at_m: f64,
        /// Its axial stiffness and weight count.
        bar: BarStiffness,
        /// Whether it can be pressed.
        action: BraceAction,
    },
    /// From the arm's tail down to a lug on the base that turns with the slew.
    RearToBase {
        /// Pin on the arm behind the mast axis, m.
        tail_at_m: f64,
        /// d_b: lug behind the mast axis, at the structure's level, m.
        base_at_m: f64,
        /// Its axial stiffness and weight count.
        bar: BarStiffness,
        /// Whether it can be pressed.
        action: BraceAction,
    },
    /// From the mast up to the arm in front.
    Front {
        /// x_b: pin on the arm before the mast axis, m.
        arm_at_m: f64,
        /// h_b: pin on the mast over the structure, m.
        mast_at_m: f64,
        /// Its axial stiffness and weight count.
        bar: BarStiffness,
        /// Whether it can be pressed.
        action: BraceAction,
    },
    /// Back to a fixing of its own, which doesn't slew.
    RearFoot {
        /// Where it starts.
        from: FootFrom,
        /// d: foot behind the mast axis, m.
        distance_m: f64,
        /// z_f: level of the foot over the unit's own structure, m.
        foot_level_m: f64,
        /// ψ_f: the slew at which the foot lies straight behind the arm, rad.
        bearing_rad: f64,
        /// How far the slew may differ from the bearing to either side, rad.
        allowed_turn_rad: f64,
        /// Give of the foot alike in every direction, N/m; `None` for no give.
        foot_spring_n_per_m: Option<f64>,
        /// Its axial stiffness and weight count.
        bar: BarStiffness,
        /// Whether it can be pressed.
        action: BraceAction,
    },
}

/// Where a brace to a foot of its own starts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FootFrom {
    /// At a swivel on the mast's head.
    MastHead,
    /// At the arm's tail.
    ArmTail {
        /// Pin on the arm behind the mast axis, m.
        at_m: f64,
    },
}

/// Whether a brace can be pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BraceAction {
    /// Pulled and pressed.
    Both,
    /// Pulled only: it goes slack when pressed.
    PullOnly,
}

/// Rigid offsets of the brace's pins from the axes of arm and mast, in arm axes, m. The lower offset
/// counts for a pin on the mast or a lug on the base; a foot of its own is where it is said to be.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct PinOffsets {
    /// From the arm's axis (or the mast's head) to the upper pin.
    pub upper_m: DVec3,
    /// From the mast's axis (or the nominal lug) to the lower pin.
    pub lower_m: DVec3,
}

/// Where a rope pulls on the arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RopePoint {
    /// Along the arm from the mast axis, positive outboard, m.
    pub x_m: f64,
    /// Off the arm's axis along +y, m.
    pub sideways_m: f64,
    /// Below the arm's axis, m.
    pub drop_m: f64,
}

/// A place on the axis of mast or arm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Place {
    /// On the mast, over the structure, m.
    Mast {
        /// Height, m.
        at_m: f64,
    },
    /// On the arm, from the mast axis, positive outboard, m.
    Arm {
        /// Distance, m.
        at_m: f64,
    },
}

/// A mass beside those of the bars, given by its weight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lump {
    /// Where it hangs.
    pub on: Place,
    /// Its weight, N.
    pub weight_n: f64,
}

impl Brace {
    /// Whether the brace goes slack when pressed.
    #[must_use]
    pub const fn pulls_only(&self) -> bool {
        matches!(
            self,
            Self::RearToMast { action: BraceAction::PullOnly, .. }
                | Self::RearToBase { action: BraceAction::PullOnly, .. }
                | Self::Front { action: BraceAction::PullOnly, .. }
                | Self::RearFoot { action: BraceAction::PullOnly, .. }
        )
    }
}
