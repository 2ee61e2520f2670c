//! What acts on a plate against the envelopes of the unit's base, and against statics by hand.

use glam::{DVec2, DVec3};

use super::wall::WallFace;
use super::{Bearing, Candidate, Judge, Plate, PlateAnchor, PlateAxes, PlateOn, PreparedPlate, UnitOnPlate};
use crate::cone::{Lean, LoadCone};
use crate::envelope::{
    Actions, Component, EnvelopeFault, FootCase, Pull, SecondLeg, Sense, Slack, SlewHold, SlewRange, Tether,
    WindOnUnit, base_envelope,
};
use crate::stiffness::BarStiffness;
use crate::unit::{BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, PinOffsets, RopePoint, Unit, UnitModel};
use crate::wrench::Wrench;

const BAR: BarStiffness =
    BarStiffness { ea_n: 1.7e8, ei_y_nm2: 2.8e5, ei_z_nm2: 2.8e5, gj_nm2: 2.1e5, weight_n_per_m: 60.0 };

fn model(head: HeadJoint, brace: Brace) -> UnitModel {
    UnitModel::new(&Unit {
        mast: BAR,
        mast_height_m: 1.9,
        base: BaseFixity::Rigid,
        arm: BAR,
        outreach_m: 1.3,
        tail_m: 0.7,
        head,
        brace,
        pins: PinOffsets::default(),
        points: vec![
            RopePoint { x_m: 1.3, sideways_m: 0.04, drop_m: 0.05 },
            RopePoint { x_m: 0.9, sideways_m: -0.04, drop_m: 0.05 },
        ],
        lumps: Vec::new(),
    })
    .unwrap()
}

fn rear() -> UnitModel {
    let brace = Brace::RearToMast { tail_at_m: 0.6, mast_at_m: 0.5, bar: BAR, action: BraceAction::PullOnly };
    model(HeadJoint::Pinned, brace)
}

fn front() -> UnitModel {
    let brace = Brace::Front { arm_at_m: 0.6, mast_at_m: 0.8, bar: BAR, action: BraceAction::Both };
    model(HeadJoint::Pinned, brace)
}

fn footed(action: BraceAction) -> UnitModel {
    let brace = Brace::RearFoot {
        from: FootFrom::MastHead,
        distance_m: 1.2,
        foot_level_m: 0.0,
        bearing_rad: 0.3,
        allowed_turn_rad: 1.6,
        foot_spring_n_per_m: Some(2e7),
        bar: BAR,
        action,
    };
    model(HeadJoint::Rigid, brace)
}

fn plate() -> PreparedPlate {
    let around = |count: u32, radius: f64| {
        (0..count).map(move |i| DVec2::from_angle(std::f64::consts::TAU * f64::from(i) / f64::from(count)) * radius)
    };
    PreparedPlate::new(Plate {
        outline: around(8, 0.22).collect(),
        thickness_m: 0.025,
        anchors: around(6, 0.16).map(|at| PlateAnchor::new(at, 245e-6)).collect(),
        bearing: Bearing::Concrete,
        modular_ratio: 7.0,
    })
    .unwrap()
}

fn one_rope() -> Actions {
    Actions::of_pull(Pull::new(0, 9e3, LoadCone::whole(0.5)), 1.0)
}

fn windy() -> Actions {
    let wind = WindOnUnit { mast_n_per_m: 90.0, arm_n_per_m: 110.0, arm_end_n: 15.0, brace_n: 25.0, lumps: vec![] };
    Actions { wind: Some(wind), ..one_rope() }
}

fn parked() -> Actions {
    Actions { pulls: vec![], ..windy() }
}

fn tethered() -> Actions {
    Actions { tether: Some(Tether { force_n: 4e3, height_m: 0.4 }), ..one_rope() }
}

/// A component of the action on the base, from that on a plate level with it.
fn component(action: &Wrench, of: Component) -> f64 {
    let six = action.six();
    match of {
        Component::Fz => six[2],
        Component::Mz => six[5],
        Component::V => six[0].hypot(six[1]),
        Component::M => six[3].hypot(six[4]),
        _ => panic!("not asked"),
    }
}

