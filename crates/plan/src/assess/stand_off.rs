//! The slew range at which an arm's tip serves a facade line, and the stretch of the line it then stands before.
//!
//! A tip on a mast goes round a circle. Its distance outside a straight line is a constant plus a cosine of the slew, and so is
//! the place of its foot along the line; a roof below it takes away whole arcs between the crossings of its edges. All
//! limits of the serving range are therefore arc cosines and crossings of lines with a circle, none is sampled.

use crate::geometry::frame::EdgeLine;
use crate::geometry::hair::HAIR_M;
use crate::geometry::polygons::Polygon;
use crate::geometry::spans::Spans;
use crate::geometry::turns::{Turn, Turns};
use glam::DVec2;
use std::f64::consts::{PI, TAU};

/// A rope point on an arm, as it goes round its mast.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tip {
    /// The mast axis on the plan, m.
    pub mast: DVec2,
    /// Direction on the plan in which the arm points at slew 0, rad.
    pub outward_rad: f64,
    /// Distance of the rope point from the mast axis along the arm, m.
    pub outreach_m: f64,
    /// Distance of the rope point beside the arm's line, to the left as one looks along the arm, m.
    pub aside_m: f64,
}

impl Tip {
    /// Where the tip is at a slew, m on the plan.
    pub fn at(&self, slew_rad: f64) -> DVec2 {
        let axis = DVec2::from_angle(self.outward_rad + slew_rad);
        self.mast + axis.rotate(DVec2::new(self.outreach_m, self.aside_m))
    }

    /// Radius of the tip's circle, m.
    pub fn radius_m(&self) -> f64 {
        self.outreach_m.hypot(self.aside_m)
    }

    /// Direction from the mast to the tip at slew 0, rad.
    fn bearing_rad(&self) -> f64 {
        self.outward_rad + self.aside_m.atan2(self.outreach_m)
    }
}

/// The line of a facade at one level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ServedLine {
    /// The line of the roof's edges above it.
    pub line: EdgeLine,
    /// How far the facade lies outside that line at this level, m.
    pub offset_m: f64,
    /// How far past the line's ends a foot may stand, m.
    pub past_ends_m: f64,
}

/// The band of distances outside the facade in which a tip must hang.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StandOff {
    /// d_min, m.
    pub nearest_m: f64,
    /// d_max, m.
    pub farthest_m: f64,
}

/// When and where a tip serves a line.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Serving {
    /// Slews at which it does.
    pub slew: Turns,
    /// Feet of its perpendicular, m along the line from its start.
    pub feet: Spans,
}

/// Slews, among those allowed, at which a tip serves a line, with the feet.
///
/// d_min ≤ n·(m − p) − d_f + ρ·cos(ψ + β − ν) ≤ d_max and −e ≤ t·(m − p) + ρ·cos(ψ + β − τ) ≤ L + e, where m = mast, p =
/// start of the line, n and t = unit vectors outward and along with directions ν and τ, d_f = facade offset, ρ = radius of the
/// tip's circle, β = bearing of the tip at slew 0, e = allowance past the ends. For an arm that stands square to the line the
/// first reads a·cos ψ − setback − offset. Our own derivation; limits that are missed by less than a hair are met, so that
/// a tip which reaches a limit exactly at one slew serves there.
///
/// `allowed` holds the stops or detents, less what [`clear_of_roofs`] takes away. A radius of 0 serves at every slew or at none.
/// Numbers that are none give no serving slew.
pub fn serving(tip: &Tip, allowed: &Turns, served: &ServedLine, stand_off: &StandOff) -> Serving {
    let line = &served.line;
    let (bearing, radius) = (tip.bearing_rad(), tip.radius_m());
    let outside = Circling {
        constant: -line.behind_m(tip.mast) - served.offset_m,
        radius,
        highest_rad: line.outward_rad() - bearing,
    };
    let along =
        Circling { constant: line.along_m(tip.mast), radius, highest_rad: line.along.y.atan2(line.along.x) - bearing };
    let (first, last) = (-served.past_ends_m, line.length_m + served.past_ends_m);
    let slew = allowed
        .intersect(&outside.slews_within(stand_off.nearest_m, stand_off.farthest_m))
        .intersect(&along.slews_within(first, last));
    let feet = slew.intervals().into_iter().map(|turn| {
        let (from, to) = along.range_over(turn);
        (from.max(first), to.min(last))
    });
    Serving { feet: Spans::of(feet), slew }
}

