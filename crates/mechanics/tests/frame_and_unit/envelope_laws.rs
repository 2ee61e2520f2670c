//! Envelopes of any unit under any actions: what they report happens, and nothing greater does.

use gantline_mechanics::cone::{Lean, LoadCone};
use gantline_mechanics::envelope::{
    Actions, Causes, Component, Envelope, EnvelopeFault, Extreme, FootCase, Pull, Sense, Slack, SlewHold, SlewRange,
    base_envelope, brace_envelope, foot_envelope, joint_envelope, joint_uplift,
};
use gantline_mechanics::unit::{Brace, BraceAction, FootFrom, HeadJoint, Influence, Joint, Unit, UnitModel};
use glam::{DVec2, DVec3};
use proptest::prelude::*;

use crate::any_actions::{any_actions, any_range, base_action, turned};
use crate::any_unit::{any_unit, cases};
use crate::near::near;
use crate::worked::Worked;

/// The value of a component or resultant.
fn component(c: Component, six: [f64; 6]) -> f64 {
    match c {
        Component::Fx => six[0],
        Component::Fy => six[1],
        Component::Fz => six[2],
        Component::Mx => six[3],
        Component::My => six[4],
        Component::Mz => six[5],
        Component::V => six[0].hypot(six[1]),
        Component::M => six[3].hypot(six[4]),
        Component::Axial | Component::Ux | Component::Uy | Component::Uz | Component::U => unreachable!(),
    }
}

/// The action on the base with the brace in the state that it takes by itself.
fn settled(model: &UnitModel, actions: &Actions, slew: f64, causes: &Causes) -> [f64; 6] {
    let mut at = model.influence(slew).unwrap();
    if model.unit().brace.pulls_only() && axial(&at, actions, causes) < 0.0 {
        at = model.influence_without_brace(slew).unwrap();
    }
    base_action(model, &at, actions, causes)
}

/// The brace's axial force by ropes and weight, if it could be pressed.
fn axial(at: &Influence<'_>, actions: &Actions, causes: &Causes) -> f64 {
    let by_pull = at.brace_of_pull(0).unwrap();
    let ropes = causes.pulls_n.iter().map(|p| by_pull.dot(turned(*p, -at.slew_rad())));
    ropes.sum::<f64>() + actions.weight_factor * at.brace_of_weight().unwrap()
}

fn slew_bounds(model: &UnitModel, range: &SlewRange) -> (f64, f64) {
    let (from, to) = match range {
        SlewRange::WholeTurn => (-std::f64::consts::PI, std::f64::consts::PI),
        SlewRange::Between { from_rad, to_rad } => (*from_rad, *to_rad),
        SlewRange::At(list) => (list[0], list[list.len() - 1]),
    };
    match model.unit().brace {
        Brace::RearFoot { bearing_rad, allowed_turn_rad, .. } => {
            (from.max(bearing_rad - allowed_turn_rad), to.min(bearing_rad + allowed_turn_rad))
        }
        _ => (from, to),
    }
}

#[track_caller]
fn is_admissible(model: &UnitModel, actions: &Actions, range: &SlewRange, e: &Extreme) {
    let (from, to) = slew_bounds(model, range);
    assert!(e.slew_rad >= from - 1e-9 && e.slew_rad <= to + 1e-9, "{} {from} {to}", e.slew_rad);
    for (pull, force) in actions.pulls.iter().zip(&e.causes.pulls_n) {
        let size = force.length();
        assert!(size <= pull.tension_n * (1.0 + 1e-9) && size >= pull.least_n * (1.0 - 1e-9));
        if let Some(direction) = force.try_normalize() {
            // A turned unit vector is a little off the edge.
            let wider = LoadCone {
                half_angle_rad: (pull.cone.half_angle_rad + 1e-6).min(std::f64::consts::PI),
                lean: pull
                    .cone
                    .lean
                    .map(|l| Lean { inward_rad: l.inward_rad + 1e-6, outward_rad: l.outward_rad + 1e-6 }),
            };
            assert!(wider.cap().unwrap().allows(direction), "{direction} {:?}", pull.cone);
        }
    }
    assert!(e.causes.wind.length() <= 1.0 + 1e-12 && e.causes.tether.length() <= 1.0 + 1e-12);
}

