//! The rope cone: every direction in which a rope may pull, and where a linear function is greatest on it.
//!
//! Directions are unit vectors. The cone is the cap of the sphere around straight down (−z) with the
//! half-angle α, up to "any direction" at 180°. Limits of lean cut it by planes through y in the
//! axes of the served facade (x outward).

use std::f64::consts::{FRAC_PI_2, PI};

use glam::{DVec2, DVec3};
use thiserror::Error;

/// Slack in asking whether a direction belongs to the cone; a rounding error of unit vectors.
const ON_THE_EDGE: f64 = 1e-12;

/// Every direction a rope may pull.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadCone {
    /// α: half-angle around straight down, 0 to π rad.
    pub half_angle_rad: f64,
    /// Limits of lean relative to the served facade; `None` if there are none.
    pub lean: Option<Lean>,
}

/// How far a rope may lean toward the building and away from it, seen along the facade: the angle of
/// the direction's x–z part from straight down. Both 0 to π/2; a leaning rope never points up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lean {
    /// Toward the building (−x), rad.
    pub inward_rad: f64,
    /// Away from it (+x), rad.
    pub outward_rad: f64,
}

/// A cone that can't be.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum ConeFault {
    /// The half-angle isn't between 0 and π.
    #[error("half_angle_rad is {value}; it must lie between 0 and π")]
    HalfAngle {
        /// The value found, rad.
        value: f64,
    },
    /// A limit of lean isn't between 0 and π/2.
    #[error("lean.{field} is {value}; it must lie between 0 and π/2")]
    Lean {
        /// Name of the field.
        field: &'static str,
        /// The value found, rad.
        value: f64,
    },
}

/// A checked cone with its sines and planes worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cap {
    sin: f64,
    cos: f64,
    /// Normals p of the allowed half-spaces d·p ≤ 0: outward, inward.
    planes: Option<[DVec3; 2]>,
}

impl LoadCone {
    /// A cone without limits of lean, half-angle in rad.
    #[must_use]
    pub const fn whole(half_angle_rad: f64) -> Self {
        Self { half_angle_rad, lean: None }
    }

    /// Checks the angles and works out the rest.
    pub fn cap(&self) -> Result<Cap, ConeFault> {
        let value = self.half_angle_rad;
        if !(0.0..=PI).contains(&value) {
            return Err(ConeFault::HalfAngle { value });
        }
        let planes = match self.lean {
            None => None,
            Some(lean) => {
                check_lean("inward_rad", lean.inward_rad)?;
                check_lean("outward_rad", lean.outward_rad)?;
                let (so, co) = lean.outward_rad.sin_cos();
                let (si, ci) = lean.inward_rad.sin_cos();
                Some([DVec3::new(co, 0.0, so), DVec3::new(-ci, 0.0, si)])
            }
        };
        let (sin, cos) = value.sin_cos();
        Ok(Cap { sin, cos, planes })
    }
}

fn check_lean(field: &'static str, value: f64) -> Result<(), ConeFault> {
    if (0.0..=FRAC_PI_2).contains(&value) { Ok(()) } else { Err(ConeFault::Lean { field, value }) }
}

impl Cap {
    /// Whether the cone is cut by limits of lean, so that it isn't alike all around.
    #[must_use]
    pub const fn is_cut(&self) -> bool {
        self.planes.is_some()
    }

    /// Whether a unit vector is a direction of the cone.
    #[must_use]
    pub fn allows(&self, d: DVec3) -> bool {
        -d.z >= self.cos - ON_THE_EDGE && self.within_lean(d)
    }

    /// h(c) = max c·d over all directions d of the cone.
    ///
    /// Without limits of lean |c|·cos(max(0, θ − α)), θ the angle between c and straight down: inside the cone
    /// the maximizer is c itself, outside the nearest direction of the rim. With limits the greatest
    /// of that, the stationary points on the cuts, and the corners. 0 for c = 0.
    #[must_use]
    pub fn support(&self, c: DVec3) -> f64 {
        match self.planes {
            None => self.support_2d(DVec2::new(c.x, c.y).length(), c.z),
            Some(_) => self.maximizer(c).dot(c),
        }
    }

    /// The same over the directions in the vertical plane of the horizontal unit vector `along`.
    #[must_use]
    pub fn support_in_plane(&self, c: DVec3, along: DVec2) -> f64 {
        match self.planes {
            None => self.support_2d((c.x * along.x + c.y * along.y).abs(), c.z),
            Some(_) => self.maximizer_in_plane(c, along).dot(c),
        }
    }

