//! Working rules: limits that checks compare with, each with its source.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;

/// All working rules of a basis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rules {
    /// How far technicians reach.
    pub reach: ReachRules,
    /// Where the tip must hang in front of the facade.
    pub stand_off: StandOff,
    /// Room that arm and brace need.
    pub clear: ClearRules,
    /// Room and protection for people.
    pub people: PeopleRules,
    /// Which units may stand at once.
    pub neighbors: NeighborRule,
    /// Handling of parts.
    pub handling: HandlingRules,
    /// Tip deflection in service as a share of the outreach.
    pub deflection_share: Sourced<f64>,
    /// Longest drop, where a rule limits it.
    pub longest_drop_m: Option<Sourced<f64>>,
}

/// How far technicians reach.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReachRules {
    /// How far from straight down a technician works sideways.
    pub angle_rad: Sourced<f64>,
    /// Arm's reach of a technician in the plane of the facade.
    pub arm_m: Sourced<f64>,
    /// Largest sideways displacement of the technician, however long the rope.
    pub swing_m: Sourced<f64>,
    /// Limit from the plumb line of the rope to what is reached, where a rule gives one.
    pub from_plumb_m: Option<Sourced<f64>>,
    /// Least depth of the harness below the rope's last support: device and slings.
    pub least_depth_m: Sourced<f64>,
    /// How far past the ends of a facade a rope may hang and still serve it.
    pub past_ends_m: Sourced<f64>,
}

/// Where the tip must hang outside the facade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StandOff {
    /// Least distance.
    pub least_m: Sourced<f64>,
    /// Largest distance from which the facade can be worked on.
    pub most_m: Sourced<f64>,
}

/// Room that arm and brace need.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClearRules {
    /// Height between a swept part and what it passes over or under.
    pub height_m: Sourced<f64>,
    /// Distance in plan between a swept part and what it passes beside.
    pub around_m: Sourced<f64>,
}

/// Room and protection for people.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PeopleRules {
    /// Least height of an edge's protection over the finish.
    pub guard_height_m: Sourced<f64>,
    /// Distance from an edge within which protection is asked for.
    pub near_edge_m: Sourced<f64>,
    /// Side of the square in which an operator stands behind the mast.
    pub standing_side_m: Sourced<f64>,
    /// Free height over the standing place.
    pub headroom_m: Sourced<f64>,
    /// Width of the strip in which a mast is laid down and tilted in, wholly inboard; it is as long as the mast.
    pub erection_width_m: Sourced<f64>,
}

/// Which units may stand at once.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum NeighborRule {
    /// None nearer to each other than the sum of their outreaches.
    NoneWithinOutreaches,
    /// Any may stand beside any.
    Any,
}

/// Handling of parts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct HandlingRules {
    /// Mass above which one person does not lift a part alone.
    pub one_person_kg: Sourced<f64>,
    /// Mass above which two persons don't lift a part without an aid.
    pub two_persons_kg: Sourced<f64>,
}