/// Plain pseudo-random numbers in 0 to 1.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    fn within(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.roll()
    }
}

/// A way of acting by its free numbers, from which a climb starts.
#[derive(Clone)]
struct Way {
    slew: f64,
    /// Azimuth, polar angle, tension share, leg share for each rope.
    ropes: Vec<[f64; 4]>,
    wind: f64,
    tether: f64,
}

impl Way {
    fn random(dice: &mut Dice, ropes: usize, bounds: (f64, f64)) -> Self {
        Self {
            slew: dice.within(bounds.0, bounds.1),
            ropes: (0..ropes)
                .map(|_| [dice.within(-3.2, 3.2), dice.within(0.0, 3.15), dice.roll().round(), dice.roll().round()])
                .collect(),
            wind: dice.within(-3.2, 3.2),
            tether: dice.within(-3.2, 3.2),
        }
    }

    fn nearby(&self, dice: &mut Dice, size: f64, bounds: (f64, f64)) -> Self {
        let mut next = self.clone();
        let mut shake = |x: f64| x + size * dice.within(-1.0, 1.0);
        next.slew = shake(next.slew).clamp(bounds.0, bounds.1);
        for rope in &mut next.ropes {
            rope[0] = shake(rope[0]);
            rope[1] = shake(rope[1]).clamp(0.0, std::f64::consts::PI);
        }
        (next.wind, next.tether) = (shake(next.wind), shake(next.tether));
        for rope in &mut next.ropes {
            for share in &mut rope[2..] {
                let roll = dice.roll();
                if roll < 0.1 {
                    *share = 1.0 - *share;
                } else if roll < 0.3 {
                    *share = (*share + size * dice.within(-0.5, 0.5)).clamp(0.0, 1.0);
                }
            }
        }
        next
    }

    /// `None` where a rope leaves its cone.
    fn causes(&self, model: &UnitModel, actions: &Actions) -> Option<Causes> {
        let (mut pulls_n, mut second_legs_n) = (Vec::new(), Vec::new());
        let point = model.unit().points[0];
        for (pull, [azimuth, polar, tension, leg]) in actions.pulls.iter().zip(&self.ropes) {
            let polar = polar.min(pull.cone.half_angle_rad);
            let mut along = DVec2::from_angle(*azimuth);
            let plane = DVec2::new(point.x_m, point.sideways_m).try_normalize();
            if let (SlewHold::Free, Some(plane)) = (actions.slew_hold, plane) {
                let plane = DVec2::from_angle(self.slew).rotate(plane);
                along = plane * along.dot(plane).signum();
            }
            let d = (along * polar.sin()).extend(-polar.cos());
            if !pull.cone.cap().unwrap().allows(d) {
                return None;
            }
            let force = pull.least_n + tension * (pull.tension_n - pull.least_n);
            pulls_n.push(d * force);
            let ratio = pull.second_leg.map_or(0.0, |l| l.ratio[0] + leg * (l.ratio[1] - l.ratio[0]));
            second_legs_n.push(ratio * force);
        }
        Some(Causes {
            pulls_n,
            second_legs_n,
            wind: DVec2::from_angle(self.wind),
            tether: DVec2::from_angle(self.tether),
            foot_lost: false,
            brace_slack: false,
        })
    }
}

/// The greatest value that a climb by shaking finds, from some random starts.
fn climbed(model: &UnitModel, actions: &Actions, range: &SlewRange, value: impl Fn([f64; 6]) -> f64, seed: u64) -> f64 {
    let mut dice = Dice(seed);
    let bounds = slew_bounds(model, range);
    let detents = match range {
        SlewRange::At(list) => Some(list),
        _ => None,
    };
    let look = |way: &Way| {
        let slew = detents.map_or(way.slew, |list| {
            let off = |s: &&f64| (*s - way.slew).abs();
            *list.iter().min_by(|a, b| off(a).total_cmp(&off(b))).unwrap()
        });
        let way = Way { slew, ..way.clone() };
        way.causes(model, actions).map(|causes| value(settled(model, actions, slew, &causes)))
    };
    let mut best = f64::NEG_INFINITY;
    for _ in 0..3 {
        let mut way = Way::random(&mut dice, actions.pulls.len(), bounds);
        let mut here = look(&way).unwrap_or(f64::NEG_INFINITY);
        let mut size = 1.0;
        for _ in 0..250 {
            let next = way.nearby(&mut dice, size, bounds);
            match look(&next) {
                Some(there) if there > here => (way, here) = (next, there),
                _ => size = (size * 0.96).max(1e-4),
            }
        }
        best = best.max(here);
    }
    best
}

