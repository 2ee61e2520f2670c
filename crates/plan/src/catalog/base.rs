//! Bases as stored: what stays in the roof, by kind, with plate, anchors and bearing.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Eye, FixingKind, SlewHold};
use crate::document::PartId;

/// A base: what stays in the roof.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Base {
    /// Its name.
    pub name: String,
    /// How it stands in or on the structure.
    #[serde(default)]
    pub kind: BaseKind,
    /// Corners of the plate in the base's axes, or in plate axes for a wall socket (x to the right seen from in front of
    /// the face, y up); for a sleeve the corners of its flange.
    #[schemars(with = "Vec<[f64; 2]>")]
    pub plate_m: Vec<DVec2>,
    /// Thickness of the plate.
    pub plate_thickness_m: f64,
    /// Name of the plate's material in the family; none: its bending is not checked.
    #[serde(default)]
    pub plate_material: Option<String>,
    /// The anchors through the plate; none: not known, or a kind without anchors.
    #[serde(default)]
    pub anchors: Option<Anchors>,
    /// What the plate sits on.
    #[serde(default)]
    pub bearing: Bearing,
    /// Least thickness of the slab under it, if its maker states one.
    #[serde(default)]
    pub least_slab_m: Option<f64>,
    /// Top of the socket over the underside of the plate.
    pub socket_top_m: f64,
    /// Length of mast engaged in the socket.
    pub engaged_m: f64,
    /// Outside diameter of the socket.
    pub socket_diameter_m: f64,
    /// Height of each bearing collar in the socket; none: the mast bears on the socket's whole length.
    #[serde(default)]
    pub collar_m: Option<f64>,
    /// Play between mast and socket, on the diameter.
    #[serde(default)]
    pub play_m: f64,
    /// How far out of plumb the base may be set.
    #[serde(default)]
    pub plumb_tolerance_rad: f64,
    /// Its mass.
    pub mass_kg: f64,
    /// What holds the slew.
    pub slew_hold: SlewHold,
    /// An eye for tethering.
    pub eye: Option<Eye>,
    /// Masts it takes; empty: all of the family.
    #[serde(default)]
    pub takes: Vec<PartId>,
}

/// How a base stands in or on the structure.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BaseKind {
    /// A socket on a plate on the slab.
    #[default]
    SurfaceSocket,
    /// A plate in the floor build-up; the socket is pinned on for use.
    FlushPlate {
        /// Height of plate, nuts and cover over the slab while the socket is off.
        stack_height_m: f64,
        /// Pins that hold the socket down.
        hold_down: HoldDown,
    },
    /// A socket raised through the floor build-up.
    Pedestal {
        /// Height of the raised part over the slab; the socket stands on top of it.
        height_m: f64,
        /// What the raised part is.
        body: PedestalBody,
    },
    /// A tube set in the slab before the pour; the reaction goes in by a couple of bearing forces.
    CastInSleeve {
        /// Depth of the tube in the slab.
        depth_m: f64,
        /// Concrete asked for under the tube's foot.
        cover_m: f64,
        /// Whether water that gets in runs out; none: not stated.
        #[serde(default)]
        drained: Option<bool>,
        /// Whether a cap keeps water out while no mast stands in it; none: not stated.
        #[serde(default)]
        capped: Option<bool>,
    },
    /// A socket on the face of a wall or parapet.
    WallSocket {
        /// On which side of the wall the mast stands.
        side: WallSide,
        /// From the wall's face to the mast axis.
        eccentricity_m: f64,
        /// Middle of the plate over the structural slab.
        plate_middle_m: f64,
        /// Least thickness of the wall.
        least_wall_m: f64,
        /// Least distance from the plate to the wall's top.
        least_to_top_m: f64,
        /// Least distance from the plate to the wall's ends.
        least_to_ends_m: f64,
    },
    /// A socket on a cage of headed bolts, set with a template before the pour.
    CastInCage,
    /// A socket bolted or welded to structural steel; no concrete is checked.
    OnSteel,
    /// The foot of a brace: a plate or an eye with anchors of its own.
    BraceFoot,
}

/// What raises a pedestal.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PedestalBody {
    /// A steel stub; the plate lies on the slab.
    SteelStub,
    /// A concrete plinth; the plate lies on top of it, so that the plinth's edges are the anchors' edges.
    Plinth {
        /// Corners of the plinth in the base's axes.
        #[schemars(with = "Vec<[f64; 2]>")]
        corners_m: Vec<DVec2>,
    },
}

/// On which side of the wall that carries a base the mast stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WallSide {
    /// The wall is in front of the mast: a parapet's inner face.
    WallInFront,
    /// The wall is behind the mast.
    WallBehind,
}

