//! What all units together reach of a facade, and the gaps they leave.
//!
//! Areas and intervals come from an exact sweep over the depth, see [`Cover`]; the outlines of gap
//! regions come from the polygon grid and are right to a nanometer. The two are held against each other in tests.

use super::reach::Reach;
use crate::geometry::bounds::Bounds;
use crate::geometry::polygons::{Polygon, PolygonFault, difference};
use crate::geometry::spans::Spans;
use crate::geometry::strips::{self, Cover, Face, Strip};
use glam::DVec2;

/// Open places smaller than this are rounding and no gap, m²: a square millimeter.
const SLIVER_M2: f64 = 1e-6;

/// A connected part of a facade that no unit reaches.
#[derive(Debug, Clone, PartialEq)]
pub struct Gap {
    /// Its outline: x along the face, y the depth, m.
    pub region: Polygon,
    /// Its area, m².
    pub area_m2: f64,
    /// The box around it: from where to where along the face, and over which depths.
    pub bounds: Bounds,
}

/// The facade as units cover it together.
#[derive(Debug, Clone, PartialEq)]
pub struct Coverage {
    /// The face looked at.
    pub face: Face,
    /// Area that some unit reaches, m²; exact but for rounding.
    pub covered_area_m2: f64,
    /// Area that no unit reaches, m²; exact but for rounding, and not a difference of larger numbers.
    pub open_area_m2: f64,
    /// Gaps from left to right, then from the top downward.
    pub gaps: Vec<Gap>,
    /// Stretches along the edge that are covered over the whole height.
    pub whole_height: Spans,
    strips: Vec<Strip>,
    cover: Cover,
}

impl Coverage {
    /// Puts the reach of any number of rope points on a face together. Parts of their reach outside the face do not count.
    pub fn of<'a>(face: Face, reaches: impl IntoIterator<Item = &'a Reach>) -> Result<Self, PolygonFault> {
        let reaches: Vec<&Reach> = reaches.into_iter().collect();
        let strips: Vec<Strip> = reaches.iter().flat_map(|r| r.strips()).collect();
        let cover = Cover::of(&strips, face);
        let sum = |strips: &[Strip]| strips.iter().map(Strip::area_m2).sum();
        Ok(Self {
            face,
            covered_area_m2: sum(&cover.covered),
            open_area_m2: sum(&cover.open),
            gaps: gaps(face, &reaches)?,
            whole_height: cover.covered_throughout(face, 0.0, face.height_m),
            strips,
            cover,
        })
    }

    /// Stretches covered at a depth; exact. Nothing above and below the face.
    pub fn at_depth(&self, depth_m: f64) -> Spans {
        strips::covered_at(&self.strips, self.face, depth_m)
    }

    /// Stretches open at a depth; exact. The whole length of the face where nothing is covered.
    pub fn open_at_depth(&self, depth_m: f64) -> Spans {
        Spans::one(0.0, self.face.length_m).minus(&self.at_depth(depth_m))
    }

    /// Stretches covered at every depth between two: below the height at which technicians get on, for instance; exact.
    pub fn throughout(&self, from_depth_m: f64, to_depth_m: f64) -> Spans {
        self.cover.covered_throughout(self.face, from_depth_m, to_depth_m)
    }

    /// Stretches along the edge that are open at some depth.
    pub fn open_somewhere(&self) -> Spans {
        Spans::one(0.0, self.face.length_m).minus(&self.whole_height)
    }

    /// Length along the edge that is open at some depth, m.
    pub fn gap_length_m(&self) -> f64 {
        self.open_somewhere().length_m()
    }
}

/// What is covered of a facade, without the outlines of gaps.
#[derive(Debug, Clone, PartialEq)]
pub struct Covered {
    /// Area that some unit reaches, m²; exact but for rounding.
    pub area_m2: f64,
    /// Stretches along the edge that are covered over the whole height.
    pub whole_height: Spans,
}

impl Covered {
    /// The same figures as those of [`Coverage`].
    pub fn of<'a>(face: Face, reaches: impl IntoIterator<Item = &'a Reach>) -> Self {
        let strips: Vec<Strip> = reaches.into_iter().flat_map(Reach::strips).collect();
        let cover = Cover::of(&strips, face);
        let area_m2 = cover.covered.iter().map(Strip::area_m2).sum();
        Self { area_m2, whole_height: cover.covered_throughout(face, 0.0, face.height_m) }
    }
}