fn suits(model: &UnitModel, actions: &mut Actions) {
    if model.depends_on_slew() {
        // By statics alone the share of a foot in wind isn't known.
        actions.wind = None;
    }
}

proptest! {
    #![proptest_config(cases(60))]

    /// Every extreme's causes are allowed, and give the concurrent six and in it the value.
    #[test]
    fn every_extreme_is_reproduced_by_its_causes((unit, _) in any_unit(), mut actions in any_actions(), range in any_range()) {
        let model = UnitModel::new(&unit).unwrap();
        suits(&model, &mut actions);
        // A range beyond what a foot allows is refused, which is another test's matter.
        let Ok(envelope) = base_envelope(&model, &actions, &range) else {
            prop_assume!(model.depends_on_slew());
            return Ok(());
        };
        prop_assert_eq!(envelope.extremes.len(), 14);
        for e in &envelope.extremes {
            is_admissible(&model, &actions, &range, e);
            let at = model.influence(e.slew_rad).unwrap();
            let again = base_action(&model, &at, &actions, &e.causes);
            for (a, b) in again.into_iter().zip(e.concurrent) {
                prop_assert!((a - b).abs() <= 1e-9 * 5e4, "{:?}: {again:?} {:?}", e.component, e.concurrent);
            }
            let value = component(e.component, e.concurrent);
            prop_assert!((e.value - value).abs() <= 1e-9 * 5e4);
            let first = e.causes.pulls_n.iter().find_map(|p| p.try_normalize());
            prop_assert_eq!(first, e.pull_direction);
        }
    }

    /// Climbing from independent starts finds nothing beyond an extreme, but for what a search to
    /// 1e-9 rad may miss at a kink.
    #[test]
    fn nothing_goes_beyond_an_extreme(
        (unit, _) in any_unit(), mut actions in any_actions(), range in any_range(), seed in any::<u64>()
    ) {
        let model = UnitModel::new(&unit).unwrap();
        suits(&model, &mut actions);
        let Ok(envelope) = base_envelope(&model, &actions, &range) else {
            return Ok(());
        };
        for e in &envelope.extremes {
            let sign = if e.sense == Sense::Max { 1.0 } else { -1.0 };
            let found = climbed(&model, &actions, &range, |six| sign * component(e.component, six), seed);
            prop_assert!(
                found <= sign * e.value + 1e-6 * (e.value.abs() + 1000.0),
                "{:?} {:?}: climbed to {}, reported {}", e.component, e.sense, sign * found, e.value
            );
        }
    }

    /// The greatest resultants are at least as great as every component, in any range.
    #[test]
    fn resultants_are_no_less_than_their_components((unit, _) in any_unit(), mut actions in any_actions(), range in any_range()) {
        let model = UnitModel::new(&unit).unwrap();
        suits(&model, &mut actions);
        let Ok(envelope) = base_envelope(&model, &actions, &range) else {
            return Ok(());
        };
        let value = |c, s| envelope.get(c, s).unwrap().value;
        for (resultant, parts) in [
            (Component::V, [Component::Fx, Component::Fy]),
            (Component::M, [Component::Mx, Component::My]),
        ] {
            let whole = value(resultant, Sense::Max);
            for part in parts {
                for sense in [Sense::Max, Sense::Min] {
                    let v = value(part, sense).abs();
                    prop_assert!(v <= whole * (1.0 + 1e-9) + 1e-6, "{part:?} {v} {whole}");
                }
            }
        }
    }
}

