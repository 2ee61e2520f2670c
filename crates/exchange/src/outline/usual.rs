//! What is taken until someone says otherwise, with the reason for each. None of it is a finding about the building: heights
//! and levels are shown to be set before anything is taken.

use gantline_plan::document::Plan;

use super::taking::Heights;

/// Gaps that are closed, m: ends that are drawn to meet miss each other by rounding of figures written to the millimeter, a
/// few of them added up; a gap that means something, such as a joint, is wider.
pub const GAP_M: f64 = 0.005;

/// How far chords leave curves, m: an edge is set out to the centimeter, so half of that is not seen on the roof.
pub const CHORD_M: f64 = 0.005;

/// Height of an obstacle, m: that of a person, so that it is looked at and not stepped over. Drawings in plan say nothing of it.
const OBSTACLE_M: f64 = 2.0;

impl Heights {
    /// Roofs at the level of the plan's last roof, or of a first one; lower roofs half as high, so that they are seen to be lower.
    pub fn usual(plan: &Plan, first_roof_level_m: f64) -> Self {
        let roof_level_m = plan.roofs.values().last().map_or(first_roof_level_m, |roof| roof.level_m);
        Self { roof_level_m, lower_roof_level_m: roof_level_m / 2.0, obstacle_from_m: 0.0, obstacle_to_m: OBSTACLE_M }
    }
}
