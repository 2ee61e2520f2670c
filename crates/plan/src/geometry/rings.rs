//! Closed rings of corners: area, direction, what lies inside, and where a ring is not a ring.
//!
//! A ring is a list of corners without repeating the first; segment `i` runs from corner `i` to the next one.
//! Counter-clockwise is positive.

use super::bounds::Bounds;
use super::neighbors::Neighbors;
use super::segments::{distance_to_segment, segments_meet};
use glam::DVec2;
use thiserror::Error;

/// Why corners do not make a simple ring, with the place.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RingFault {
    /// Fewer than three corners.
    #[error("a ring needs three corners and has {corners}")]
    TooFewCorners {
        /// Corners given.
        corners: usize,
    },
    /// A coordinate that is not finite.
    #[error("corner {corner} has no place: ({x_m}, {y_m})")]
    NotFinite {
        /// Index of the corner.
        corner: usize,
        /// x as given, m.
        x_m: f64,
        /// y as given, m.
        y_m: f64,
    },
    /// Two corners at the same place.
    #[error("corners {first} and {second} coincide at ({}, {})", at.x, at.y)]
    CoincidentCorners {
        /// Index of the earlier corner.
        first: usize,
        /// Index of the later corner.
        second: usize,
        /// Where, m.
        at: DVec2,
    },
    /// Two segments that cross, touch, or run back over each other.
    #[error("segments {first} and {second} meet at ({}, {})", at.x, at.y)]
    Crossing {
        /// Index of the earlier segment.
        first: usize,
        /// Index of the later segment.
        second: usize,
        /// Where, m.
        at: DVec2,
    },
}

/// Which way round the corners go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Orientation {
    /// Inside on the left of every segment.
    CounterClockwise,
    /// Inside on the right of every segment.
    Clockwise,
}

/// The segments of a ring in order, each as its two ends.
pub fn segments(ring: &[DVec2]) -> impl ExactSizeIterator<Item = (DVec2, DVec2)> + Clone + '_ {
    (0..ring.len()).map(|i| (ring[i], ring[(i + 1) % ring.len()]))
}

/// Area, m², counter-clockwise positive: A = ½ Σ (xᵢ·yᵢ₊₁ − xᵢ₊₁·yᵢ), the surveyor's formula, taken from the first corner so
/// that a far origin costs no digits. 0 for fewer than three corners.
pub fn signed_area_m2(ring: &[DVec2]) -> f64 {
    let Some(&origin) = ring.first() else {
        return 0.0;
    };
    segments(ring).map(|(a, b)| (a - origin).perp_dot(b - origin)).sum::<f64>() / 2.0
}

/// Which way round a ring goes; none when it encloses nothing.
pub fn orientation(ring: &[DVec2]) -> Option<Orientation> {
    let area = signed_area_m2(ring);
    if area > 0.0 {
        Some(Orientation::CounterClockwise)
    } else if area < 0.0 {
        Some(Orientation::Clockwise)
    } else {
        None
    }
}

/// The same ring, turned to go a given way round.
pub fn oriented(ring: &[DVec2], wanted: Orientation) -> Vec<DVec2> {
    let mut corners = ring.to_vec();
    if orientation(ring).is_some_and(|is| is != wanted) {
        corners.reverse();
    }
    corners
}

/// Whether a point lies inside, by counting crossings to its right. On the border itself the answer is one or the other;
/// [`distance_to_ring`] tells when that matters.
pub fn ring_contains(ring: &[DVec2], p: DVec2) -> bool {
    let crosses = |&(a, b): &(DVec2, DVec2)| {
        (a.y > p.y) != (b.y > p.y) && {
            let side = (b - a).perp_dot(p - a);
            if b.y > a.y { side > 0.0 } else { side < 0.0 }
        }
    };
    segments(ring).filter(crosses).count() % 2 == 1
}

/// Distance from a point to the nearest segment of a ring, m; infinite for no corners.
pub fn distance_to_ring(ring: &[DVec2], p: DVec2) -> f64 {
    segments(ring).map(|(a, b)| distance_to_segment(p, a, b)).fold(f64::INFINITY, f64::min)
}

