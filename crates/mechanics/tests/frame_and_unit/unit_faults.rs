//! A unit that can't be is refused with the name of its field.

use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, PinOffsets, RopePoint, Unit, UnitFault, UnitModel,
};

fn sound() -> Unit {
    let bar = BarStiffness::round(2e8, 4e5, 3e5, 60.0);
    Unit {
        mast: bar,
        mast_height_m: 2.0,
        base: BaseFixity::Rigid,
        arm: bar,
        outreach_m: 1.4,
        tail_m: 0.6,
        head: HeadJoint::Pinned,
        brace: Brace::RearToMast { tail_at_m: 0.5, mast_at_m: 0.7, bar, action: BraceAction::Both },
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m: 1.4, sideways_m: 0.0, drop_m: 0.1 }],
        lumps: Vec::new(),
    }
}

fn fault(change: impl FnOnce(&mut Unit)) -> UnitFault {
    let mut unit = sound();
    change(&mut unit);
    UnitModel::new(&unit).unwrap_err()
}

#[test]
fn numbers_that_are_none_are_named() {
    let found = fault(|u| u.outreach_m = f64::NAN);
    assert!(matches!(found, UnitFault::NotFinite { field, .. } if field == "outreach_m"));
    let found = fault(|u| u.points[0].drop_m = f64::INFINITY);
    assert!(matches!(found, UnitFault::NotFinite { field, .. } if field == "points[0].drop_m"));
    let found = fault(|u| u.mast.ei_z_nm2 = f64::NAN);
    assert!(matches!(found, UnitFault::NotFinite { field, .. } if field == "mast.ei_z_nm2"));
}

#[test]
fn lengths_and_stiffnesses_of_nothing_are_named() {
    let found = fault(|u| u.mast_height_m = 0.0);
    assert!(matches!(found, UnitFault::NotPositive { field, .. } if field == "mast_height_m"));
    let found = fault(|u| u.arm.gj_nm2 = -1.0);
    assert!(matches!(found, UnitFault::NotPositive { field, .. } if field == "arm.gj_nm2"));
    let found = fault(|u| u.tail_m = -0.1);
    assert!(matches!(found, UnitFault::Negative { field, .. } if field == "tail_m"));
}

#[test]
fn places_off_their_member_are_named_with_their_bounds() {
    let found = fault(|u| {
        if let Brace::RearToMast { mast_at_m, .. } = &mut u.brace {
            *mast_at_m = 2.3;
        }
    });
    assert_eq!(found.to_string(), "brace.mast_at_m is 2.3; it must lie between 0 and 2 (0 to mast_height_m)");
    let found = fault(|u| u.points[0].x_m = 1.5);
    assert!(matches!(found, UnitFault::OutOfRange { field, .. } if field == "points[0].x_m"));
    let found = fault(|u| {
        if let Brace::RearToMast { tail_at_m, .. } = &mut u.brace {
            *tail_at_m = 0.7;
        }
    });
    assert!(matches!(found, UnitFault::OutOfRange { field, .. } if field == "brace.tail_at_m"));
}

#[test]
fn an_arm_that_nothing_holds_swings() {
    assert_eq!(fault(|u| u.brace = Brace::None), UnitFault::ArmSwings);
    let from_head = |u: &mut Unit| {
        u.brace = Brace::RearFoot {
            from: FootFrom::MastHead,
            distance_m: 1.0,
            foot_level_m: 0.0,
            bearing_rad: 0.0,
            allowed_turn_rad: 1.0,
            foot_spring_n_per_m: None,
            bar: u.mast,
            action: BraceAction::Both,
        };
    };
    assert_eq!(fault(from_head), UnitFault::ArmSwings);
}

#[test]
fn a_brace_that_points_at_the_pin_holds_nothing() {
    let found = fault(|u| {
        u.brace = Brace::RearToMast { tail_at_m: 0.5, mast_at_m: 2.0, bar: u.mast, action: BraceAction::Both };
    });
    assert_eq!(found, UnitFault::BraceWithoutLever { slew_rad: 0.0 });
}

#[test]
fn a_rope_point_that_is_not_there_is_named() {
    let model = UnitModel::new(&sound()).unwrap();
    let at = model.influence(0.0).unwrap();
    assert_eq!(at.base_of_pull(3).unwrap_err(), UnitFault::UnknownPoint { index: 3, count: 1 });
}
