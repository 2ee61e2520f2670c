//! The closed forms of pins on the axes under a vertical pull T, to 1e-9.

use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, HeadJoint, Joint, PinOffsets, RopePoint, Side, Station, Unit, UnitModel,
};
use glam::DVec3;

use crate::near::near;

const T: f64 = 11_000.0;
const A: f64 = 1.6;
const H: f64 = 2.1;
const PULL: DVec3 = DVec3::new(0.0, 0.0, -T);

fn unit(brace: Brace, head: HeadJoint) -> UnitModel {
    let bar = BarStiffness::round(2e8, 4e5, 3e5, 0.0);
    UnitModel::new(&Unit {
        mast: bar,
        mast_height_m: H,
        base: BaseFixity::Rigid,
        arm: bar,
        outreach_m: A,
        tail_m: 0.8,
        head,
        brace,
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m: A, sideways_m: 0.0, drop_m: 0.0 }],
        lumps: Vec::new(),
    })
    .unwrap()
}

fn front(x_b: f64, h_b: f64) -> UnitModel {
    let brace = Brace::Front {
        arm_at_m: x_b,
        mast_at_m: h_b,
        bar: BarStiffness::round(1e8, 0.0, 0.0, 0.0),
        action: BraceAction::Both,
    };
    unit(brace, HeadJoint::Pinned)
}

fn rear(x_b: f64, h_b: f64) -> UnitModel {
    let brace = Brace::RearToMast {
        tail_at_m: x_b,
        mast_at_m: h_b,
        bar: BarStiffness::round(1e8, 0.0, 0.0, 0.0),
        action: BraceAction::Both,
    };
    unit(brace, HeadJoint::Pinned)
}

#[track_caller]
fn same(what: &str, got: f64, expected: f64) {
    near(what, got, expected, 1e-9 * T);
}

fn axial(model: &UnitModel) -> f64 {
    let at = model.influence(0.0).unwrap();
    at.brace_of_pull(0).unwrap().dot(PULL)
}

/// Force along x and downward force of the arm on the mast.
fn on_head(model: &UnitModel) -> (f64, f64) {
    let at = model.influence(0.0).unwrap();
    let rows = at.joint_of_pull(Joint::ArmOnMast, 0).unwrap();
    (rows[0].dot(PULL), -rows[2].dot(PULL))
}

/// Moment M_y of the arm at a cut; a pull down at the tip makes it positive.
fn arm_moment(model: &UnitModel, at_m: f64, side: Side) -> f64 {
    let at = model.influence(0.0).unwrap();
    let station = Station::arm(at_m, side);
    at.section_of_pull(station, 0).unwrap()[4].dot(PULL)
}

/// N = T·a/(x_b·sin β), tan β = (H − h_b)/x_b, pressed; arm moment T·(a − x_b) at the brace.
#[test]
fn a_front_brace_is_pressed_by_the_closed_form() {
    let (x_b, h_b) = (0.7, 1.2);
    let model = front(x_b, h_b);
    let beta = (H - h_b).atan2(x_b);
    let n = T * A / (x_b * beta.sin());
    same("axial", axial(&model), -n);
    let (along, down) = on_head(&model);
    same("head, horizontal", along.abs(), n * beta.cos());
    same("head, vertical", down, T * (1.0 - A / x_b));
    same("arm at the brace", arm_moment(&model, x_b, Side::Before), T * (A - x_b));
    same("arm at the pin", arm_moment(&model, 0.0, Side::After), 0.0);
}

/// T·(1 − a/x_b) downward is negative beyond the brace: the arm lifts off the mast.
#[test]
fn a_front_braced_arm_lifts_off_its_mast() {
    let (_, down) = on_head(&front(0.7, 1.2));
    assert!(down < 0.0);
}

/// N = T·a/(x_b·sin β), pulled; arm moment T·a at the mast; the head carries T·(1 + a/x_b).
#[test]
fn a_rear_brace_is_pulled_by_the_closed_form() {
    let (x_b, h_b) = (0.6, 0.5);
    let model = rear(x_b, h_b);
    let beta = (H - h_b).atan2(x_b);
    let n = T * A / (x_b * beta.sin());
    same("axial", axial(&model), n);
    let (along, down) = on_head(&model);
    same("head, horizontal", along.abs(), n * beta.cos());
    same("head, vertical", down, T * (1.0 + A / x_b));
    same("arm at the mast", arm_moment(&model, 0.0, Side::Before), T * A);
    same("arm before the mast", arm_moment(&model, 0.0, Side::After), T * A);
}

/// Base moment T·a whatever braces the arm to its mast, and Fz = −T.
#[test]
fn the_base_moment_is_the_same_whatever_braces_the_arm() {
    let models = [front(0.7, 1.2), rear(0.6, 0.5), unit(Brace::None, HeadJoint::Rigid)];
    for model in models {
        let at = model.influence(0.0).unwrap();
        let rows = at.base_of_pull(0).unwrap();
        for (i, expected) in [0.0, 0.0, -T, 0.0, A * T, 0.0].into_iter().enumerate() {
            same("base", rows[i].dot(PULL), expected);
        }
    }
}

/// Cantilevered mast and arm: tip drop T·a³/(3·EI) + T·a²·H/EI; tip drift T·a·H²/(2·EI).
#[test]
fn an_unbraced_tip_sinks_and_leans_out_by_the_closed_form() {
    let model = unit(Brace::None, HeadJoint::Rigid);
    let rows = model.influence(0.0).unwrap().displacement_of_pull(0, 0).unwrap();
    let axial = T * H / 2e8;
    let drop = T * A.powi(3) / (3.0 * 4e5) + T * A * A * H / 4e5 + axial;
    near("drop", rows[2].dot(PULL), -drop, 1e-9);
    near("drift", rows[0].dot(PULL), T * A * H * H / (2.0 * 4e5), 1e-9);
}
