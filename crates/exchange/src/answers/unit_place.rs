//! Where a unit stands and which way it looks.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::document::{PlacementId, Plan, RoofId};
use gantline_plan::geometry::turns::Turns;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Figure, point};

/// A unit's place on the plan.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UnitPlace {
    /// The roof it stands on.
    pub roof: RoofId,
    /// The mast axis in the plan.
    pub at_m: [Figure; 2],
    /// Level of the structural slab over level zero.
    pub level_m: Figure,
    /// Direction of the base's x axis, away from the building: counter-clockwise from the plan's x axis.
    pub outward_rad: Figure,
    /// The same as a unit vector of the plan.
    pub outward: [Figure; 2],
}

impl UnitPlace {
    /// The place of a unit; none when its edge or roof is gone.
    pub fn of(unit: &UnitAssessment) -> Option<Self> {
        let frame = unit.frame?;
        Some(Self {
            roof: frame.roof,
            at_m: point(frame.at),
            level_m: Figure::of(frame.level_m),
            outward_rad: Figure::of(frame.outward_rad),
            outward: frame.direction(0.0).to_array().map(|part| Figure::beside(part, 1.0)),
        })
    }
}

/// A stretch of slew in the base's axes, counter-clockwise.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SlewStretch {
    /// Where it begins.
    pub from_rad: Figure,
    /// Where it ends; beyond π when it passes half a turn.
    pub to_rad: Figure,
}

/// The stretches of a slew range.
pub fn stretches(turns: &Turns) -> Vec<SlewStretch> {
    let stretch = |turn: gantline_plan::geometry::turns::Turn| SlewStretch {
        from_rad: Figure::of(turn.from_rad),
        to_rad: Figure::of(turn.to_rad),
    };
    turns.intervals().into_iter().map(stretch).collect()
}

/// The tag of a unit; empty when the plan has no such unit.
pub fn tag_of(plan: &Plan, id: PlacementId) -> String {
    plan.placements.get(&id).map(|placement| placement.tag.0.clone()).unwrap_or_default()
}
