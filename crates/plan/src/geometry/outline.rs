//! Outlines as lists of corners: area, crossings, what lies inside.

use glam::DVec2;

/// Two edges of an outline that meet where they should not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crossing {
    /// Where they meet.
    pub at: DVec2,
    /// Index of one edge: the corner it leaves.
    pub first: usize,
    /// Index of the other.
    pub second: usize,
}

/// Area, m²: A = ½ Σ (xᵢ·yᵢ₊₁ − xᵢ₊₁·yᵢ), positive counter-clockwise. Corners are taken relative to the first one,
/// so that an outline far from the origin loses no digits.
pub fn signed_area(points: &[DVec2]) -> f64 {
    let Some(&origin) = points.first() else {
        return 0.0;
    };
    let doubled: f64 =
        points.iter().zip(points.iter().cycle().skip(1)).map(|(&a, &b)| (a - origin).perp_dot(b - origin)).sum();
    doubled / 2.0
}

/// The first two edges that cross or touch, neighbors apart; also a corner that turns straight back.
pub fn first_crossing(points: &[DVec2]) -> Option<Crossing> {
    let count = points.len();
    let edge = |index: usize| (points[index % count], points[(index + 1) % count]);
    for first in 0..count {
        let (a, b) = edge(first);
        let (_, c) = edge(first + 1);
        if (b - a).perp_dot(c - b) == 0.0 && (b - a).dot(c - b) < 0.0 {
            return Some(Crossing { at: b, first, second: (first + 1) % count });
        }
        for second in first + 2..count {
            if first == 0 && second == count - 1 {
                continue;
            }
            let (c, d) = edge(second);
            if let Some(at) = meet(a, b, c, d) {
                return Some(Crossing { at, first, second });
            }
        }
    }
    None
}

/// A point where two outlines cross or touch.
pub fn rings_meet(one: &[DVec2], other: &[DVec2]) -> Option<DVec2> {
    let edges = |points: &[DVec2]| -> Vec<(DVec2, DVec2)> {
        points.iter().copied().zip(points.iter().copied().cycle().skip(1)).collect()
    };
    let others = edges(other);
    edges(one).into_iter().find_map(|(a, b)| others.iter().find_map(|&(c, d)| meet(a, b, c, d)))
}

/// Whether a point lies inside an outline (even-odd rule); on its line either answer may come.
pub fn contains(points: &[DVec2], point: DVec2) -> bool {
    let mut inside = false;
    for (&a, &b) in points.iter().zip(points.iter().cycle().skip(1)) {
        if (a.y > point.y) != (b.y > point.y) {
            let at_x = a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x);
            inside ^= point.x < at_x;
        }
    }
    inside
}

/// The point where two segments meet, their ends included.
fn meet(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> Option<DVec2> {
    let (r, s) = (b - a, d - c);
    let across = r.perp_dot(s);
    if across == 0.0 {
        let on =
            |p: DVec2, from: DVec2, to: DVec2| (to - from).perp_dot(p - from) == 0.0 && (p - from).dot(p - to) <= 0.0;
        return [(c, a, b), (d, a, b), (a, c, d)].into_iter().find(|&(p, from, to)| on(p, from, to)).map(|(p, _, _)| p);
    }
    let t = (c - a).perp_dot(s) / across;
    let u = (c - a).perp_dot(r) / across;
    ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&u)).then(|| a + r * t)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Vec<DVec2> {
        vec![DVec2::new(x, y), DVec2::new(x + side, y), DVec2::new(x + side, y + side), DVec2::new(x, y + side)]
    }

    #[test]
    fn a_far_away_square_keeps_its_area_to_the_last_digit() {
        assert_eq!(signed_area(&square(65_536.0, -32_768.0, 2.5)), 6.25);
    }

    #[test]
    fn rings_side_by_side_do_not_meet_and_overlapping_ones_do() {
        assert_eq!(rings_meet(&square(0.0, 0.0, 2.0), &square(3.0, 0.0, 2.0)), None);
        assert_eq!(rings_meet(&square(0.0, 0.0, 2.0), &square(1.0, 1.0, 2.0)), Some(DVec2::new(2.0, 1.0)));
    }

    #[test]
    fn a_spike_that_turns_straight_back_is_a_crossing() {
        let spike = [(0.0, 0.0), (4.0, 0.0), (6.0, 0.0), (4.0, 0.0), (4.0, 4.0)].map(|(x, y)| DVec2::new(x, y));
        assert!(first_crossing(&spike).is_some());
    }

    #[test]
    fn inside_and_outside_are_told_apart_in_a_notched_outline() {
        let notched = [(0.0, 0.0), (6.0, 0.0), (6.0, 6.0), (3.0, 2.0), (0.0, 6.0)].map(|(x, y)| DVec2::new(x, y));
        assert!(contains(&notched, DVec2::new(3.0, 1.0)));
        assert!(!contains(&notched, DVec2::new(3.0, 4.0)));
    }
}
