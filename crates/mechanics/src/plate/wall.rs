//! A base on a wall: actions of the mast at its reference point, turned into the axes of a plate that stands upright.
//!
//! The mast stands at the distance e in front of the plate's face. Plate axes: z the outward normal n of the wall's face,
//! y up, x = y × z along the wall. The plate solver then takes the force along the normal, the two moments in the plane and
//! the twist about the normal as for a floor plate.

use glam::DVec3;

use crate::wrench::Wrench;

/// Which way the wall's face looks, seen from the base: x points away from the building.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallFace {
    /// The wall stands in front of the mast (a parapet): its face looks inboard, n = −x.
    InFrontOfMast,
    /// The wall stands behind the mast: its face looks outward, n = +x.
    BehindMast,
    /// The wall stands at the left of the mast, looking along the arm: n = −y.
    LeftOfMast,
    /// The wall stands at the right of the mast: n = +y.
    RightOfMast,
}

impl WallFace {
    /// Outward normal of the face in the base's axes.
    pub const fn normal(self) -> DVec3 {
        match self {
            Self::InFrontOfMast => DVec3::NEG_X,
            Self::BehindMast => DVec3::X,
            Self::LeftOfMast => DVec3::NEG_Y,
            Self::RightOfMast => DVec3::Y,
        }
    }
}

/// The action on a wall plate, in its axes and at its middle: the middle lies at the height `up_m` over the base's
/// reference point, and the mast axis `eccentricity_m` in front of the wall's face.
pub fn action_on_plate(action: Wrench, face: WallFace, eccentricity_m: f64, up_m: f64) -> Wrench {
    let normal = face.normal();
    let middle = -normal * eccentricity_m + DVec3::Z * up_m;
    let up = DVec3::Z;
    action.moved(DVec3::ZERO, middle).in_axes(up.cross(normal), up, normal)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A rope at a from the mast axis, straight down with T, at the arm's slew of zero: tilts about y, Fz = −T, My = T·a.
    fn rope(t: f64, a: f64) -> Wrench {
        Wrench::of_force(DVec3::new(0.0, 0.0, -t), DVec3::new(a, 0.0, 1.9), DVec3::ZERO)
    }

    #[test]
    fn a_wall_in_front_carries_the_load_at_a_less_e_and_pulls_its_lower_anchors() {
        let (t, a, e) = (10e3, 1.1, 0.2);
        let found = action_on_plate(rope(t, a), WallFace::InFrontOfMast, e, 0.0);
        // In plate axes y is up and z comes out of the wall, inboard: the load T at a − e behind the face tilts the plate
        // about x. T·(a − e) pulls below: a moment that presses +y is about −x.
        assert!((found.force_n - DVec3::new(0.0, -t, 0.0)).length() < 1e-9);
        assert!((found.moment_nm.x + t * (a - e)).abs() < 1e-9, "{found:?}");
        assert!(found.moment_nm.y.abs() < 1e-9 && found.moment_nm.z.abs() < 1e-9);
    }

    #[test]
    fn a_wall_behind_carries_the_load_at_a_plus_e_and_pulls_its_upper_anchors() {
        let (t, a, e) = (10e3, 1.1, 0.2);
        let found = action_on_plate(rope(t, a), WallFace::BehindMast, e, 0.0);
        assert!((found.moment_nm.x - t * (a + e)).abs() < 1e-9, "{found:?}");
    }

    #[test]
    fn a_wall_beside_is_twisted_by_the_reach_and_bent_by_its_distance() {
        let (t, a, e) = (10e3, 1.1, 0.2);
        for (face, twist) in [(WallFace::LeftOfMast, t * a), (WallFace::RightOfMast, t * a)] {
            let found = action_on_plate(rope(t, a), face, e, 0.0);
            // The load hangs e in front of the face: it pulls the upper anchors. a along the wall it twists the plate.
            assert!((found.moment_nm.x - t * e).abs() < 1e-9, "{face:?} {found:?}");
            assert!((found.moment_nm.z.abs() - twist).abs() < 1e-9, "{face:?} {found:?}");
        }
        // Seen from each side the load turns the plate the other way.
        let of = |face| action_on_plate(rope(t, a), face, e, 0.0).moment_nm.z;
        assert!((of(WallFace::LeftOfMast) + of(WallFace::RightOfMast)).abs() < 1e-9);
    }

    #[test]
    fn power_does_not_depend_on_axes() {
        // For any small movement the action does the same work in both axes.
        let action = Wrench { force_n: DVec3::new(1e3, -2e3, -9e3), moment_nm: DVec3::new(400.0, 3e3, -700.0) };
        for face in [WallFace::InFrontOfMast, WallFace::BehindMast, WallFace::LeftOfMast, WallFace::RightOfMast] {
            let (e, up) = (0.17, 0.4);
            let found = action_on_plate(action, face, e, up);
            assert!((found.force_n.length() - action.force_n.length()).abs() < 1e-9);
            let n = face.normal();
            let middle = -n * e + DVec3::Z * up;
            let turn = DVec3::new(0.3, -0.2, 0.5);
            let work = action.force_n.dot(turn.cross(-middle)) + action.moment_nm.dot(turn);
            let axes = [DVec3::Z.cross(n), DVec3::Z, n];
            let same: f64 = (0..3).map(|i| found.moment_nm[i] * turn.dot(axes[i])).sum();
            assert!((work - same).abs() < 1e-9 * work.abs().max(1.0), "{face:?}");
        }
    }
}
