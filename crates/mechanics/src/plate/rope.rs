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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::stiffness::BarStiffness;
    use crate::unit::{BaseFixity, Brace, HeadJoint, PinOffsets, RopePoint, Unit, UnitModel};

    #[test]
    fn a_pull_at_the_tip_acts_on_the_plate_as_a_force_at_its_place() {
        let bar = BarStiffness { ea_n: 2e8, ei_y_nm2: 5e5, ei_z_nm2: 5e5, gj_nm2: 4e5, weight_n_per_m: 0.0 };
        let (height, out) = (1.9, 1.15);
        let model = UnitModel::new(&Unit {
            mast: bar,
            mast_height_m: height,
            base: BaseFixity::Rigid,
            arm: bar,
            outreach_m: out,
            tail_m: 0.0,
            head: HeadJoint::Rigid,
            brace: Brace::None,
            pins: PinOffsets::default(),
            points: vec![RopePoint { x_m: out, sideways_m: 0.0, drop_m: 0.0 }],
            lumps: vec![],
        })
        .unwrap();
        let fixed = Wrench { force_n: DVec3::new(0.0, 0.0, -700.0), moment_nm: DVec3::new(0.0, 90.0, 0.0) };
        for slew in [0.0_f64, 0.7, -2.1] {
            let rope = RopeOnPlate::of_unit(&model.influence(slew).unwrap(), 0, fixed).unwrap();
            let pull = DVec3::new(1200.0, -800.0, -9000.0);
            // Statics is the witness: the plate feels the pull as a force at the tip, wherever the arm points.
            let tip = DVec3::new(out * slew.cos(), out * slew.sin(), height);
            let wanted = Wrench::of_force(pull, tip, DVec3::ZERO) + fixed;
            for (found, wanted) in rope.action(pull).six().iter().zip(wanted.six()) {
                assert!((found - wanted).abs() < 1e-6, "slew {slew}: {found} instead of {wanted}");
            }
        }
        let nowhere = RopeOnPlate::of_unit(&model.influence(0.0).unwrap(), 7, fixed);
        assert!(nowhere.is_err(), "a point that the unit does not have");
    }
}