/// Sees that corners make a simple ring: three or more, finite, none nearer than `least_edge_m` to another, no segment
/// meeting one it does not follow. The first fault in order of corners is returned.
pub fn check_ring(ring: &[DVec2], least_edge_m: f64) -> Result<(), RingFault> {
    if ring.len() < 3 {
        return Err(RingFault::TooFewCorners { corners: ring.len() });
    }
    if let Some(corner) = ring.iter().position(|p| !p.is_finite()) {
        let p = ring[corner];
        return Err(RingFault::NotFinite { corner, x_m: p.x, y_m: p.y });
    }
    coincident_corners(ring, least_edge_m).map_or(Ok(()), Err)?;
    first_crossing(ring).map_or(Ok(()), Err)
}

/// From so many on, who is near is asked of a grid.
const MANY: usize = 48;

/// For each of some boxes, those after it that may share a point with it, ascending.
struct Later(usize, Option<(Neighbors, Vec<Bounds>)>);

impl Later {
    fn of(boxes: impl ExactSizeIterator<Item = Bounds>) -> Self {
        let count = boxes.len();
        Self(
            count,
            (count > MANY).then(|| boxes.collect::<Vec<_>>()).map(|boxes| (Neighbors::of(boxes.clone()), boxes)),
        )
    }

    fn than(&self, first: usize) -> Vec<usize> {
        match &self.1 {
            Some((grid, boxes)) => grid.near(&boxes[first]).into_iter().filter(|&second| second > first).collect(),
            None => (first + 1..self.0).collect(),
        }
    }
}

/// The box of a segment, with room for all that counts as touching it.
fn box_of((a, b): (DVec2, DVec2)) -> Bounds {
    Bounds { min_m: a.min(b), max_m: a.max(b) }.grown(super::hair::HAIR_M)
}

/// The first two corners nearer to each other than `least_edge_m`.
fn coincident_corners(ring: &[DVec2], least_edge_m: f64) -> Option<RingFault> {
    let later = Later::of(ring.iter().map(|&corner| Bounds::around(corner, least_edge_m)));
    let pairs = (0..ring.len()).flat_map(|i| later.than(i).into_iter().map(move |j| (i, j)));
    pairs
        .into_iter()
        .find(|&(i, j)| ring[i].distance(ring[j]) < least_edge_m)
        .map(|(first, second)| RingFault::CoincidentCorners { first, second, at: ring[first].midpoint(ring[second]) })
}

/// The first two segments of one ring that meet though they should not.
fn first_crossing(ring: &[DVec2]) -> Option<RingFault> {
    let count = ring.len();
    let later = Later::of(segments(ring).map(box_of));
    for first in 0..count {
        for second in later.than(first) {
            let (a, b) = (ring[first], ring[(first + 1) % count]);
            let (c, d) = (ring[second], ring[(second + 1) % count]);
            let meets_at = if second == first + 1 {
                runs_back(a, b, d)
            } else if (second + 1) % count == first {
                runs_back(c, a, b)
            } else {
                segments_meet(a, b, c, d)
            };
            if let Some(at) = meets_at {
                return Some(RingFault::Crossing { first, second, at });
            }
        }
    }
    None
}

/// Whether a ring that goes from `before` to `corner` runs back over itself on its way to `after`; where it turns.
fn runs_back(before: DVec2, corner: DVec2, after: DVec2) -> Option<DVec2> {
    let (back, on) = (before - corner, after - corner);
    let shorter = if on.length_squared() < back.length_squared() { after } else { before };
    let longer = if on.length_squared() < back.length_squared() { before } else { after };
    (back.dot(on) > 0.0 && distance_to_segment(shorter, corner, longer) <= super::hair::HAIR_M).then_some(corner)
}

/// The first place where a segment of one ring meets a segment of another: `first` counts in `a`, `second` in `b`.
pub fn crossing_between(a: &[DVec2], b: &[DVec2]) -> Option<RingFault> {
    crossing_between_counted(a, b, &mut 0)
}

