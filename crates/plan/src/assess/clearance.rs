//! The smallest clearance of a swept band to a prism, and where it is.
//!
//! Let S be the sector that the center line of the band sweeps on the plan, e = half its width + the clearance asked for
//! around it, Q the points of S within e of the prism's plan. Over Q the band passes over or under the prism; the height
//! between them depends on the radius r alone,
//!
//! h(r) = max(low(r) − to, from − high(r)),
//!
//! which is convex and bent at most once. So only the set of radii of Q is needed. Each edge of the plan, widened by e, and
//! each wedge of S of at most half a turn are convex, hence share one interval of radii. Points of Q that are near no
//! edge lie inside the plan; going round on their circle one meets an edge or a border ray of the wedge, so the parts of
//! those rays inside the plan complete the set. (For the whole turn any one ray will do.) Nothing is sampled, and polygons
//! need neither be convex nor free of holes. On each interval the least h lies at an end or at the bend.
//!
//! Where Q is empty nothing is over or under the prism, and the distance on the plan is the figure. Our own derivation.

use super::swept::{HeightBand, SweptBand};
use crate::geometry::bounds::Bounds;
use crate::geometry::hair::HAIR_M;
use crate::geometry::polygons::Polygon;
use crate::geometry::prism::{PlanShape, Prism};
use crate::geometry::segments::{nearest_between_segments, nearest_on_segment};
use crate::geometry::wedge::{Stretch, Wedge};
use glam::DVec2;
use thiserror::Error;

/// The clearances asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Required {
    vertical_m: f64,
    around_m: f64,
}

/// A clearance asked for that is negative or no number.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("the clearance {field} is {value_m} m")]
pub struct RequiredFault {
    /// Which field.
    pub field: &'static str,
    /// As given, m.
    pub value_m: f64,
}

impl Required {
    /// Clearance in height over or under, and on the plan to the sides and beyond the end, m; both may be 0.
    pub fn new(vertical_m: f64, around_m: f64) -> Result<Self, RequiredFault> {
        for (field, value_m) in [("vertical_m", vertical_m), ("around_m", around_m)] {
            if !(value_m >= 0.0 && value_m.is_finite()) {
                return Err(RequiredFault { field, value_m });
            }
        }
        Ok(Self { vertical_m, around_m })
    }

    /// In height, m.
    pub fn vertical_m(&self) -> f64 {
        self.vertical_m
    }

    /// On the plan, m.
    pub fn around_m(&self) -> f64 {
        self.around_m
    }
}

/// On which side of a prism a band goes by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Passes {
    /// Its underside over the prism's top.
    Over,
    /// Its top under the prism's underside.
    Under,
}

/// The smallest height between band and prism where they lie over each other, with the clearance around.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VerticalClearance {
    /// Height between them, m; negative is how far the band would have to be moved up or down to come free.
    pub m: f64,
    /// Where, on the band's center line, m on the plan.
    pub at: DVec2,
    /// Level of the band's underside or top there, m.
    pub z_m: f64,
    /// Which of the two it is.
    pub passes: Passes,
}

/// The smallest distance on the plan where band and prism do not lie over each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HorizontalClearance {
    /// From the band's edge to the prism, m.
    pub m: f64,
    /// Where, on the band's center line, m on the plan.
    pub at: DVec2,
    /// The prism's point nearest to it, m on the plan.
    pub toward: DVec2,
}

/// How a swept band and a prism go clear of each other. Exactly one of the two figures is there, none for a band that is
/// swept through no direction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Clearance {
    /// In height, when the band comes over or under the prism or within the clearance around it.
    pub vertical: Option<VerticalClearance>,
    /// On the plan, when it does not.
    pub horizontal: Option<HorizontalClearance>,
    /// What was asked for.
    pub required: Required,
    /// Whether the height is less than asked for where it had to be kept.
    pub conflict: bool,
}

impl Clearance {
    /// The figure there is, with its limit: measured and asked for, m.
    pub fn figure_m(&self) -> Option<(f64, f64)> {
        let height = self.vertical.map(|v| (v.m, self.required.vertical_m));
        height.or_else(|| self.horizontal.map(|h| (h.m, self.required.around_m)))
    }

