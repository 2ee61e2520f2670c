//! Actions of any kind, and what a given way of acting does to a base, worked out anew.

use std::f64::consts::{FRAC_PI_2, PI};

use gantline_mechanics::cone::{Lean, LoadCone};
use gantline_mechanics::envelope::{
    Actions, Causes, FixedForce, FootCase, ForceAxes, ForceOn, Pull, SecondLeg, SlewHold, SlewRange, Tether, WindLump,
    WindOnUnit,
};
use gantline_mechanics::unit::{Influence, Place, UnitModel};
use gantline_mechanics::wrench::Wrench;
use glam::{DVec2, DVec3};
use proptest::prelude::*;

fn cone() -> impl Strategy<Value = LoadCone> {
    let alpha = prop_oneof![Just(0.35), Just(FRAC_PI_2), Just(PI), 0.05..3.0];
    let lean = prop::option::weighted(0.3, (0.0..0.6, 0.0..0.9));
    (alpha, lean).prop_map(|(half_angle_rad, lean)| LoadCone {
        half_angle_rad,
        lean: lean.map(|(inward_rad, outward_rad)| Lean { inward_rad, outward_rad }),
    })
}

fn pull() -> impl Strategy<Value = Pull> {
    let leg = prop::option::weighted(0.25, ((-4.0..-1.5, -1.0..1.0, 0.0..0.8), (0.4..1.0, 1.0..1.8)));
    (cone(), 2e3..15e3, prop::option::weighted(0.2, 0.0..1.0), leg).prop_map(|(cone, tension_n, least, leg)| Pull {
        least_n: least.unwrap_or(0.0) * tension_n,
        second_leg: leg
            .map(|((x, y, z), (least, most))| SecondLeg { anchor_m: DVec3::new(x, y, z), ratio: [least, most] }),
        ..Pull::new(0, tension_n, cone)
    })
}

fn vector() -> impl Strategy<Value = DVec3> {
    (-900.0..900.0, -900.0..900.0, -900.0..900.0).prop_map(|(x, y, z)| DVec3::new(x, y, z))
}

fn fixed() -> impl Strategy<Value = FixedForce> {
    (vector(), any::<bool>(), prop::option::of(0.0..0.5)).prop_map(|(force_n, turns, height)| FixedForce {
        on: height.map_or(ForceOn::Point(0), |height_m| ForceOn::Base { height_m }),
        force_n,
        axes: if turns { ForceAxes::Arm } else { ForceAxes::Structure },
    })
}

fn wind() -> impl Strategy<Value = WindOnUnit> {
    (0.0..200.0, 0.0..200.0, 0.0..100.0, 0.0..400.0).prop_map(|(mast, arm, end, lump)| WindOnUnit {
        mast_n_per_m: mast,
        arm_n_per_m: arm,
        arm_end_n: end,
        brace_n: 0.0,
        lumps: vec![WindLump { on: Place::Arm { at_m: 0.3 }, force_n: lump }],
    })
}

/// Actions with one or two ropes at the first rope point.
pub fn any_actions() -> impl Strategy<Value = Actions> {
    let tether = prop::option::weighted(0.3, (500.0..6e3, 0.0..0.4));
    (
        prop::collection::vec(pull(), 1..3),
        0.8..1.4,
        tether,
        prop::option::weighted(0.3, wind()),
        prop::collection::vec(fixed(), 0..2),
        any::<bool>(),
    )
        .prop_map(|(pulls, weight_factor, tether, wind, fixed, free)| Actions {
            pulls,
            weight_factor,
            tether: tether.map(|(force_n, height_m)| Tether { force_n, height_m }),
            wind,
            fixed,
            slew_hold: if free { SlewHold::Free } else { SlewHold::Held },
            foot: FootCase::Holds,
        })
}

pub fn any_range() -> impl Strategy<Value = SlewRange> {
    prop_oneof![
        Just(SlewRange::WholeTurn),
        (-1.0..0.0, 0.0..1.0).prop_map(|(from_rad, to_rad)| SlewRange::Between { from_rad, to_rad }),
        Just(SlewRange::At(vec![-0.9, 0.0, 0.4])),
    ]
}

pub fn turned(v: DVec3, angle: f64) -> DVec3 {
    DVec2::from_angle(angle).rotate(DVec2::new(v.x, v.y)).extend(v.z)
}

/// The action on the base of everything that `causes` says, structure axes: pulls and weight by the
/// influences, everything else by statics.
pub fn base_action(model: &UnitModel, at: &Influence<'_>, actions: &Actions, causes: &Causes) -> [f64; 6] {
    let slew = at.slew_rad();
    let unit = model.unit();
    let rows = at.base_of_pull(0).unwrap();
    let by_pull = |force: DVec3| Wrench::from_six(rows.map(|r| r.dot(force)));
    let point = unit.points[0];
    let place = DVec3::new(point.x_m, point.sideways_m, unit.mast_height_m - point.drop_m);
    let mut sum = Wrench::from_six(at.base_of_weight().unwrap()) * actions.weight_factor;
    for (i, pull) in actions.pulls.iter().enumerate() {
        sum += by_pull(turned(causes.pulls_n[i], -slew));
        if let Some(leg) = pull.second_leg {
            let toward = (turned(leg.anchor_m, -slew) - place).normalize();
            sum += by_pull(toward * causes.second_legs_n[i]);
        }
    }
    for force in &actions.fixed {
        let vector = match force.axes {
            ForceAxes::Arm => force.force_n,
            ForceAxes::Structure => turned(force.force_n, -slew),
        };
        sum += match force.on {
            ForceOn::Point(_) => by_pull(vector),
            ForceOn::Base { height_m } => Wrench::of_force(vector, DVec3::Z * height_m, DVec3::ZERO),
        };
    }
    if let Some(tether) = actions.tether {
        let force = turned(causes.tether.extend(0.0), -slew) * tether.force_n;
        sum += Wrench::of_force(force, DVec3::Z * tether.height_m, DVec3::ZERO);
    }
    if let Some(wind) = &actions.wind {
        let u = turned(causes.wind.extend(0.0), -slew);
        let (h, a, t) = (unit.mast_height_m, unit.outreach_m, unit.tail_m);
        let mut push = |force: DVec3, x: f64, z: f64| {
            sum += Wrench::of_force(force, DVec3::new(x, 0.0, z), DVec3::ZERO);
        };
        push(u * wind.mast_n_per_m * h, 0.0, h / 2.0);
        push(DVec3::Y * (u.y * wind.arm_n_per_m * (a + t)), (a - t) / 2.0, h);
        push(DVec3::X * (u.x * wind.arm_end_n), a, h);
        push(u * wind.lumps[0].force_n, 0.3, h);
    }
    sum.slewed(slew).six()
}