    /// A direction of the cone in which c·d is greatest; straight down for c = 0.
    #[must_use]
    pub fn maximizer(&self, c: DVec3) -> DVec3 {
        // With nothing to choose between azimuths, y keeps clear of both limits of lean.
        let across = DVec2::new(c.x, c.y).try_normalize().unwrap_or(DVec2::Y);
        let whole = self.nearest(c, across);
        let Some(planes) = self.planes else {
            return whole;
        };
        let mut best = Best::new(self, c);
        best.offer(whole);
        best.offer(self.rim(across));
        best.offer(DVec3::Y);
        best.offer(-DVec3::Y);
        for p in planes {
            best.offer((c - p * c.dot(p)).normalize_or_zero());
            for corner in self.corners(p) {
                best.offer(corner);
            }
        }
        best.direction
    }

    /// The same in the vertical plane of the horizontal unit vector `along`.
    #[must_use]
    pub fn maximizer_in_plane(&self, c: DVec3, along: DVec2) -> DVec3 {
        let side = if c.x * along.x + c.y * along.y < 0.0 { -along } else { along };
        let flat = side.extend(0.0) * (c.x * side.x + c.y * side.y) + DVec3::Z * c.z;
        let whole = self.nearest(flat, side);
        let Some(planes) = self.planes else {
            return whole;
        };
        let mut best = Best::new(self, c);
        best.offer(whole);
        best.offer(self.rim(side));
        best.offer(self.rim(-side));
        let normal = DVec3::new(along.y, -along.x, 0.0);
        for p in planes {
            let cut = p.cross(normal).normalize_or_zero();
            best.offer(cut);
            best.offer(-cut);
        }
        best.direction
    }

    /// `across` is the length of the horizontal part of c, `z` its vertical part.
    fn support_2d(&self, across: f64, z: f64) -> f64 {
        let length = DVec2::new(across, z).length();
        if -z >= length * self.cos { length } else { across * self.sin - z * self.cos }
    }

    /// c itself if inside the cone, otherwise the rim below it; ignores limits of lean.
    fn nearest(&self, c: DVec3, across: DVec2) -> DVec3 {
        let length = c.length();
        if length == 0.0 {
            -DVec3::Z
        } else if -c.z >= length * self.cos {
            c / length
        } else {
            self.rim(across)
        }
    }

    fn rim(&self, across: DVec2) -> DVec3 {
        DVec3::new(across.x * self.sin, across.y * self.sin, -self.cos)
    }

    /// Where a plane through y with normal p meets the rim: d·p = 0, d_z = −cos α.
    fn corners(&self, p: DVec3) -> [DVec3; 2] {
        if p.x.abs() < ON_THE_EDGE {
            // The level plane meets the rim only when the cone is a half sphere, whose rim is covered.
            return [DVec3::ZERO; 2];
        }
        let x = p.z * self.cos / p.x;
        let y_squared = self.sin * self.sin - x * x;
        if y_squared < 0.0 {
            return [DVec3::ZERO; 2];
        }
        let y = y_squared.sqrt();
        [DVec3::new(x, y, -self.cos), DVec3::new(x, -y, -self.cos)]
    }

    fn within_lean(&self, d: DVec3) -> bool {
        self.planes.is_none_or(|planes| d.z <= ON_THE_EDGE && planes.iter().all(|p| d.dot(*p) <= ON_THE_EDGE))
    }
}

/// The best candidate so far; straight down belongs to every cone.
struct Best<'a> {
    cap: &'a Cap,
    c: DVec3,
    direction: DVec3,
    value: f64,
}

impl<'a> Best<'a> {
    fn new(cap: &'a Cap, c: DVec3) -> Self {
        Self { cap, c, direction: -DVec3::Z, value: -c.z }
    }

