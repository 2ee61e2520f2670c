//! From longitude and latitude to meters on one site: the plane that touches the ellipsoid of WGS 84 at the site's middle.
//!
//! Geodetic to geocentric to topocentric coordinates, at height zero (EPSG guidance note 7-2, methods 9602 and 9836/9837);
//! half axis and flattening of WGS 84: NGA.STND.0036. Seen from above, a distance d from the middle is short by about
//! d³/(6 R²): 4 µm at 1 km, 0.5 mm at 5 km. Lengths are those at height zero; at height h over the ellipsoid the ground's are
//! longer by h/R, 0.16 ‰ at 1 km.

use gantline_plan::document::GeoPlace;
use glam::{DVec2, DVec3};

/// Half axis, m, and flattening of WGS 84.
const HALF_AXIS_M: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// A plane that touches the ellipsoid: x east, y north.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LocalPlane {
    lon_rad: f64,
    lat_rad: f64,
}

impl LocalPlane {
    /// The plane that touches at a place.
    pub fn at(place: GeoPlace) -> Self {
        Self { lon_rad: place.lon_deg.to_radians(), lat_rad: place.lat_deg.to_radians() }
    }

    /// A place, degrees, on the plane, m.
    pub fn project(&self, lon_deg: f64, lat_deg: f64) -> DVec2 {
        let from_origin =
            geocentric(lon_deg.to_radians(), lat_deg.to_radians()) - geocentric(self.lon_rad, self.lat_rad);
        let (sin_lon, cos_lon) = self.lon_rad.sin_cos();
        let (sin_lat, cos_lat) = self.lat_rad.sin_cos();
        let east = DVec3::new(-sin_lon, cos_lon, 0.0);
        let north = DVec3::new(-sin_lat * cos_lon, -sin_lat * sin_lon, cos_lat);
        DVec2::new(from_origin.dot(east), from_origin.dot(north))
    }
}

/// The place on the ellipsoid, m from the middle of the earth: N = a / √(1 − e² sin² φ), e² = f (2 − f).
fn geocentric(lon_rad: f64, lat_rad: f64) -> DVec3 {
    let e2 = FLATTENING * (2.0 - FLATTENING);
    let (sin_lat, cos_lat) = lat_rad.sin_cos();
    let n = HALF_AXIS_M / (1.0 - e2 * sin_lat * sin_lat).sqrt();
    DVec3::new(n * cos_lat * lon_rad.cos(), n * cos_lat * lon_rad.sin(), n * (1.0 - e2) * sin_lat)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_steps_are_those_of_the_radii_of_curvature() {
        // At 60° north: M = a (1 - e²) / (1 - e² sin²)^1.5 = 6383453.857 m, N cos 60° = 3197104.587 m (by hand).
        let plane = LocalPlane::at(GeoPlace { lon_deg: 10.0, lat_deg: 60.0 });
        // Over a step to both sides the error is of second order: 1 part in 10¹⁰ at 0.001°.
        let step = 1e-3_f64;
        let north = (plane.project(10.0, 60.0 + step) - plane.project(10.0, 60.0 - step)).y / (2.0 * step).to_radians();
        let east = (plane.project(10.0 + step, 60.0) - plane.project(10.0 - step, 60.0)).x / (2.0 * step).to_radians();
        assert!((north - 6_383_453.857).abs() < 0.01, "{north}");
        assert!((east - 3_197_104.587).abs() < 0.01, "{east}");
    }
}