    /// Where the figure was measured, m on the plan.
    pub fn at(&self) -> Option<DVec2> {
        self.vertical.map(|v| v.at).or_else(|| self.horizontal.map(|h| h.at))
    }

    /// Measured ÷ asked for, for ranking: below 1 is a conflict. Infinite when nothing is asked for, nothing is there to
    /// measure, or the band stays clear; minus infinity when nothing is asked for and they still run into each other.
    pub fn share_of_limit(&self) -> f64 {
        match self.figure_m() {
            None => f64::INFINITY,
            Some((measured, limit)) if limit > 0.0 => measured / limit,
            Some((measured, _)) if measured < -HAIR_M => f64::NEG_INFINITY,
            Some(_) => f64::INFINITY,
        }
    }
}

/// Of several clearances the place of the tightest: the smallest share of its limit, of equal ones the smaller figure, then
/// the earlier. None of none.
pub fn tightest<'a>(clearances: impl IntoIterator<Item = &'a Clearance>) -> Option<usize> {
    let key = |c: &Clearance| (c.share_of_limit(), c.figure_m().map_or(f64::INFINITY, |f| f.0));
    let keyed = clearances.into_iter().map(key).enumerate();
    keyed.min_by(|(_, a), (_, b)| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))).map(|(place, _)| place)
}

/// The smallest clearance of a swept band to a prism. Exact but for the rounding of single operations.
///
/// A clearance that equals its limit within a hair ([`HAIR_M`]) meets it: a prism that stands exactly at the clearance around
/// is not over or under the band, a height exactly as asked for is no conflict.
pub fn clearance(swept: &SweptBand, prism: &Prism, required: &Required) -> Clearance {
    let vertical = vertical_clearance(swept, prism, required.around_m);
    let horizontal = if vertical.is_none() { horizontal_clearance(swept, prism) } else { None };
    let conflict = vertical.is_some_and(|v| is_too_low(&v, required));
    Clearance { vertical, horizontal, required: *required, conflict }
}

/// Whether [`clearance`] would tell a conflict; what lies beside the band need not be measured for that.
pub fn conflicts(swept: &SweptBand, prism: &Prism, required: &Required) -> bool {
    vertical_clearance(swept, prism, required.around_m).is_some_and(|v| is_too_low(&v, required))
}

fn is_too_low(height: &VerticalClearance, required: &Required) -> bool {
    height.m < required.vertical_m - HAIR_M
}

fn vertical_clearance(swept: &SweptBand, prism: &Prism, around_m: f64) -> Option<VerticalClearance> {
    let near = (swept.band().half_width_m + around_m - HAIR_M).max(0.0);
    // A box test only; distances to the box are never larger than distances to what is in it.
    if !prism.bounds().meets(&swept.bounds().grown(around_m)) {
        return None;
    }
    let mut least = LeastHeight { band: swept.band(), prism, pivot: swept.pivot(), found: None };
    // What lies farther from the pivot than this has no radius of the band.
    let farthest = swept.band().r1_m + near + HAIR_M;
    for &wedge in swept.wedges() {
        match prism.shape() {
            PlanShape::Disc { center, radius_m } => {
                let center = *center - swept.pivot();
                least.look_at(wedge.stretch_of(center, center, near + radius_m));
            }
            PlanShape::Polygon(polygon) => {
                for (a, b) in polygon.segments() {
                    let (a, b) = (a - swept.pivot(), b - swept.pivot());
                    if nearest_on_segment(DVec2::ZERO, a, b).length_squared() <= farthest * farthest {
                        least.look_at(wedge.stretch_of(a, b, near));
                    }
                }
                for stretch in rays_inside(swept, wedge, polygon, prism.bounds()) {
                    least.look_at(Some(stretch));
                }
            }
        }
    }
    least.found
}

