//! How long one plate takes: eight anchors on a circle, bent about both axes with a small push; and the search for the worst
//! that a unit does to it under a usual basis of five sets of actions, judged by its hardest pulled anchor and by EN 1992-4.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::anchorage::en1992_4::{En1992Factors, Prepared};
use gantline_mechanics::anchorage::{
    Annulus, Concrete, EnProduct, Fastener, FastenerKind, Fixture, Grade, Group, GroupActions, Head, LeastDistances,
    Product, RectangularMember, Restraint, Seating,
};
use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{Actions, Pull, SlewRange, Tether, WindOnUnit};
use gantline_mechanics::plate::{
    Bearing, Candidate, Plate, PlateAnchor, PlateAxes, PlateSolution, PreparedPlate, UnitOnPlate, shear::shares,
};
use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{BaseFixity, Brace, BraceAction, HeadJoint, PinOffsets, RopePoint, Unit, UnitModel};
use glam::DVec2;

fn plate(corners: u32) -> PreparedPlate {
    let around = |count: u32, radius: f64| {
        let half = std::f64::consts::PI / f64::from(count);
        (0..count).map(move |i| DVec2::from_angle(half * f64::from(2 * i + 1)) * radius)
    };
    let plate = Plate {
        outline: around(corners, 0.3).collect(),
        thickness_m: 0.025,
        anchors: around(8, 0.16).map(|at| PlateAnchor::new(at, 245e-6)).collect(),
        bearing: Bearing::Concrete,
        modular_ratio: 7.0,
    };
    PreparedPlate::new(plate).expect("a plate")
}

fn plates(criterion: &mut Criterion) {
    for corners in [4, 16] {
        let plate = plate(corners);
        criterion.bench_function(&format!("one plate of {corners} corners and 8 anchors"), |bencher| {
            bencher.iter(|| black_box(&plate).solve(black_box(-12e3), black_box(-21e3), black_box(17e3)));
        });
    }
}

fn unit() -> Unit {
    let bar = BarStiffness::round(1.7e8, 2.8e5, 2.1e5, 66.0);
    Unit {
        mast: bar,
        mast_height_m: 1.9,
        base: BaseFixity::Rigid,
        arm: bar,
        outreach_m: 1.3,
        tail_m: 0.7,
        head: HeadJoint::Pinned,
        brace: Brace::RearToMast { tail_at_m: 0.6, mast_at_m: 0.5, bar, action: BraceAction::Both },
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m: 1.3, sideways_m: 0.0, drop_m: 0.05 }],
        lumps: Vec::new(),
    }
}

/// Two persons with two weight factors, rope and tether, working in wind, parked in wind.
fn basis() -> Vec<Actions> {
    let rope = |tension_n| Pull::new(0, tension_n, LoadCone::whole(0.6));
    let wind = |share: f64| WindOnUnit {
        mast_n_per_m: 200.0 * share,
        arm_n_per_m: 220.0 * share,
        arm_end_n: 20.0 * share,
        brace_n: 60.0 * share,
        lumps: Vec::new(),
    };
    vec![
        Actions::of_pull(rope(12e3), 1.35),
        Actions::of_pull(rope(12e3), 0.9),
        Actions { tether: Some(Tether { force_n: 6e3, height_m: 0.3 }), ..Actions::of_pull(rope(9e3), 1.0) },
        Actions { wind: Some(wind(0.2)), ..Actions::of_pull(rope(9e3), 1.35) },
        Actions { wind: Some(wind(1.0)), pulls: Vec::new(), ..Actions::of_pull(rope(9e3), 0.9) },
    ]
}

fn group(plate: &PreparedPlate) -> Group {
    let product = Product {
        least: LeastDistances { spacing_m: Some(0.06), edge_m: Some(0.06), thickness_m: Some(0.2) },
        en: EnProduct { splitting_edge_m: Some(0.3), splitting_spacing_m: Some(0.6), ..EnProduct::default() },
        ..Product::default()
    };
    Group {
        fastener: Fastener {
            kind: FastenerKind::CastIn(Head { diameter_m: 0.04, thickness_m: 0.015 }),
            diameter_m: 0.02,
            outside_diameter_m: 0.02,
            stress_area_m2: 245e-6,
            grade: Grade { ultimate_pa: 800e6, yield_pa: 640e6, rupture_elongation: Some(0.12) },
            embedment_m: 0.2,
            product,
        },
        anchors_m: plate.plate().anchors.iter().map(|anchor| anchor.at.to_array()).collect(),
        fixture: Fixture {
            thickness_m: 0.025,
            hole_diameter_m: Some(0.022),
            annulus: Annulus::Open,
            seating: Seating::OnConcrete,
            restraint: Restraint::Free,
        },
    }
}

fn on_group(plate: &Plate, candidate: &Candidate) -> Option<GroupActions> {
    let solution = candidate.solution.as_ref().ok()?;
    let shear = shares(plate, candidate.action.force_n.truncate(), candidate.action.moment_nm.z)?;
    Some(GroupActions {
        tension_n: solution.tension_n.clone(),
        shear_n: shear.into_iter().map(|v| v.to_array()).collect(),
        ..GroupActions::none(plate.anchors.len())
    })
}

fn searches(criterion: &mut Criterion) {
    let (plate, actions) = (plate(16), basis());
    let model = UnitModel::new(&unit()).expect("a sound unit");
    let new = || UnitOnPlate::new(&model, &actions, &SlewRange::WholeTurn, PlateAxes::FLOOR);
    criterion
        .bench_function("a unit on its plate, prepared", |bencher| bencher.iter(|| new().map(|unit| unit.given())));
    let on_plate = new().expect("sound actions");
    let pull = |c: &Candidate| c.solution.as_ref().map_or(f64::INFINITY, PlateSolution::greatest_tension_n);
    criterion.bench_function("search of five sets of actions, hardest pulled anchor", |bencher| {
        bencher.iter(|| on_plate.search(&plate, &[&pull]));
    });
    let (group, concrete, factors) = (group(&plate), Concrete::plain(30e6), En1992Factors::RECOMMENDED);
    let around = RectangularMember::new(&group.anchors_m, [-9.0; 2], [0.27, 0.33], 0.3).expect("a slab");
    let prepared = std::cell::RefCell::new(Prepared::new(&group, &concrete, &factors, &around).expect("a group"));
    let judge = |c: &Candidate| {
        let verdict = on_group(plate.plate(), c).and_then(|acting| prepared.borrow_mut().judge(&acting).ok());
        verdict.map_or(f64::INFINITY, |verdict| verdict.utilization)
    };
    criterion.bench_function("search of five sets of actions, EN 1992-4", |bencher| {
        bencher.iter(|| on_plate.search(&plate, &[&judge]));
    });
    let kept = on_plate.search(&plate, &[&pull]).expect("found").candidates;
    criterion.bench_function("100 solutions more for EN 1992-4 from what was kept", |bencher| {
        bencher.iter(|| on_plate.worst_for(&plate, &kept, &judge, 100));
    });
}

criterion_group!(benches, plates, searches);
criterion_main!(benches);
