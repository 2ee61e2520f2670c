//! How long the geometry of one drag step takes: clear zones against prisms, coverage of facades, concrete round a base.

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::anchorage::Around;
use gantline_plan::assess::clearance::{Required, clearance};
use gantline_plan::assess::coverage::Coverage;
use gantline_plan::assess::reach::{FeetFrom, Reach, Sideways};
use gantline_plan::assess::stand_off::{ServedLine, StandOff, Tip, clear_of_roofs, serving};
use gantline_plan::assess::swept::{HeightBand, SweptBand};
use gantline_plan::geometry::concrete_around::{PlateFrame, Setting};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::geometry::prism::{PlanShape, Prism};
use gantline_plan::geometry::spans::Spans;
use gantline_plan::geometry::strips::Face;
use gantline_plan::geometry::turns::Turns;
use glam::DVec2;
use std::f64::consts::FRAC_PI_2;
use std::hint::black_box;

fn band() -> HeightBand {
    HeightBand {
        r0_m: 0.1,
        r1_m: 2.8,
        low_at_r0_m: 0.4,
        low_at_r1_m: 2.1,
        high_at_r0_m: 0.5,
        high_at_r1_m: 2.3,
        half_width_m: 0.08,
    }
}

/// Obstacles of six corners, an inner one among them, in a spiral around the mast.
fn prisms(count: usize) -> Vec<Prism> {
    let prism = |i: usize| {
        let center = DVec2::from_angle(i as f64 * 2.4) * (0.4 + 0.12 * i as f64);
        let corners = [(0.0, 0.0), (1.2, 0.0), (1.2, 0.5), (0.6, 0.5), (0.6, 1.1), (0.0, 1.1)];
        let polygon = Polygon::simple(corners.iter().map(|&(x, y)| center + DVec2::new(x, y)).collect());
        Prism::new(PlanShape::Polygon(polygon), 0.0, 0.2 + 0.05 * i as f64).unwrap()
    };
    (0..count).map(prism).collect()
}

/// A unit's reach with a height and a foot of its own, so that no two of them share a bend.
fn reach(i: usize, face: Face) -> Reach {
    let sideways =
        Sideways { arms_reach_m: 0.7, angle_rad: 0.2, swing_m: Some(2.0), plumb_limit_m: None, least_depth_m: 1.5 };
    let foot = 2.0 + 4.1 * i as f64;
    let feet = Spans::one(foot, foot + 1.5);
    let support = 1.0 + 0.03 * i as f64;
    Reach::of(&sideways, support, &[FeetFrom { from_depth_m: 0.0, feet }], face).unwrap()
}

fn facade(units: usize) -> (Face, Vec<Reach>) {
    let face = Face { length_m: 4.1 * units as f64 + 2.0, height_m: 40.0 };
    (face, (0..units).map(|i| reach(i, face)).collect())
}

fn drag_step(prisms: &[Prism], facades: &[(Face, Vec<Reach>)], required: &Required, roof: &Polygon) -> f64 {
    let line =
        ServedLine { line: EdgeLine::between(DVec2::ZERO, DVec2::new(100.0, 0.0)), offset_m: 0.1, past_ends_m: 0.0 };
    let tip = Tip { mast: DVec2::new(50.0, 1.0), outward_rad: -FRAC_PI_2, outreach_m: 2.5, aside_m: 0.0 };
    let clear = clear_of_roofs(&tip, std::slice::from_ref(roof));
    let served = serving(&tip, &clear, &line, &StandOff { nearest_m: 0.3, farthest_m: 1.2 });
    let whole = SweptBand::new(DVec2::ZERO, Turns::whole(), band()).unwrap();
    let front = whole.through(served.slew.clone());
    let rest = whole.through(Turns::whole().minus(&served.slew));
    let tightest = |swept: &SweptBand| {
        let shares = prisms.iter().map(|p| clearance(swept, p, required).share_of_limit());
        shares.fold(f64::INFINITY, f64::min)
    };
    // Arm and brace, serving range and the rest of the turn each.
    let least: f64 = [&front, &rest, &front, &rest].into_iter().map(tightest).sum();
    let open: f64 = facades.iter().map(|(face, r)| Coverage::of(*face, r).unwrap().open_area_m2).sum();
    least + open
}

