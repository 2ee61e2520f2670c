//! The slab under a base.

use glam::DVec2;

use super::shared_area::{TOUCHING_M2, shared_area_m2};
use crate::document::Roof;
use crate::geometry::polygons::Polygon;
use crate::geometry::rings::signed_area_m2;

/// Thinnest slab under an outline, m: zones that share area with it, and the rest of the roof where zones don't fill it.
pub fn thinnest_m(roof: &Roof, outline: &[DVec2]) -> f64 {
    let mut left_m2 = signed_area_m2(outline).abs();
    let mut thinnest = f64::INFINITY;
    for zone in &roof.slab.zones {
        let shared_m2 = shared_area_m2(&Polygon::simple(zone.outline.clone()), outline);
        if shared_m2 > TOUCHING_M2 {
            thinnest = thinnest.min(zone.thickness_m);
            left_m2 -= shared_m2;
        }
    }
    if left_m2 > TOUCHING_M2 { thinnest.min(roof.slab.thickness_m) } else { thinnest }
}