/// With nothing to hold the slew the ropes make no torque: Mz = 0 (a rope point off the arm's axis).
#[test]
fn a_free_slew_has_no_torque() {
    let mut unit = Worked::read().unit("rear");
    unit.points[0].sideways_m = 0.12;
    let model = UnitModel::new(&unit).unwrap();
    let mut actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.5)), 1.0);
    let held = base_envelope(&model, &actions, &SlewRange::WholeTurn).unwrap();
    actions.slew_hold = SlewHold::Free;
    let free = base_envelope(&model, &actions, &SlewRange::WholeTurn).unwrap();
    let torque = |e: &Envelope| e.get(Component::Mz, Sense::Max).unwrap().value;
    assert!(torque(&held) > 1000.0);
    assert!(torque(&free).abs() < 1e-6);
    for e in &free.extremes {
        assert!(e.concurrent[5].abs() < 1e-6, "{e:?}");
    }
    let pulled = free.get(Component::V, Sense::Max).unwrap();
    let along = turned(DVec3::new(unit.points[0].x_m, 0.12, 0.0), pulled.slew_rad);
    let direction = pulled.pull_direction.unwrap();
    assert!(direction.cross(DVec3::Z).dot(along).abs() < 1e-9);
}

/// A unit braced from its mast's head to a foot, by a rope that only pulls.
fn roped_back(mut unit: Unit) -> Unit {
    unit.head = HeadJoint::Rigid;
    let bar = unit.mast;
    unit.brace = Brace::RearFoot {
        from: FootFrom::MastHead,
        distance_m: 1.1,
        foot_level_m: 0.1,
        bearing_rad: 0.2,
        allowed_turn_rad: 1.3,
        foot_spring_n_per_m: Some(3e7),
        bar,
        action: BraceAction::PullOnly,
    };
    unit
}

proptest! {
    #![proptest_config(cases(40))]

    /// With a brace that goes slack the two states make one envelope: what it reports happens, and
    /// climbing over all tensions up to T finds nothing greater. (Cones up to 90°: beyond, the envelope
    /// may be wider than need be.)
    #[test]
    fn a_slack_brace_leaves_nothing_out(
        (unit, _) in any_unit(), tension in 2e3..15e3, alpha in 0.1..1.57, weight_factor in 0.8..1.4, seed in any::<u64>()
    ) {
        let model = UnitModel::new(&roped_back(unit)).unwrap();
        let actions = Actions::of_pull(Pull::new(0, tension, LoadCone::whole(alpha)), weight_factor);
        let range = SlewRange::WholeTurn;
        let envelope = base_envelope(&model, &actions, &range).unwrap();
        prop_assert_eq!(envelope.extremes.len(), 14);
        for e in &envelope.extremes {
            let at = model.influence(e.slew_rad).unwrap();
            let n = axial(&at, &actions, &e.causes);
            prop_assert!(if e.causes.brace_slack { n <= 1e-4 } else { n >= -1e-4 }, "{n} {e:?}");
            let at = if e.causes.brace_slack { model.influence_without_brace(e.slew_rad).unwrap() } else { at };
            let again = base_action(&model, &at, &actions, &e.causes);
            for (a, b) in again.into_iter().zip(e.concurrent) {
                prop_assert!((a - b).abs() <= 1e-9 * 5e4);
            }
            let sign = if e.sense == Sense::Max { 1.0 } else { -1.0 };
            let found = climbed(&model, &actions, &range, |six| sign * component(e.component, six), seed);
            prop_assert!(
                found <= sign * e.value + 1e-6 * (e.value.abs() + 1000.0),
                "{:?} {:?}: climbed to {}, reported {}", e.component, e.sense, sign * found, e.value
            );
        }
        let brace = brace_envelope(&model, &actions, &range).unwrap();
        prop_assert!(brace.get(Component::Axial, Sense::Min).unwrap().value >= -1e-4);
    }
}

/// The front-braced worked unit: its brace is pressed by every pull, so one that can only be pulled
/// doesn't hold the arm at all. That is told, and no extreme is made up.
#[test]
fn a_front_brace_that_only_pulls_is_a_mechanism_not_a_crash() {
    let mut unit = Worked::read().unit("front");
    if let Brace::Front { action, .. } = &mut unit.brace {
        *action = BraceAction::PullOnly;
    }
    let model = UnitModel::new(&unit).unwrap();
    let actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
    let envelope = brace_envelope(&model, &actions, &SlewRange::WholeTurn).unwrap();
    assert!(matches!(envelope.slack, Slack::Mechanism { axial_n, .. } if axial_n < -30e3));
    assert!(envelope.extremes.is_empty());
}

