//! What a section is to show, at which scale, and the loads written on it.

use gantline_plan::assess::{Component, Sense, UnitAssessment};
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use crate::scale::Scale;
use crate::shown::{Overlay, OverlaySet, Shown};
use crate::text::Heading;

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
    /// Whether it has a heading.
    pub heading: Heading,
    /// How much is measured and written.
    pub detail: SectionDetail,
}

/// How much a section measures and writes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum SectionDetail {
    /// Every length of unit and edge.
    #[default]
    Whole,
    /// What a small sheet has room for: mast, parapet, outreach, setback and stand-off; loads without their combination.
    Main,
}

impl SectionOptions {
    /// Everything at a scale, without loads.
    pub fn at(scale: Scale) -> Self {
        let (units, shown) = (UnitSystem::Si, OverlaySet::All.shown());
        Self {
            scale,
            units,
            shown,
            loads: SectionLoads::default(),
            heading: Heading::Written,
            detail: SectionDetail::Whole,
        }
    }
}

impl SectionOptions {
    /// Actions on the structure, if they are given and shown.
    pub(super) fn base_actions(&self) -> Option<BaseActions> {
        self.loads.base.filter(|_| self.shown.has(Overlay::Reactions))
    }

    /// Whether every length is measured.
    pub(super) fn is_whole(&self) -> bool {
        self.detail == SectionDetail::Whole
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

impl SectionLoads {
    /// The governing combination's set with the largest moment, turned into the plane of its arm; nothing where nothing was
    /// computed.
    pub fn governing(unit: &UnitAssessment) -> Self {
        let found = unit.reactions.as_ref().and_then(|reactions| {
            let governing = reactions.governing()?;
            Some((governing, governing.extreme(Component::M, Sense::Max)?))
        });
        let Some((governing, set)) = found else {
            return Self::default();
        };
        let [fx, fy, fz, mx, my, _] = set.concurrent;
        // Base axes to axes that turn with the arm: x along the arm, y to its left.
        let in_arm = |x: f64, y: f64| DVec2::from_angle(-set.slew_rad).rotate(DVec2::new(x, y));
        Self {
            rope_n: set.pull.map(|_| governing.pull_n),
            base: Some(BaseActions { outward_n: in_arm(fx, fy).x, up_n: fz, tilting_nm: in_arm(mx, my).y }),
            words: format!("{}, {}, largest moment", governing.name, governing.level.name()),
        }
    }
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
