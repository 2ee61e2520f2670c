//! What a plan view is to show, and at which scale.

use std::collections::BTreeSet;

use gantline_plan::document::{RoofId, ThingId};
use gantline_plan::quantity::UnitSystem;

use crate::mark::Stress;
use crate::scale::Scale;
use crate::shown::{OverlaySet, Shown};

/// Options of a plan view.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanViewOptions {
    /// The scale it is made for.
    pub scale: Scale,
    /// Units of the figures.
    pub units: UnitSystem,
    /// Overlays.
    pub shown: Shown,
    /// The roof in hand; others are drawn lighter. None: all alike.
    pub roof: Option<RoofId>,
    /// What is selected: drawn heavier, and its figures come first.
    pub selected: BTreeSet<ThingId>,
    /// A small picture for an overview: units as ticks with their tags, nothing measured, as from afar.
    pub overview: bool,
    /// Setbacks of all units, where there is room beside them, and not of those in focus only.
    pub all_setbacks: bool,
}

impl PlanViewOptions {
    /// Everything at a scale, nothing selected.
    pub fn at(scale: Scale) -> Self {
        Self {
            scale,
            units: UnitSystem::Si,
            shown: OverlaySet::All.shown(),
            roof: None,
            selected: BTreeSet::new(),
            overview: false,
            all_setbacks: false,
        }
    }

    /// Whether things stand too close on paper, or the picture is too small, for their parts and figures.
    pub(super) fn is_coarse(&self) -> bool {
        self.overview || self.scale.is_coarse()
    }

    /// How loudly a thing is drawn.
    pub fn stress(&self, thing: ThingId) -> Stress {
        if self.selected.contains(&thing) { Stress::Selected } else { Stress::Plain }
    }

    /// How loudly what belongs to a roof is drawn.
    pub fn stress_on(&self, roof: RoofId) -> Stress {
        if self.roof.is_some_and(|in_hand| in_hand != roof) { Stress::Faint } else { Stress::Plain }
    }

    /// Whether any unit is selected.
    pub fn has_selected_unit(&self) -> bool {
        self.selected.iter().any(|thing| matches!(thing, ThingId::Placement(_)))
    }

    /// Whether a thing is one of few that are selected: its labels are shown whatever stands around it.
    pub(super) fn is_in_focus(&self, thing: ThingId) -> bool {
        const FEW: usize = 3;
        self.selected.len() <= FEW && self.selected.contains(&thing)
    }

    /// Whether figures of this unit are shown: it is selected, or none is.
    pub fn speaks_of(&self, thing: ThingId) -> bool {
        !self.has_selected_unit() || self.selected.contains(&thing)
    }
}