/// A rear brace is pulled by every rope of a narrow cone and by the arm's own weight: never slack.
#[test]
fn a_rear_brace_that_only_pulls_is_never_slack_under_a_narrow_cone() {
    let mut unit = Worked::read().unit("rear");
    let actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
    let both = base_envelope(&UnitModel::new(&unit).unwrap(), &actions, &SlewRange::WholeTurn).unwrap();
    if let Brace::RearToMast { action, .. } = &mut unit.brace {
        *action = BraceAction::PullOnly;
    }
    let pulled = base_envelope(&UnitModel::new(&unit).unwrap(), &actions, &SlewRange::WholeTurn).unwrap();
    assert_eq!(pulled, both);
    assert_eq!(pulled.slack, Slack::Never);
}

/// The lost foot is a cantilever: with it M reaches T·hypot-closed form of the unbraced unit; the
/// envelope of both is at least each of them.
#[test]
fn a_lost_foot_leaves_a_cantilever() {
    let mut unit = Worked::read().unit("rear_foot");
    let mut actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
    let braced = UnitModel::new(&unit).unwrap();
    let range = SlewRange::WholeTurn;
    let holds = base_envelope(&braced, &actions, &range).unwrap();
    actions.foot = FootCase::HoldsOrLost;
    let either = base_envelope(&braced, &actions, &range).unwrap();
    unit.brace = Brace::None;
    let quarter = std::f64::consts::FRAC_PI_2;
    let same_slews = SlewRange::Between { from_rad: -quarter, to_rad: quarter };
    let alone = base_envelope(&UnitModel::new(&unit).unwrap(), &actions, &same_slews).unwrap();
    for e in &either.extremes {
        let sign = if e.sense == Sense::Max { 1.0 } else { -1.0 };
        let of = |envelope: &Envelope| sign * envelope.get(e.component, e.sense).unwrap().value;
        near(&format!("{:?}", e.component), of(&either), of(&holds).max(of(&alone)), 1e-3);
        assert_eq!(e.causes.foot_lost, of(&alone) > of(&holds) + 1e-6, "{:?} {:?}", e.component, e.sense);
    }
}

/// Without its foot an arm on a pin falls: the case is refused by name.
#[test]
fn a_pinned_arm_cannot_lose_its_foot() {
    let mut unit = Worked::read().unit("rear_foot");
    unit.head = HeadJoint::Pinned;
    if let Brace::RearFoot { from, allowed_turn_rad, .. } = &mut unit.brace {
        *from = FootFrom::ArmTail { at_m: 0.5 };
        *allowed_turn_rad = 0.3;
    }
    let model = UnitModel::new(&unit).unwrap();
    let mut actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
    assert!(base_envelope(&model, &actions, &SlewRange::WholeTurn).is_ok());
    actions.foot = FootCase::HoldsOrLost;
    assert_eq!(base_envelope(&model, &actions, &SlewRange::WholeTurn), Err(EnvelopeFault::FallsWithoutFoot));
}

/// A joint's uplift is looked for alone; the envelope of all its components is the witness, with the foot lost too.
#[test]
fn the_uplift_of_a_joint_alone_is_that_of_its_envelope_to_the_bit() {
    let joints = [Joint::ArmOnMast, Joint::MastOnBase, Joint::BraceUpper, Joint::BraceLower];
    for name in ["front", "rear", "rear_foot"] {
        let model = UnitModel::new(&Worked::read().unit(name)).unwrap();
        let mut actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
        actions.foot = FootCase::HoldsOrLost;
        for joint in joints {
            let all = joint_envelope(&model, joint, &actions, &SlewRange::WholeTurn).unwrap();
            let alone = joint_uplift(&model, joint, &actions, &SlewRange::WholeTurn).unwrap();
            assert_eq!(alone.as_ref(), all.get(Component::Fz, Sense::Max), "{name} {joint:?}");
        }
    }
}