/// The parts of a wedge's border rays inside a polygon, out to the end of the band.
fn rays_inside(swept: &SweptBand, wedge: Wedge, polygon: &Polygon, bounds: Bounds) -> Vec<Stretch> {
    let mut inside = Vec::new();
    let cut = (wedge == Wedge::Whole).then_some(wedge.some_direction());
    for ray in wedge.rays().chain(cut) {
        let (from, to) = (ray * swept.band().r0_m, ray * swept.band().r1_m);
        let ray_bounds = Bounds::of([swept.pivot() + from, swept.pivot() + to]);
        if !ray_bounds.is_some_and(|b| b.meets(&bounds.grown(HAIR_M))) {
            continue;
        }
        if from == to {
            // A band of no length: its one point is inside or not.
            if polygon.contains(swept.pivot() + from) {
                inside.push(Stretch { near: from, far: from });
            }
            continue;
        }
        let parts = polygon.clip_segment(swept.pivot() + from, swept.pivot() + to);
        inside.extend(parts.into_iter().map(|(s, t)| Stretch { near: from.lerp(to, s), far: from.lerp(to, t) }));
    }
    inside
}

/// Keeps the smallest height over the intervals of radii that it is shown.
struct LeastHeight<'a> {
    band: &'a HeightBand,
    prism: &'a Prism,
    pivot: DVec2,
    found: Option<VerticalClearance>,
}

impl LeastHeight<'_> {
    fn look_at(&mut self, stretch: Option<Stretch>) {
        let Some(stretch) = stretch else { return };
        let from = stretch.near.length().max(self.band.r0_m);
        let to = stretch.far.length().min(self.band.r1_m);
        if from > to {
            return;
        }
        for r in [Some(from), Some(to), self.bend(from, to)].into_iter().flatten() {
            self.take(r, &stretch);
        }
    }

    /// The radius between two others at which passing over and passing under leave equal heights.
    fn bend(&self, from: f64, to: f64) -> Option<f64> {
        let difference = |r: f64| {
            let over = self.band.low_m(r) - self.prism.to_m();
            over - (self.prism.from_m() - self.band.high_m(r))
        };
        let (first, second) = (difference(from), difference(to));
        (first * second < 0.0).then(|| from + (to - from) * (first / (first - second)))
    }

    fn take(&mut self, r: f64, stretch: &Stretch) {
        let (low, high) = (self.band.low_m(r), self.band.high_m(r));
        let (over, under) = (low - self.prism.to_m(), self.prism.from_m() - high);
        let m = over.max(under);
        if self.found.is_some_and(|found| found.m <= m) {
            return;
        }
        let (z_m, passes) = if over >= under { (low, Passes::Over) } else { (high, Passes::Under) };
        self.found = Some(VerticalClearance { m, at: self.pivot + stretch.at_radius(r), z_m, passes });
    }
}

fn horizontal_clearance(swept: &SweptBand, prism: &Prism) -> Option<HorizontalClearance> {
    let mut nearest: Option<(f64, DVec2, DVec2)> = None;
    let mut look_at = |a: DVec2, b: DVec2| {
        // No point of the band is nearer to the segment than its circle is.
        let from_circle = nearest_on_segment(DVec2::ZERO, a, b).length() - swept.band().r1_m;
        if nearest.is_some_and(|n| from_circle - HAIR_M > n.0) {
            return;
        }
        for &wedge in swept.wedges() {
            for (at, toward) in nearest_in_sector(wedge, swept.band(), a, b) {
                let distance = at.distance(toward);
                if nearest.is_none_or(|n| distance < n.0) {
                    nearest = Some((distance, at, toward));
                }
            }
        }
    };
    let radius = match prism.shape() {
        PlanShape::Disc { center, radius_m } => {
            look_at(*center - swept.pivot(), *center - swept.pivot());
            *radius_m
        }
        PlanShape::Polygon(polygon) => {
            polygon.segments().for_each(|(a, b)| look_at(a - swept.pivot(), b - swept.pivot()));
            0.0
        }
    };
    nearest.map(|(distance, at, toward)| HorizontalClearance {
        m: distance - radius - swept.band().half_width_m,
        at: swept.pivot() + at,
        toward: swept.pivot() + toward + (at - toward).normalize_or_zero() * radius,
    })
}

