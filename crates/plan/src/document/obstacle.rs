//! Something that stands on a roof or hangs over it: plant, ducts, a stair head, a beam.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::RoofId;

/// A prism over a roof's level.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Obstacle {
    /// Its name on the drawing.
    pub name: String,
    /// The roof whose level its heights are measured from.
    pub roof: RoofId,
    /// Outline in the plan, counter-clockwise.
    #[schemars(with = "Vec<[f64; 2]>")]
    pub outline: Vec<DVec2>,
    /// Underside over the structural slab; zero when it stands on it.
    pub from_m: f64,
    /// Top over the structural slab.
    pub to_m: f64,
}
