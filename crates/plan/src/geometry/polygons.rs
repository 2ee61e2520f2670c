//! Polygons with holes and what can be made of them: the one door to the polygon crates.
//!
//! Union, difference and intersection are computed on a grid of 2⁻³⁰ m (about one nanometer) with 64-bit integers and exact
//! predicates: every corner of a result, given or new, lies within a nanometer of its true place, so an area is right to
//! its perimeter times that. Corners must lie within [`FARTHEST_M`] of the origin. Rings may go either way round: outer
//! rings are turned counter-clockwise and holes clockwise before anything is done, and come out that way.

use super::bounds::Bounds;
use super::hair::HAIR_M;
use super::rings::{self, Orientation};
use super::segments::nearest_on_segment;
use glam::DVec2;
use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::scale::{FixedScaleFloatOverlay, FixedScaleOverlayError};
use std::f64::consts::TAU;
use thiserror::Error;

/// Corners may lie this far from the origin, m: the grid then still fits its integers with ten bits to spare.
pub const FARTHEST_M: f64 = 1e6;

/// Steps of the grid in a meter.
const GRID_PER_M: f64 = (1_u64 << 30) as f64;

/// An area with holes, m. Corners are not repeated at the end.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Polygon {
    /// The outer ring.
    pub outer: Vec<DVec2>,
    /// Rings of what is cut out; inside the outer ring and apart from each other.
    pub holes: Vec<Vec<DVec2>>,
}

/// Why polygons could not be combined.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum PolygonFault {
    /// A corner that is no place or lies beyond [`FARTHEST_M`].
    #[error("corner ({x_m}, {y_m}) is not a place within {FARTHEST_M} m of the origin")]
    OutOfRange {
        /// x as given, m.
        x_m: f64,
        /// y as given, m.
        y_m: f64,
    },
    /// A distance that is not finite, or a chord error that is not positive.
    #[error("{what} is {value_m} m")]
    BadLength {
        /// Which length.
        what: &'static str,
        /// As given, m.
        value_m: f64,
    },
    /// The grid refused the corners though they are in range.
    #[error("the polygon grid refused: {0:?}")]
    Grid(FixedScaleOverlayError),
}

impl Polygon {
    /// A polygon without holes.
    pub fn simple(outer: Vec<DVec2>) -> Self {
        Self { outer, holes: Vec::new() }
    }

    /// The upright rectangle between two corners, counter-clockwise.
    pub fn rectangle(low: DVec2, high: DVec2) -> Self {
        Self::simple(vec![low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)])
    }

    /// All rings, the outer first.
    pub fn rings(&self) -> impl Iterator<Item = &[DVec2]> + Clone {
        std::iter::once(self.outer.as_slice()).chain(self.holes.iter().map(Vec::as_slice))
    }

    /// The segments of all rings.
    pub fn segments(&self) -> impl Iterator<Item = (DVec2, DVec2)> + Clone + '_ {
        self.rings().flat_map(rings::segments)
    }

    /// Area without the holes, m², whichever way the rings go.
    pub fn area_m2(&self) -> f64 {
        let holes: f64 = self.holes.iter().map(|h| rings::signed_area_m2(h).abs()).sum();
        rings::signed_area_m2(&self.outer).abs() - holes
    }

    /// Whether a point lies inside: within the outer ring and in no hole. On a border the answer is one or the other.
    pub fn contains(&self, p: DVec2) -> bool {
        rings::ring_contains(&self.outer, p) && !self.holes.iter().any(|h| rings::ring_contains(h, p))
    }

    /// Distance from a point to the polygon, m; 0 inside, infinite for a polygon without corners.
    pub fn distance_m(&self, p: DVec2) -> f64 {
        if self.contains(p) { 0.0 } else { self.distance_to_border_m(p) }
    }

    /// Distance from a point to the nearest ring, m, from inside as from outside.
    pub fn distance_to_border_m(&self, p: DVec2) -> f64 {
        self.rings().map(|r| rings::distance_to_ring(r, p)).fold(f64::INFINITY, f64::min)
    }

    /// The box around the outer ring; none without corners.
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::of(self.outer.iter().copied())
    }

    /// The parts of segment `a`–`b` inside the polygon, as fractions of its length; parts along the border count.
    pub fn clip_segment(&self, a: DVec2, b: DVec2) -> Vec<(f64, f64)> {
        let length = a.distance(b);
        if length == 0.0 {
            return Vec::new();
        }
        let mut cuts = vec![0.0, 1.0];
        for (c, d) in self.segments() {
            cuts.extend(cut_fractions(a, b, c, d));
        }
        cuts.sort_by(f64::total_cmp);
        let inside = |&(from, to): &(f64, f64)| {
            let middle = a.lerp(b, from.midpoint(to));
            (to - from) * length > HAIR_M && (self.contains(middle) || self.distance_to_border_m(middle) <= HAIR_M)
        };
        let mut parts: Vec<(f64, f64)> = Vec::new();
        for part in cuts.windows(2).map(|w| (w[0], w[1])).filter(inside) {
            match parts.last_mut() {
                Some(last) if (part.0 - last.1) * length <= HAIR_M => last.1 = part.1,
                _ => parts.push(part),
            }
        }
        parts
    }
}

