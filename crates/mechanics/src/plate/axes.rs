//! Where a plate lies against the unit that it carries: on the floor, on a wall, and how far below the unit's reference point.

use glam::DVec3;

use super::wall::{WallFace, action_on_plate};
use crate::wrench::Wrench;

/// What a plate is fixed to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PlateOn {
    /// A floor: plate axes are the base's, the plate's middle lies on the mast axis.
    Floor,
    /// A wall, as [`super::wall`] has it.
    Wall {
        /// Which way its face looks.
        face: WallFace,
        /// From the face to the mast axis, m.
        eccentricity_m: f64,
        /// From the unit's reference point up to the plate's middle, m.
        up_m: f64,
    },
}

/// The axes of a plate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlateAxes {
    /// What it is fixed to.
    pub on: PlateOn,
    /// How far it lies below the unit's reference point (for a wall: below where `up_m` puts it), m: under a pedestal of the
    /// height p the plate feels M + V·p.
    pub down_m: f64,
}

impl PlateAxes {
    /// A plate on the floor, level with the unit's reference point.
    pub const FLOOR: Self = Self { on: PlateOn::Floor, down_m: 0.0 };

    /// An action on the base, structure axes and about the reference point, as the plate feels it: in its axes and about its
    /// middle.
    #[must_use]
    pub fn action(&self, on_base: Wrench) -> Wrench {
        match self.on {
            PlateOn::Floor => on_base.moved(DVec3::ZERO, DVec3::NEG_Z * self.down_m),
            PlateOn::Wall { face, eccentricity_m, up_m } => {
                action_on_plate(on_base, face, eccentricity_m, up_m - self.down_m)
            }
        }
    }

    /// What each of (Fx, Fy, Fz, Mx, My, Mz) on the base does to the plate.
    pub(super) fn columns(&self) -> [Wrench; 6] {
        std::array::from_fn(|i| {
            let mut six = [0.0; 6];
            six[i] = 1.0;
            self.action(Wrench::from_six(six))
        })
    }

    /// The first number that is none, with its name.
    pub(super) fn not_finite(&self) -> Option<(&'static str, f64)> {
        let mut numbers = vec![("axes.down_m", self.down_m)];
        if let PlateOn::Wall { eccentricity_m, up_m, .. } = self.on {
            numbers.extend([("axes.on.eccentricity_m", eccentricity_m), ("axes.on.up_m", up_m)]);
        }
        numbers.into_iter().find(|(_, value)| !value.is_finite())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: H = 800 N at the reference point, M = 90 N·m: 0.35 m below it M + H·p = 90 + 280 N·m about y.
    #[test]
    fn a_plate_that_lies_lower_feels_the_moment_and_the_shear_times_its_depth() {
        let axes = PlateAxes { down_m: 0.35, ..PlateAxes::FLOOR };
        let on_base = Wrench { force_n: DVec3::new(800.0, 0.0, -50.0), moment_nm: DVec3::new(0.0, 90.0, 7.0) };
        let found = axes.action(on_base);
        assert_eq!(found.force_n, on_base.force_n);
        assert!((found.moment_nm - DVec3::new(0.0, 370.0, 7.0)).length() < 1e-9);
    }

    /// By hand: on a wall behind the mast, n = +x, a hanging load T at a pulls with T·(a + e) about the wall's x whatever the
    /// height; a push H outward, T = 0, acts at its height over the plate's middle.
    #[test]
    fn a_wall_plate_that_lies_lower_is_bent_by_what_pulls_away() {
        let axes = |down_m| PlateAxes {
            on: PlateOn::Wall { face: WallFace::BehindMast, eccentricity_m: 0.2, up_m: 0.5 },
            down_m,
        };
        let hanging = Wrench::of_force(DVec3::NEG_Z * 9e3, DVec3::new(1.1, 0.0, 1.9), DVec3::ZERO);
        let outward = Wrench::of_force(DVec3::X * 600.0, DVec3::Z * 1.9, DVec3::ZERO);
        for down in [0.0, 0.3] {
            assert!((axes(down).action(hanging).moment_nm.x - 9e3 * 1.3).abs() < 1e-9);
            let lever = 1.9 - (0.5 - down);
            assert!((axes(down).action(outward).moment_nm.x.abs() - 600.0 * lever).abs() < 1e-9);
        }
        assert_eq!(axes(f64::NAN).not_finite().map(|found| found.0), Some("axes.down_m"));
    }
}
