//! What technicians on the ropes of one unit reach of a facade: a region that narrows toward the top.
//!
//! A technician who hangs z below the rope's last support works sideways by w(z) = b + min(z·tan θ, swing), at most as far from
//! the plumb line as a rule allows, and not at all while z is less than device and slings take up. Over the depth of a
//! facade this is concave and piecewise linear, so what one foot or one stretch of feet reaches is a convex polygon.

use crate::geometry::polygons::Polygon;
use crate::geometry::spans::{Span, Spans};
use crate::geometry::strips::{self, Cover, Face, Strip};
use glam::DVec2;
use std::f64::consts::FRAC_PI_2;
use thiserror::Error;

/// How far sideways a technician works from the plumb line of the rope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sideways {
    /// b: an arm's reach in the plane of the facade, m.
    pub arms_reach_m: f64,
    /// θ: angle of the rope from the plumb line to which a technician goes sideways, rad; below a right angle.
    pub angle_rad: f64,
    /// Farthest the harness goes from the plumb line, m; none when only the angle limits it.
    pub swing_m: Option<f64>,
    /// Cap of w as a whole, counted from the plumb line, m; none when no rule sets one.
    pub plumb_limit_m: Option<f64>,
    /// z_min: what device and slings take up, m. Nearer below the support nothing is reached.
    pub least_depth_m: f64,
}

/// Feet of a tip before one part of a facade's height.
#[derive(Debug, Clone, PartialEq)]
pub struct FeetFrom {
    /// Depth of the part's top, m; it goes down to the next part's top or the facade's foot.
    pub from_depth_m: f64,
    /// Feet on the facade line there, m along it.
    pub feet: Spans,
}

/// A datum of the reach that makes no sense.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum ReachFault {
    /// A length that must be finite and not negative.
    #[error("{field} is {value_m} m")]
    BadLength {
        /// Which field.
        field: &'static str,
        /// As given, m.
        value_m: f64,
    },
    /// An angle that is not from 0 to below a right angle.
    #[error("angle_rad is {value_rad} rad, a right angle or more, or no angle")]
    BadAngle {
        /// As given, rad.
        value_rad: f64,
    },
    /// Parts of the height that do not follow one another downward.
    #[error("part {index} of the facade begins at depth {from_depth_m} m, not below the one before")]
    PartsOutOfOrder {
        /// Index of the part.
        index: usize,
        /// Its depth as given, m.
        from_depth_m: f64,
    },
}

impl Sideways {
    /// w(z) = min(b + min(z·tan θ, swing), limit) at z below the support, m; none above z_min.
    ///
    /// Source: the geometry of a taut rope; the limits are data of the load basis. z is the depth of the harness attachment
    /// below the rope's last support. At θ = 0 it is b everywhere.
    pub fn half_width_m(&self, z_m: f64) -> Option<f64> {
        if z_m < self.least_depth_m {
            return None;
        }
        let harness = (z_m.max(0.0) * self.angle_rad.tan()).min(self.swing_m.unwrap_or(f64::INFINITY));
        Some((self.arms_reach_m + harness).min(self.plumb_limit_m.unwrap_or(f64::INFINITY)))
    }

    /// Depths below the support at which w(z) bends, m.
    fn bends_m(&self) -> impl Iterator<Item = f64> {
        let slope = self.angle_rad.tan();
        let capped = self.plumb_limit_m.map(|limit| limit - self.arms_reach_m);
        [Some(0.0), self.swing_m, capped].into_iter().flatten().map(move |w| w / slope).filter(|z| z.is_finite())
    }

    fn check(&self) -> Result<(), ReachFault> {
        let lengths = [
            ("arms_reach_m", Some(self.arms_reach_m)),
            ("swing_m", self.swing_m),
            ("plumb_limit_m", self.plumb_limit_m),
            ("least_depth_m", Some(self.least_depth_m)),
        ];
        for (field, value) in lengths {
            check_length(field, value.unwrap_or(0.0))?;
        }
        if (0.0..FRAC_PI_2).contains(&self.angle_rad) {
            Ok(())
        } else {
            Err(ReachFault::BadAngle { value_rad: self.angle_rad })
        }
    }
}

/// The force that holds a technician sideways at an angle of the rope: F = W·tan θ, N.
///
/// W = weight on the rope, N; θ = angle of the rope from the plumb line, rad. Equilibrium at the harness attachment with a
/// weightless rope and no friction. 0 at θ = 0, without bound toward a right angle.
pub fn sideways_hold_n(weight_n: f64, angle_rad: f64) -> f64 {
    weight_n * angle_rad.tan()
}

