//! What a section is to show, at which scale, and the loads written on it.

use gantline_plan::quantity::UnitSystem;

use crate::scale::Scale;
use crate::shown::{OverlaySet, Shown};

/// Options of a section.
#[derive(Debug, Clone, PartialEq)]
pub struct SectionOptions {
    /// The scale it is made for.
    pub scale: Scale,
    /// Units of the figures.
    pub units: UnitSystem,
    /// Overlays: clear zones, clearances, reactions.
    pub shown: Shown,
    /// Loads written on it.
    pub loads: SectionLoads,
}

impl SectionOptions {
    /// Everything at a scale, without loads.
    pub fn at(scale: Scale) -> Self {
        Self { scale, units: UnitSystem::Si, shown: OverlaySet::All.shown(), loads: SectionLoads::default() }
    }
}

/// Loads written on a section; they are only drawn, never computed here.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SectionLoads {
    /// Pull of the rope, N.
    pub rope_n: Option<f64>,
    /// What the unit does to the structure.
    pub base: Option<BaseActions>,
    /// Which combination and level they belong to, in words.
    pub words: String,
}

/// Actions of the unit on the structure in the plane of the section, at the underside of the base plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BaseActions {
    /// Outward along the arm, N.
    pub outward_n: f64,
    /// Upward, N; down is negative.
    pub up_n: f64,
    /// Moment that presses the outer side of the plate down, N·m.
    pub tilting_nm: f64,
}
