//! Critical factors of units against Euler, against finer frames, and against other rope directions.

use std::f64::consts::{FRAC_PI_2, PI};

use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{Actions, FootCase, Pull, SlewRange, least_critical_factor};
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, HeadJoint, Pieces, PinOffsets, PointPull, RopePoint, Unit, UnitModel,
};
use glam::DVec3;

use crate::near::near;
use crate::worked::{NAMES, Worked};

const T: f64 = 10_000.0;

/// Mast and arm without weight or brace; the rope pulls at `x_m`.
fn bare(mast_ei: f64, arm_ei: f64, x_m: f64) -> UnitModel {
    UnitModel::new(&Unit {
        mast: BarStiffness { ei_z_nm2: 2.0 * mast_ei, ..BarStiffness::round(1e10, mast_ei, 1e9, 0.0) },
        mast_height_m: 2.0,
        base: BaseFixity::Rigid,
        arm: BarStiffness { ei_z_nm2: 2.0 * arm_ei, ..BarStiffness::round(1e10, arm_ei, 1e9, 0.0) },
        outreach_m: 1.5,
        tail_m: 0.0,
        head: HeadJoint::Rigid,
        brace: Brace::None,
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m, sideways_m: 0.0, drop_m: 0.0 }],
        lumps: Vec::new(),
    })
    .unwrap()
}

fn actions(alpha: f64) -> Actions {
    Actions::of_pull(Pull::new(0, T, LoadCone::whole(alpha)), 1.0)
}

/// Euler: π²·E·I/(4·H²) over T, about the weak axis, for a pull straight down the mast. Two cubic
/// elements to the mast are 0.05 % off.
#[test]
fn a_mast_pulled_down_on_its_axis_has_eulers_factor() {
    let model = bare(60e3, 1e9, 0.0);
    let found = least_critical_factor(&model, &actions(0.0), &SlewRange::WholeTurn).unwrap();
    let euler = PI.powi(2) * 60e3 / (4.0 * 4.0) / T;
    near("factor", found.alpha_cr, euler, 1e-3 * euler);
}

/// Euler for the arm, pressed by a rope that pulls back along it on a mast too stout to matter: among all
/// directions that one is found.
#[test]
fn an_arm_pulled_back_along_itself_has_eulers_factor() {
    let model = bare(1e9, 20e3, 1.5);
    let found = least_critical_factor(&model, &actions(FRAC_PI_2), &SlewRange::At(vec![0.0])).unwrap();
    let euler = PI.powi(2) * 20e3 / (4.0 * 1.5 * 1.5) / T;
    near("factor", found.alpha_cr, euler, 1e-3 * euler);
    let direction = found.pulls_n[0] / T;
    near("pulls back", direction.dot(-DVec3::X), 1.0, 1e-2);
}

/// A pull that presses nothing buckles nothing.
#[test]
fn nothing_pressed_nothing_buckles() {
    let model = bare(60e3, 1e9, 0.0);
    let mut up = actions(0.0);
    up.pulls[0].tension_n = 0.0;
    let found = least_critical_factor(&model, &up, &SlewRange::WholeTurn).unwrap();
    assert!(found.alpha_cr.is_infinite());
}

/// The worked units: the reported pull, on a frame of twelve members to the mast, solved directly with
/// its own axial forces, gives the factor to 0.2 % (what two members to a mast may be off); and no
/// other direction of a raster gives less.
#[test]
fn factors_of_braced_units_are_those_of_fine_frames_and_the_least_of_all_directions() {
    let worked = Worked::read();
    let alpha = 20f64.to_radians();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        let slew = 0.2;
        let found = least_critical_factor(&model, &actions(alpha), &SlewRange::At(vec![slew])).unwrap();
        let fine = |direction: DVec3, longest: f64| {
            let frame = model.frame(Pieces::Whole, longest, slew).unwrap();
            let pull = PointPull { point: 0, force_n: direction * T };
            let case = model.load_case(&frame, &[pull], 1.0).unwrap();
            let factored = frame.frame.factor().unwrap();
            let solution = factored.solve(&case).unwrap();
            factored.critical_factor(&solution).unwrap().unwrap_or(f64::INFINITY)
        };
        let reported = crate::any_actions::turned(found.pulls_n[0] / T, -slew);
        let height = model.unit().mast_height_m;
        near(name, found.alpha_cr, fine(reported, height / 12.0), 2e-3 * found.alpha_cr);
        for step in 0..24 {
            for tilt in [0.0, alpha / 2.0, alpha] {
                let (sin, cos) = (f64::from(step) * PI / 12.0).sin_cos();
                let other = fine(DVec3::new(cos * tilt.sin(), sin * tilt.sin(), -tilt.cos()), height / 2.0);
                assert!(other >= found.alpha_cr * (1.0 - 1e-6), "{name}: {other} {}", found.alpha_cr);
            }
        }
    }
}

/// The unit with its foot or without is the worse of the two units.
#[test]
fn a_foot_that_may_be_lost_counts_the_worse_of_both() {
    let mut unit = Worked::read().unit("rear_foot");
    let mut actions = actions(0.3);
    let range = SlewRange::At(vec![-0.5, 0.0, 0.5]);
    let factor = |unit: &Unit, actions: &Actions| {
        least_critical_factor(&UnitModel::new(unit).unwrap(), actions, &range).unwrap().alpha_cr
    };
    let holds = factor(&unit, &actions);
    actions.foot = FootCase::HoldsOrLost;
    let either = factor(&unit, &actions);
    unit.brace = Brace::None;
    let alone = factor(&unit, &actions);
    near("either", either, holds.min(alone), 1e-9 * either);
    assert!((holds - alone).abs() > 0.02 * alone, "{holds} {alone}");
}