/// Slews at which a tip hangs over none of some polygons: roofs, less their holes, that reach up to where it hangs.
/// A tip exactly above a border does not hang over it.
pub fn clear_of_roofs<'a>(tip: &Tip, over: impl IntoIterator<Item = &'a Polygon>) -> Turns {
    let bearing = tip.bearing_rad();
    over.into_iter().fold(Turns::whole(), |clear, roof| {
        let hanging = directions_over(tip.mast, tip.radius_m(), roof);
        clear.minus(&hanging.rotated(-bearing))
    })
}

/// A length that follows the slew as constant + radius·cos(ψ − highest).
struct Circling {
    constant: f64,
    radius: f64,
    highest_rad: f64,
}

impl Circling {
    fn at(&self, slew_rad: f64) -> f64 {
        self.constant + self.radius * (slew_rad - self.highest_rad).cos()
    }

    fn slews_within(&self, least: f64, most: f64) -> Turns {
        if self.radius <= HAIR_M {
            let within = self.constant >= least - HAIR_M && self.constant <= most + HAIR_M;
            return if within { Turns::whole() } else { Turns::none() };
        }
        let cosine = |length: f64| (length - self.constant) / self.radius;
        Turns::where_cosine(self.highest_rad, cosine(least), cosine(most), HAIR_M / self.radius)
    }

    /// Least and greatest value over an interval of slews: at its ends, or where the cosine turns.
    fn range_over(&self, turn: Turn) -> (f64, f64) {
        let (a, b) = (self.at(turn.from_rad), self.at(turn.to_rad));
        let passes = |angle: f64| (angle - turn.from_rad).rem_euclid(TAU) <= turn.span_rad();
        let most = if passes(self.highest_rad) { self.constant + self.radius } else { a.max(b) };
        let least = if passes(self.highest_rad + PI) { self.constant - self.radius } else { a.min(b) };
        (least, most)
    }
}

/// Directions on the plan in which a point of a circle lies over a polygon: arcs between crossings with its border.
fn directions_over(center: DVec2, radius_m: f64, roof: &Polygon) -> Turns {
    let mut cuts: Vec<f64> = roof.segments().flat_map(|(a, b)| circle_crossings(center, radius_m, a, b)).collect();
    if cuts.is_empty() {
        let over = roof.contains(center + DVec2::X * radius_m);
        return if over { Turns::whole() } else { Turns::none() };
    }
    cuts.sort_by(f64::total_cmp);
    let arc_end = |i: usize| if i + 1 < cuts.len() { cuts[i + 1] } else { cuts[0] + TAU };
    (0..cuts.len())
        .map(|i| (cuts[i], arc_end(i)))
        .filter(|&(from, to)| roof.contains(center + DVec2::from_angle(from.midpoint(to)) * radius_m))
        .fold(Turns::none(), |over, (from, to)| over.union(&Turns::between(from, to)))
}