/// What one rope point reaches of a facade.
#[derive(Debug, Clone, PartialEq)]
pub struct Reach {
    face: Face,
    lobes: Vec<Vec<Strip>>,
}

impl Reach {
    /// The reach of a tip whose support lies `support_above_top_m` over the top of a face (negative below it), with the feet it
    /// has before each part of the height. Above the first part nothing is reached.
    pub fn of(
        sideways: &Sideways,
        support_above_top_m: f64,
        parts: &[FeetFrom],
        face: Face,
    ) -> Result<Self, ReachFault> {
        sideways.check()?;
        check_length("length_m", face.length_m)?;
        check_length("height_m", face.height_m)?;
        if !support_above_top_m.is_finite() {
            return Err(ReachFault::BadLength { field: "support_above_top_m", value_m: support_above_top_m });
        }
        check_order(parts)?;
        let mut lobes = Vec::new();
        for (index, part) in parts.iter().enumerate() {
            let foot = parts.get(index + 1).map_or(face.height_m, |next| next.from_depth_m.min(face.height_m));
            let depths = bent_depths(sideways, support_above_top_m, part.from_depth_m.max(0.0), foot);
            let lobe = |feet: Span| widening(sideways, support_above_top_m, feet, &depths);
            lobes.extend(part.feet.iter().map(lobe).filter(|strips| !strips.is_empty()));
        }
        Ok(Self { face, lobes })
    }

    /// Its trapezoids; they may overlap each other and go past the ends of the face.
    pub fn strips(&self) -> impl Iterator<Item = Strip> + '_ {
        self.lobes.iter().flatten().copied()
    }

    /// Its outline, one convex polygon for each stretch of feet and part of the height, cut to the face exactly.
    /// x is the place along the face, y the depth. They may overlap where stretches of feet lie near each other.
    pub fn polygons(&self) -> Vec<Polygon> {
        let within = |lobe: &Vec<Strip>| {
            let ring = clip_left(&clip_right(&lobe_ring(lobe), self.face.length_m), 0.0);
            let polygon = Polygon::simple(ring);
            (polygon.area_m2() > 0.0).then_some(polygon)
        };
        self.lobes.iter().filter_map(within).collect()
    }

    /// Stretches of the facade reached at a depth; nothing above and below the face.
    pub fn at_depth(&self, depth_m: f64) -> Spans {
        strips::covered_at(&self.strips().collect::<Vec<_>>(), self.face, depth_m)
    }

    /// Area reached, m²: the sum of trapezoids that do not overlap, exact but for rounding.
    pub fn area_m2(&self) -> f64 {
        let strips: Vec<Strip> = self.strips().collect();
        Cover::of(&strips, self.face).covered.iter().map(Strip::area_m2).sum()
    }
}

fn check_length(field: &'static str, value_m: f64) -> Result<(), ReachFault> {
    if value_m >= 0.0 && value_m.is_finite() { Ok(()) } else { Err(ReachFault::BadLength { field, value_m }) }
}

fn check_order(parts: &[FeetFrom]) -> Result<(), ReachFault> {
    let mut above = f64::NEG_INFINITY;
    for (index, part) in parts.iter().enumerate() {
        let from_depth_m = part.from_depth_m;
        if !(from_depth_m.is_finite() && from_depth_m > above) {
            return Err(ReachFault::PartsOutOfOrder { index, from_depth_m });
        }
        above = from_depth_m;
    }
    Ok(())
}

/// Depths of a part of the face between which the half-width is linear, ascending; empty when nothing there is reached.
fn bent_depths(sideways: &Sideways, support_above_top_m: f64, from_m: f64, to_m: f64) -> Vec<f64> {
    let top = from_m.max(sideways.least_depth_m - support_above_top_m);
    if top >= to_m {
        return Vec::new();
    }
    let within = |d: &f64| *d > top && *d < to_m;
    let bends = sideways.bends_m().map(|z| z - support_above_top_m).filter(within);
    let mut depths: Vec<f64> = bends.chain([top, to_m]).collect();
    depths.sort_by(f64::total_cmp);
    depths.dedup();
    depths
}

