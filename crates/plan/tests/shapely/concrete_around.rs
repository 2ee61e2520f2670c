//! 130 random slabs with holes and corners that go in: areas, thickness, edges and corners round anchors.

use gantline_mechanics::anchorage::{Around, EdgeSeen};
use gantline_plan::geometry::concrete_around::{ConcreteAround, PlateFrame, Setting, ThicknessZone};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;
use serde::Deserialize;

#[derive(Deserialize)]
struct Cases {
    cases: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    outline_m: Vec<DVec2>,
    holes_m: Vec<Vec<DVec2>>,
    zones: Vec<ZoneGiven>,
    elsewhere_m: f64,
    foreign_m: Vec<DVec2>,
    origin_m: DVec2,
    turn_rad: f64,
    anchors_m: Vec<[f64; 2]>,
    influence_m: f64,
    reach_m: f64,
    thickness_m: f64,
    areas: Vec<AreaFound>,
    edges: Vec<EdgeFound>,
}

#[derive(Deserialize)]
struct ZoneGiven {
    area_m: Vec<DVec2>,
    thickness_m: f64,
}

#[derive(Deserialize)]
struct AreaFound {
    set: Vec<usize>,
    half_side_m: f64,
    area_m2: f64,
}

#[derive(Debug, Deserialize)]
struct EdgeFound {
    outward: [f64; 2],
    distance_m: Vec<Option<f64>>,
    corner_before_m: Vec<Option<f64>>,
    corner_after_m: Vec<Option<f64>>,
    thickness_m: f64,
    front: Vec<usize>,
    half_width_m: f64,
    shear_area_m2: f64,
}

/// Coordinates lie on a grid of a tenth of a micrometer: lengths agree to that with room for ways that end
/// on short chords of a curve.
const LENGTH_M: f64 = 5e-6;
/// Perimeters of some meters times the same.
const AREA_M2: f64 = 1e-6;
/// Corners farther along an edge than this many times the reach count as none.
const FAR_ALONG: f64 = 1.5;

fn cases() -> Vec<Case> {
    let text = include_str!("../../../../tests/reference/expected/concrete_around.json");
    serde_json::from_str::<Cases>(text).unwrap().cases
}

fn measured(case: &Case) -> ConcreteAround {
    let outline = Polygon { outer: case.outline_m.clone(), holes: case.holes_m.clone() };
    let zone = |z: &ZoneGiven| ThicknessZone { area: Polygon::simple(z.area_m.clone()), thickness_m: z.thickness_m };
    let zones: Vec<ThicknessZone> = case.zones.iter().map(zone).collect();
    let setting = Setting {
        outline: &outline,
        thickness_m: case.elsewhere_m,
        zones: &zones,
        foreign_m: &case.foreign_m,
        plate: PlateFrame { origin_m: case.origin_m, turn_rad: case.turn_rad },
        anchors_m: &case.anchors_m,
        influence_m: case.influence_m,
        reach_m: case.reach_m,
    };
    setting.measure().unwrap_or_else(|fault| panic!("{}: {fault}", case.name))
}

fn are_near(found: &[f64], wanted: &[Option<f64>], none_beyond_m: f64) -> bool {
    found.iter().zip(wanted).all(|(f, w)| match w {
        Some(w) if *w > none_beyond_m => f.is_infinite(),
        Some(w) => (f - w).abs() < LENGTH_M,
        None => f.is_infinite(),
    })
}

/// The same edge: the same direction and the same distances.
fn is(found: &EdgeSeen, wanted: &EdgeFound, reach_m: f64) -> bool {
    let aside = (0..2).any(|axis| (found.outward[axis] - wanted.outward[axis]).abs() > 1e-6);
    !aside
        && are_near(&found.distance_m, &wanted.distance_m, f64::INFINITY)
        && are_near(&found.corner_before_m, &wanted.corner_before_m, FAR_ALONG * reach_m)
        && are_near(&found.corner_after_m, &wanted.corner_after_m, FAR_ALONG * reach_m)
}

#[test]
fn areas_round_anchors_are_those_of_cut_polygons() {
    let all = cases();
    assert!(all.len() >= 100);
    for case in &all {
        let around = measured(case);
        for wanted in &case.areas {
            let found = around.projected_area_m2(&wanted.set, wanted.half_side_m);
            assert!((found - wanted.area_m2).abs() < AREA_M2, "{}: {found} for {}", case.name, wanted.area_m2);
        }
        assert_eq!(around.thickness_m(), case.thickness_m, "{}", case.name);
    }
}

#[test]
fn edges_corners_and_bodies_toward_edges_are_those_of_cut_lines() {
    let mut looked_at = 0;
    for case in &cases() {
        let around = measured(case);
        assert_eq!(around.edges().len(), case.edges.len(), "{}", case.name);
        for wanted in &case.edges {
            let index = around.edges().iter().position(|found| is(found, wanted, case.reach_m));
            let index =
                index.unwrap_or_else(|| panic!("{}: no edge toward {:?} in {:?}", case.name, wanted, around.edges()));
            assert_eq!(around.edges()[index].thickness_m, wanted.thickness_m, "{}", case.name);
            let half = wanted.half_width_m;
            let found = around.shear_area_m2(index, &wanted.front, half, half);
            assert!((found - wanted.shear_area_m2).abs() < AREA_M2, "{}: {found}", case.name);
            looked_at += 1;
        }
    }
    assert!(looked_at > 200, "{looked_at}");
}
