//! Straight segments: nearest points, distances, and where two of them meet.

use super::hair::HAIR_M;
use glam::DVec2;

/// The point of segment `a`–`b` that lies nearest to `p`. A segment of no length is its one point.
pub fn nearest_on_segment(p: DVec2, a: DVec2, b: DVec2) -> DVec2 {
    let along = b - a;
    let length_squared = along.length_squared();
    if length_squared == 0.0 {
        return a;
    }
    let t = (p - a).dot(along) / length_squared;
    // Ends are returned to the bit, so that shared corners compare equal.
    if t <= 0.0 {
        a
    } else if t >= 1.0 {
        b
    } else {
        a + along * t
    }
}

/// Distance from `p` to segment `a`–`b`, m.
pub fn distance_to_segment(p: DVec2, a: DVec2, b: DVec2) -> f64 {
    p.distance(nearest_on_segment(p, a, b))
}

/// The nearest points of two segments, the first on `a`–`b`, the second on `c`–`d`. Where they cross, both are the crossing.
pub fn nearest_between_segments(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> (DVec2, DVec2) {
    if let Some(at) = proper_crossing(a, b, c, d) {
        return (at, at);
    }
    let pairs = [
        (a, nearest_on_segment(a, c, d)),
        (b, nearest_on_segment(b, c, d)),
        (nearest_on_segment(c, a, b), c),
        (nearest_on_segment(d, a, b), d),
    ];
    let mut best = pairs[0];
    for pair in pairs {
        if pair.0.distance_squared(pair.1) < best.0.distance_squared(best.1) {
            best = pair;
        }
    }
    best
}

/// A point where two segments cross or touch, within [`HAIR_M`]. Where they lie on each other, one point of the common part.
pub fn segments_meet(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> Option<DVec2> {
    let (on_first, on_second) = nearest_between_segments(a, b, c, d);
    (on_first.distance(on_second) <= HAIR_M).then(|| on_first.midpoint(on_second))
}

/// The crossing of two segments that truly pass through each other; none when they only touch, or are parallel.
fn proper_crossing(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> Option<DVec2> {
    let (first, second) = (b - a, d - c);
    let from_c = first.perp_dot(c - a);
    let from_d = first.perp_dot(d - a);
    let from_a = second.perp_dot(a - c);
    let from_b = second.perp_dot(b - c);
    let crosses = from_c * from_d < 0.0 && from_a * from_b < 0.0;
    crosses.then(|| a + first * (from_a / (from_a - from_b)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_foot_of_a_point_beyond_the_end_is_the_end_itself() {
        let (a, b) = (DVec2::new(0.1, 0.2), DVec2::new(3.3, 0.2));
        assert_eq!(nearest_on_segment(DVec2::new(9.0, 4.0), a, b), b);
        assert_eq!(nearest_on_segment(DVec2::new(-9.0, 4.0), a, b), a);
    }

    #[test]
    fn the_legs_3_and_4_give_the_distance_of_the_right_triangle_to_its_hypotenuse() {
        // Height on the hypotenuse of the 3-4-5 triangle: 3*4/5.
        let d = distance_to_segment(DVec2::ZERO, DVec2::new(3.0, 0.0), DVec2::new(0.0, 4.0));
        assert!((d - 2.4).abs() < 1e-15);
    }

    #[test]
    fn crossing_diagonals_meet_in_the_middle_and_parallels_do_not_meet() {
        let at = segments_meet(DVec2::ZERO, DVec2::new(2.0, 2.0), DVec2::new(0.0, 2.0), DVec2::new(2.0, 0.0));
        assert_eq!(at, Some(DVec2::new(1.0, 1.0)));
        let none = segments_meet(DVec2::ZERO, DVec2::X, DVec2::new(0.0, 0.001), DVec2::new(1.0, 0.001));
        assert_eq!(none, None);
    }

    #[test]
    fn a_segment_that_ends_on_another_touches_it() {
        let at = segments_meet(DVec2::ZERO, DVec2::new(4.0, 0.0), DVec2::new(1.0, 0.0), DVec2::new(1.0, 3.0));
        assert_eq!(at, Some(DVec2::new(1.0, 0.0)));
    }

    #[test]
    fn nearest_points_of_skew_segments_are_an_end_and_its_foot() {
        let (p, q) =
            nearest_between_segments(DVec2::ZERO, DVec2::new(4.0, 0.0), DVec2::new(1.0, 1.0), DVec2::new(3.0, 5.0));
        assert_eq!((p, q), (DVec2::new(1.0, 0.0), DVec2::new(1.0, 1.0)));
    }
}