/// The stack of trapezoids that a stretch of feet reaches between bends of the half-width.
fn widening(sideways: &Sideways, support_above_top_m: f64, feet: Span, depths: &[f64]) -> Vec<Strip> {
    // The uppermost depth may come out a rounding above z_min.
    let half_width = |depth: f64| {
        let z = (depth + support_above_top_m).max(sideways.least_depth_m);
        sideways.half_width_m(z).unwrap_or(0.0)
    };
    let strip = |w: &[f64]| {
        let (top, bottom) = (half_width(w[0]), half_width(w[1]));
        Strip {
            top_m: w[0],
            bottom_m: w[1],
            left_top_m: feet.from_m - top,
            left_bottom_m: feet.from_m - bottom,
            right_top_m: feet.to_m + top,
            right_bottom_m: feet.to_m + bottom,
        }
    };
    depths.windows(2).map(strip).collect()
}

/// Corners of a stack of trapezoids: right side downward, left side upward.
fn lobe_ring(lobe: &[Strip]) -> Vec<DVec2> {
    let Some(top) = lobe.first() else {
        return Vec::new();
    };
    let right = lobe.iter().map(|s| DVec2::new(s.right_bottom_m, s.bottom_m));
    let left = lobe.iter().rev().map(|s| DVec2::new(s.left_bottom_m, s.bottom_m));
    let first = DVec2::new(top.right_top_m, top.top_m);
    let last = DVec2::new(top.left_top_m, top.top_m);
    std::iter::once(first).chain(right).chain(left).chain([last]).collect()
}

/// What of a convex ring lies at or left of a place along the face.
fn clip_right(ring: &[DVec2], most: f64) -> Vec<DVec2> {
    clip(ring, |p| most - p.x, most)
}

/// What of a convex ring lies at or right of a place along the face.
fn clip_left(ring: &[DVec2], least: f64) -> Vec<DVec2> {
    clip(ring, |p| p.x - least, least)
}