/// The envelopes are the witness: they search each component by itself, in closed form. A percent is what was asked for.
fn reaches_the_envelopes(name: &str, model: &UnitModel, actions: &Actions, slews: &SlewRange) {
    let envelope = base_envelope(model, actions, slews).unwrap();
    let unit = UnitOnPlate::new(model, std::slice::from_ref(actions), slews, PlateAxes::FLOOR).unwrap();
    let plate = plate();
    for (of, sense) in [
        (Component::M, Sense::Max),
        (Component::V, Sense::Max),
        (Component::Fz, Sense::Max),
        (Component::Fz, Sense::Min),
        (Component::Mz, Sense::Max),
    ] {
        let sign = if sense == Sense::Max { 1.0 } else { -1.0 };
        let wanted = sign * envelope.get(of, sense).unwrap().value;
        let found = unit.search(&plate, &[&|c: &Candidate| sign * component(&c.action, of)]).unwrap();
        let (_, value) = found.worst[0];
        let size = wanted.abs().max(1.0);
        assert!(value >= wanted - 0.01 * size, "{name} {of:?} {sense:?}: {value} of {wanted}");
        // A state that no envelope reaches would be one that can't be.
        assert!(value <= wanted + 1e-6 * size, "{name} {of:?} {sense:?}: {value} beyond {wanted}");
    }
}

#[test]
fn what_acts_on_a_plate_reaches_the_envelopes_of_the_base() {
    let turn = SlewRange::WholeTurn;
    let part = SlewRange::Between { from_rad: -0.4, to_rad: 1.1 };
    for (name, model) in [("rear", rear()), ("front", front())] {
        for (case, actions) in [("rope", one_rope()), ("wind", windy()), ("parked", parked()), ("tether", tethered())] {
            reaches_the_envelopes(&format!("{name} {case} turn"), &model, &actions, &turn);
            reaches_the_envelopes(&format!("{name} {case} part"), &model, &actions, &part);
        }
        let free = Actions { slew_hold: SlewHold::Free, ..windy() };
        reaches_the_envelopes(&format!("{name} free"), &model, &free, &turn);
        let lean = Some(Lean { inward_rad: 0.1, outward_rad: 0.3 });
        let cone = LoadCone { half_angle_rad: 0.5, lean };
        let leaning = Actions { pulls: vec![Pull::new(0, 9e3, cone)], ..tethered() };
        reaches_the_envelopes(&format!("{name} lean"), &model, &leaning, &turn);
    }
}

#[test]
fn a_foot_held_lost_or_slack_counts_as_in_the_envelopes_of_the_base() {
    for action in [BraceAction::Both, BraceAction::PullOnly] {
        let model = footed(action);
        for foot in [FootCase::Holds, FootCase::HoldsOrLost] {
            for actions in [one_rope(), windy(), tethered()] {
                let actions = Actions { foot, ..actions };
                reaches_the_envelopes(&format!("{action:?} {foot:?}"), &model, &actions, &SlewRange::WholeTurn);
            }
        }
    }
    let (model, actions) = (footed(BraceAction::PullOnly), [one_rope()]);
    let unit = UnitOnPlate::new(&model, &actions, &SlewRange::WholeTurn, PlateAxes::FLOOR).unwrap();
    assert!(matches!(unit.slack(), Slack::StandsWithout { .. }));
}

