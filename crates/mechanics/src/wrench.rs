//! A force and a moment about a stated point, carried together because neither means anything alone.

use std::ops::{Add, AddAssign, Mul, Neg, Sub};

use glam::DVec3;

/// A force (N) and the moment (N·m) about the point at which the wrench is written.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wrench {
    /// Force, N.
    pub force_n: DVec3,
    /// Moment about the point of reference, N·m, by the right-hand rule.
    pub moment_nm: DVec3,
}

impl Wrench {
    /// The wrench about `about` of a force that acts at `at`: M = (at − about) × F.
    #[must_use]
    pub fn of_force(force_n: DVec3, at: DVec3, about: DVec3) -> Self {
        Self { force_n, moment_nm: (at - about).cross(force_n) }
    }

    /// The same wrench written about another point: M' = M + (from − to) × F.
    #[must_use]
    pub fn moved(self, from: DVec3, to: DVec3) -> Self {
        Self { force_n: self.force_n, moment_nm: self.moment_nm + (from - to).cross(self.force_n) }
    }

    /// (Fx, Fy, Fz, Mx, My, Mz).
    #[must_use]
    pub const fn six(self) -> [f64; 6] {
        [self.force_n.x, self.force_n.y, self.force_n.z, self.moment_nm.x, self.moment_nm.y, self.moment_nm.z]
    }

    /// The wrench whose six components these are.
    #[must_use]
    pub const fn from_six(s: [f64; 6]) -> Self {
        Self { force_n: DVec3::new(s[0], s[1], s[2]), moment_nm: DVec3::new(s[3], s[4], s[5]) }
    }

    /// The sum of the products of the six components: of a wrench with weights, or with a small movement, its work.
    #[must_use]
    pub fn dot(&self, other: &Self) -> f64 {
        self.force_n.dot(other.force_n) + self.moment_nm.dot(other.moment_nm)
    }

    /// The components along three orthogonal unit axes, as a wrench in those axes.
    #[must_use]
    pub fn in_axes(self, x: DVec3, y: DVec3, z: DVec3) -> Self {
        let turn = |v: DVec3| DVec3::new(v.dot(x), v.dot(y), v.dot(z));
        Self { force_n: turn(self.force_n), moment_nm: turn(self.moment_nm) }
    }

    /// Turned about the vertical by `angle_rad`, counter-clockwise seen from above: components in
    /// arm axes become components in structure axes when the angle is the slew.
    #[must_use]
    pub fn slewed(self, angle_rad: f64) -> Self {
        let (sin, cos) = angle_rad.sin_cos();
        let turn = |v: DVec3| DVec3::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y, v.z);
        Self { force_n: turn(self.force_n), moment_nm: turn(self.moment_nm) }
    }
}

impl Add for Wrench {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { force_n: self.force_n + other.force_n, moment_nm: self.moment_nm + other.moment_nm }
    }
}

impl Sub for Wrench {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + -other
    }
}

impl AddAssign for Wrench {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Neg for Wrench {
    type Output = Self;
    fn neg(self) -> Self {
        Self { force_n: -self.force_n, moment_nm: -self.moment_nm }
    }
}

impl Mul<f64> for Wrench {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self { force_n: self.force_n * factor, moment_nm: self.moment_nm * factor }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand (mechanics note, axes and signs): a vertical pull T at outreach a, slew 0, gives
    /// Fz = −T and My = +a·T and nothing else.
    #[test]
    fn a_vertical_pull_at_the_outreach_tips_about_plus_y() {
        let w = Wrench::of_force(DVec3::new(0.0, 0.0, -12.0), DVec3::new(1.5, 0.0, 2.0), DVec3::ZERO);
        assert_eq!(w.six(), [0.0, 0.0, -12.0, 0.0, 18.0, 0.0]);
    }

    /// The moment about a third point doesn't depend on the way taken there (statics).
    #[test]
    fn moving_twice_is_moving_once() {
        let force = DVec3::new(3.0, -2.0, 5.0);
        let [a, b, c] = [DVec3::new(1.0, 2.0, 3.0), DVec3::new(-1.0, 0.5, 2.0), DVec3::new(0.0, -4.0, 1.0)];
        let direct = Wrench::of_force(force, a, c);
        let by_way_of_b = Wrench::of_force(force, a, b).moved(b, c);
        assert!((direct.moment_nm - by_way_of_b.moment_nm).length() < 1e-12);
    }
}