fn clip(ring: &[DVec2], inside_by: impl Fn(DVec2) -> f64, border: f64) -> Vec<DVec2> {
    let mut kept = Vec::with_capacity(ring.len() + 2);
    for (i, &a) in ring.iter().enumerate() {
        let b = ring[(i + 1) % ring.len()];
        let (from, to) = (inside_by(a), inside_by(b));
        if from >= 0.0 {
            kept.push(a);
        }
        if from * to < 0.0 {
            kept.push(DVec2::new(border, a.lerp(b, from / (from - to)).y));
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn sideways() -> Sideways {
        Sideways { arms_reach_m: 0.7, angle_rad: 0.25, swing_m: Some(2.0), plumb_limit_m: None, least_depth_m: 1.5 }
    }

    fn feet(from_m: f64, to_m: f64) -> Vec<FeetFrom> {
        vec![FeetFrom { from_depth_m: 0.0, feet: Spans::one(from_m, to_m) }]
    }

    #[test]
    fn nothing_is_reached_above_the_device_and_an_arm_more_than_the_rope_allows_below() {
        let s = sideways();
        assert_eq!(s.half_width_m(1.4999), None);
        // tan 0.25 = 0.25534192122103627 (tables of functions); 0.7 + 4 tan 0.25.
        assert!((s.half_width_m(4.0).unwrap() - 1.721367684884145).abs() < 1e-14);
        assert_eq!(s.half_width_m(40.0), Some(2.7));
        let capped = Sideways { plumb_limit_m: Some(1.2), ..s };
        assert_eq!(capped.half_width_m(40.0), Some(1.2));
    }

    #[test]
    fn a_kilonewton_at_45_degrees_is_held_by_a_kilonewton() {
        assert!((sideways_hold_n(1000.0, std::f64::consts::FRAC_PI_4) - 1000.0).abs() < 1e-9);
        assert_eq!(sideways_hold_n(1000.0, 0.0), 0.0);
    }

    /// The integral of the width over the height, in closed form, for one stretch of feet away from the ends of the face:
    /// A = l·(z₂ − z₁) + 2b·(z₂ − z₁) + tan θ·(z_k² − z₁²) + 2·swing·(z₂ − z_k), z_k = swing/tan θ between z₁ and z₂.
    fn integral(s: &Sideways, length_m: f64, support_above_top_m: f64, height_m: f64) -> f64 {
        let slope = s.angle_rad.tan();
        let swing = s.swing_m.unwrap();
        let low = support_above_top_m + height_m;
        let high = support_above_top_m.max(s.least_depth_m).min(low);
        let bend = (swing / slope).clamp(high, low);
        (length_m + 2.0 * s.arms_reach_m) * (low - high)
            + slope * (bend * bend - high * high)
            + 2.0 * swing * (low - bend)
    }

    #[test]
    fn the_area_on_a_facade_of_40_meters_is_the_closed_integral() {
        let face = Face { length_m: 30.0, height_m: 40.0 };
        let reach = Reach::of(&sideways(), 0.9, &feet(14.0, 15.5), face).unwrap();
        let exact = integral(&sideways(), 1.5, 0.9, 40.0);
        assert!((reach.area_m2() - exact).abs() < 1e-9 * exact);
        let drawn: f64 = reach.polygons().iter().map(Polygon::area_m2).sum();
        assert!((drawn - exact).abs() < 1e-9 * exact);
    }

    #[test]
    fn the_reach_ends_at_the_ends_of_the_face() {
        let face = Face { length_m: 3.0, height_m: 20.0 };
        let reach = Reach::of(&sideways(), 1.5, &feet(0.5, 0.5), face).unwrap();
        assert_eq!(reach.at_depth(19.0), Spans::one(0.0, 3.0));
        assert!(reach.polygons().iter().flat_map(|p| p.outer.clone()).all(|p| (0.0..=3.0).contains(&p.x)));
        let drawn: f64 = reach.polygons().iter().map(Polygon::area_m2).sum();
        assert!((drawn - reach.area_m2()).abs() < 1e-12 * drawn);
    }

    #[test]
    fn a_step_in_the_facade_changes_the_feet_below_it_only() {
        let face = Face { length_m: 20.0, height_m: 20.0 };
        let parts = vec![
            FeetFrom { from_depth_m: 0.0, feet: Spans::one(5.0, 6.0) },
            FeetFrom { from_depth_m: 8.0, feet: Spans::none() },
            FeetFrom { from_depth_m: 12.0, feet: Spans::of([(4.0, 4.0), (9.0, 9.0)]) },
        ];
        let flat = Sideways { angle_rad: 0.0, ..sideways() };
        let reach = Reach::of(&flat, 2.0, &parts, face).unwrap();
        assert_eq!(reach.at_depth(4.0), Spans::one(4.3, 6.7));
        assert_eq!(reach.at_depth(10.0), Spans::none());
        assert_eq!(reach.at_depth(15.0), Spans::of([(3.3, 4.7), (8.3, 9.7)]));
        // 2.4 x 8 above, two of 1.4 x 8 below.
        assert!((reach.area_m2() - (19.2 + 22.4)).abs() < 1e-12);
    }

    #[test]
    fn a_support_below_the_top_reaches_nothing_above_it() {
        let face = Face { length_m: 20.0, height_m: 10.0 };
        let reach = Reach::of(&sideways(), -3.0, &feet(10.0, 10.0), face).unwrap();
        assert!(reach.at_depth(4.4).is_empty() && !reach.at_depth(4.6).is_empty());
    }

    #[test]
    fn data_without_sense_are_named() {
        let face = Face { length_m: 20.0, height_m: 10.0 };
        let bad = Sideways { angle_rad: FRAC_PI_2, ..sideways() };
        assert!(matches!(Reach::of(&bad, 1.0, &feet(1.0, 2.0), face), Err(ReachFault::BadAngle { .. })));
        let bad = Sideways { swing_m: Some(-0.1), ..sideways() };
        let fault = Reach::of(&bad, 1.0, &feet(1.0, 2.0), face);
        assert_eq!(fault, Err(ReachFault::BadLength { field: "swing_m", value_m: -0.1 }));
        let none = FeetFrom { from_depth_m: f64::NAN, feet: Spans::none() };
        assert!(matches!(
            Reach::of(&sideways(), 1.0, &[none], face),
            Err(ReachFault::PartsOutOfOrder { index: 0, .. })
        ));
    }

    proptest! {
        #[test]
        fn the_area_of_any_single_stretch_is_the_closed_integral(
            b in 0.0..1.2_f64, angle in 0.01..0.9_f64, swing in 0.0..4.0_f64, z_min in 0.0..3.0_f64,
            length in 0.0..4.0_f64, support in -2.0..4.0_f64, height in 0.5..80.0_f64,
        ) {
            let s = Sideways { arms_reach_m: b, angle_rad: angle, swing_m: Some(swing), plumb_limit_m: None, least_depth_m: z_min };
            let face = Face { length_m: 40.0, height_m: height };
            let reach = Reach::of(&s, support, &feet(18.0, 18.0 + length), face).unwrap();
            let exact = integral(&s, length, support, height);
            prop_assert!((reach.area_m2() - exact).abs() <= 1e-9 * exact.max(1.0), "{} {}", reach.area_m2(), exact);
        }
    }
}
