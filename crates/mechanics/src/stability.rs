//! How far a unit is from buckling as a whole: α_cr, the smallest factor on its loads at which it would.

pub use crate::envelope::{CriticalFactor, least_critical_factor};

use crate::envelope::{Actions, EnvelopeFault, SlewRange};
use crate::unit::UnitModel;

/// α_cr over everything that may act at once, at any slew: [`least_critical_factor`] says how. Infinite when nothing is
/// pressed.
pub fn alpha_cr(model: &UnitModel, actions: &Actions) -> Result<f64, EnvelopeFault> {
    Ok(least_critical_factor(model, actions, &SlewRange::WholeTurn)?.alpha_cr)
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::cone::LoadCone;
    use crate::envelope::Pull;
    use crate::stiffness::BarStiffness;
    use crate::unit::{BaseFixity, Brace, HeadJoint, PinOffsets, RopePoint, Unit};

    fn pole(height_m: f64, ei: f64) -> UnitModel {
        let bar = |ei: f64| BarStiffness { ea_n: 2e8, ei_y_nm2: ei, ei_z_nm2: ei, gj_nm2: ei, weight_n_per_m: 0.0 };
        UnitModel::new(&Unit {
            mast: bar(ei),
            mast_height_m: height_m,
            base: BaseFixity::Rigid,
            arm: bar(ei * 1e3),
            // So short an arm that the pull stands over the mast's axis.
            outreach_m: 0.02,
            tail_m: 0.0,
            head: HeadJoint::Rigid,
            brace: Brace::None,
            pins: PinOffsets::default(),
            points: vec![RopePoint { x_m: 0.0, sideways_m: 0.0, drop_m: 0.0 }],
            lumps: vec![],
        })
        .unwrap()
    }

    #[test]
    fn a_mast_under_a_pull_along_its_axis_buckles_as_eulers_cantilever() {
        let (height_m, ei) = (2.0, 5e5);
        let model = pole(height_m, ei);
        let actions = Actions::of_pull(Pull::new(0, 1e4, LoadCone::whole(0.0)), 0.0);
        // Euler's first case: N_cr = π²·EI/(2H)².
        let euler = PI * PI * ei / (2.0 * height_m).powi(2) / 1e4;
        let found = alpha_cr(&model, &actions).unwrap();
        assert!((found / euler - 1.0).abs() < 2e-3, "{found} instead of {euler}");
    }

    #[test]
    fn twice_the_pull_halves_the_factor_and_no_pull_never_buckles() {
        let model = pole(1.5, 4e5);
        let at = |tension_n: f64| {
            alpha_cr(&model, &Actions::of_pull(Pull::new(0, tension_n, LoadCone::whole(0.3)), 0.0)).unwrap()
        };
        assert!((at(1e4) / at(2e4) - 2.0).abs() < 1e-9);
        assert_eq!(at(0.0), f64::INFINITY);
    }
}
