//! Which loop lies in which, and which meet though they should not.

use gantline_plan::document::ring::SAME_CORNER_M;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::neighbors::Neighbors;
use gantline_plan::geometry::polygons::{self, Polygon};
use gantline_plan::geometry::rings::{self, crossing_between_counted, ring_contains};
use glam::DVec2;

/// Two loops that cross, or touch from inside: an edge in common from outside is how neighbors lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meeting {
    /// One loop.
    pub first: usize,
    /// The other.
    pub second: usize,
    /// Where.
    pub at: DVec2,
}

/// How loops lie to each other.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Nesting {
    /// For each loop the smallest one that it lies in.
    pub inside: Vec<Option<usize>>,
    /// Loops that meet; neither counts as lying in the other.
    pub meetings: Vec<Meeting>,
}

/// How loops lie to each other; larger ones come before smaller ones. None where more sides would have to be compared than
/// `most`.
pub fn nesting(loops: &[&[DVec2]], most: usize) -> Option<Nesting> {
    /// What telling how two loops overlap takes beside comparing two sides, for each of their sides.
    const OVERLAP: usize = 1000;
    let mut compared = 0;
    let boxes: Vec<Bounds> = loops.iter().filter_map(|corners| Bounds::of(corners.iter().copied())).collect();
    let grid = Neighbors::of(boxes.clone());
    let mut nesting = Nesting::default();
    for (index, corners) in loops.iter().enumerate() {
        let mut inside = None;
        // Larger loops come first, so the last that holds this one is the smallest.
        for other in grid.near(&boxes[index]).into_iter().filter(|&other| other < index) {
            if compared > most {
                return None;
            }
            let crossing = crossing_between_counted(loops[other], corners, &mut compared);
            if let Some(rings::RingFault::Crossing { at, .. }) = crossing {
                compared += OVERLAP * (loops[other].len() + corners.len());
                if !are_neighbors(loops[other], corners) {
                    nesting.meetings.push(Meeting { first: other, second: index, at });
                }
            } else if ring_contains(loops[other], corners[0]) {
                inside = Some(other);
            }
        }
        nesting.inside.push(inside);
    }
    Some(nesting)
}

/// Whether two loops have no more in common than a seam of a millimeter all the way round the smaller one.
fn are_neighbors(one: &[DVec2], other: &[DVec2]) -> bool {
    let around: f64 = rings::segments(other).map(|(a, b)| a.distance(b)).sum();
    let [one, other] = [one, other].map(|corners| Polygon::simple(corners.to_vec()));
    let common = polygons::intersection(&[one], &[other]);
    common.is_ok_and(|parts| parts.iter().map(Polygon::area_m2).sum::<f64>() <= around * SAME_CORNER_M)
}

impl Nesting {
    /// In how many others a loop lies.
    pub fn depth(&self, mut index: usize) -> usize {
        let mut depth = 0;
        while let Some(outer) = self.inside.get(index).copied().flatten() {
            depth += 1;
            index = outer;
        }
        depth
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x: f64, side: f64) -> Vec<DVec2> {
        [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)].map(|(a, b)| DVec2::new(x + a, x + b)).to_vec()
    }

    #[test]
    fn a_house_in_a_courtyard_lies_in_two_loops() {
        let loops = [square(0.0, 30.0), square(5.0, 20.0), square(10.0, 5.0)];
        let found = nesting(&loops.each_ref().map(Vec::as_slice), usize::MAX).unwrap();
        assert_eq!(found.inside, [None, Some(0), Some(1)]);
        assert_eq!(found.depth(2), 2);
    }

    #[test]
    fn neighbors_share_an_edge_and_a_hole_at_the_edge_does_not() {
        let beside = |from: f64, to: f64| {
            [(from, 0.0), (to, 0.0), (to, 8.0), (from, 8.0)].map(|(x, y)| DVec2::new(x, y)).to_vec()
        };
        let found = nesting(&[&beside(0.0, 20.0), &beside(20.0, 30.0)], usize::MAX).unwrap();
        assert_eq!((found.meetings.len(), found.inside), (0, vec![None, None]));
        // Drawn over each other by less than a millimeter they still are neighbors, by a centimeter no more.
        assert!(nesting(&[&beside(0.0, 20.0), &beside(19.9995, 30.0)], usize::MAX).unwrap().meetings.is_empty());
        assert_eq!(nesting(&[&beside(0.0, 20.0), &beside(19.99, 30.0)], usize::MAX).unwrap().meetings.len(), 1);
        assert_eq!(nesting(&[&beside(0.0, 20.0), &beside(15.0, 20.0)], usize::MAX).unwrap().meetings.len(), 1);
    }

    #[test]
    fn loops_that_cross_are_named_with_the_place_and_lie_in_neither() {
        let loops = [square(0.0, 30.0), square(25.0, 20.0)];
        let found = nesting(&loops.each_ref().map(Vec::as_slice), usize::MAX).unwrap();
        assert_eq!(found.inside, [None, None]);
        assert_eq!(found.meetings.len(), 1);
        assert!(found.meetings[0].at.cmpge(DVec2::splat(25.0 - 1e-9)).all());
    }
}
