//! What a rope and all else do to a plate at one slew: linear in the rope's pull, written in plate axes.

use glam::DVec3;

use crate::unit::{Influence, UnitFault};
use crate::wrench::Wrench;

/// The action on a plate at one slew, in plate axes, as a linear function of the rope's pull in the base's axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RopeOnPlate {
    /// Action of a pull of 1 N along x, y, z of the base.
    pub per_newton: [Wrench; 3],
    /// Action of all else: weight, wind, a tether.
    pub fixed: Wrench,
}

impl RopeOnPlate {
    /// From a unit's answers at a slew, for a floor plate, whose axes are the base's; `fixed` in the base's axes.
    ///
    /// Errors: a rope point that the unit doesn't have.
    pub fn of_unit(influence: &Influence<'_>, point: usize, fixed: Wrench) -> Result<Self, UnitFault> {
        let slew = influence.slew_rad();
        let rows = influence.base_of_pull(point)?;
        // The plate does not slew: the pull is turned into the arm's axes, and the action back.
        let per_newton = [DVec3::X, DVec3::Y, DVec3::Z].map(|pull| {
            let in_arm = Wrench { force_n: pull, moment_nm: DVec3::ZERO }.slewed(-slew).force_n;
            Wrench::from_six(rows.map(|row| row.dot(in_arm))).slewed(slew)
        });
        Ok(Self { per_newton, fixed })
    }

    /// The same written in other axes, as [`super::wall::action_on_plate`] does.
    #[must_use]
    pub fn written(self, to_plate: impl Fn(Wrench) -> Wrench) -> Self {
        Self { per_newton: self.per_newton.map(&to_plate), fixed: to_plate(self.fixed) }
    }

    /// The action under a pull, N, in the base's axes.
    #[must_use]
    pub fn action(&self, pull_n: DVec3) -> Wrench {
        let [x, y, z] = self.per_newton;
        self.fixed + x * pull_n.x + y * pull_n.y + z * pull_n.z
    }

    /// c with c·d the moment that presses the plate toward the direction `turn_rad` from its x, for a pull of 1 N along d.
    pub(super) fn tilt(&self, turn_rad: f64) -> DVec3 {
        let (sin, cos) = turn_rad.sin_cos();
        DVec3::from_array(self.per_newton.map(|w| w.moment_nm.y * cos - w.moment_nm.x * sin))
    }
}