/// The same; adds to `compared` how many segments and pairs of segments were looked at, for those who have to stop somewhere.
/// Only segments in the box that both rings share are compared.
pub fn crossing_between_counted(a: &[DVec2], b: &[DVec2], compared: &mut usize) -> Option<RingFault> {
    let around = |ring: &[DVec2]| Bounds::of(ring.iter().copied()).map(|bounds| bounds.grown(super::hair::HAIR_M));
    let (around_a, around_b) = (around(a)?, around(b)?);
    let near = |ring, other: &Bounds| -> Vec<(usize, (DVec2, DVec2))> {
        segments(ring).enumerate().filter(|(_, segment)| box_of(*segment).meets(other)).collect()
    };
    let (of_a, of_b) = (near(a, &around_b), near(b, &around_a));
    *compared += a.len() + b.len();
    for &(first, (p, q)) in &of_a {
        *compared += of_b.len();
        for &(second, (r, s)) in &of_b {
            if let Some(at) = segments_meet(p, q, r, s) {
                return Some(RingFault::Crossing { first, second, at });
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use std::f64::consts::TAU;

    use super::*;

    fn ring(corners: &[(f64, f64)]) -> Vec<DVec2> {
        corners.iter().map(|&(x, y)| DVec2::new(x, y)).collect()
    }

    #[test]
    fn a_counter_clockwise_ell_has_the_area_of_its_two_rectangles() {
        let ell = ring(&[(0.0, 0.0), (6.0, 0.0), (6.0, 2.0), (2.0, 2.0), (2.0, 5.0), (0.0, 5.0)]);
        // 6 x 2 + 2 x 3, exact in binary.
        assert_eq!(signed_area_m2(&ell), 18.0);
        assert_eq!(orientation(&ell), Some(Orientation::CounterClockwise));
        assert_eq!(signed_area_m2(&oriented(&ell, Orientation::Clockwise)), -18.0);
    }

    #[test]
    fn a_far_origin_does_not_cost_the_area_its_digits() {
        let far: Vec<DVec2> = ring(&[(0.0, 0.0), (0.25, 0.0), (0.25, 0.5), (0.0, 0.5)])
            .into_iter()
            .map(|p| p + DVec2::new(524288.0, -262144.0))
            .collect();
        assert_eq!(signed_area_m2(&far), 0.125);
    }

    #[test]
    fn a_point_in_the_notch_of_an_ell_is_outside() {
        let ell = ring(&[(0.0, 0.0), (6.0, 0.0), (6.0, 2.0), (2.0, 2.0), (2.0, 5.0), (0.0, 5.0)]);
        assert!(ring_contains(&ell, DVec2::new(1.0, 4.0)));
        assert!(!ring_contains(&ell, DVec2::new(3.0, 3.0)));
        assert!(!ring_contains(&ell, DVec2::new(-1.0, 2.0)));
        assert_eq!(distance_to_ring(&ell, DVec2::new(3.0, 3.0)), 1.0);
    }

    #[test]
    fn a_bow_tie_is_refused_with_the_place_and_the_two_segments() {
        let bow = ring(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]);
        let fault = check_ring(&bow, 0.001);
        assert_eq!(fault, Err(RingFault::Crossing { first: 0, second: 2, at: DVec2::new(1.0, 1.0) }));
    }

    #[test]
    fn corners_half_a_millimeter_apart_coincide_and_two_millimeters_apart_do_not() {
        let near = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 0.0005)]);
        let is = |f: Result<(), RingFault>| matches!(f, Err(RingFault::CoincidentCorners { first: 0, second: 3, .. }));
        assert!(is(check_ring(&near, 0.001)));
        let apart = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 0.002)]);
        assert_eq!(check_ring(&apart, 0.001), Ok(()));
    }

    #[test]
    fn a_spike_that_runs_back_over_its_own_edge_is_refused() {
        let spike = ring(&[(0.0, 0.0), (4.0, 0.0), (2.0, 0.0), (2.0, 3.0)]);
        assert!(matches!(check_ring(&spike, 0.001), Err(RingFault::Crossing { first: 0, second: 1, .. })));
        // Folded at its last corner, the ring first touches itself where the fold ends.
        let closing = ring(&[(2.0, 0.0), (2.0, 3.0), (0.0, 0.0), (4.0, 0.0)]);
        let at = DVec2::new(2.0, 0.0);
        let fault = RingFault::Crossing { first: 0, second: 2, at };
        assert_eq!(check_ring(&closing, 0.001), Err(fault));
    }

    #[test]
    fn a_corner_that_touches_another_edge_is_refused() {
        let touching = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 0.0), (0.0, 4.0)]);
        let at = DVec2::new(2.0, 0.0);
        assert_eq!(check_ring(&touching, 0.001), Err(RingFault::Crossing { first: 0, second: 2, at }));
    }

    #[test]
    fn corners_without_a_place_and_too_few_corners_are_named() {
        assert_eq!(check_ring(&[DVec2::ZERO, DVec2::X], 0.001), Err(RingFault::TooFewCorners { corners: 2 }));
        let lost = [DVec2::ZERO, DVec2::new(f64::INFINITY, 0.0), DVec2::Y];
        assert!(matches!(check_ring(&lost, 0.001), Err(RingFault::NotFinite { corner: 1, .. })));
    }

    #[test]
    fn a_straight_corner_is_no_fault() {
        let straight = ring(&[(0.0, 0.0), (2.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)]);
        assert_eq!(check_ring(&straight, 0.001), Ok(()));
    }

    #[test]
    fn a_hole_that_crosses_the_outer_ring_is_found() {
        let outer = ring(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
        let hole = ring(&[(3.0, 1.0), (3.0, 2.0), (5.0, 2.0), (5.0, 1.0)]);
        let fault = crossing_between(&outer, &hole);
        assert_eq!(fault, Some(RingFault::Crossing { first: 1, second: 1, at: DVec2::new(4.0, 2.0) }));
    }
    /// Witness: the same corners in a ring so small that every pair is looked at, one place at a time.
    #[test]
    fn a_ring_of_many_corners_has_the_same_fault_as_every_pair_says() {
        let circle: Vec<DVec2> = (0..400).map(|i| DVec2::from_angle(f64::from(i) * TAU / 400.0) * 50.0).collect();
        assert_eq!(check_ring(&circle, 0.001), Ok(()));
        let every_pair = |ring: &[DVec2]| {
            (0..ring.len()).find_map(|i| {
                (i + 2..ring.len() - usize::from(i == 0)).find_map(|j| {
                    let next = |at: usize| ring[(at + 1) % ring.len()];
                    segments_meet(ring[i], next(i), ring[j], next(j)).map(|_| (i, j))
                })
            })
        };
        for (from, to) in [(10, 300), (399, 17), (200, 202), (0, 398)] {
            let mut crossed = circle.clone();
            crossed.swap(from, to);
            let Err(RingFault::Crossing { first, second, .. }) = check_ring(&crossed, 0.001) else {
                panic!("{from} {to}")
            };
            assert_eq!(Some((first, second)), every_pair(&crossed));
        }
        let mut twin = circle;
        twin[250] = twin[3] + DVec2::new(0.0, 0.0005);
        assert!(matches!(check_ring(&twin, 0.001), Err(RingFault::CoincidentCorners { first: 3, second: 250, .. })));
    }

    #[test]
    fn rings_that_share_no_box_are_not_compared_side_by_side() {
        let circle: Vec<DVec2> = (0..1000).map(|i| DVec2::from_angle(f64::from(i) * TAU / 1000.0) * 50.0).collect();
        let inner: Vec<DVec2> = circle.iter().map(|at| *at * 0.01).collect();
        let mut compared = 0;
        assert_eq!(crossing_between_counted(&circle, &inner, &mut compared), None);
        assert!(compared < 10_000, "{compared}");
    }
}