/// Two ropes at one point pull with their sum; two at different points each by itself: the envelopes take each by itself too.
#[test]
fn several_ropes_reach_the_envelopes_of_the_base() {
    let cone = LoadCone::whole(0.5);
    let leg = SecondLeg { anchor_m: DVec3::new(-2.0, 0.5, 0.3), ratio: [0.7, 1.4] };
    let on_over = Pull { second_leg: Some(leg), ..Pull::new(1, 3e3, cone) };
    for pulls in [
        vec![Pull::new(0, 5e3, cone), Pull::new(0, 3e3, cone)],
        vec![Pull::new(0, 5e3, cone), Pull::new(1, 3e3, LoadCone::whole(0.9))],
        vec![Pull { least_n: 1e3, ..Pull::new(0, 5e3, cone) }, on_over],
    ] {
        let actions = Actions { pulls, ..windy() };
        reaches_the_envelopes("several", &rear(), &actions, &SlewRange::WholeTurn);
    }
}

/// By hand: T straight down at the arm's tip at slew 0. On a wall behind the mast the plate carries T·(a + e); on a floor plate
/// 0.35 m below the reference point a tether H at 0.4 m bends with H·(0.4 + 0.35).
#[test]
fn walls_and_lower_plates_feel_what_statics_says() {
    let bare = BarStiffness { weight_n_per_m: 0.0, ..BAR };
    let model = UnitModel::new(&Unit {
        mast: bare,
        arm: bare,
        points: vec![RopePoint { x_m: 1.3, sideways_m: 0.0, drop_m: 0.0 }],
        head: HeadJoint::Rigid,
        brace: Brace::None,
        ..rear().unit().clone()
    })
    .unwrap();
    let slews = SlewRange::At(vec![0.0]);
    let hanging = [Actions::of_pull(Pull::new(0, 9e3, LoadCone::whole(0.0)), 1.0)];
    let wall = PlateOn::Wall { face: WallFace::BehindMast, eccentricity_m: 0.2, up_m: 0.5 };
    let unit = UnitOnPlate::new(&model, &hanging, &slews, PlateAxes { on: wall, down_m: 0.0 }).unwrap();
    let bends: &Judge<'_> = &|c| c.action.moment_nm.truncate().length();
    let found = unit.search(&plate(), &[bends]).unwrap();
    assert!((found.worst[0].1 - 9e3 * (1.3 + 0.2)).abs() < 1e-6, "{:?}", found.worst);
    let tether = [Actions { pulls: vec![], ..tethered() }];
    let lower = PlateAxes { down_m: 0.35, ..PlateAxes::FLOOR };
    let unit = UnitOnPlate::new(&model, &tether, &slews, lower).unwrap();
    let found = unit.search(&plate(), &[bends]).unwrap();
    assert!((found.worst[0].1 - 4e3 * 0.75).abs() < 1e-6, "{:?}", found.worst);
}

#[test]
fn every_state_on_a_plate_is_reproduced_by_its_causes() {
    let cone = LoadCone::whole(0.5);
    let pulls = vec![Pull::new(0, 5e3, cone), Pull::new(0, 3e3, cone), Pull::new(1, 2e3, cone)];
    let both = Actions { pulls, tether: tethered().tether, foot: FootCase::HoldsOrLost, ..windy() };
    let actions = [both, Actions { weight_factor: 1.35, ..one_rope() }];
    let model = footed(BraceAction::PullOnly);
    let unit = UnitOnPlate::new(&model, &actions, &SlewRange::WholeTurn, PlateAxes::FLOOR).unwrap();
    let pull: &Judge<'_> = &|c| c.solution.as_ref().map_or(0.0, super::PlateSolution::greatest_tension_n);
    let (plate, found) = (plate(), unit.search(&plate(), &[pull]).unwrap());
    for c in &found.candidates {
        let again = unit.action(c.actions, c.slew_rad, &c.causes).unwrap().unwrap();
        assert!((again - c.action).six().iter().all(|off| off.abs() < 1e-6), "{c:?}");
        let solved = plate.solve(again.force_n.z, again.moment_nm.x, again.moment_nm.y).unwrap();
        let tension = c.solution.as_ref().unwrap().greatest_tension_n();
        assert!((solved.greatest_tension_n() - tension).abs() <= 1e-6 * tension.max(1.0));
    }
    assert_eq!(unit.action(7, 0.0, &found.candidates[0].causes), Ok(None));
}

