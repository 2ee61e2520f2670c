//! Which loop lies in which, and which meet though they should not.

use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::neighbors::Neighbors;
use gantline_plan::geometry::rings::{self, crossing_between, ring_contains};
use glam::DVec2;

/// Two loops that cross or touch.
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

/// How loops lie to each other; larger ones come before smaller ones.
pub fn nesting(loops: &[&[DVec2]]) -> Nesting {
    let boxes: Vec<Bounds> = loops.iter().filter_map(|corners| Bounds::of(corners.iter().copied())).collect();
    let grid = Neighbors::of(boxes.clone());
    let mut nesting = Nesting::default();
    for (index, corners) in loops.iter().enumerate() {
        let mut inside = None;
        // Larger loops come first, so the last that holds this one is the smallest.
        for other in grid.near(&boxes[index]).into_iter().filter(|&other| other < index) {
            if let Some(rings::RingFault::Crossing { at, .. }) = crossing_between(loops[other], corners) {
                nesting.meetings.push(Meeting { first: other, second: index, at });
            } else if ring_contains(loops[other], corners[0]) {
                inside = Some(other);
            }
        }
        nesting.inside.push(inside);
    }
    nesting
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
        let found = nesting(&loops.each_ref().map(Vec::as_slice));
        assert_eq!(found.inside, [None, Some(0), Some(1)]);
        assert_eq!(found.depth(2), 2);
    }

    #[test]
    fn loops_that_cross_are_named_with_the_place_and_lie_in_neither() {
        let loops = [square(0.0, 30.0), square(25.0, 20.0)];
        let found = nesting(&loops.each_ref().map(Vec::as_slice));
        assert_eq!(found.inside, [None, None]);
        assert_eq!(found.meetings.len(), 1);
        assert!(found.meetings[0].at.cmpge(DVec2::splat(25.0 - 1e-9)).all());
    }
}
