//! What keeps a unit together: brace, joints, slew hold. Weightless parts, closed forms.

use gantline_plan::assess::{Code, Severity};
use gantline_plan::catalog::{BraceAction, BraceKind, Retention, RopePoint, SlewHold};
use gantline_plan::document::Plan;

use crate::case::{Case, Wanted};
use crate::site::{Site, pinned_arm, rigid_arm, set};

const BLOCKING: Wanted = Wanted::Fails(Severity::Blocking);

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = stays_pulled();
    all.extend(joints());
    all.extend(slew_hold());
    all
}

/// The rope leaves 1.15 m out and 0.20 m below the arm's pinned axis. Leaning outward by α it turns the arm about the pin with
/// T·(1.15·cos α − 0.20·sin α): the tie behind goes slack beyond α = atan(1.15/0.20), and then nothing holds the arm.
fn stays_pulled() -> Vec<Case> {
    let limit_rad = (1.15_f64 / 0.20).atan();
    let leaning = |share: f64| -> Plan {
        let kind = BraceKind::RearToMast { tail_at_m: 0.7, below_arm_m: 0.95 };
        let mut family = pinned_arm(kind, BraceAction::PullOnly);
        let point = RopePoint { name: "tip".into(), out_m: 1.15, sideways_m: 0.0, drop_m: 0.20, rated_n: None };
        family.arms.values_mut().next().unwrap().points = vec![point];
        let mut site = Site::weightless(family, 1000.0);
        site.basis.cone.half_angle_rad = set(limit_rad * share);
        site.plan()
    };
    let code = Code::BraceStaysPulled;
    vec![
        Case::new(code, "a thousandth too wide a cone", leaning(1.001), BLOCKING),
        Case::new(code, "a thousandth narrower", leaning(0.999), Wanted::Meets),
    ]
}

/// Front brace 0.55 m in front of the mast: the arm lifts off the mast with T·(a/x_b − 1) = 10 kN·(1.15/0.55 − 1) = 10.909 kN.
fn joints() -> Vec<Case> {
    let uplift_n = 10e3 * (1.15 / 0.55 - 1.0);
    let held = |share: f64| -> Plan {
        let kind = BraceKind::Front { arm_at_m: 0.55, below_arm_m: 0.6 };
        let mut family = pinned_arm(kind, BraceAction::PullAndPush);
        let pin = Retention::Pin { resistance_n: Some(uplift_n * share) };
        family.arms.values_mut().next().unwrap().retention = pin;
        Site::weightless(family, 10e3).plan()
    };
    let code = Code::JointRetention;
    vec![
        Case::new(code, "a pin a thousandth too weak", held(0.999), BLOCKING).measures(uplift_n),
        Case::new(code, "a pin a thousandth stronger", held(1.001), Wanted::Meets).measures(uplift_n),
    ]
}

/// A rope that leans 0.1 rad across the arm twists the mast with T·sin 0.1·a = 10 kN·0.0998334·1 m = 998.334 N·m.
fn slew_hold() -> Vec<Case> {
    let twist_nm = 10e3 * 0.1_f64.sin();
    let held = |share: f64| -> Plan {
        let mut family = rigid_arm();
        let base = family.bases.values_mut().next().unwrap();
        base.slew_hold = SlewHold::Clamp { rated_torque_nm: twist_nm * share };
        let mut site = Site::weightless(family, 10e3);
        site.basis.cone.half_angle_rad = set(0.1);
        site.plan()
    };
    let code = Code::SlewHold;
    let caution = Wanted::Fails(Severity::Caution);
    vec![
        Case::new(code, "a thousandth too weak", held(0.999), caution).measures(twist_nm),
        Case::new(code, "a thousandth stronger", held(1.001), Wanted::Meets).measures(twist_nm),
    ]
}
