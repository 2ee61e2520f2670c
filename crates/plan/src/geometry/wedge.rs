//! Wedges of directions about the origin, and what of a rounded segment lies in one: the part nearest and the part farthest
//! from the origin.
//!
//! A wedge of at most half a turn is convex, and so is a segment with everything within a distance of it. What they share is
//! convex too, so its distances from the origin are one interval, and each of them is found on the straight line from its
//! nearest to its farthest point. Nearest: the foot, else where a ray of the wedge enters. Farthest: beyond one of the two ends,
//! else where a ray leaves.

use super::segments::nearest_on_segment;
use super::turns::Turns;
use glam::DVec2;
use std::f64::consts::PI;

/// Directions about the origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Wedge {
    /// All of them.
    Whole,
    /// One; a unit vector.
    Ray(DVec2),
    /// Counter-clockwise from one to the other, at most half a turn; unit vectors.
    Between(DVec2, DVec2),
}

/// A convex set by its points nearest to the origin and farthest from it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch {
    pub(crate) near: DVec2,
    pub(crate) far: DVec2,
}

/// Intervals shorter than this are one direction, rad.
const NARROWEST_RAD: f64 = 1e-9;

impl Wedge {
    /// Wedges that together are a set of directions. Intervals beyond half a turn are cut in halves.
    pub(crate) fn of(turns: &Turns) -> Vec<Self> {
        if turns.is_whole() {
            return vec![Self::Whole];
        }
        let mut wedges = Vec::new();
        for turn in turns.intervals() {
            let between = |a: f64, b: f64| Self::Between(DVec2::from_angle(a), DVec2::from_angle(b));
            if turn.span_rad() <= NARROWEST_RAD {
                wedges.push(Self::Ray(DVec2::from_angle(turn.middle_rad())));
            } else if turn.span_rad() > PI {
                wedges.push(between(turn.from_rad, turn.middle_rad()));
                wedges.push(between(turn.middle_rad(), turn.to_rad));
            } else {
                wedges.push(between(turn.from_rad, turn.to_rad));
            }
        }
        wedges
    }

    /// Its border rays; none for the whole turn.
    pub(crate) fn rays(self) -> impl Iterator<Item = DVec2> {
        let (first, second) = match self {
            Self::Whole => (None, None),
            Self::Ray(ray) => (Some(ray), None),
            Self::Between(from, to) => (Some(from), Some(to)),
        };
        first.into_iter().chain(second)
    }

    /// Any one of its directions.
    pub(crate) fn some_direction(self) -> DVec2 {
        self.rays().next().unwrap_or(DVec2::X)
    }

    /// Whether a point lies in its inside or on its border; for one direction always no, since its ray tells all.
    fn contains(self, p: DVec2) -> bool {
        match self {
            Self::Whole => true,
            Self::Ray(_) => false,
            Self::Between(from, to) => from.perp_dot(p) >= 0.0 && p.perp_dot(to) >= 0.0,
        }
    }

    /// The part of a segment in the wedge; for one direction none, since its ray tells all.
    pub(crate) fn clip_segment(self, a: DVec2, b: DVec2) -> Option<(DVec2, DVec2)> {
        let Self::Between(from, to) = self else {
            return (self == Self::Whole).then_some((a, b));
        };
        let (mut start, mut end) = (0.0_f64, 1.0_f64);
        for (at_a, at_b) in [(from.perp_dot(a), from.perp_dot(b)), (a.perp_dot(to), b.perp_dot(to))] {
            if at_a < 0.0 && at_b < 0.0 {
                return None;
            }
            if at_a < 0.0 {
                start = start.max(at_a / (at_a - at_b));
            } else if at_b < 0.0 {
                end = end.min(at_a / (at_a - at_b));
            }
        }
        (start <= end).then(|| (a.lerp(b, start), a.lerp(b, end)))
    }

    /// What of the points within `radius` of segment `a`–`b` lies in the wedge.
    pub(crate) fn stretch_of(self, a: DVec2, b: DVec2, radius: f64) -> Option<Stretch> {
        let mut stretch = Widest::default();
        let foot = nearest_on_segment(DVec2::ZERO, a, b);
        let distance = foot.length();
        if distance <= radius {
            stretch.take(DVec2::ZERO);
        } else {
            stretch.take_if(self, foot * ((distance - radius) / distance));
        }
        for end in [a, b] {
            let length = end.length();
            let outward = if length > 0.0 { end / length } else { self.some_direction() };
            stretch.take_if(self, outward * (length + radius));
        }
        for ray in self.rays() {
            if let Some((from, to)) = ray_through_capsule(ray, a, b, radius) {
                stretch.take(ray * from);
                stretch.take(ray * to);
            }
        }
        stretch.found
    }
}

