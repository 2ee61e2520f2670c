//! Whatever numbers are typed, there is an answer or a named fault: nothing panics, hangs, or fills the memory.

use gantline_mechanics::cone::{Lean, LoadCone};
use gantline_mechanics::envelope::{
    Actions, FootCase, Pull, SlewHold, SlewRange, Tether, base_envelope, brace_envelope, foot_envelope, joint_envelope,
    least_critical_factor, movement_envelope,
};
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, Joint, Lump, PinOffsets, Place, RopePoint, Unit, UnitModel,
};
use glam::DVec3;
use proptest::prelude::*;

use crate::any_unit::cases;

/// Mostly plain numbers, some odd, few outrageous.
fn odd() -> impl Strategy<Value = f64> {
    prop_oneof![
        20 => 0.2..3.0,
        3 => Just(0.0),
        2 => Just(1e-9),
        2 => Just(0.0051),
        1 => Just(-1.0),
        1 => Just(1e9),
        1 => Just(f64::MAX),
        1 => Just(f64::MIN_POSITIVE),
        1 => Just(f64::NAN),
        1 => Just(f64::INFINITY),
    ]
}

fn bar() -> impl Strategy<Value = BarStiffness> {
    (odd(), odd(), odd(), odd(), odd()).prop_map(|(ea, y, z, j, w)| BarStiffness {
        ea_n: ea * 1e8,
        ei_y_nm2: y * 1e5,
        ei_z_nm2: z * 1e5,
        gj_nm2: j * 1e5,
        weight_n_per_m: w * 50.0,
    })
}

fn brace() -> impl Strategy<Value = Brace> {
    let action = prop_oneof![Just(BraceAction::Both), Just(BraceAction::PullOnly)];
    (0..6, [odd(), odd(), odd(), odd()], prop::option::of(odd()), bar(), action).prop_map(
        |(kind, [a, b, c, d], spring, bar, action)| match kind {
            0 => Brace::None,
            1 => Brace::RearToMast { tail_at_m: a, mast_at_m: b, bar, action },
            2 => Brace::RearToBase { tail_at_m: a, base_at_m: b, bar, action },
            3 => Brace::Front { arm_at_m: a, mast_at_m: b, bar, action },
            _ => Brace::RearFoot {
                from: if kind == 4 { FootFrom::MastHead } else { FootFrom::ArmTail { at_m: a } },
                distance_m: b,
                foot_level_m: c - 1.0,
                bearing_rad: d,
                allowed_turn_rad: c,
                foot_spring_n_per_m: spring.map(|k| k * 1e7),
                bar,
                action,
            },
        },
    )
}

fn unit() -> impl Strategy<Value = Unit> {
    let head = prop_oneof![Just(HeadJoint::Pinned), Just(HeadJoint::Rigid)];
    (bar(), bar(), [odd(), odd(), odd(), odd()], brace(), head, [odd(), odd(), odd()]).prop_map(
        |(mast, arm, [h, a, t, x], brace, head, [p, q, w])| Unit {
            mast,
            mast_height_m: h,
            base: if w > 2.0 { BaseFixity::TiltSpring(w * 1e6) } else { BaseFixity::Rigid },
            arm,
            outreach_m: a,
            tail_m: t,
            head,
            brace,
            pins: PinOffsets { upper_m: DVec3::new(0.0, 0.02 * p, -0.05 * q), lower_m: DVec3::ZERO },
            points: vec![RopePoint { x_m: x, sideways_m: 0.1 * p, drop_m: 0.1 * q }],
            lumps: vec![Lump { on: Place::Arm { at_m: q }, weight_n: 100.0 * w }],
        },
    )
}

fn actions() -> impl Strategy<Value = (Actions, SlewRange)> {
    ([odd(), odd(), odd(), odd(), odd()], any::<bool>(), any::<bool>(), 0..3).prop_map(
        |([tension, alpha, lean, factor, slew], cut, free, range)| {
            let cone = LoadCone {
                half_angle_rad: alpha,
                lean: cut.then_some(Lean { inward_rad: 0.2 * lean, outward_rad: 0.3 * lean }),
            };
            let actions = Actions {
                pulls: vec![Pull::new(0, 5e3 * tension, cone)],
                weight_factor: factor,
                tether: cut.then_some(Tether { force_n: 1e3 * lean, height_m: factor }),
                wind: None,
                fixed: Vec::new(),
                slew_hold: if free { SlewHold::Free } else { SlewHold::Held },
                foot: if free { FootCase::HoldsOrLost } else { FootCase::Holds },
            };
            let range = match range {
                0 => SlewRange::WholeTurn,
                1 => SlewRange::Between { from_rad: -slew, to_rad: slew },
                _ => SlewRange::At(vec![slew, 0.1]),
            };
            (actions, range)
        },
    )
}

proptest! {
    #![proptest_config(cases(1500))]

    #[test]
    fn any_numbers_give_an_answer_or_a_named_fault(unit in unit(), (actions, range) in actions()) {
        let model = match UnitModel::new(&unit) {
            Ok(model) => model,
            Err(fault) => {
                prop_assert!(!fault.to_string().is_empty());
                return Ok(());
            }
        };
        for answer in [
            base_envelope(&model, &actions, &range),
            brace_envelope(&model, &actions, &range),
            foot_envelope(&model, &actions, &range),
            joint_envelope(&model, Joint::ArmOnMast, &actions, &range),
            movement_envelope(&model, 0, &actions, &range),
        ] {
            match answer {
                Err(fault) => prop_assert!(!fault.to_string().is_empty()),
                Ok(found) => prop_assert!(found.extremes.iter().all(|e| e.value.is_finite())),
            }
        }
        if let Ok(found) = least_critical_factor(&model, &actions, &range) {
            prop_assert!(found.alpha_cr > 0.0);
        }
    }
}