/// A slack brace acts as a foot that is lost, under a condition: where the foot may be lost, the envelope is at least that
/// of the slack brace, of the cantilever, and of nothing else.
#[test]
fn a_foot_that_may_be_lost_covers_its_brace_going_slack() {
    let mut unit = Worked::read().unit("rear_foot");
    if let Brace::RearFoot { action, .. } = &mut unit.brace {
        *action = BraceAction::PullOnly;
    }
    let model = UnitModel::new(&unit).unwrap();
    let mut actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.8)), 1.0);
    let range = SlewRange::WholeTurn;
    let slack = base_envelope(&model, &actions, &range).unwrap();
    assert!(matches!(slack.slack, Slack::StandsWithout { .. }));
    actions.foot = FootCase::HoldsOrLost;
    let either = base_envelope(&model, &actions, &range).unwrap();
    unit.brace = Brace::None;
    let quarter = std::f64::consts::FRAC_PI_2;
    let same_slews = SlewRange::Between { from_rad: -quarter, to_rad: quarter };
    let alone = base_envelope(&UnitModel::new(&unit).unwrap(), &actions, &same_slews).unwrap();
    for e in &either.extremes {
        let sign = if e.sense == Sense::Max { 1.0 } else { -1.0 };
        let of = |envelope: &Envelope| sign * envelope.get(e.component, e.sense).unwrap().value;
        near(&format!("{:?}", e.component), of(&either), of(&slack).max(of(&alone)), 1e-3);
    }
}

/// Closed form, vertical pull only: the arm of a front-braced unit lifts with T·(a/x_b − 1) less the
/// weight's share; base and foot have no uplift.
#[test]
fn uplift_at_the_head_of_a_front_braced_unit_is_the_closed_form() {
    let mut unit = Worked::read().unit("front");
    (unit.mast.weight_n_per_m, unit.arm.weight_n_per_m) = (0.0, 0.0);
    let model = UnitModel::new(&unit).unwrap();
    let actions = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.0)), 1.0);
    let head = joint_envelope(&model, Joint::ArmOnMast, &actions, &SlewRange::WholeTurn).unwrap();
    let uplift = head.get(Component::Fz, Sense::Max).unwrap().value;
    near("uplift", uplift, 12e3 * (unit.outreach_m / 0.5 - 1.0), 1e-6);
    let socket = joint_envelope(&model, Joint::MastOnBase, &actions, &SlewRange::WholeTurn).unwrap();
    assert!(socket.get(Component::Fz, Sense::Max).unwrap().value <= 0.0);
    let none = foot_envelope(&model, &actions, &SlewRange::WholeTurn);
    assert_eq!(none, Err(EnvelopeFault::NotThere { part: "foot of its own" }));
}

#[test]
fn actions_that_make_no_sense_are_named() {
    let model = UnitModel::new(&Worked::read().unit("rear")).unwrap();
    let sound = Actions::of_pull(Pull::new(0, 12e3, LoadCone::whole(0.35)), 1.0);
    let look = |actions: &Actions, range: &SlewRange| base_envelope(&model, actions, range).unwrap_err();
    let whole = SlewRange::WholeTurn;
    let with_pull = |pull: Pull| Actions { pulls: vec![pull], ..sound.clone() };

    let found = look(&with_pull(Pull::new(0, f64::NAN, LoadCone::whole(0.35))), &whole);
    assert!(matches!(found, EnvelopeFault::Number { field, .. } if field == "pulls[0].tension_n"));
    let found = look(&with_pull(Pull::new(0, 1.0, LoadCone::whole(4.0))), &whole);
    assert!(matches!(found, EnvelopeFault::Cone { pull: 0, .. }));
    let found = look(&with_pull(Pull::new(7, 1.0, LoadCone::whole(0.3))), &whole);
    assert!(matches!(found, EnvelopeFault::Unit(_)));
    let found = look(&with_pull(Pull { least_n: 2.0, ..Pull::new(0, 1.0, LoadCone::whole(0.3)) }), &whole);
    assert!(matches!(found, EnvelopeFault::TensionOrder { pull: 0, .. }));
    let found = look(&Actions { weight_factor: -1.0, ..sound.clone() }, &whole);
    assert!(matches!(found, EnvelopeFault::Number { field, .. } if field == "weight_factor"));
    let backward = SlewRange::Between { from_rad: 1.0, to_rad: 0.0 };
    assert!(matches!(look(&sound, &backward), EnvelopeFault::SlewRange { .. }));
    assert!(matches!(look(&sound, &SlewRange::At(Vec::new())), EnvelopeFault::SlewRange { .. }));

    let footed = UnitModel::new(&Worked::read().unit("rear_foot")).unwrap();
    let beyond = SlewRange::Between { from_rad: -2.0, to_rad: 0.0 };
    assert!(matches!(base_envelope(&footed, &sound, &beyond), Err(EnvelopeFault::BeyondFoot { .. })));
}