/// Pins that hold a removable socket down, evenly on a circle about the mast axis.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HoldDown {
    /// How many.
    pub pins: u32,
    /// Radius of their circle.
    pub radius_m: f64,
    /// Design resistance of one along its axis; none: not known.
    pub resistance_n: Option<f64>,
}

/// Anchors through a plate, all alike.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Anchors {
    /// Places in the axes of the plate.
    #[schemars(with = "Vec<[f64; 2]>")]
    pub at_m: Vec<DVec2>,
    /// The fixing product, by its name in the family.
    pub fixing: PartId,
    /// Effective embedment.
    pub embedment_m: f64,
    /// Diameter of the holes in the plate; none: shear is not checked.
    #[serde(default)]
    pub hole_m: Option<f64>,
    /// Whether the gap between hole and anchor is filled.
    #[serde(default)]
    pub gap_filled: bool,
    /// How holes are drilled and what adhesive meets there; for bonded anchors.
    #[serde(default)]
    pub setting: BondSetting,
}

/// How a bonded anchor is set and used; what is missing leaves its bond unchecked.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BondSetting {
    /// Largest long-term temperature of the concrete, °C.
    pub long_term_c: Option<f64>,
    /// Largest short-term temperature of the concrete, °C.
    pub short_term_c: Option<f64>,
    /// Way of drilling.
    pub drilling: Option<super::Drilling>,
    /// Condition of the hole.
    pub hole: Option<super::HoleCondition>,
}

/// What a plate sits on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Bearing {
    /// The structure itself.
    #[default]
    OnConcrete,
    /// A bed of grout.
    OnGrout {
        /// Its thickness.
        thickness_m: f64,
        /// Its compressive strength.
        strength_pa: f64,
    },
    /// Nuts under the plate, with nothing between plate and concrete.
    OnLevelingNuts {
        /// Clear gap under the plate.
        gap_m: f64,
        /// Whether a nut with washer is tightened against the concrete too.
        clamped: bool,
    },
}

impl Base {
    /// Corners of a square plate about the mast axis.
    pub fn square_plate(side_m: f64) -> Vec<DVec2> {
        let half = side_m / 2.0;
        [(half, -half), (half, half), (-half, half), (-half, -half)].map(DVec2::from).to_vec()
    }

    /// Farthest that the plate reaches from the mast axis along either axis of the base, m.
    pub fn plate_half_m(&self) -> f64 {
        self.plate_m.iter().fold(0.0, |far, corner| far.max(corner.x.abs()).max(corner.y.abs()))
    }

    /// What it covers in plan, in the base's axes. A wall socket covers what lies between the wall's face and the back of
    /// its socket, as wide as its plate.
    pub fn footprint_m(&self) -> Vec<DVec2> {
        match &self.kind {
            BaseKind::WallSocket { side, eccentricity_m, .. } => {
                let width = self.plate_m.iter().fold(0.0, |far: f64, corner| far.max(corner.x.abs()));
                let toward = match side {
                    WallSide::WallInFront => 1.0,
                    WallSide::WallBehind => -1.0,
                };
                let (face, back) = (toward * eccentricity_m, -toward * self.socket_diameter_m / 2.0);
                let (low, high) = (face.min(back), face.max(back));
                [(high, -width), (high, width), (low, width), (low, -width)].map(DVec2::from).to_vec()
            }
            BaseKind::Pedestal { body: PedestalBody::Plinth { corners_m }, .. } => corners_m.clone(),
            _ => self.plate_m.clone(),
        }
    }

    /// Whether masts stand in it: all kinds but the foot of a brace.
    pub fn takes_masts(&self) -> bool {
        self.kind != BaseKind::BraceFoot
    }
}

impl BaseKind {
    /// Its words.
    pub const fn words(&self) -> &'static str {
        match self {
            Self::SurfaceSocket => "surface socket",
            Self::FlushPlate { .. } => "flush plate with removable socket",
            Self::Pedestal { body: PedestalBody::SteelStub, .. } => "pedestal on a steel stub",
            Self::Pedestal { body: PedestalBody::Plinth { .. }, .. } => "pedestal on a plinth",
            Self::CastInSleeve { .. } => "cast-in sleeve",
            Self::WallSocket { .. } => "wall socket",
            Self::CastInCage => "socket on a cast-in cage",
            Self::OnSteel => "socket on structural steel",
            Self::BraceFoot => "brace foot",
        }
    }

    /// The fixing that a kind without anchors of its own has.
    pub const fn own_fixing(&self) -> Option<FixingKind> {
        match self {
            Self::CastInSleeve { .. } => Some(FixingKind::Sleeve),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_plate_runs_counter_clockwise_about_the_mast_axis() {
        // The shoelace sum of a square of 0.4 m is 0.16 m² and positive counter-clockwise.
        let corners = Base::square_plate(0.4);
        assert!((crate::geometry::rings::signed_area_m2(&corners) - 0.16).abs() < 1e-15);
    }
}
