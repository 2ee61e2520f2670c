//! A roof: one level, one outline, its holes, its slab.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{EdgeId, Ring, Slab};

/// A roof. Its level is the top of the structural slab over level zero.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Roof {
    /// Its name ("Main roof").
    pub name: String,
    /// Top of the structural slab over level zero.
    pub level_m: f64,
    /// Height of insulation, membrane, paving over the structural slab.
    pub build_up_m: f64,
    /// The structural slab.
    #[serde(default)]
    pub slab: Slab,
    /// Outline of the structural slab, counter-clockwise.
    pub outer: Ring,
    /// Holes (courtyards), clockwise.
    #[serde(default)]
    pub holes: Vec<Ring>,
    /// Whether the roof is locked against being moved.
    #[serde(default)]
    pub locked: bool,
}

impl Roof {
    /// The outer ring first, then the holes.
    pub fn rings(&self) -> impl Iterator<Item = &Ring> {
        std::iter::once(&self.outer).chain(&self.holes)
    }

    /// The outer ring first, then the holes, to change.
    pub fn rings_mut(&mut self) -> impl Iterator<Item = &mut Ring> {
        std::iter::once(&mut self.outer).chain(&mut self.holes)
    }

    /// The ring that owns this edge, with the index of the corner it leaves.
    pub fn find_edge(&self, edge: EdgeId) -> Option<(&Ring, usize)> {
        self.rings().find_map(|ring| ring.index_of(edge).map(|index| (ring, index)))
    }

    /// Area of the slab: outline less holes, m².
    pub fn area_m2(&self) -> f64 {
        self.rings().map(Ring::signed_area_m2).sum()
    }
}