/// Directions from a circle's center to its crossings with a segment.
fn circle_crossings(center: DVec2, radius_m: f64, a: DVec2, b: DVec2) -> impl Iterator<Item = f64> {
    let (start, along) = (a - center, b - a);
    let (qa, qb, qc) = (along.length_squared(), start.dot(along), start.length_squared() - radius_m * radius_m);
    // NaN for a circle that misses the line, and no comparison with NaN holds.
    let root = (qb * qb - qa * qc).sqrt();
    [(-qb - root) / qa, (-qb + root) / qa].into_iter().filter(|t| (0.0..=1.0).contains(t)).map(move |t| {
        let at = start + along * t;
        at.y.atan2(at.x)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// An edge of 10 m along x with the building above it (y > 0), outside below.
    fn south_edge(offset_m: f64) -> ServedLine {
        let line = EdgeLine::between(DVec2::ZERO, DVec2::new(10.0, 0.0));
        ServedLine { line, offset_m, past_ends_m: 0.0 }
    }

    fn square_tip(x: f64, setback_m: f64, outreach_m: f64) -> Tip {
        Tip { mast: DVec2::new(x, setback_m), outward_rad: -PI / 2.0, outreach_m, aside_m: 0.0 }
    }

    #[test]
    fn a_square_unit_serves_while_a_cos_psi_less_setback_and_offset_stays_in_the_band() {
        let (a, setback, offset, d_min) = (2.5, 1.2, 0.1, 0.4);
        let band = StandOff { nearest_m: d_min, farthest_m: 5.0 };
        let tip = square_tip(5.0, setback, a);
        let serving = serving(&tip, &Turns::whole(), &south_edge(offset), &band);
        let limit = ((d_min + setback + offset) / a).acos();
        let [only] = serving.slew.intervals()[..] else { panic!("one interval expected") };
        // A dozen roundings of numbers near 1, magnified by 1/sin of the limit.
        assert!((only.from_rad + limit).abs() < 1e-14 && (only.to_rad - limit).abs() < 1e-14);
        let feet: Vec<_> = serving.feet.iter().collect();
        let half = a * limit.sin();
        assert!((feet[0].from_m - (5.0 - half)).abs() < 1e-13 && (feet[0].to_m - (5.0 + half)).abs() < 1e-13);
    }

    #[test]
    fn a_band_with_a_far_limit_leaves_two_ranges_left_and_right_of_square() {
        let band = StandOff { nearest_m: 0.3, farthest_m: 0.8 };
        let serving = serving(&square_tip(5.0, 1.0, 2.0), &Turns::whole(), &south_edge(0.0), &band);
        let turns = serving.slew.intervals();
        let (inner, outer) = ((1.8_f64 / 2.0).acos(), (1.3_f64 / 2.0).acos());
        assert_eq!(turns.len(), 2);
        assert!((turns[0].from_rad + outer).abs() < 1e-14 && (turns[0].to_rad + inner).abs() < 1e-14);
        assert!((turns[1].from_rad - inner).abs() < 1e-14 && (turns[1].to_rad - outer).abs() < 1e-14);
        assert_eq!(serving.feet.len(), 2);
    }

    #[test]
    fn a_tip_that_just_reaches_the_band_serves_at_one_slew_and_a_millimeter_short_at_none() {
        let band = StandOff { nearest_m: 0.3, farthest_m: 1.0 };
        // 1.1 + 0.1 + 0.3 is 1.5000000000000002 in binary: a hair must not decide.
        let just = serving(&square_tip(5.0, 1.1, 1.5), &Turns::whole(), &south_edge(0.1), &band);
        assert!(!just.slew.is_empty() && just.slew.total_rad() < 1e-4);
        assert!(just.feet.contains(5.0));
        let short = serving(&square_tip(5.0, 1.101, 1.5), &Turns::whole(), &south_edge(0.1), &band);
        assert_eq!(short, Serving::default());
    }

    #[test]
    fn detents_leave_only_their_angles() {
        let band = StandOff { nearest_m: 0.2, farthest_m: 2.0 };
        let detents = Turns::at([-PI / 4.0, 0.0, PI / 4.0, PI]);
        let serving = serving(&square_tip(5.0, 1.0, 2.0), &detents, &south_edge(0.0), &band);
        let angles: Vec<f64> = serving.slew.intervals().iter().map(|t| t.from_rad).collect();
        assert_eq!(angles, vec![-PI / 4.0, 0.0, PI / 4.0]);
        let feet: Vec<f64> = serving.feet.iter().map(|s| s.from_m).collect();
        // Feet of the tip at 45 degrees lie 2·sin 45° beside the mast.
        assert!(serving.feet.length_m() == 0.0 && feet.len() == 3);
        assert!((feet[0] - (5.0 - 2.0_f64.sqrt())).abs() < 1e-14 && (feet[2] - (5.0 + 2.0_f64.sqrt())).abs() < 1e-14);
    }

    #[test]
    fn a_foot_past_the_corner_counts_only_within_the_allowance() {
        let band = StandOff { nearest_m: 0.0, farthest_m: 3.0 };
        let mut line = south_edge(0.0);
        let strict = serving(&square_tip(0.5, 1.0, 2.0), &Turns::whole(), &line, &band);
        line.past_ends_m = 0.25;
        let eased = serving(&square_tip(0.5, 1.0, 2.0), &Turns::whole(), &line, &band);
        let first = |s: &Serving| s.feet.iter().next().unwrap().from_m;
        assert!(first(&strict).abs() < 1e-14 && (first(&eased) + 0.25).abs() < 1e-14);
    }

    #[test]
    fn at_an_inner_corner_the_tip_never_hangs_over_the_other_wing() {
        // The other wing begins at x = 10 and reaches out to y = -5; the unit stands 1 m from it.
        let wing = Polygon::rectangle(DVec2::new(10.0, -5.0), DVec2::new(20.0, 8.0));
        let tip = square_tip(9.0, 1.0, 2.0);
        let clear = clear_of_roofs(&tip, &[wing]);
        let served = serving(&tip, &clear, &south_edge(0.0), &StandOff { nearest_m: 0.0, farthest_m: 3.0 });
        // Toward the wing: sin ψ = 1/2. Away from it: cos ψ = 1/2.
        let [only] = served.slew.intervals()[..] else { panic!("one interval expected") };
        assert!((only.to_rad - PI / 6.0).abs() < 1e-14 && (only.from_rad + PI / 3.0).abs() < 1e-14);
    }

    #[test]
    fn over_a_courtyard_is_not_over_the_roof() {
        let outer = Polygon::rectangle(DVec2::ZERO, DVec2::new(20.0, 20.0)).outer;
        let court = Polygon::rectangle(DVec2::new(5.0, 5.0), DVec2::new(15.0, 15.0)).outer;
        let roof = Polygon { outer, holes: vec![court] };
        let tip = Tip { mast: DVec2::new(10.0, 4.0), outward_rad: PI / 2.0, outreach_m: 2.0, aside_m: 0.0 };
        let clear = clear_of_roofs(&tip, &[roof]);
        // Over the courtyard while 2·cos ψ exceeds the 1 m to its edge.
        let [only] = clear.intervals()[..] else { panic!("one interval expected") };
        assert!((only.from_rad + PI / 3.0).abs() < 1e-14 && (only.to_rad - PI / 3.0).abs() < 1e-14);
    }

    #[test]
    fn numbers_that_are_none_serve_nothing() {
        let band = StandOff { nearest_m: f64::NAN, farthest_m: 3.0 };
        let tip = square_tip(5.0, 1.0, 2.0);
        assert_eq!(serving(&tip, &Turns::whole(), &south_edge(0.0), &band), Serving::default());
        let lost = Tip { outreach_m: f64::NAN, ..tip };
        let band = StandOff { nearest_m: 0.0, farthest_m: 3.0 };
        assert_eq!(serving(&lost, &Turns::whole(), &south_edge(0.0), &band), Serving::default());
    }

    #[derive(Debug)]
    struct Place {
        tip: Tip,
        served: ServedLine,
        band: StandOff,
        allowed: Turns,
    }

    fn some_place() -> impl Strategy<Value = Place> {
        let tip = (-3.0..13.0_f64, 0.1..3.0_f64, -4.0..4.0_f64, 0.3..4.0_f64, -0.6..0.6_f64);
        let line = (-3.0..3.0_f64, 2.0..14.0_f64, -0.5..0.5_f64, 0.0..0.4_f64);
        let band = (-0.5..1.0_f64, 0.05..2.0_f64, -3.0..3.0_f64, 0.5..7.0_f64);
        (tip, line, band).prop_map(
            |((x, y, turn, outreach_m, aside_m), (way, length, offset_m, past), (near, wide, stop, span))| {
                let end = DVec2::from_angle(way) * length;
                let along = DVec2::from_angle(way);
                let mast = along * x + along.perp() * y;
                Place {
                    tip: Tip { mast, outward_rad: way - PI / 2.0 + turn * 0.3, outreach_m, aside_m },
                    served: ServedLine { line: EdgeLine::between(DVec2::ZERO, end), offset_m, past_ends_m: past },
                    band: StandOff { nearest_m: near, farthest_m: near + wide },
                    allowed: Turns::between(stop, stop + span),
                }
            },
        )
    }

    /// Whether the tip serves at one slew, by the definition and not by the solution; none within 1e-6 of a limit.
    fn serves_by_definition(place: &Place, over: &Polygon, slew: f64) -> Option<bool> {
        let tip = place.tip.at(slew);
        let line = &place.served.line;
        let outside = (tip - line.start).dot(line.outward) - place.served.offset_m;
        let along = (tip - line.start).dot(line.along);
        let margins = [
            outside - place.band.nearest_m,
            place.band.farthest_m - outside,
            along + place.served.past_ends_m,
            line.length_m + place.served.past_ends_m - along,
            if over.contains(tip) { -1.0 } else { 1.0 },
        ];
        let unclear = margins.iter().any(|m| m.abs() < 1e-6) || over.distance_to_border_m(tip) < 1e-6;
        let stops = place.allowed.contains(slew) == place.allowed.contains(slew + 1e-6);
        (!unclear && stops).then(|| margins.iter().all(|&m| m > 0.0) && place.allowed.contains(slew))
    }

    proptest! {
        /// The witness is the definition itself at 3,600 slews.
        #[test]
        fn the_serving_range_and_its_feet_agree_with_dense_sampling(place in some_place()) {
            let line = place.served.line;
            let wing = [(2.0, -6.0), (3.5, -6.0), (4.0, 1.0), (1.0, 1.5)].map(|(s, d)| line.point(s, -d));
            let wing = Polygon::simple(wing.to_vec());
            let allowed = place.allowed.intersect(&clear_of_roofs(&place.tip, std::slice::from_ref(&wing)));
            let serving = serving(&place.tip, &allowed, &place.served, &place.band);
            let mut sampled = Vec::new();
            for i in 0..3600 {
                let slew = (f64::from(i) + 0.5) * TAU / 3600.0 - PI;
                let Some(serves) = serves_by_definition(&place, &wing, slew) else { continue };
                prop_assert_eq!(serving.slew.contains(slew), serves, "slew {}", slew);
                if serves {
                    let foot = line.along_m(place.tip.at(slew));
                    prop_assert!(serving.feet.contains(foot), "foot {}", foot);
                    sampled.push(foot);
                }
            }
            // Within one step of the sampling a foot moves by at most the radius times the step; limits left out add 1e-6 of depth.
            let step = place.tip.radius_m() * TAU / 3600.0 * 2.0 + 1e-2;
            for end in serving.feet.iter().filter(|s| s.length_m() > 2.0 * step).flat_map(|s| [s.from_m, s.to_m]) {
                prop_assert!(sampled.iter().any(|s| (s - end).abs() < step), "end {}", end);
            }
        }
    }
}
