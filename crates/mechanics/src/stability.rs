//! How far a unit is from buckling as a whole: α_cr, the smallest factor on its loads at which it would.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

use glam::DVec3;

use crate::envelope::Actions;
use crate::unit::{Pieces, PointPull, UnitFault, UnitModel};

/// Members of mast and arm are divided so that none is longer than this share of the mast: a cantilever in four pieces
/// buckles within 0.1 % of Euler's load.
const LONGEST_SHARE: f64 = 0.25;

/// α_cr under the rope pulls and the weight of some actions: the smallest over a raster of the cone, its axis, half way
/// and rim (not beyond horizontal, where pulls no longer press the mast), in eight directions around. Infinite when
/// nothing is pressed.
///
/// The loads keep their direction (Euler). Wind and tethers press nothing along its axis and are left out. A foot that
/// does not slew is looked at at its own bearing and a quarter turn to each side, as far as it allows.
pub fn alpha_cr(model: &UnitModel, actions: &Actions) -> Result<f64, UnitFault> {
    let longest_m = LONGEST_SHARE * model.unit().mast_height_m;
    let mut least = f64::INFINITY;
    for slew in slews(model) {
        let frame = model.frame(Pieces::Whole, longest_m, slew)?;
        let factored = frame.frame.factor().map_err(UnitFault::Frame)?;
        for directions in raster(actions) {
            let pulls: Vec<PointPull> = actions
                .pulls
                .iter()
                .map(|pull| PointPull { point: pull.point, force_n: directions * pull.tension_n })
                .collect();
            let case = model.load_case(&frame, &pulls, actions.weight_factor)?;
            let solution = factored.solve(&case).map_err(UnitFault::Frame)?;
            if let Some(factor) = factored.critical_factor(&solution) {
                least = least.min(factor);
            }
        }
    }
    Ok(least)
}

/// Directions in arm axes; ropes of one case are taken to pull alike. Mirror images about the arm's plane are alike.
fn raster(actions: &Actions) -> Vec<DVec3> {
    let half_angle = actions.pulls.iter().map(|pull| pull.cone.half_angle_rad).fold(0.0, f64::max).min(FRAC_PI_2);
    let mut directions = vec![DVec3::NEG_Z];
    for lean in [half_angle / 2.0, half_angle] {
        for step in 0..5 {
            let (sin, cos) = (f64::from(step) * FRAC_PI_4).sin_cos();
            directions.push(DVec3::new(lean.sin() * cos, lean.sin() * sin, -lean.cos()));
        }
    }
    directions
}

fn slews(model: &UnitModel) -> Vec<f64> {
    use crate::unit::Brace;
    match model.unit().brace {
        Brace::RearFoot { bearing_rad, allowed_turn_rad, .. } => {
            let aside = allowed_turn_rad.min(FRAC_PI_2).min(PI);
            vec![bearing_rad, bearing_rad - aside, bearing_rad + aside]
        }
        _ => vec![0.0],
    }
}

#[cfg(test)]
mod tests {
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
