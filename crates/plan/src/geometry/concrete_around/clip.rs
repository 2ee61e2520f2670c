//! Areas of rings inside convex pieces, exact, by clipping at one straight line after another.
//!
//! A ring that is not convex leaves pieces joined by doubled lines when it is clipped; these have no area, so the signed
//! area is right all the same (Sutherland and Hodgman 1974).

use crate::geometry::rings;
use glam::DVec2;

/// All points p with p·normal ≤ offset.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct HalfPlane {
    pub normal: DVec2,
    pub offset: f64,
}

impl HalfPlane {
    /// The points nearer to `own` than to `other`.
    pub(super) fn nearer_to(own: DVec2, other: DVec2) -> Self {
        let normal = other - own;
        Self { normal, offset: normal.dot(own.midpoint(other)) }
    }

    fn inside(&self, p: DVec2) -> f64 {
        self.offset - p.dot(self.normal)
    }
}

/// The part of a ring inside a half-plane; empty when there is none.
pub(super) fn clipped(ring: &[DVec2], half: &HalfPlane) -> Vec<DVec2> {
    let mut left = Vec::with_capacity(ring.len() + 2);
    for (a, b) in rings::segments(ring) {
        let (at_a, at_b) = (half.inside(a), half.inside(b));
        if at_a >= 0.0 {
            left.push(a);
        }
        if (at_a > 0.0 && at_b < 0.0) || (at_a < 0.0 && at_b > 0.0) {
            left.push(a.lerp(b, at_a / (at_a - at_b)));
        }
    }
    left
}

/// The four half-planes of an upright rectangle.
pub(super) fn rectangle(low: DVec2, high: DVec2) -> [HalfPlane; 4] {
    [
        HalfPlane { normal: DVec2::X, offset: high.x },
        HalfPlane { normal: DVec2::NEG_X, offset: -low.x },
        HalfPlane { normal: DVec2::Y, offset: high.y },
        HalfPlane { normal: DVec2::NEG_Y, offset: -low.y },
    ]
}

/// The part of a ring inside an upright rectangle.
pub(super) fn clipped_to_rectangle(ring: &[DVec2], low: DVec2, high: DVec2) -> Vec<DVec2> {
    rectangle(low, high).iter().fold(ring.to_vec(), |left, half| clipped(&left, half))
}

/// Area inside a convex piece of an outline whose rings go counter-clockwise outside and clockwise round holes, m².
pub(super) fn area_inside_m2(outline: &[Vec<DVec2>], piece: &[DVec2]) -> f64 {
    let halves: Vec<HalfPlane> = rings::segments(piece)
        .map(|(a, b)| {
            let normal = -(b - a).perp();
            HalfPlane { normal, offset: normal.dot(a) }
        })
        .collect();
    let inside = |ring: &Vec<DVec2>| {
        let left = halves.iter().fold(ring.clone(), |left, half| clipped(&left, half));
        rings::signed_area_m2(&left)
    };
    outline.iter().map(inside).sum::<f64>().max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ring_that_is_not_convex_keeps_its_area_when_clipped_into_two_parts() {
        // By hand: a U of two legs 1 wide and 2 high on a foot 1 high; above y = 2 two squares of 1 m² are left.
        let u = [[0.0, 0.0], [3.0, 0.0], [3.0, 3.0], [2.0, 3.0], [2.0, 1.0], [1.0, 1.0], [1.0, 3.0], [0.0, 3.0]];
        let ring: Vec<DVec2> = u.map(DVec2::from).to_vec();
        let above = clipped(&ring, &HalfPlane { normal: DVec2::NEG_Y, offset: -2.0 });
        assert!((rings::signed_area_m2(&above) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_hole_is_taken_off() {
        let square = |a: f64, b: f64| [[a, a], [b, a], [b, b], [a, b]].map(DVec2::from).to_vec();
        let mut hole = square(1.0, 2.0);
        hole.reverse();
        let outline = [square(0.0, 3.0), hole];
        // By hand: the piece from 0.5 to 1.5 holds 1 − 0.25.
        assert!((area_inside_m2(&outline, &square(0.5, 1.5)) - 0.75).abs() < 1e-12);
    }
}