/// Fractions of `a`–`b` at which it may enter or leave something bounded by `c`–`d`.
fn cut_fractions(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> impl Iterator<Item = f64> {
    let (along, edge) = (b - a, d - c);
    let turn = along.perp_dot(edge);
    let mut cuts = [f64::NAN; 2];
    if turn.abs() > f64::EPSILON * along.length() * edge.length() {
        let (t, u) = ((c - a).perp_dot(edge) / turn, (c - a).perp_dot(along) / turn);
        let slack = HAIR_M / edge.length();
        if (-slack..=1.0 + slack).contains(&u) {
            cuts[0] = t;
        }
    } else if nearest_on_segment(c, a, b).distance(c) <= HAIR_M || nearest_on_segment(d, a, b).distance(d) <= HAIR_M {
        let fraction = |p: DVec2| (p - a).dot(along) / along.length_squared();
        cuts = [fraction(c), fraction(d)];
    }
    cuts.into_iter().filter(|t| (0.0..=1.0).contains(t))
}

/// What lies in any of the polygons. Polygons that share a border become one; the order is the grid's, from left to right.
pub fn union(polygons: &[Polygon]) -> Result<Vec<Polygon>, PolygonFault> {
    combine(polygons, &[], OverlayRule::Union)
}

/// What lies in any of `from` and in none of `cut`.
pub fn difference(from: &[Polygon], cut: &[Polygon]) -> Result<Vec<Polygon>, PolygonFault> {
    combine(from, cut, OverlayRule::Difference)
}

/// What lies in any of `a` and in any of `b`.
pub fn intersection(a: &[Polygon], b: &[Polygon]) -> Result<Vec<Polygon>, PolygonFault> {
    combine(a, b, OverlayRule::Intersect)
}

/// All points within `distance_m` of the polygons, or with a negative distance all points of them at least so far inside.
///
/// Round joins: each border segment is swept with a circle. Circles are drawn by chords whose corners lie on the true circle,
/// so the border lies inside the true one by `chord_error_m` at most, and on it along straight edges.
pub fn offset(polygons: &[Polygon], distance_m: f64, chord_error_m: f64) -> Result<Vec<Polygon>, PolygonFault> {
    if !distance_m.is_finite() {
        return Err(PolygonFault::BadLength { what: "offset distance", value_m: distance_m });
    }
    if !(chord_error_m > 0.0 && chord_error_m.is_finite()) {
        return Err(PolygonFault::BadLength { what: "chord error", value_m: chord_error_m });
    }
    if distance_m == 0.0 {
        return union(polygons);
    }
    let radius = distance_m.abs();
    let swept: Vec<Polygon> = polygons
        .iter()
        .flat_map(Polygon::segments)
        .map(|(a, b)| Polygon::simple(capsule_ring(a, b, radius, chord_error_m)))
        .collect();
    if distance_m > 0.0 {
        union(&polygons.iter().cloned().chain(swept).collect::<Vec<_>>())
    } else {
        difference(polygons, &swept)
    }
}

/// The circle around a point as a ring of chords, corners on the circle, no chord farther inside than `chord_error_m`.
pub fn circle_ring(center: DVec2, radius_m: f64, chord_error_m: f64) -> Vec<DVec2> {
    let count = 2 * chords_in_half_turn(radius_m, chord_error_m);
    (0..count).map(|i| center + DVec2::from_angle(TAU * i as f64 / count as f64) * radius_m).collect()
}

/// The ring around all points within `radius` of a segment.
fn capsule_ring(a: DVec2, b: DVec2, radius: f64, chord_error_m: f64) -> Vec<DVec2> {
    let along = (b - a).normalize_or(DVec2::X);
    let count = chords_in_half_turn(radius, chord_error_m);
    let half_circle = |center: DVec2, start: DVec2| {
        (0..=count).map(move |i| center + start.rotate(DVec2::from_angle(TAU / 2.0 * i as f64 / count as f64)) * radius)
    };
    half_circle(b, -along.perp()).chain(half_circle(a, along.perp())).collect()
}

/// Sagitta of a chord over angle φ: s = r·(1 − cos(φ/2)).
fn chords_in_half_turn(radius_m: f64, chord_error_m: f64) -> usize {
    let cosine = (1.0 - chord_error_m / radius_m).clamp(-1.0, 1.0);
    let widest = (2.0 * cosine.acos()).max(1e-3);
    ((TAU / 2.0 / widest).ceil() as usize).max(2)
}

/// The polygon cut into triangles, each counter-clockwise; triangles without area are left out.
pub fn triangulate(polygon: &Polygon) -> Vec<[DVec2; 3]> {
    let corners: Vec<DVec2> = polygon.rings().flatten().copied().collect();
    let mut hole_starts = Vec::with_capacity(polygon.holes.len());
    let mut start = polygon.outer.len();
    for hole in &polygon.holes {
        hole_starts.push(start);
        start += hole.len();
    }
    let mut indices: Vec<usize> = Vec::new();
    earcut::Earcut::new().earcut(corners.iter().map(DVec2::to_array), &hole_starts, &mut indices);
    let triangle = |i: &[usize]| {
        let [a, b, c] = [corners[i[0]], corners[i[1]], corners[i[2]]];
        let area = (b - a).perp_dot(c - a);
        if area > 0.0 { Some([a, b, c]) } else { (area < 0.0).then_some([a, c, b]) }
    };
    indices.chunks_exact(3).filter_map(triangle).collect()
}

type GridShapes = Vec<Vec<Vec<[f64; 2]>>>;

fn combine(subject: &[Polygon], clip: &[Polygon], rule: OverlayRule) -> Result<Vec<Polygon>, PolygonFault> {
    let (subject, clip) = (to_grid(subject)?, to_grid(clip)?);
    if subject.is_empty() {
        return Ok(Vec::new());
    }
    let shapes = subject
        .overlay_with_fixed_scale_as::<i64>(&clip, rule, FillRule::NonZero, GRID_PER_M)
        .map_err(PolygonFault::Grid)?;
    Ok(shapes.into_iter().filter_map(from_grid).collect())
}

fn to_grid(polygons: &[Polygon]) -> Result<GridShapes, PolygonFault> {
    for p in polygons.iter().flat_map(Polygon::rings).flatten() {
        if !(p.x.abs() <= FARTHEST_M && p.y.abs() <= FARTHEST_M) {
            return Err(PolygonFault::OutOfRange { x_m: p.x, y_m: p.y });
        }
    }
    let turned = |ring: &[DVec2], way| rings::oriented(ring, way).into_iter().map(DVec2::into).collect();
    let shape = |p: &Polygon| {
        let outer = std::iter::once(turned(&p.outer, Orientation::CounterClockwise));
        outer.chain(p.holes.iter().map(|h| turned(h, Orientation::Clockwise))).collect()
    };
    Ok(polygons.iter().filter(|p| p.outer.len() >= 3).map(shape).collect())
}

fn from_grid(shape: Vec<Vec<[f64; 2]>>) -> Option<Polygon> {
    let mut rings = shape.into_iter().map(|ring| ring.into_iter().map(DVec2::from).collect());
    let outer = rings.next()?;
    Some(Polygon { outer, holes: rings.collect() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn square(x: f64, y: f64, side: f64) -> Polygon {
        Polygon::rectangle(DVec2::new(x, y), DVec2::new(x + side, y + side))
    }

    fn total_area(polygons: &[Polygon]) -> f64 {
        polygons.iter().map(Polygon::area_m2).sum()
    }

    #[test]
    fn two_squares_that_overlap_by_a_quarter_unite_to_seven_quarters() {
        let (a, b) = (square(0.0, 0.0, 1.0), square(0.5, 0.5, 1.0));
        let pair = [a.clone(), b.clone()];
        // Perimeter below 8 m times a nanometer.
        assert!((total_area(&union(&pair).unwrap()) - 1.75).abs() < 8e-9);
        assert!((total_area(&intersection(&pair[..1], &pair[1..]).unwrap()) - 0.25).abs() < 8e-9);
        assert!((total_area(&difference(&[a], &[b]).unwrap()) - 0.75).abs() < 8e-9);
    }

    #[test]
    fn squares_that_share_a_border_become_one_without_a_seam() {
        let joined = union(&[square(0.0, 0.0, 1.0), square(1.0, 0.0, 1.0)]).unwrap();
        assert_eq!(joined.len(), 1);
        assert_eq!(joined[0].outer.len(), 4);
    }

    #[test]
    fn a_square_cut_from_within_leaves_a_hole_whichever_way_its_ring_goes() {
        let mut inner = square(1.0, 1.0, 1.0);
        inner.outer.reverse();
        let left = difference(&[square(0.0, 0.0, 3.0)], &[inner]).unwrap();
        assert_eq!((left.len(), left[0].holes.len()), (1, 1));
        assert!((left[0].area_m2() - 8.0).abs() < 16e-9);
        assert!(!left[0].contains(DVec2::new(1.5, 1.5)) && left[0].contains(DVec2::new(0.5, 1.5)));
        assert_eq!(left[0].distance_m(DVec2::new(1.5, 1.25)), 0.25);
    }

    #[test]
    fn corners_without_a_place_are_an_error_and_not_a_panic() {
        let lost = Polygon::simple(vec![DVec2::ZERO, DVec2::new(f64::NAN, 0.0), DVec2::Y]);
        assert!(matches!(union(&[lost]), Err(PolygonFault::OutOfRange { .. })));
        assert!(matches!(union(&[square(2e6, 0.0, 1.0)]), Err(PolygonFault::OutOfRange { .. })));
        assert_eq!(union(&[Polygon::default()]), Ok(Vec::new()));
    }

    #[test]
    fn a_square_grown_by_r_has_area_s2_plus_4sr_plus_pi_r2() {
        let grown = total_area(&offset(&[square(-3.0, 7.0, 2.0)], 0.5, 1e-6).unwrap());
        let exact = 4.0 + 4.0 * 2.0 * 0.5 + std::f64::consts::PI * 0.25;
        // Chords take off two thirds of the chord error along the round corners, whose length is 2πr.
        assert!(grown <= exact + 1e-8 && grown >= exact - std::f64::consts::PI * 1e-6);
    }

    #[test]
    fn a_square_shrunk_by_a_quarter_keeps_its_sharp_corners() {
        let shrunk = offset(&[square(0.0, 0.0, 2.0)], -0.25, 1e-4).unwrap();
        assert_eq!(shrunk.len(), 1);
        // Only straight edges border the result: 1.5 m squared, to a nanometer along 6 m.
        assert!((total_area(&shrunk) - 2.25).abs() < 6e-9);
        assert!(offset(&[square(0.0, 0.0, 2.0)], -1.01, 1e-3).unwrap().is_empty());
    }

    #[test]
    fn lengths_without_sense_are_refused_by_the_offset() {
        let one = [square(0.0, 0.0, 1.0)];
        assert!(matches!(offset(&one, f64::NAN, 1e-3), Err(PolygonFault::BadLength { what: "offset distance", .. })));
        assert!(matches!(offset(&one, 1.0, 0.0), Err(PolygonFault::BadLength { what: "chord error", .. })));
    }

    #[test]
    fn a_line_across_a_courtyard_is_kept_in_two_parts() {
        let court = Polygon { outer: square(0.0, 0.0, 10.0).outer, holes: vec![square(4.0, 4.0, 2.0).outer] };
        let parts = court.clip_segment(DVec2::new(-10.0, 5.0), DVec2::new(30.0, 5.0));
        // Ten meters before the wall on a line of 40: 10/40, 14/40, 16/40, 20/40.
        assert_eq!(parts, vec![(0.25, 0.35), (0.4, 0.5)]);
        assert_eq!(court.clip_segment(DVec2::new(4.5, 5.0), DVec2::new(5.5, 5.0)), vec![]);
    }

    #[test]
    fn a_line_along_the_border_is_kept() {
        let parts = square(0.0, 0.0, 2.0).clip_segment(DVec2::new(-2.0, 0.0), DVec2::new(6.0, 0.0));
        assert_eq!(parts, vec![(0.25, 0.5)]);
    }

    #[test]
    fn a_courtyard_is_cut_into_triangles_of_its_own_area() {
        let court = Polygon { outer: square(0.0, 0.0, 10.0).outer, holes: vec![square(4.0, 4.0, 2.0).outer] };
        let triangles = triangulate(&court);
        let area: f64 = triangles.iter().map(|t| rings::signed_area_m2(t)).sum();
        assert!((area - 96.0).abs() < 1e-12);
        assert!(triangles.iter().all(|t| rings::signed_area_m2(t) > 0.0));
        assert!(triangulate(&Polygon::default()).is_empty());
    }

    /// A star-shaped ring: always simple.
    fn star() -> impl Strategy<Value = Polygon> {
        (prop::collection::vec(0.3..4.0_f64, 3..12), -3.0..3.0_f64, -3.0..3.0_f64).prop_map(|(radii, x, y)| {
            let n = radii.len() as f64;
            let corner = |(i, r): (usize, f64)| DVec2::new(x, y) + DVec2::from_angle(TAU * i as f64 / n) * r;
            Polygon::simple(radii.into_iter().enumerate().map(corner).collect())
        })
    }

    proptest! {
        /// |A| + |B| = |A or B| + |A and B| and |A| = |A without B| + |A and B|: perimeters below 100 m times a nanometer.
        #[test]
        fn areas_of_union_intersection_and_difference_add_up(a in star(), b in star()) {
            let (first, second) = (a.area_m2(), b.area_m2());
            let both = total_area(&intersection(std::slice::from_ref(&a), std::slice::from_ref(&b)).unwrap());
            let any = total_area(&union(&[a.clone(), b.clone()]).unwrap());
            let rest = total_area(&difference(&[a], &[b]).unwrap());
            prop_assert!((first + second - any - both).abs() < 5e-7);
            prop_assert!((first - rest - both).abs() < 5e-7);
        }

        /// A triangulation covers what it came from: sum of areas, and membership of a point.
        #[test]
        fn triangles_cover_their_polygon(a in star(), x in -6.0..6.0_f64, y in -6.0..6.0_f64) {
            let triangles = triangulate(&a);
            let area: f64 = triangles.iter().map(|t| rings::signed_area_m2(t)).sum();
            prop_assert!((area - a.area_m2()).abs() < 1e-12 * a.area_m2().max(1.0));
            let p = DVec2::new(x, y);
            if a.distance_to_border_m(p) > 1e-9 {
                let in_triangles = triangles.iter().any(|t| rings::ring_contains(t, p) || rings::distance_to_ring(t, p) < 1e-12);
                prop_assert_eq!(in_triangles, a.contains(p));
            }
        }

        /// Points of the grown polygon lie within the distance, points well outside it do not.
        #[test]
        fn the_offset_holds_the_points_within_its_distance(a in star(), by in 0.05..2.0_f64, x in -9.0..9.0_f64, y in -9.0..9.0_f64) {
            let p = DVec2::new(x, y);
            let distance = a.distance_m(p);
            prop_assume!((distance - by).abs() > 2e-3);
            let grown = offset(&[a], by, 1e-3).unwrap();
            prop_assert_eq!(grown.iter().any(|g| g.contains(p)), distance < by);
        }

        /// Each kept part of a line lies inside, each left out part outside.
        #[test]
        fn a_clipped_line_lies_inside_its_polygon(a in star(), x in -6.0..6.0_f64, y in -6.0..6.0_f64, dx in -9.0..9.0_f64, dy in -9.0..9.0_f64) {
            let (p, q) = (DVec2::new(x, y), DVec2::new(x + dx, y + dy));
            let parts = a.clip_segment(p, q);
            for i in 0..200 {
                let t = f64::from(i) / 200.0 + 0.0017;
                let at = p.lerp(q, t);
                if a.distance_to_border_m(at) < 1e-6 { continue; }
                let kept = parts.iter().any(|&(from, to)| from <= t && t <= to) && t <= 1.0;
                prop_assert_eq!(kept, a.contains(at) && t <= 1.0);
            }
        }
    }
}
