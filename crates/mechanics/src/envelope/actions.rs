//! What acts on a unit together: rope pulls, weight, tether, wind, fixed forces.

use glam::DVec3;

use crate::cone::LoadCone;
use crate::unit::Place;

/// Actions that may act at once. Rope pulls, tether and wind may also be absent or smaller; weight
/// and fixed forces are always there.
#[derive(Debug, Clone, PartialEq)]
pub struct Actions {
    /// Ropes on the arm.
    pub pulls: Vec<Pull>,
    /// Factor on the unit's own weight.
    pub weight_factor: f64,
    /// A tether at the base's eye.
    pub tether: Option<Tether>,
    /// Wind on the unit, from any direction.
    pub wind: Option<WindOnUnit>,
    /// Forces that are always there.
    pub fixed: Vec<FixedForce>,
    /// Whether something holds the slew.
    pub slew_hold: SlewHold,
    /// Whether a brace's own foot may be lost.
    pub foot: FootCase,
}

impl Actions {
    /// One rope and the weight.
    #[must_use]
    pub fn of_pull(pull: Pull, weight_factor: f64) -> Self {
        Self {
            pulls: vec![pull],
            weight_factor,
            tether: None,
            wind: None,
            fixed: Vec::new(),
            slew_hold: SlewHold::Held,
            foot: FootCase::Holds,
        }
    }
}

/// A rope at a point of the arm: any direction of its cone, any tension from `least_n` to `tension_n`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pull {
    /// Index of the rope point.
    pub point: usize,
    /// T, N.
    pub tension_n: f64,
    /// What it pulls at least, N: 0 unless it is known never to hang slack.
    pub least_n: f64,
    /// Directions; limits of lean are in structure axes, x outward.
    pub cone: LoadCone,
    /// The rope's other leg, when it runs on over the arm to an anchor on the roof.
    pub second_leg: Option<SecondLeg>,
}

impl Pull {
    /// A rope that ends at its point.
    #[must_use]
    pub const fn new(point: usize, tension_n: f64, cone: LoadCone) -> Self {
        Self { point, tension_n, least_n: 0.0, cone, second_leg: None }
    }
}

/// A rope that runs on from its point toward an anchor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SecondLeg {
    /// The anchor, structure axes, from the base's reference point, m.
    pub anchor_m: DVec3,
    /// Least and greatest ratio of its tension to the pull's: e^(−μβ) and e^(μβ) for friction.
    pub ratio: [f64; 2],
}

/// A horizontal pull of any direction on the base itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tether {
    /// Its greatest force, N.
    pub force_n: f64,
    /// Height of the eye over the base's reference point, m.
    pub height_m: f64,
}

/// Wind forces on a unit when the wind blows squarely on each part; computed elsewhere. The wind comes
/// from any horizontal direction. Across the arm its force is taken as proportional to the wind's
/// component across it, which is on the safe side of the square that a slender bar sees.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WindOnUnit {
    /// On the mast, along the wind, N/m.
    pub mast_n_per_m: f64,
    /// On the arm in a wind across it, N/m.
    pub arm_n_per_m: f64,
    /// On the arm's end in a wind along it, N.
    pub arm_end_n: f64,
    /// On the whole brace, along the wind, N; half of it goes to each end.
    pub brace_n: f64,
    /// On other things, along the wind.
    pub lumps: Vec<WindLump>,
}

/// Wind on a thing that hangs on the unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WindLump {
    /// Where it hangs.
    pub on: Place,
    /// Its greatest force, N.
    pub force_n: f64,
}

/// A force that is always there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FixedForce {
    /// Where it acts.
    pub on: ForceOn,
    /// The force, N.
    pub force_n: DVec3,
    /// In which axes it is given.
    pub axes: ForceAxes,
}

/// Where a fixed force acts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ForceOn {
    /// At a rope point.
    Point(usize),
    /// On the mast axis of the base itself, at this height, m: it strains nothing of the unit.
    Base {
        /// Height over the base's reference point, m.
        height_m: f64,
    },
}

/// In which axes a fixed force is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ForceAxes {
    /// It keeps its direction as the arm slews.
    Structure,
    /// It turns with the arm.
    Arm,
}

/// Whether something holds the slew.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SlewHold {
    /// Detents or a clamp hold it: a rope may pull across the arm and twist the mast.
    #[default]
    Held,
    /// Nothing holds it: the arm follows the pull until its horizontal part passes through the mast
    /// axis, so every rope pulls in the vertical plane of mast axis and its own rope point (either
    /// way along it), and makes no torque. Wind, fixed forces and second legs are not bent to that.
    Free,
}

/// Whether a brace's own foot may be lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FootCase {
    /// The foot holds.
    #[default]
    Holds,
    /// The envelope covers the foot in place and the foot lost.
    HoldsOrLost,
}

/// Which slews are looked at.
#[derive(Debug, Clone, PartialEq)]
pub enum SlewRange {
    /// The whole turn, or as much of it as a foot of its own allows.
    WholeTurn,
    /// From one slew counter-clockwise to another, rad.
    Between {
        /// First slew, rad.
        from_rad: f64,
        /// Last slew, not less than the first, rad.
        to_rad: f64,
    },
    /// Only these, rad, as with detents.
    At(Vec<f64>),
}
