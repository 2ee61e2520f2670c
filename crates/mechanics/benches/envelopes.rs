//! How long a unit's preparation and envelopes take. Aims: a brace to the mast over the full cap and the
//! whole turn under 100 µs; a brace to its own foot under 5 ms.

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{
    Actions, FootCase, Pull, SlewRange, base_envelope, brace_envelope, foot_envelope, least_critical_factor,
};
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, PinOffsets, RopePoint, Unit, UnitModel,
};

fn unit(head: HeadJoint, brace: Brace) -> Unit {
    Unit {
        mast: BarStiffness::round(2.3e8, 5.1e5, 3.8e5, 88.0),
        mast_height_m: 1.9,
        base: BaseFixity::Rigid,
        arm: BarStiffness::round(1.7e8, 2.8e5, 2.1e5, 66.0),
        outreach_m: 1.3,
        tail_m: 0.7,
        head,
        brace,
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m: 1.3, sideways_m: 0.0, drop_m: 0.05 }],
        lumps: Vec::new(),
    }
}

fn to_mast(action: BraceAction) -> Unit {
    let bar = BarStiffness::round(1.7e8, 0.0, 0.0, 40.0);
    unit(HeadJoint::Pinned, Brace::RearToMast { tail_at_m: 0.6, mast_at_m: 0.5, bar, action })
}

fn to_foot(action: BraceAction) -> Unit {
    let brace = Brace::RearFoot {
        from: FootFrom::MastHead,
        distance_m: 1.2,
        foot_level_m: 0.0,
        bearing_rad: 0.0,
        allowed_turn_rad: 1.6,
        foot_spring_n_per_m: Some(2e7),
        bar: BarStiffness::round(1.7e8, 0.0, 0.0, 40.0),
        action,
    };
    unit(HeadJoint::Rigid, brace)
}

fn actions() -> Actions {
    Actions::of_pull(Pull::new(0, 12_000.0, LoadCone::whole(20f64.to_radians())), 1.0)
}

fn benches(c: &mut Criterion) {
    let mast = to_mast(BraceAction::Both);
    c.bench_function("prepare a unit with a brace to the mast", |b| b.iter(|| UnitModel::new(&mast)));
    let model = UnitModel::new(&mast).expect("a sound unit");
    let actions = actions();
    c.bench_function("brace to the mast: base, full cap, whole turn", |b| {
        b.iter(|| base_envelope(&model, &actions, &SlewRange::WholeTurn));
    });
    c.bench_function("brace to the mast: base and brace, full cap, whole turn", |b| {
        b.iter(|| {
            let base = base_envelope(&model, &actions, &SlewRange::WholeTurn);
            (base, brace_envelope(&model, &actions, &SlewRange::WholeTurn))
        });
    });
    for (name, action) in [("rear foot", BraceAction::Both), ("rear foot, only pulled", BraceAction::PullOnly)] {
        let model = UnitModel::new(&to_foot(action)).expect("a sound unit");
        let actions = Actions { foot: FootCase::HoldsOrLost, ..actions.clone() };
        c.bench_function(&format!("{name}: base, brace and foot, foot lost too"), |b| {
            b.iter(|| {
                let base = base_envelope(&model, &actions, &SlewRange::WholeTurn);
                let brace = brace_envelope(&model, &actions, &SlewRange::WholeTurn);
                (base, brace, foot_envelope(&model, &actions, &SlewRange::WholeTurn))
            });
        });
    }
    c.bench_function("brace to the mast: least critical factor over the cone", |b| {
        b.iter(|| least_critical_factor(&model, &actions, &SlewRange::WholeTurn));
    });
    let footed = UnitModel::new(&to_foot(BraceAction::Both)).expect("a sound unit");
    c.bench_function("rear foot: least critical factor over the cone", |b| {
        b.iter(|| least_critical_factor(&footed, &actions, &SlewRange::WholeTurn));
    });
}

criterion_group!(all, benches);
criterion_main!(all);