fn gaps(face: Face, reaches: &[&Reach]) -> Result<Vec<Gap>, PolygonFault> {
    let whole = Polygon::rectangle(DVec2::ZERO, DVec2::new(face.length_m, face.height_m));
    let reached: Vec<Polygon> = reaches.iter().flat_map(|r| r.polygons()).collect();
    let gap = |region: Polygon| {
        let (area_m2, bounds) = (region.area_m2(), region.bounds()?);
        (area_m2 >= SLIVER_M2).then_some(Gap { region, area_m2, bounds })
    };
    let mut gaps: Vec<Gap> = difference(&[whole], &reached)?.into_iter().filter_map(gap).collect();
    let left_then_high = |g: &Gap| (g.bounds.min_m.x, g.bounds.min_m.y);
    gaps.sort_by(|a, b| {
        let (a, b) = (left_then_high(a), left_then_high(b));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    Ok(gaps)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::reach::{FeetFrom, Sideways};
    use proptest::prelude::*;

    fn reach_of(foot_m: f64, width_m: f64, support_m: f64, face: Face) -> Reach {
        let s =
            Sideways { arms_reach_m: 0.5, angle_rad: 0.3, swing_m: Some(2.5), plumb_limit_m: None, least_depth_m: 1.0 };
        let parts = [FeetFrom { from_depth_m: 0.0, feet: Spans::one(foot_m, foot_m + width_m) }];
        Reach::of(&s, support_m, &parts, face).unwrap()
    }

    #[test]
    fn a_facade_without_units_is_one_gap() {
        let face = Face { length_m: 12.0, height_m: 30.0 };
        let coverage = Coverage::of(face, []).unwrap();
        assert_eq!((coverage.covered_area_m2, coverage.open_area_m2), (0.0, 360.0));
        assert_eq!((coverage.gaps.len(), coverage.gap_length_m()), (1, 12.0));
    }

    #[test]
    fn two_units_too_far_apart_leave_gaps_at_the_ends_the_top_and_between() {
        let face = Face { length_m: 20.0, height_m: 30.0 };
        let units = [reach_of(5.0, 0.0, 1.0, face), reach_of(15.0, 0.0, 1.0, face)];
        let coverage = Coverage::of(face, &units).unwrap();
        // Supports 1 m up and z_min of 1 m: reached from the very top, so the gap between touches no other.
        assert_eq!(coverage.gaps.len(), 3);
        // Half-width at the top 0.5 + tan 0.3, the least over the height.
        let half = 0.5 + 0.3_f64.tan();
        assert!((coverage.gap_length_m() - (20.0 - 4.0 * half)).abs() < 1e-12);
        let low = coverage.at_depth(25.0);
        assert_eq!(low, Spans::of([(2.0, 8.0), (12.0, 18.0)]));
        assert_eq!(coverage.throughout(20.0, 30.0), low);
        assert_eq!(coverage.open_at_depth(25.0), Spans::of([(0.0, 2.0), (8.0, 12.0), (18.0, 20.0)]));
    }

    #[test]
    fn a_unit_counted_twice_covers_no_more() {
        let face = Face { length_m: 20.0, height_m: 30.0 };
        let unit = reach_of(5.0, 1.0, 1.0, face);
        let once = Coverage::of(face, [&unit]).unwrap();
        let twice = Coverage::of(face, [&unit, &unit]).unwrap();
        assert_eq!(once.covered_area_m2, twice.covered_area_m2);
        assert!((once.covered_area_m2 - unit.area_m2()).abs() < 1e-12);
    }

    proptest! {
        /// The polygon grid is the witness of the sweep: a nanometer along borders of some 500 m.
        #[test]
        fn gap_regions_have_the_area_that_the_sweep_finds_open(
            units in prop::collection::vec((-1.0..26.0_f64, 0.0..3.0_f64, -1.0..3.0_f64), 0..14),
        ) {
            let face = Face { length_m: 25.0, height_m: 18.0 };
            let reaches: Vec<Reach> = units.iter().map(|&(x, w, h)| reach_of(x, w, h, face)).collect();
            let coverage = Coverage::of(face, &reaches).unwrap();
            let regions: f64 = coverage.gaps.iter().map(|g| g.area_m2).sum();
            prop_assert!((regions - coverage.open_area_m2).abs() < 5e-6, "{} {}", regions, coverage.open_area_m2);
            prop_assert!((coverage.covered_area_m2 + coverage.open_area_m2 - face.area_m2()).abs() < 1e-9);
        }

        /// A unit more never covers less.
        #[test]
        fn one_more_unit_never_makes_a_gap_larger(
            units in prop::collection::vec((0.0..25.0_f64, 0.0..3.0_f64, -1.0..3.0_f64), 1..8),
        ) {
            let face = Face { length_m: 25.0, height_m: 18.0 };
            let reaches: Vec<Reach> = units.iter().map(|&(x, w, h)| reach_of(x, w, h, face)).collect();
            let fewer = Coverage::of(face, &reaches[1..]).unwrap();
            let all = Coverage::of(face, &reaches).unwrap();
            prop_assert!(all.open_area_m2 <= fewer.open_area_m2 + 1e-9);
            prop_assert!(all.gap_length_m() <= fewer.gap_length_m() + 1e-9);
        }
    }
}
