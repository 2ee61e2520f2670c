//! How much area a convex outline (a plate, a strip of floor) shares with any polygon.
//!
//! Whether two outlines merely touch can't be told from crossings and corners alone: plates that stand in one line share
//! whole sides. The shared area can: it vanishes exactly when they only touch.

use glam::DVec2;

use crate::geometry::polygons::Polygon;
use crate::geometry::rings::{segments, signed_area_m2};

/// Shared areas below this are touching, m²: a square millimeter, and 3 µm along a plate's side.
pub const TOUCHING_M2: f64 = 1.0e-6;

/// Area that a convex outline shares with a polygon less its holes, m².
///
/// Each ring is cut by the outline's sides one after the other (Sutherland and Hodgman); where that leaves bridges along a
/// side they enclose no area. A = |A(outer ∩ outline)| − Σ |A(hole ∩ outline)|. 0 for an outline without area.
pub fn shared_area_m2(polygon: &Polygon, convex: &[DVec2]) -> f64 {
    let holes: f64 = polygon.holes.iter().map(|hole| cut_area_m2(hole, convex)).sum();
    (cut_area_m2(&polygon.outer, convex) - holes).max(0.0)
}

/// Whether a convex outline shares more than a touch with a polygon.
pub fn shares_area(polygon: &Polygon, convex: &[DVec2]) -> bool {
    shared_area_m2(polygon, convex) > TOUCHING_M2
}

/// Whether a convex outline lies wholly in a polygon and in none of its holes.
pub fn lies_within(polygon: &Polygon, convex: &[DVec2]) -> bool {
    signed_area_m2(convex).abs() - shared_area_m2(polygon, convex) <= TOUCHING_M2
}

fn cut_area_m2(ring: &[DVec2], convex: &[DVec2]) -> f64 {
    // Seen from inside the outline every side has it on one hand: the sign of its area says on which.
    let hand = signed_area_m2(convex).signum();
    let cut = segments(convex).fold(ring.to_vec(), |kept, (a, b)| {
        let inside_by = |p: DVec2| hand * (b - a).perp_dot(p - a);
        segments(&kept)
            .flat_map(|(p, q)| {
                let (from, to) = (inside_by(p), inside_by(q));
                let crossing = (from * to < 0.0).then(|| p.lerp(q, from / (from - to)));
                [(from >= 0.0).then_some(p), crossing]
            })
            .flatten()
            .collect()
    });
    signed_area_m2(&cut).abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<DVec2> {
        Polygon::rectangle(DVec2::new(x0, y0), DVec2::new(x1, y1)).outer
    }

    /// Hand values of rectangles.
    #[test]
    fn plates_in_one_line_share_what_they_overlap_and_equal_ones_all() {
        let one = Polygon::simple(rectangle(0.0, 0.0, 0.4, 0.4));
        let along = rectangle(0.3, 0.0, 0.7, 0.4);
        assert!((shared_area_m2(&one, &along) - 0.04).abs() < 1e-15);
        assert!((shared_area_m2(&one, &one.outer) - 0.16).abs() < 1e-15);
        assert!(!shares_area(&one, &rectangle(0.4, 0.0, 0.8, 0.4)));
        assert!(shares_area(&one, &rectangle(0.399, 0.0, 0.799, 0.4)));
    }

    #[test]
    fn what_stands_in_a_courtyard_is_not_in_the_building_around_it() {
        let outer = rectangle(0.0, 0.0, 30.0, 30.0);
        let building = Polygon { outer, holes: vec![rectangle(10.0, 10.0, 20.0, 20.0)] };
        let plate = rectangle(14.0, 14.0, 14.4, 14.4);
        assert!(!shares_area(&building, &plate) && !lies_within(&building, &plate));
        let half_in = rectangle(9.8, 14.0, 10.2, 14.4);
        assert!((shared_area_m2(&building, &half_in) - 0.08).abs() < 1e-12);
        assert!(lies_within(&building, &rectangle(9.6, 14.0, 10.0, 14.4)));
    }

    #[test]
    fn a_notch_between_two_wings_is_not_shared() {
        // A U of 3 × 2 with a notch 1 wide and 1 deep: a strip across the notch at half depth shares both wings, 2 × 0.5.
        let u = [(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (2.0, 2.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)];
        let u = Polygon::simple(u.map(|(x, y)| DVec2::new(x, y)).to_vec());
        assert!((shared_area_m2(&u, &rectangle(0.0, 1.25, 3.0, 1.75)) - 1.0).abs() < 1e-14);
        let mut turned = rectangle(0.0, 1.25, 3.0, 1.75);
        turned.reverse();
        assert!((shared_area_m2(&u, &turned) - 1.0).abs() < 1e-14);
    }
}
