//! Least thickness of the concrete in a convex piece of the plane.

use super::clip::area_inside_m2;
use crate::geometry::rings::signed_area_m2;
use glam::DVec2;

/// A zone in plate axes: its rings, counter-clockwise outside and clockwise round holes, and its thickness, m.
pub(super) type Zone = (Vec<Vec<DVec2>>, f64);

/// Smaller overlaps than this share of the piece are rounding: corners lie on a grid.
const OVERLAP: f64 = 2e-6;

/// The least thickness in a convex piece, m: of the zones that reach into it, and of the rest where they don't cover it.
pub(super) fn least_thickness_m(zones: &[Zone], elsewhere_m: f64, piece: &[DVec2]) -> f64 {
    let whole = signed_area_m2(piece).abs();
    let mut covered = 0.0;
    let mut least = f64::INFINITY;
    for (rings, thickness_m) in zones {
        let area = area_inside_m2(rings, piece);
        if area > OVERLAP * whole {
            covered += area;
            least = least.min(*thickness_m);
        }
    }
    // More than all means that zones overlap, and then something may be left uncovered.
    if (covered - whole).abs() <= OVERLAP * whole { least } else { least.min(elsewhere_m) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(a: f64, b: f64) -> Vec<DVec2> {
        [[a, a], [b, a], [b, b], [a, b]].map(DVec2::from).to_vec()
    }

    #[test]
    fn a_thicker_zone_counts_only_where_it_covers_all() {
        let zones = [(vec![square(0.0, 1.0)], 0.4)];
        assert_eq!(least_thickness_m(&zones, 0.2, &square(0.2, 0.8)), 0.4);
        assert_eq!(least_thickness_m(&zones, 0.2, &square(0.5, 1.5)), 0.2);
        assert_eq!(least_thickness_m(&zones, 0.2, &square(2.0, 3.0)), 0.2);
    }

    #[test]
    fn zones_that_overlap_don_t_hide_what_they_leave_uncovered() {
        let zones = [(vec![square(0.0, 0.8)], 0.4), (vec![square(0.0, 0.8)], 0.4)];
        assert_eq!(least_thickness_m(&zones, 0.2, &square(0.0, 1.0)), 0.2);
    }

    #[test]
    fn a_thinner_zone_counts_as_soon_as_it_is_touched() {
        let zones = [(vec![square(0.0, 1.0)], 0.12)];
        assert_eq!(least_thickness_m(&zones, 0.2, &square(0.9, 1.5)), 0.12);
        assert_eq!(least_thickness_m(&zones, 0.2, &square(1.0, 1.5)), 0.2);
    }
}
