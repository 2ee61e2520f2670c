//! Title block and datum.

use glam::DVec2;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the title block says. Dates are text that people enter: the plan has no clock.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Title {
    /// Name of the job.
    pub job: String,
    /// Street, place.
    pub address: String,
    /// Who planned it.
    pub author: String,
    /// Revision mark, such as "A".
    pub revision: String,
    /// Date of the revision, as entered.
    pub date: String,
    /// Anything else that belongs on the sheet, such as "invented scenario".
    pub remark: String,
}

/// Where the plan's coordinates stand in the world.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Datum {
    /// What level zero is, in words ("street at the main entrance").
    pub level_zero: String,
    /// Direction of north, counter-clockwise from the plan's y axis.
    pub north_rad: f64,
    /// Coordinates that the plan's origin has in the grid of the site drawing, x and y: setting-out in that grid adds them.
    #[serde(skip_serializing_if = "is_origin")]
    #[schemars(with = "[f64; 2]")]
    pub grid_origin_m: DVec2,
    /// Where that grid is a plane that touches the earth, x east and y north: the place at which it does. None for the grid
    /// of a drawing in lengths.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub local_plane: Option<GeoPlace>,
}

/// A place on the ellipsoid of WGS 84.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GeoPlace {
    /// Longitude, degrees east.
    pub lon_deg: f64,
    /// Latitude, degrees north.
    pub lat_deg: f64,
}

impl std::fmt::Display for GeoPlace {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:.7}° east, {:.7}° north", self.lon_deg, self.lat_deg)
    }
}

/// Farthest that the origin of a grid may be, m: any national grid in millimeters' worth of digits.
pub const FARTHEST_GRID_M: f64 = 1.0e8;

impl Datum {
    /// Whether the plan keeps the grid of a drawing, other than by having its origin by chance.
    pub fn has_grid(&self) -> bool {
        self.grid_origin_m != DVec2::ZERO || self.local_plane.is_some()
    }

    /// A place of the plan in the grid of the site drawing, m.
    pub fn in_grid(&self, at: DVec2) -> DVec2 {
        self.grid_origin_m + at
    }
}

/// A plan whose origin is that of its grid is written as plans always were.
fn is_origin(at: &DVec2) -> bool {
    *at == DVec2::ZERO
}