/// Candidates for the nearest points of an annular sector and a segment that do not overlap, the sector's point first: over
/// the border rays, and straight outward or inward where the segment lies in the wedge.
fn nearest_in_sector(wedge: Wedge, band: &HeightBand, a: DVec2, b: DVec2) -> impl Iterator<Item = (DVec2, DVec2)> {
    let (r0, r1) = (band.r0_m, band.r1_m);
    let along_rays = wedge.rays().map(move |ray| nearest_between_segments(ray * r0, ray * r1, a, b));
    let radially = wedge.clip_segment(a, b).map(|(p, q)| {
        let near = nearest_on_segment(DVec2::ZERO, p, q);
        let far = if p.length_squared() > q.length_squared() { p } else { q };
        let toward = if near.length() >= r0 { near } else { far };
        let direction = toward.normalize_or(wedge.some_direction());
        (direction * toward.length().clamp(r0, r1), toward)
    });
    along_rays.chain(radially)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::polygons::offset;
    use crate::geometry::turns::Turns;
    use proptest::prelude::*;
    use std::f64::consts::{FRAC_PI_2, FRAC_PI_6, PI, TAU};

    /// An arm 3 m long and 0.2 m wide from 2.0 m to 2.2 m above the roof.
    fn arm() -> HeightBand {
        HeightBand {
            r0_m: 0.0,
            r1_m: 3.0,
            low_at_r0_m: 2.0,
            low_at_r1_m: 2.0,
            high_at_r0_m: 2.2,
            high_at_r1_m: 2.2,
            half_width_m: 0.1,
        }
    }

    /// A brace that rises from 0.5 m at the mast to 2.0 m at 1.5 m in front of it.
    fn brace() -> HeightBand {
        HeightBand { r1_m: 1.5, low_at_r0_m: 0.5, high_at_r0_m: 0.6, high_at_r1_m: 2.1, ..arm() }
    }

    fn whole(band: HeightBand) -> SweptBand {
        SweptBand::new(DVec2::ZERO, Turns::whole(), band).unwrap()
    }

    fn block(low: (f64, f64), high: (f64, f64), from_m: f64, to_m: f64) -> Prism {
        let polygon = Polygon::rectangle(DVec2::new(low.0, low.1), DVec2::new(high.0, high.1));
        Prism::new(PlanShape::Polygon(polygon), from_m, to_m).unwrap()
    }

    fn required(vertical_m: f64, around_m: f64) -> Required {
        Required::new(vertical_m, around_m).unwrap()
    }

    #[test]
    fn an_arm_passes_over_a_parapet_by_the_difference_of_their_heights() {
        let parapet = block((1.0, -5.0), (1.3, 5.0), 0.0, 1.1);
        let c = clearance(&whole(arm()), &parapet, &required(0.3, 0.1));
        let v = c.vertical.unwrap();
        assert!((v.m - 0.9).abs() < 1e-15 && v.z_m == 2.0 && v.passes == Passes::Over);
        assert!(!c.conflict && c.horizontal.is_none());
    }

    #[test]
    fn a_parapet_one_millimeter_too_high_stops_a_front_brace_and_one_millimeter_lower_does_not() {
        // The parapet's inner face stands 0.9 m before the mast; 0.1 + 0.05 m around it the brace's underside is at
        // 0.5 + (0.9 - 0.15) = 1.25 m. With 0.2 m asked for, the limit is 1.05 m.
        let at = |top: f64| {
            let parapet = block((0.9, -5.0), (1.2, 5.0), 0.0, top);
            clearance(&whole(brace()), &parapet, &required(0.2, 0.05))
        };
        assert!(!at(1.05).conflict && !at(1.049).conflict && at(1.051).conflict);
        let v = at(1.051).vertical.unwrap();
        assert!((v.m - 0.199).abs() < 2e-9 && (v.at - DVec2::new(0.75, 0.0)).length() < 2e-9);
    }

    #[test]
    fn slewed_past_the_block_the_arm_keeps_its_distance_on_the_plan() {
        // The block begins at 30 degrees left of the stop: nearest to the arm's end.
        let swept = SweptBand::new(DVec2::ZERO, Turns::between(-FRAC_PI_2, 0.0), arm()).unwrap();
        let wall = block((2.0, 1.0), (9.0, 4.0), 0.0, 9.0);
        let c = clearance(&swept, &wall, &required(0.3, 0.2));
        let h = c.horizontal.unwrap();
        assert!((h.m - 0.9).abs() < 1e-12 && !c.conflict);
        assert!(h.toward.y == 1.0 && h.at.y.abs() < 1e-12);
        assert!(clearance(&whole(arm()), &wall, &required(0.3, 0.2)).conflict);
    }

    #[test]
    fn a_block_under_which_the_arm_passes_is_measured_from_its_underside() {
        let beam = block((1.0, -1.0), (1.5, 1.0), 2.75, 3.5);
        let v = clearance(&whole(arm()), &beam, &required(0.3, 0.1)).vertical.unwrap();
        assert!((v.m - 0.55).abs() < 1e-12 && v.passes == Passes::Under && v.z_m == 2.2);
    }

    #[test]
    fn a_roof_all_around_the_mast_is_met_inside_its_ring_and_not_only_at_its_edges() {
        // No edge comes near the arm: the plan contains the whole circle.
        let roof = block((-20.0, -20.0), (20.0, 20.0), -1.0, 1.9);
        let v = clearance(&whole(arm()), &roof, &required(0.3, 0.1)).vertical.unwrap();
        assert!((v.m - 0.1).abs() < 1e-12);
        // A steep band is lowest at its beginning, in the middle of the roof.
        let v = clearance(&whole(brace()), &roof, &required(0.3, 0.1)).vertical.unwrap();
        assert!((v.m + 1.4).abs() < 1e-12 && v.at.length() < 1e-12);
    }

    #[test]
    fn a_mast_in_a_courtyard_is_clear_of_the_wall_around_it_by_the_distance_to_it() {
        let outer = Polygon::rectangle(DVec2::splat(-20.0), DVec2::splat(20.0)).outer;
        let court = Polygon::rectangle(DVec2::splat(-4.0), DVec2::splat(4.0)).outer;
        let wall = PlanShape::Polygon(Polygon { outer, holes: vec![court] });
        let wall = Prism::new(wall, 0.0, 9.0).unwrap();
        let c = clearance(&whole(arm()), &wall, &required(0.3, 0.2));
        assert!((c.horizontal.unwrap().m - 0.9).abs() < 1e-12);
        let longer = HeightBand { r1_m: 3.8, ..arm() };
        assert!(clearance(&whole(longer), &wall, &required(0.3, 0.2)).conflict);
    }

    #[test]
    fn a_round_mast_is_as_far_as_its_axis_less_its_radius() {
        let mast = PlanShape::Disc { center: DVec2::new(4.0, 0.0), radius_m: 0.15 };
        let mast = Prism::new(mast, 0.0, 3.0).unwrap();
        let c = clearance(&whole(arm()), &mast, &required(0.3, 0.2));
        let h = c.horizontal.unwrap();
        assert!((h.m - (4.0 - 0.15 - 3.0 - 0.1)).abs() < 1e-12);
        assert!((h.toward - DVec2::new(3.85, 0.0)).length() < 1e-12);
        assert!((c.share_of_limit() - 0.75 / 0.2).abs() < 1e-12);
    }

    #[test]
    fn exactly_at_the_clearance_around_is_clear_and_a_millimeter_nearer_is_not() {
        let wall = |x: f64| block((x, -5.0), (x + 1.0, 5.0), 0.0, 9.0);
        // 3 + 0.1 + 0.2.
        assert!(!clearance(&whole(arm()), &wall(3.3), &required(0.3, 0.2)).conflict);
        assert!(clearance(&whole(arm()), &wall(3.299), &required(0.3, 0.2)).conflict);
    }

    #[test]
    fn a_fixed_brace_meets_only_what_stands_in_its_own_direction() {
        let fixed = SweptBand::new(DVec2::ZERO, Turns::at([PI / 6.0]), arm()).unwrap();
        let in_line = DVec2::from_angle(FRAC_PI_6) * 2.0;
        let post = |at: DVec2| {
            let disc = PlanShape::Disc { center: at, radius_m: 0.1 };
            clearance(&fixed, &Prism::new(disc, 0.0, 9.0).unwrap(), &required(0.3, 0.2))
        };
        assert!(post(in_line).conflict);
        let beside = in_line + DVec2::from_angle(FRAC_PI_6).perp();
        assert!((post(beside).horizontal.unwrap().m - 0.8).abs() < 1e-12);
    }

    #[test]
    fn a_band_swept_through_no_direction_takes_no_space() {
        let none = SweptBand::new(DVec2::ZERO, Turns::none(), arm()).unwrap();
        let c = clearance(&none, &block((0.0, 0.0), (1.0, 1.0), 0.0, 9.0), &required(0.3, 0.2));
        assert!(!c.conflict && c.figure_m().is_none() && c.share_of_limit() == f64::INFINITY);
    }

    #[test]
    fn the_serving_range_and_the_rest_of_the_turn_together_are_as_tight_as_the_whole() {
        let serving = Turns::between(-0.6, 0.6);
        let swept = whole(arm());
        let wall = block((-2.0, -9.0), (-1.0, 9.0), 0.0, 9.0);
        let asked = required(0.3, 0.2);
        let front = clearance(&swept.through(serving.clone()), &wall, &asked);
        let rest = clearance(&swept.through(Turns::whole().minus(&serving)), &wall, &asked);
        assert!(!front.conflict && rest.conflict);
        assert_eq!(tightest([&front, &rest]), Some(1));
        assert_eq!(rest.vertical.unwrap().m, clearance(&swept, &wall, &asked).vertical.unwrap().m);
    }

    #[test]
    fn clearances_without_sense_cannot_be_asked_for() {
        assert_eq!(Required::new(0.3, -0.1), Err(RequiredFault { field: "around_m", value_m: -0.1 }));
        assert!(Required::new(f64::NAN, 0.1).is_err());
    }

    fn some_band() -> impl Strategy<Value = HeightBand> {
        (0.0..1.0_f64, 0.1..3.0_f64, 0.0..3.0_f64, 0.0..3.0_f64, 0.01..0.4_f64, 0.01..0.4_f64, 0.0..0.3_f64).prop_map(
            |(r0_m, length, low_at_r0_m, low_at_r1_m, first, second, half_width_m)| HeightBand {
                r0_m,
                r1_m: r0_m + length,
                low_at_r0_m,
                low_at_r1_m,
                high_at_r0_m: low_at_r0_m + first,
                high_at_r1_m: low_at_r1_m + second,
                half_width_m,
            },
        )
    }

    /// A star-shaped obstacle, mostly not convex, sometimes with a hole, sometimes around the pivot.
    fn some_prism() -> impl Strategy<Value = Prism> {
        let radii = prop::collection::vec(0.3..2.5_f64, 3..9);
        (radii, -3.0..3.0_f64, -3.0..3.0_f64, 0.0..2.5_f64, 0.1..1.5_f64, any::<bool>()).prop_map(
            |(radii, x, y, from, height, hollow)| {
                let n = radii.len() as f64;
                let center = DVec2::new(x, y);
                let ring = |share: f64| {
                    let corner = |(i, r): (usize, &f64)| center + DVec2::from_angle(TAU * i as f64 / n) * (r * share);
                    radii.iter().enumerate().map(corner).collect::<Vec<_>>()
                };
                let holes = if hollow { vec![ring(0.5)] } else { Vec::new() };
                Prism::new(PlanShape::Polygon(Polygon { outer: ring(1.0), holes }), from, from + height).unwrap()
            },
        )
    }

    fn some_sweep() -> impl Strategy<Value = Turns> {
        prop_oneof![
            Just(Turns::whole()),
            (-3.0..3.0_f64, 0.1..6.2_f64).prop_map(|(from, span)| Turns::between(from, from + span)),
            prop::collection::vec(-3.0..3.0_f64, 1..4).prop_map(Turns::at),
        ]
    }

    fn height_between(band: &HeightBand, prism: &Prism, r: f64) -> f64 {
        (band.low_m(r) - prism.to_m()).max(prism.from_m() - band.high_m(r))
    }

    fn sampled_points(swept: &SweptBand) -> Vec<(f64, DVec2)> {
        let band = swept.band();
        let angles = swept.sweep().intervals().into_iter().flat_map(|t| {
            let count = if t.span_rad() > 0.0 { 120 } else { 0 };
            (0..=count).map(move |i| t.from_rad + t.span_rad() * f64::from(i) / f64::from(count.max(1)))
        });
        let radii = |angle: f64| {
            (0..=60).map(move |j| {
                let r = band.r0_m + (band.r1_m - band.r0_m) * f64::from(j) / 60.0;
                (r, swept.pivot() + DVec2::from_angle(angle) * r)
            })
        };
        angles.flat_map(radii).collect()
    }

    proptest! {
        /// The witness: the definition of Q at some 7,000 points of the sector. None may be tighter than the figure, and the
        /// figure's own place must be a point of Q with that height.
        #[test]
        fn no_sampled_point_is_tighter_than_the_figure_and_the_figure_is_reached(
            band in some_band(), prism in some_prism(), sweep in some_sweep(), around in 0.0..0.5_f64,
        ) {
            let swept = SweptBand::new(DVec2::new(0.3, -0.2), sweep, band).unwrap();
            let near = band.half_width_m + around;
            let c = clearance(&swept, &prism, &required(0.3, around));
            for (r, p) in sampled_points(&swept) {
                let distance = prism.shape().distance_m(p);
                if distance < near - 1e-8 {
                    let v = c.vertical.expect("a point of the sector lies within the distance");
                    prop_assert!(height_between(&band, &prism, r) >= v.m - 1e-9);
                }
                if let Some(h) = c.horizontal {
                    prop_assert!(distance - band.half_width_m >= h.m - 1e-9);
                }
            }
            if let Some(v) = c.vertical {
                let r = v.at.distance(swept.pivot());
                prop_assert!(prism.shape().distance_m(v.at) <= near + 1e-9);
                prop_assert!((height_between(&band, &prism, r) - v.m).abs() < 1e-7);
                prop_assert!(band.r0_m - 1e-9 <= r && r <= band.r1_m + 1e-9);
            }
            if let Some(h) = c.horizontal {
                prop_assert!((h.at.distance(h.toward) - band.half_width_m - h.m).abs() < 1e-9);
                prop_assert!(prism.shape().distance_m(h.toward) < 1e-9);
            }
            prop_assert!(c.vertical.is_some() != c.horizontal.is_some());
        }

        /// An obstacle that grows on the plan and in height never gives more room.
        #[test]
        fn a_larger_obstacle_never_gives_more_room(
            band in some_band(), prism in some_prism(), sweep in some_sweep(), grow in 0.0..0.8_f64,
        ) {
            let swept = SweptBand::new(DVec2::new(0.3, -0.2), sweep, band).unwrap();
            let asked = required(0.3, 0.1);
            let before = clearance(&swept, &prism, &asked);
            let PlanShape::Polygon(polygon) = prism.shape() else { return Ok(()) };
            let of = |polygon: Polygon, more: f64| {
                Prism::new(PlanShape::Polygon(polygon), prism.from_m() - more, prism.to_m() + more).unwrap()
            };
            let filled = of(Polygon::simple(polygon.outer.clone()), 0.0);
            let taller = of(polygon.clone(), grow);
            let wider = offset(std::slice::from_ref(polygon), grow + 0.001, 1e-3).unwrap();
            let wider = of(wider[0].clone(), 0.0);
            for larger in [&filled, &taller, &wider] {
                let after = clearance(&swept, larger, &asked);
                prop_assert!(after.conflict || !before.conflict);
                if let Some(v) = before.vertical {
                    prop_assert!(after.vertical.unwrap().m <= v.m + 1e-9);
                }
                if let (Some(h), Some(g)) = (before.horizontal, after.horizontal) {
                    prop_assert!(g.m <= h.m + 1e-9);
                }
            }
        }
    }
}