impl Stretch {
    /// The point of the straight line from the nearest to the farthest point at a distance from the origin between theirs.
    pub(crate) fn at_radius(&self, radius: f64) -> DVec2 {
        let along = self.far - self.near;
        let (qa, qb, qc) = (along.length_squared(), self.near.dot(along), self.near.length_squared() - radius * radius);
        if qa == 0.0 {
            return self.near;
        }
        let t = (-qb + (qb * qb - qa * qc).max(0.0).sqrt()) / qa;
        self.near + along * t.clamp(0.0, 1.0)
    }
}

#[derive(Default)]
struct Widest {
    found: Option<Stretch>,
}

impl Widest {
    fn take(&mut self, p: DVec2) {
        let stretch = self.found.get_or_insert(Stretch { near: p, far: p });
        if p.length_squared() < stretch.near.length_squared() {
            stretch.near = p;
        }
        if p.length_squared() > stretch.far.length_squared() {
            stretch.far = p;
        }
    }

    fn take_if(&mut self, wedge: Wedge, p: DVec2) {
        if wedge.contains(p) {
            self.take(p);
        }
    }
}

/// Distances along a ray from the origin at which it enters and leaves the points within `radius` of a segment.
fn ray_through_capsule(ray: DVec2, a: DVec2, b: DVec2, radius: f64) -> Option<(f64, f64)> {
    let parts =
        [ray_through_disc(ray, a, radius), ray_through_disc(ray, b, radius), ray_through_box(ray, a, b, radius)];
    let (from, to) = parts
        .into_iter()
        .flatten()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |all, part| (all.0.min(part.0), all.1.max(part.1)));
    (to >= 0.0 && from <= to).then_some((from.max(0.0), to))
}

fn ray_through_disc(ray: DVec2, center: DVec2, radius: f64) -> Option<(f64, f64)> {
    let beside = ray.perp_dot(center);
    let half = (radius * radius - beside * beside).sqrt();
    let middle = ray.dot(center);
    // NaN where the line misses the disc.
    (!half.is_nan()).then_some((middle - half, middle + half))
}

/// The straight part of a rounded segment: no farther than `radius` from its line, between its ends.
fn ray_through_box(ray: DVec2, a: DVec2, b: DVec2, radius: f64) -> Option<(f64, f64)> {
    let length = a.distance(b);
    if length == 0.0 {
        return None;
    }
    let along = (b - a) / length;
    let beside = along.perp();
    let mut span = (f64::NEG_INFINITY, f64::INFINITY);
    for (axis, low, high) in [(beside, -radius, radius), (along, 0.0, length)] {
        let (slope, start) = (axis.dot(ray), axis.dot(a));
        if slope == 0.0 {
            if !(low..=high).contains(&-start) {
                return None;
            }
            continue;
        }
        let (first, second) = ((low + start) / slope, (high + start) / slope);
        span = (span.0.max(first.min(second)), span.1.min(first.max(second)));
    }
    (span.0 <= span.1).then_some(span)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::segments::distance_to_segment;
    use proptest::prelude::*;

    proptest! {
        /// The witness: points of a fine polar grid in wedge and rounded segment. None lies nearer or farther than the
        /// stretch says, and its own ends belong to both.
        #[test]
        fn nothing_of_a_rounded_segment_in_a_wedge_lies_outside_its_stretch(
            ax in -4.0..4.0_f64, ay in -4.0..4.0_f64, bx in -4.0..4.0_f64, by in -4.0..4.0_f64,
            radius in 0.0..1.5_f64, from in -3.0..3.0_f64, span in 0.05..3.1_f64,
        ) {
            let (a, b) = (DVec2::new(ax, ay), DVec2::new(bx, by));
            let turns = Turns::between(from, from + span);
            let wedge = Wedge::of(&turns)[0];
            let stretch = wedge.stretch_of(a, b, radius);
            let mut sampled = 0;
            for i in 0..60 {
                for j in 0..60 {
                    let p = DVec2::from_angle(from + span * f64::from(i) / 59.0) * (f64::from(j) * 0.12);
                    if distance_to_segment(p, a, b) <= radius - 1e-9 {
                        sampled += 1;
                        let Some(s) = stretch else { return Err(TestCaseError::fail("point found, stretch not")) };
                        prop_assert!(s.near.length() <= p.length() + 1e-9 && p.length() <= s.far.length() + 1e-9);
                    }
                }
            }
            if let Some(s) = stretch {
                for end in [s.near, s.far, s.at_radius(s.near.length().midpoint(s.far.length()))] {
                    prop_assert!(distance_to_segment(end, a, b) <= radius + 1e-9);
                    let (f, t) = (DVec2::from_angle(from), DVec2::from_angle(from + span));
                    let on_a_ray = f.perp_dot(end).abs() < 1e-9 || end.perp_dot(t).abs() < 1e-9;
                    let in_wedge = end.length() < 1e-9 || turns.contains(end.y.atan2(end.x)) || on_a_ray;
                    prop_assert!(in_wedge);
                }
            } else {
                prop_assert_eq!(sampled, 0);
            }
        }
    }
}
