//! What an elevation is to show, and at which scale.

use std::collections::BTreeSet;

use gantline_plan::document::ThingId;
use gantline_plan::quantity::UnitSystem;

use crate::mark::Stress;
use crate::scale::Scale;
use crate::text::Heading;

/// Options of an elevation.
#[derive(Debug, Clone, PartialEq)]
pub struct ElevationOptions {
    /// The scale it is made for.
    pub scale: Scale,
    /// Units of the figures.
    pub units: UnitSystem,
    /// What is selected: drawn heavier.
    pub selected: BTreeSet<ThingId>,
    /// Whether it has a heading.
    pub heading: Heading,
}

impl ElevationOptions {
    /// At a scale, nothing selected.
    pub fn at(scale: Scale) -> Self {
        Self { scale, units: UnitSystem::Si, selected: BTreeSet::new(), heading: Heading::Written }
    }

    /// How loudly a thing is drawn.
    pub fn stress(&self, thing: ThingId) -> Stress {
        if self.selected.contains(&thing) { Stress::Selected } else { Stress::Plain }
    }
}
