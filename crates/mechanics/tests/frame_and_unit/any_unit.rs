//! Units of any make, with random lengths and stiffnesses, for tests of laws.

use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, Lump, PinOffsets, Place, RopePoint, Unit,
};
use glam::DVec3;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// So many cases, the same ones on every run, so that a failure can be had again.
pub fn cases(count: u32) -> ProptestConfig {
    ProptestConfig {
        cases: count,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(20_240_611),
        ..ProptestConfig::default()
    }
}

fn bar() -> impl Strategy<Value = BarStiffness> {
    (5e7..3e8, 5e4..6e5, 5e4..6e5, 4e4..5e5, 0.0..120.0).prop_map(|(ea, ey, ez, gj, w)| BarStiffness {
        ea_n: ea,
        ei_y_nm2: ey,
        ei_z_nm2: ez,
        gj_nm2: gj,
        weight_n_per_m: w,
    })
}

fn offset(size: f64) -> impl Strategy<Value = DVec3> {
    (-size..size, -size..size, -size..size).prop_map(|(x, y, z)| DVec3::new(x, y, z))
}

/// A place on a raster of 50 mm, so that no two are so near that a direct solution loses digits.
fn stepped(length: f64) -> f64 {
    (length / 0.05).round() * 0.05
}

/// Which brace, by number, with shares of lengths; every one with lever enough about the arm's pin.
fn brace() -> impl Strategy<Value = (u8, [f64; 3], Option<f64>, BarStiffness)> {
    (0u8..6, [0.3..1.0, 0.1..0.7, 0.3..1.5], prop::option::of(1e6..1e8), bar())
}

fn describe(
    (kind, [along, up, back], spring, bar): (u8, [f64; 3], Option<f64>, BarStiffness),
    height: f64,
    outreach: f64,
    tail: f64,
) -> Brace {
    let action = BraceAction::Both;
    let (along_tail, along_arm) = (stepped(along * tail), stepped(along * outreach));
    let up_mast = stepped(up * height);
    match kind {
        0 => Brace::None,
        1 => Brace::RearToMast { tail_at_m: along_tail, mast_at_m: up_mast, bar, action },
        2 => Brace::RearToBase { tail_at_m: along_tail, base_at_m: back, bar, action },
        3 => Brace::Front { arm_at_m: along_arm, mast_at_m: up_mast, bar, action },
        _ => Brace::RearFoot {
            from: if kind == 4 { FootFrom::MastHead } else { FootFrom::ArmTail { at_m: along_tail } },
            distance_m: back,
            foot_level_m: up - 0.4,
            bearing_rad: up - along,
            allowed_turn_rad: 1.2,
            foot_spring_n_per_m: spring,
            bar,
            action,
        },
    }
}

/// Any unit, and a slew within a radian of the bearing of its foot.
pub fn any_unit() -> impl Strategy<Value = (Unit, f64)> {
    let lengths = (1.2..3.2, 0.8..2.2, 0.3..1.2);
    let points = prop::collection::vec((-0.2..1.0, -0.2..0.2, -0.1..0.3), 1..3);
    let places = (0.0..1.0, 0.0..1.0, 0.0..300.0, 0.0..300.0);
    (
        lengths,
        (bar(), bar()),
        prop::option::of(1e5..1e7),
        any::<bool>(),
        brace(),
        (offset(0.05), offset(0.05)),
        points,
        places,
        -1.0..1.0,
    )
        .prop_map(|(lengths, bars, tilt, pin, brace, pins, points, places, turn)| {
            let (height, outreach, tail) = (stepped(lengths.0), stepped(lengths.1), stepped(lengths.2));
            let (kind, [along, up, _], ..) = brace;
            let braced = matches!(kind, 1 | 2 | 3 | 5);
            let unit = Unit {
                mast: bars.0,
                mast_height_m: height,
                base: tilt.map_or(BaseFixity::Rigid, BaseFixity::TiltSpring),
                arm: bars.1,
                outreach_m: outreach,
                tail_m: tail,
                head: if pin && braced { HeadJoint::Pinned } else { HeadJoint::Rigid },
                brace: describe(brace, height, outreach, tail),
                pins: PinOffsets { upper_m: pins.0, lower_m: pins.1 },
                points: points
                    .into_iter()
                    .map(|(x, sideways_m, drop_m)| RopePoint {
                        x_m: stepped(x * outreach.min(tail / 0.2)),
                        sideways_m,
                        drop_m,
                    })
                    .collect(),
                lumps: vec![
                    Lump { on: Place::Mast { at_m: stepped(places.0 * (height - 0.1)) + 0.0217 }, weight_n: places.2 },
                    Lump {
                        on: Place::Arm { at_m: -tail + stepped(places.1 * (outreach + tail - 0.1)) + 0.0217 },
                        weight_n: places.3,
                    },
                ],
            };
            (unit, up - along + turn)
        })
}

/// A pull vector of some kilonewtons.
pub fn any_pull() -> impl Strategy<Value = DVec3> {
    (-8e3..8e3, -8e3..8e3, -15e3..5e3).prop_map(|(x, y, z)| DVec3::new(x, y, z))
}