    fn offer(&mut self, d: DVec3) {
        let value = d.dot(self.c);
        if value > self.value && d != DVec3::ZERO && self.cap.allows(d) {
            self.direction = d;
            self.value = value;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use proptest::test_runner::RngSeed;

    fn cap(alpha: f64, lean: Option<Lean>) -> Cap {
        LoadCone { half_angle_rad: alpha, lean }.cap().unwrap()
    }

    /// Directions of the whole sphere on a raster of `steps` to a quarter turn.
    fn sphere(steps: usize) -> impl Iterator<Item = DVec3> {
        let turn = FRAC_PI_2 / steps as f64;
        (0..=2 * steps).flat_map(move |i| {
            (0..4 * steps).map(move |j| {
                let (sin, cos) = (i as f64 * turn).sin_cos();
                let (s, c) = (j as f64 * turn).sin_cos();
                DVec3::new(c * sin, s * sin, -cos)
            })
        })
    }

    /// Every sample is a lower bound; with the raster's step δ the best sample misses the maximum by
    /// less than |c|·2δ, and by |c|·δ² inside; the first is asked for.
    fn against_sampling(cap: &Cap, c: DVec3) {
        let steps = 90;
        let sampled = sphere(steps).filter(|d| cap.allows(*d)).map(|d| d.dot(c)).fold(-c.z, f64::max);
        let exact = cap.support(c);
        let step = FRAC_PI_2 / steps as f64;
        assert!(exact >= sampled - 1e-9 * c.length(), "{c} {exact} {sampled}");
        assert!(exact <= sampled + 2.0 * step * c.length(), "{c} {exact} {sampled}");
        let d = cap.maximizer(c);
        assert!((d.length() - 1.0).abs() < 1e-9, "{c} {d}");
        assert!(cap.allows(d), "{c} {d}");
        assert!((d.dot(c) - exact).abs() <= 1e-12 * c.length());
    }

    fn alphas() -> impl Strategy<Value = f64> {
        prop_oneof![Just(0.0), Just(FRAC_PI_2), Just(PI), 0.0..PI, Just(20f64.to_radians())]
    }

    fn leans() -> impl Strategy<Value = Option<Lean>> {
        let angle = || prop_oneof![Just(0.0), Just(FRAC_PI_2), 0.0..FRAC_PI_2];
        prop::option::of((angle(), angle()).prop_map(|(inward_rad, outward_rad)| Lean { inward_rad, outward_rad }))
    }

    fn vectors() -> impl Strategy<Value = DVec3> {
        let free = (-1.0..1.0, -1.0..1.0, -1.0..1.0);
        prop_oneof![
            free.prop_map(|(x, y, z)| DVec3::new(x, y, z)),
            Just(DVec3::X),
            Just(-DVec3::X),
            Just(DVec3::Y),
            Just(DVec3::Z),
            Just(-DVec3::Z),
            Just(DVec3::ZERO),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 200,
            failure_persistence: None,
            rng_seed: RngSeed::Fixed(7),
            ..ProptestConfig::default()
        })]

        #[test]
        fn the_support_is_the_best_of_dense_samples(
            alpha in alphas(), lean in leans(), c in vectors()
        ) {
            against_sampling(&cap(alpha, lean), c);
        }

        #[test]
        fn in_a_plane_the_support_is_the_best_of_dense_samples(
            alpha in alphas(), lean in leans(), c in vectors(), azimuth in -PI..PI
        ) {
            let cap = cap(alpha, lean);
            let along = DVec2::from_angle(azimuth);
            let sampled = (-3600..=3600)
                .map(|i| {
                    let (sin, cos) = (f64::from(i) * PI / 3600.0).sin_cos();
                    DVec3::new(along.x * sin, along.y * sin, -cos)
                })
                .filter(|d| cap.allows(*d))
                .map(|d| d.dot(c))
                .fold(-c.z, f64::max);
            let exact = cap.support_in_plane(c, along);
            prop_assert!(exact >= sampled - 1e-9, "{exact} {sampled}");
            prop_assert!(exact <= sampled + 1e-3 * c.length(), "{exact} {sampled}");
            let d = cap.maximizer_in_plane(c, along);
            prop_assert!(cap.allows(d));
            prop_assert!(d.dot(DVec3::new(along.y, -along.x, 0.0)).abs() < 1e-9);
        }
    }

    /// By hand: T·sin α is the greatest horizontal share, T and T·cos α the vertical ones.
    #[test]
    fn a_narrow_cone_pulls_sideways_by_its_sine() {
        let alpha = 20f64.to_radians();
        let cap = cap(alpha, None);
        assert!((cap.support(DVec3::X) - alpha.sin()).abs() < 1e-15);
        assert!((cap.support(-DVec3::Z) - 1.0).abs() < 1e-15);
        assert!((cap.support(DVec3::Z) + alpha.cos()).abs() < 1e-15);
    }

    /// At 180° every direction belongs to the cone: the support is the length.
    #[test]
    fn any_direction_gives_the_length() {
        let c = DVec3::new(0.3, -0.4, 1.2);
        assert!((cap(PI, None).support(c) - 1.3).abs() < 1e-15);
    }

    /// A rope that may lean neither in nor out keeps to the plane of the facade.
    #[test]
    fn without_lean_the_rope_stays_in_the_facade_plane() {
        let none = Lean { inward_rad: 0.0, outward_rad: 0.0 };
        let cap = cap(0.5, Some(none));
        assert!(cap.support(DVec3::X).abs() < 1e-15);
        assert!((cap.support(DVec3::Y) - 0.5f64.sin()).abs() < 1e-15);
        assert!((cap.support(DVec3::Z) + 0.5f64.cos()).abs() < 1e-15);
    }

    #[test]
    fn angles_out_of_range_are_named() {
        let fault = LoadCone::whole(3.2).cap().unwrap_err();
        assert_eq!(fault, ConeFault::HalfAngle { value: 3.2 });
        assert!(LoadCone::whole(f64::NAN).cap().is_err());
        let leaning = LoadCone { half_angle_rad: 0.3, lean: Some(Lean { inward_rad: -0.1, outward_rad: 0.2 }) };
        assert_eq!(leaning.cap().unwrap_err(), ConeFault::Lean { field: "inward_rad", value: -0.1 });
    }
}
