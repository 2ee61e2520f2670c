//! What stands round a base before anything is measured: outline, holes, thickness and other bases' anchors.

use crate::geometry::polygons::Polygon;
use glam::DVec2;
use thiserror::Error;

use super::surroundings::ConcreteAround;

/// Where a plate lies in the plane of the outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateFrame {
    /// The plate's reference point, m.
    pub origin_m: DVec2,
    /// Direction of the plate's x axis from the plane's x axis, counter-clockwise, rad.
    pub turn_rad: f64,
}

impl PlateFrame {
    /// A point in plate axes, in the plane.
    pub fn plane_from_plate(&self, at: DVec2) -> DVec2 {
        self.origin_m + DVec2::from_angle(self.turn_rad).rotate(at)
    }

    /// A point of the plane in plate axes.
    pub fn plate_from_plane(&self, point: DVec2) -> DVec2 {
        DVec2::from_angle(-self.turn_rad).rotate(point - self.origin_m)
    }
}

/// Part of a slab with another thickness; parts don't overlap.
#[derive(Debug, Clone, PartialEq)]
pub struct ThicknessZone {
    /// Where, in the plane of the outline.
    pub area: Polygon,
    /// Thickness there, m.
    pub thickness_m: f64,
}

/// A base in its slab.
#[derive(Debug, Clone, PartialEq)]
pub struct Setting<'a> {
    /// Outline of the concrete with its holes, in its own plane; for a wall the face as a rectangle.
    pub outline: &'a Polygon,
    /// Thickness outside all zones, m.
    pub thickness_m: f64,
    /// Parts with another thickness.
    pub zones: &'a [ThicknessZone],
    /// Anchors of other bases in the same concrete, in the plane of the outline, m.
    pub foreign_m: &'a [DVec2],
    /// Where the plate lies.
    pub plate: PlateFrame,
    /// The base's own anchors in plate axes, m.
    pub anchors_m: &'a [[f64; 2]],
    /// How far from an anchor the thickness counts, m: the reach of its cone, 1.5·h_ef.
    pub influence_m: f64,
    /// Edges farther than this from every anchor are left out, m.
    pub reach_m: f64,
}

/// Why the concrete round a base can't be measured.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum ConcreteFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("concrete {field} must be a positive number, found {value}")]
    NotPositive {
        /// Which value.
        field: &'static str,
        /// As given.
        value: f64,
    },
    /// A coordinate is infinite or not a number.
    #[error("concrete {field} has no place: ({x_m}, {y_m})")]
    NotFinite {
        /// Which list.
        field: &'static str,
        /// x as given, m.
        x_m: f64,
        /// y as given, m.
        y_m: f64,
    },
    /// An outline or zone without area.
    #[error("concrete {field} needs three corners and has {corners}")]
    NoOutline {
        /// Which polygon.
        field: &'static str,
        /// Corners given.
        corners: usize,
    },
    /// An anchor stands beyond an edge, in a hole, or on an edge.
    #[error("anchor {} does not stand in the concrete", .anchor + 1)]
    AnchorOutside {
        /// Index of the anchor.
        anchor: usize,
    },
    /// A loaded area reaches beyond an edge or into a hole.
    #[error("{outside_m2} m² of the loaded area do not lie on the concrete")]
    LoadedOutside {
        /// How much, m².
        outside_m2: f64,
    },
}

impl Setting<'_> {
    /// Measures the concrete round the base once, in plate axes.
    pub fn measure(&self) -> Result<ConcreteAround, ConcreteFault> {
        self.local()?.measure()
    }

    pub(super) fn validate(&self) -> Result<(), ConcreteFault> {
        let zones = self.zones.iter().map(|zone| ("zone thickness_m", zone.thickness_m));
        let lengths = [("thickness_m", self.thickness_m), ("influence_m", self.influence_m), ("reach_m", self.reach_m)];
        for (field, value) in lengths.into_iter().chain(zones) {
            if !(value.is_finite() && value > 0.0) {
                return Err(ConcreteFault::NotPositive { field, value });
            }
        }
        if !self.plate.turn_rad.is_finite() {
            return Err(ConcreteFault::NotPositive { field: "turn_rad", value: self.plate.turn_rad });
        }
        let rings = |field, polygon: &Polygon| {
            polygon.rings().try_for_each(|ring| match ring.len() {
                0..3 => Err(ConcreteFault::NoOutline { field, corners: ring.len() }),
                _ => places(field, ring),
            })
        };
        rings("outline", self.outline)?;
        self.zones.iter().try_for_each(|zone| rings("zone area", &zone.area))?;
        places("foreign_m", self.foreign_m)?;
        places("origin_m", &[self.plate.origin_m])?;
        self.anchors_m.iter().try_for_each(|a| places("anchors_m", &[DVec2::from(*a)]))
    }
}

fn places(field: &'static str, points: &[DVec2]) -> Result<(), ConcreteFault> {
    let lost = points.iter().find(|p| !p.is_finite());
    lost.map_or(Ok(()), |p| Err(ConcreteFault::NotFinite { field, x_m: p.x, y_m: p.y }))
}