/// Eight anchors near the edge of a roof of 60 sides with a hole, another base's anchor beside: everything measured, and the areas
/// of four sets in tension and of every edge.
fn concrete_round_a_base(outline: &Polygon, foreign_m: &[DVec2]) -> f64 {
    let place = |i: i32| (DVec2::from_angle(f64::from(i) * std::f64::consts::FRAC_PI_4) * 0.15).to_array();
    let anchors_m: Vec<[f64; 2]> = (0..8).map(place).collect();
    let plate = PlateFrame { origin_m: DVec2::new(19.2, 0.0), turn_rad: 0.1 };
    let (thickness_m, influence_m, reach_m) = (0.2, 0.3, 2.0);
    let zones = &[];
    let anchors_m = &anchors_m;
    let setting = Setting { outline, thickness_m, zones, foreign_m, plate, anchors_m, influence_m, reach_m };
    let Ok(around) = setting.measure() else { return f64::NAN };
    let sets = [&[0, 1, 2, 3, 4, 5, 6, 7][..], &[0, 1, 2, 3], &[4, 5, 6, 7], &[2, 3, 4, 5]];
    let cones: f64 = sets.iter().map(|set| around.projected_area_m2(set, 0.3)).sum();
    cones + (0..around.edges().len()).map(|edge| around.shear_area_m2(edge, &[0, 1], 0.6, 0.6)).sum::<f64>()
}

fn geometry(c: &mut Criterion) {
    let side = |i: i32| DVec2::from_angle(f64::from(i) * std::f64::consts::TAU / 60.0) * f64::from(20 + i % 3);
    let hole = Polygon::rectangle(DVec2::splat(-1.0), DVec2::splat(1.0)).outer;
    let sixty = Polygon { outer: (0..60).map(side).collect(), holes: vec![hole] };
    let foreign = [DVec2::new(19.0, 0.6)];
    c.bench_function("concrete round a base of 8 anchors, shared with another base", |b| {
        b.iter(|| concrete_round_a_base(black_box(&sixty), &foreign));
    });

    let required = Required::new(0.3, 0.1).unwrap();
    let swept = SweptBand::new(DVec2::ZERO, Turns::whole(), band()).unwrap();
    let twenty = prisms(20);
    c.bench_function("clear zone of one band against 20 prisms", |b| {
        b.iter(|| twenty.iter().filter(|p| clearance(black_box(&swept), p, &required).conflict).count());
    });

    let (face, reaches) = facade(25);
    c.bench_function("coverage of one facade by 25 units", |b| {
        b.iter(|| Coverage::of(black_box(face), &reaches).unwrap().gap_length_m());
    });

    let outer = Polygon::rectangle(DVec2::ZERO, DVec2::new(100.0, 40.0)).outer;
    let court = Polygon::rectangle(DVec2::new(30.0, 10.0), DVec2::new(60.0, 30.0)).outer;
    let roof = Polygon { outer, holes: vec![court] };
    let (thirty, facades) = (prisms(30), [facade(25), facade(25)]);
    c.bench_function("drag step: 30 prisms, arm and brace, 2 facades of 25 units", |b| {
        b.iter(|| drag_step(black_box(&thirty), &facades, &required, &roof));
    });

    let twelve: Vec<(Face, Vec<Reach>)> = (0..12).map(|_| facade(25)).collect();
    c.bench_function("from nothing: 300 units on 12 facades, 30 prisms each", |b| {
        b.iter(|| {
            let steps: f64 = (0..300).map(|_| drag_step(black_box(&thirty), &[], &required, &roof)).sum();
            let open: f64 = twelve.iter().map(|(f, r)| Coverage::of(*f, r).unwrap().open_area_m2).sum();
            steps + open
        });
    });
}

criterion_group!(benches, geometry);
criterion_main!(benches);
