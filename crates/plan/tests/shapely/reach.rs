//! 48 random facades with up to ten units: areas, gaps, and what is covered at depths and over the whole height.

use gantline_plan::assess::coverage::Coverage;
use gantline_plan::assess::reach::{FeetFrom, Reach, Sideways};
use gantline_plan::geometry::spans::Spans;
use gantline_plan::geometry::strips::Face;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    face: FaceGiven,
    units: Vec<UnitGiven>,
    depths_m: Vec<f64>,
    expected: Expected,
}

#[derive(Deserialize)]
struct FaceGiven {
    length_m: f64,
    height_m: f64,
}

#[derive(Deserialize)]
struct UnitGiven {
    rule: Rule,
    support_above_top_m: f64,
    parts: Vec<Part>,
}

#[derive(Deserialize)]
struct Rule {
    arms_reach_m: f64,
    angle_rad: f64,
    swing_m: Option<f64>,
    plumb_limit_m: Option<f64>,
    least_depth_m: f64,
}

#[derive(Deserialize)]
struct Part {
    from_depth_m: f64,
    feet_m: Vec<(f64, f64)>,
}

#[derive(Deserialize)]
struct Expected {
    unit_areas_m2: Vec<f64>,
    covered_area_m2: f64,
    gaps: Vec<GapExpected>,
    gap_length_m: f64,
    open_somewhere_m: Vec<(f64, f64)>,
    covered_at_depths_m: Vec<Vec<(f64, f64)>>,
}

#[derive(Deserialize)]
struct GapExpected {
    area_m2: f64,
    box_m: [f64; 4],
}

/// Answers are printed to 9 significant digits: 5e-9 of a value, of areas up to 2,400 m² and lengths up to 60 m.
const OF_A_VALUE: f64 = 5e-9;
/// The polygon grid rounds corners to a nanometer; shallow crossings of sides magnify that by a hundred at most.
const GRID_M: f64 = 1e-7;

fn reach_of(unit: &UnitGiven, face: Face) -> Reach {
    let sideways = Sideways {
        arms_reach_m: unit.rule.arms_reach_m,
        angle_rad: unit.rule.angle_rad,
        swing_m: unit.rule.swing_m,
        plumb_limit_m: unit.rule.plumb_limit_m,
        least_depth_m: unit.rule.least_depth_m,
    };
    let feet = |p: &Part| FeetFrom { from_depth_m: p.from_depth_m, feet: Spans::of(p.feet_m.iter().copied()) };
    let parts: Vec<FeetFrom> = unit.parts.iter().map(feet).collect();
    Reach::of(&sideways, unit.support_above_top_m, &parts, face).unwrap()
}

fn assert_spans(found: &Spans, expected: &[(f64, f64)], tolerance: f64, what: &str) {
    let found: Vec<(f64, f64)> = found.iter().map(|s| (s.from_m, s.to_m)).collect();
    let same = found.len() == expected.len()
        && found.iter().zip(expected).all(|(f, e)| (f.0 - e.0).abs() < tolerance && (f.1 - e.1).abs() < tolerance);
    assert!(same, "{what}: {found:?} against {expected:?}");
}

fn assert_gaps(coverage: &Coverage, expected: &[GapExpected], name: &str) {
    assert_eq!(coverage.gaps.len(), expected.len(), "{name}");
    for gap in expected {
        let [x0, y0, x1, y1] = gap.box_m;
        let is_it = |g: &&gantline_plan::assess::coverage::Gap| {
            let found = [g.bounds.min_m.x, g.bounds.min_m.y, g.bounds.max_m.x, g.bounds.max_m.y];
            found.iter().zip([x0, y0, x1, y1]).all(|(f, e)| (f - e).abs() < GRID_M + OF_A_VALUE * 60.0)
        };
        let found = coverage.gaps.iter().find(is_it).unwrap_or_else(|| panic!("{name}: no gap in {:?}", gap.box_m));
        let tolerance = OF_A_VALUE * gap.area_m2 + GRID_M * 10.0;
        assert!((found.area_m2 - gap.area_m2).abs() < tolerance, "{name}: {} against {}", found.area_m2, gap.area_m2);
    }
}

#[test]
fn areas_gaps_and_intervals_agree_with_united_lobes() {
    let text = include_str!("../../../../tests/reference/expected/reach.json");
    let cases = serde_json::from_str::<Cases>(text).unwrap().cases;
    assert!(cases.len() >= 40);
    for Case { name, face, units, depths_m, expected } in cases {
        let face = Face { length_m: face.length_m, height_m: face.height_m };
        let reaches: Vec<Reach> = units.iter().map(|u| reach_of(u, face)).collect();
        for (reach, area) in reaches.iter().zip(&expected.unit_areas_m2) {
            let found = reach.area_m2();
            assert!((found - area).abs() <= OF_A_VALUE * area.max(1.0), "{name}: {found} against {area}");
        }
        let coverage = Coverage::of(face, &reaches).unwrap();
        let (found, area) = (coverage.covered_area_m2, expected.covered_area_m2);
        assert!((found - area).abs() <= OF_A_VALUE * area.max(1.0), "{name}: {found} against {area}");
        assert_gaps(&coverage, &expected.gaps, &name);
        let (found, length) = (coverage.gap_length_m(), expected.gap_length_m);
        assert!((found - length).abs() < GRID_M, "{name}: {found} against {length}");
        assert_spans(&coverage.open_somewhere(), &expected.open_somewhere_m, GRID_M, &name);
        for (&depth, spans) in depths_m.iter().zip(&expected.covered_at_depths_m) {
            assert_spans(&coverage.at_depth(depth), spans, OF_A_VALUE * 60.0, &format!("{name} at {depth} m"));
        }
    }
}