/// What acts less in every direction is not looked at; what acts otherwise is, and of two alike one.
#[test]
fn only_actions_that_another_covers_are_left_out() {
    let two = Actions::of_pull(Pull::new(0, 15e3, LoadCone::whole(0.5)), 1.0);
    let heavy = Actions { weight_factor: 1.35, ..two.clone() };
    let wide = Actions::of_pull(Pull::new(0, 8e3, LoadCone::whole(1.5)), 1.0);
    let inner = Actions::of_pull(Pull::new(1, 9e3, LoadCone::whole(0.5)), 1.0);
    let cases = [
        (vec![one_rope(), two.clone()], vec![1]),
        (vec![two.clone(), two.clone()], vec![0]),
        (vec![two.clone(), one_rope(), heavy], vec![0, 2]),
        (vec![two.clone(), wide], vec![0, 1]),
        (vec![one_rope(), windy(), tethered()], vec![1, 2]),
        // At another point the same force comes with another moment.
        (vec![one_rope(), inner], vec![0, 1]),
        (vec![parked(), windy()], vec![1]),
    ];
    let model = rear();
    for (actions, kept) in cases {
        let unit = UnitOnPlate::new(&model, &actions, &SlewRange::WholeTurn, PlateAxes::FLOOR).unwrap();
        assert_eq!(unit.looked_at().collect::<Vec<_>>(), kept, "{actions:?}");
    }
}

/// Another judge goes on from what was kept and finds what a search of its own finds.
#[test]
fn going_on_for_another_judge_finds_what_a_search_of_its_own_finds() {
    let (model, actions) = (rear(), [windy(), tethered()]);
    let unit = UnitOnPlate::new(&model, &actions, &SlewRange::WholeTurn, PlateAxes::FLOOR).unwrap();
    let plate = plate();
    let pull: &Judge<'_> = &|c| c.solution.as_ref().map_or(0.0, super::PlateSolution::greatest_tension_n);
    let one: &Judge<'_> = &|c| c.solution.as_ref().map_or(0.0, |s| s.tension_n[2] + 0.5 * c.action.force_n.x);
    let kept = unit.search(&plate, &[pull]).unwrap().candidates;
    let own = unit.search(&plate, &[one]).unwrap().worst[0].1;
    let (worst, value) = unit.worst_for(&plate, &kept, one, 100).unwrap().unwrap();
    assert!((one(&worst) - value).abs() < 1e-9 && value >= own * (1.0 - 1e-3), "{value} of {own}");
    let (_, without_more) = unit.worst_for(&plate, &kept, one, 0).unwrap().unwrap();
    let of_kept = kept.iter().map(one).fold(0.0, f64::max);
    assert!((without_more - of_kept).abs() < 1e-9 && without_more <= value);
    assert_eq!(unit.worst_for(&plate, &[], one, 50), Ok(None));
}

#[test]
fn numbers_that_are_none_and_what_can_not_be_are_named() {
    let model = rear();
    let lower = PlateAxes { down_m: f64::NAN, ..PlateAxes::FLOOR };
    let fault = UnitOnPlate::new(&model, &[one_rope()], &SlewRange::WholeTurn, lower).err().unwrap();
    assert!(matches!(fault, EnvelopeFault::Number { ref field, .. } if field == "axes.down_m"), "{fault}");
    let slack = Actions::of_pull(Pull::new(0, f64::NAN, LoadCone::whole(0.5)), 1.0);
    let fault = UnitOnPlate::new(&model, &[slack], &SlewRange::WholeTurn, PlateAxes::FLOOR).err().unwrap();
    assert!(fault.to_string().contains("pulls[0].tension_n"), "{fault}");
    let nowhere = Actions::of_pull(Pull::new(7, 1e3, LoadCone::whole(0.5)), 1.0);
    assert!(UnitOnPlate::new(&model, &[nowhere], &SlewRange::WholeTurn, PlateAxes::FLOOR).is_err());
}
