//! 120 random clear zones: every kind of sweep against obstacles that are not convex, round, long, or all around.

use gantline_plan::assess::clearance::{Required, clearance};
use gantline_plan::assess::swept::{HeightBand, SweptBand};
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::geometry::prism::{PlanShape, Prism};
use gantline_plan::geometry::turns::Turns;
use glam::DVec2;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    pivot_m: [f64; 2],
    sweep: SweepGiven,
    band: BandGiven,
    prism: PrismGiven,
    required: RequiredGiven,
    expected: Expected,
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum SweepGiven {
    Whole,
    Between { from_rad: f64, to_rad: f64 },
    At { angles_rad: Vec<f64> },
}

#[derive(Deserialize)]
#[expect(clippy::struct_field_names, reason = "keys of the file end in their unit")]
struct BandGiven {
    r0_m: f64,
    r1_m: f64,
    low_at_r0_m: f64,
    low_at_r1_m: f64,
    high_at_r0_m: f64,
    high_at_r1_m: f64,
    half_width_m: f64,
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
enum PrismGiven {
    Disc { center_m: [f64; 2], radius_m: f64, from_m: f64, to_m: f64 },
    Polygon { outer_m: Vec<[f64; 2]>, holes_m: Vec<Vec<[f64; 2]>>, from_m: f64, to_m: f64 },
}

#[derive(Deserialize)]
struct RequiredGiven {
    vertical_m: f64,
    around_m: f64,
}

#[derive(Deserialize)]
struct Expected {
    vertical_m: Option<f64>,
    horizontal_m: Option<f64>,
    conflict: bool,
}

fn prism(given: PrismGiven) -> Prism {
    let ring = |r: Vec<[f64; 2]>| r.into_iter().map(DVec2::from).collect();
    match given {
        PrismGiven::Disc { center_m, radius_m, from_m, to_m } => {
            Prism::new(PlanShape::Disc { center: center_m.into(), radius_m }, from_m, to_m).unwrap()
        }
        PrismGiven::Polygon { outer_m, holes_m, from_m, to_m } => {
            let polygon = Polygon { outer: ring(outer_m), holes: holes_m.into_iter().map(ring).collect() };
            Prism::new(PlanShape::Polygon(polygon), from_m, to_m).unwrap()
        }
    }
}

fn swept(pivot_m: [f64; 2], sweep: SweepGiven, b: &BandGiven) -> SweptBand {
    let sweep = match sweep {
        SweepGiven::Whole => Turns::whole(),
        SweepGiven::Between { from_rad, to_rad } => Turns::between(from_rad, to_rad),
        SweepGiven::At { angles_rad } => Turns::at(angles_rad),
    };
    let band = HeightBand {
        r0_m: b.r0_m,
        r1_m: b.r1_m,
        low_at_r0_m: b.low_at_r0_m,
        low_at_r1_m: b.low_at_r1_m,
        high_at_r0_m: b.high_at_r0_m,
        high_at_r1_m: b.high_at_r1_m,
        half_width_m: b.half_width_m,
    };
    SweptBand::new(pivot_m.into(), sweep, band).unwrap()
}

/// How far a chord of the script's circles (4096 in a turn) lies inside a circle of 5 m, m.
const CHORD_M: f64 = 1.5e-6;

#[test]
fn clearances_and_conflicts_agree_with_polygons_of_many_chords() {
    let text = include_str!("../../../../tests/reference/expected/clear_zones.json");
    let cases = serde_json::from_str::<Cases>(text).unwrap().cases;
    assert!(cases.len() >= 60);
    for case in cases {
        // A radius that is wrong by a chord changes the height by the slope of the band; a radius at which a circle and a
        // ray cross at a small angle is wrong by several chords.
        let slope = ((case.band.low_at_r1_m - case.band.low_at_r0_m) / (case.band.r1_m - case.band.r0_m))
            .abs()
            .max(((case.band.high_at_r1_m - case.band.high_at_r0_m) / (case.band.r1_m - case.band.r0_m)).abs());
        let tolerance = 4.0 * CHORD_M * slope.max(1.0);
        let swept = swept(case.pivot_m, case.sweep, &case.band);
        let required = Required::new(case.required.vertical_m, case.required.around_m).unwrap();
        let found = clearance(&swept, &prism(case.prism), &required);
        assert_eq!(found.conflict, case.expected.conflict, "{}", case.name);
        let pairs = [
            (found.vertical.map(|v| v.m), case.expected.vertical_m),
            (found.horizontal.map(|h| h.m), case.expected.horizontal_m),
        ];
        for (found, expected) in pairs {
            match (found, expected) {
                (Some(f), Some(e)) => assert!((f - e).abs() < tolerance, "{}: {f} against {e}", case.name),
                (None, None) => {}
                _ => panic!("{}: {found:?} against {expected:?}", case.name),
            }
        }
    }
}
