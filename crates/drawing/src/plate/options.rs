//! What a picture of a plate is to show, and at which scale.

use gantline_plan::assess::anchorage::{Fixed, Look};
use gantline_plan::catalog::Base;
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use crate::scale::Scale;
use crate::text::Heading;

/// Options of a picture of a plate.
#[derive(Debug, Clone, PartialEq)]
pub struct PlateOptions {
    /// The scale it is made for.
    pub scale: Scale,
    /// Units of the figures.
    pub units: UnitSystem,
    /// The base or the foot.
    pub of: Fixed,
    /// The look whose worst state is shown; none: the one with the largest share.
    pub look: Option<Look>,
    /// Size of the sheet round the middle of the plate that words keep to, paper mm; none: as wide as they need.
    pub within_mm: Option<DVec2>,
    /// Whether what is shown is written over it.
    pub heading: Heading,
}

impl PlateOptions {
    /// The base under what governs, at a scale.
    pub fn at(scale: Scale) -> Self {
        Self { scale, units: UnitSystem::Si, of: Fixed::Base, look: None, within_mm: None, heading: Heading::Written }
    }
}

/// Paper beside the plate that figures, arrows and edges need, mm: left and right, below and above.
pub(super) const AROUND_MM: DVec2 = DVec2::new(21.0, 14.0);

/// The scale at which the plate of a base fills a sheet of this size, paper mm. It hangs on the plate alone, so that the
/// picture stays where it is while figures change.
pub fn scale_for(base: &Base, size_mm: DVec2) -> Scale {
    let corners = base.plate_m.iter().chain(base.anchors.iter().flat_map(|anchors| &anchors.at_m));
    let half_m = corners.fold(DVec2::splat(0.02), |far, corner| far.max(corner.abs()));
    let room_mm = (size_mm / 2.0 - AROUND_MM).max(size_mm * 0.1);
    Scale { m_per_mm: (half_m / room_mm).max_element().clamp(1e-4, 100.0) }
}
