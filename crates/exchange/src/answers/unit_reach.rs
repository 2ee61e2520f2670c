//! What a unit covers of each facade, and how near its swept parts come to everything around.

use gantline_plan::assess::{Against, Over, PairClearance, Part, Served, UnitAssessment, Way};
use gantline_plan::document::{EdgeId, ObstacleId, PlacementId, Plan, RoofId};
use schemars::JsonSchema;
use serde::Serialize;

use super::base::BaseAnswer;
use super::facade::{Stretch, stretches};
use super::figure::{Figure, outline, point};
use super::unit_place::{SlewStretch, UnitPlace, stretches as slew_stretches, tag_of};

/// A unit with its reach and its clear zones.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UnitReach {
    /// The unit.
    pub id: PlacementId,
    /// Its tag.
    pub tag: String,
    /// Where it stands; null when its edge or roof is gone.
    pub place: Option<UnitPlace>,
    /// What it covers of each facade that it serves.
    pub serves: Vec<ServedAnswer>,
    /// Every pair of a swept part and something near it that was looked at.
    pub clear_zone_pairs: Vec<PairAnswer>,
    /// What base, fixing and concrete bear, with every record; null without a place or parts.
    pub base: Option<BaseAnswer>,
}

/// What a unit covers of a facade.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ServedAnswer {
    /// The facade.
    pub facade: EdgeId,
    /// Slew that serves it, in the base's axes.
    pub slew: Vec<SlewStretch>,
    /// Where ropes hang along the facade.
    pub ropes_hang: Vec<Stretch>,
    /// Stretches covered over the whole height.
    pub covered_full_height: Vec<Stretch>,
    /// Stretches covered at some depth.
    pub covered_at_some_depth: Vec<Stretch>,
    /// Covered regions, corners as (s, depth).
    pub regions_m: Vec<Vec<[Figure; 2]>>,
    /// Covered area.
    pub area_m2: Figure,
    /// Depth of the facade's top below the rope's last support.
    pub top_below_tip_m: Figure,
    /// Distance of the tip outside the facade's face at its top where the arm points straightest at it.
    pub stand_off_m: Figure,
}

/// How near a swept part comes to a thing.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PairAnswer {
    /// The part.
    pub part: PartName,
    /// What it passes.
    pub against: PassedThing,
    /// Over which slew.
    pub over: OverName,
    /// In which direction the clearance is smallest.
    pub way: WayName,
    /// The smallest clearance; negative when they run into each other.
    pub clearance_m: Figure,
    /// The clearance that is asked for.
    pub limit_m: Figure,
    /// Whether it is too small.
    pub is_too_small: bool,
    /// Where, in the plan.
    pub at_m: [Figure; 2],
    /// Where, over level zero.
    pub level_m: Figure,
}

/// A part that sweeps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PartName {
    /// The arm.
    Arm,
    /// A brace in front of the mast.
    FrontBrace,
    /// A brace behind the mast.
    RearBrace,
    /// The strut to a foot of its own; it does not turn.
    FootStrut,
}

/// What a part passes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum PassedThing {
    /// The parapet of an edge.
    Parapet(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
    /// The volume below a higher roof, its parapets included.
    HigherRoof(RoofId),
    /// What stays in the roof of another unit.
    Base(PlacementId),
    /// Another unit while it stands.
    StandingUnit(PlacementId),
}

/// Over which part of the loaded slew.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum OverName {
    /// Where the unit serves a facade.
    ServingSlew,
    /// The rest of the loaded slew.
    RestOfLoadedSlew,
}

/// In which direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WayName {
    /// In height, where the plans overlap.
    Height,
    /// In plan, beside it.
    Around,
}

impl UnitReach {
    /// What is to be said about a unit.
    pub fn of(plan: &Plan, id: PlacementId, unit: &UnitAssessment) -> Self {
        Self {
            id,
            tag: tag_of(plan, id),
            place: UnitPlace::of(unit),
            serves: unit.serves.iter().map(served).collect(),
            clear_zone_pairs: unit.clearances.iter().map(pair).collect(),
            base: BaseAnswer::of(plan, unit),
        }
    }
}

fn served(served: &Served) -> ServedAnswer {
    ServedAnswer {
        facade: served.facade,
        slew: slew_stretches(&served.slew),
        ropes_hang: stretches(&served.feet),
        covered_full_height: stretches(&served.full_height),
        covered_at_some_depth: stretches(&served.any_depth),
        regions_m: served.regions.iter().map(|region| outline(region)).collect(),
        area_m2: Figure::of(served.area_m2),
        top_below_tip_m: Figure::of(served.top_below_tip_m),
        stand_off_m: Figure::of(served.stand_off_m),
    }
}

fn pair(pair: &PairClearance) -> PairAnswer {
    PairAnswer {
        part: match pair.part {
            Part::Arm => PartName::Arm,
            Part::FrontBrace => PartName::FrontBrace,
            Part::RearBrace => PartName::RearBrace,
            Part::FootStrut => PartName::FootStrut,
        },
        against: match pair.against {
            Against::Parapet(edge) => PassedThing::Parapet(edge),
            Against::Obstacle(id) => PassedThing::Obstacle(id),
            Against::HigherRoof(id) => PassedThing::HigherRoof(id),
            Against::Base(id) => PassedThing::Base(id),
            Against::StandingUnit(id) => PassedThing::StandingUnit(id),
        },
        over: match pair.over {
            Over::Serving => OverName::ServingSlew,
            Over::Rest => OverName::RestOfLoadedSlew,
        },
        way: match pair.way {
            Way::Height => WayName::Height,
            Way::Around => WayName::Around,
        },
        clearance_m: Figure::of(pair.clear_m),
        limit_m: Figure::of(pair.limit_m),
        is_too_small: pair.conflict,
        at_m: point(pair.at),
        level_m: Figure::of(pair.level_m),
    }
}
