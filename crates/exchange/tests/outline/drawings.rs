//! Ten drawings by ezdxf of releases 12 to 2018, in text and binary: every closed outline has the area that shapely found.

use std::collections::BTreeMap;
use std::fs;

use gantline_exchange::outline::{Asked, KeptPlace, LengthUnit, Measure, OutlineFault, read};
use glam::DVec2;
use serde::Deserialize;

use super::given::{all, drawing, outlines, reference, ring, with_blocks, with_entities};

#[derive(Deserialize)]
struct Reference {
    drawings: Vec<Case>,
    degrees: Degrees,
}

#[derive(Deserialize)]
struct Case {
    file: String,
    unit: String,
    stated: bool,
    areas_m2: BTreeMap<String, Vec<f64>>,
}

#[derive(Deserialize)]
struct Degrees {
    corners_m: Vec<DVec2Given>,
    areas_m2: Vec<f64>,
}

#[derive(Deserialize)]
struct DVec2Given(f64, f64);

fn expected() -> Reference {
    serde_json::from_slice(&fs::read(reference().join("expected/outline_drawings.json")).unwrap()).unwrap()
}

fn unit(name: &str) -> LengthUnit {
    match name {
        "mm" => LengthUnit::Millimeter,
        "cm" => LengthUnit::Centimeter,
        "m" => LengthUnit::Meter,
        "in" => LengthUnit::Inch,
        "ft" => LengthUnit::Foot,
        other => panic!("{other}"),
    }
}

#[test]
fn every_outline_has_the_area_that_other_programs_found() {
    let mut compared = 0;
    for case in expected().drawings {
        let work = read(&drawing(&case.file)).unwrap_or_else(|fault| panic!("{}: {fault}", case.file));
        let given = unit(&case.unit);
        // The drawing with gaps of 3 mm has no curves.
        let tolerance_m = if case.file.starts_with("far") { 0.005 } else { 0.0002 };
        assert_eq!(work.stated_unit(), case.stated.then_some(given), "{}", case.file);
        let asked = Asked {
            layers: (0..work.layers.len()).collect(),
            unit: (!case.stated).then_some(given),
            tolerance_m,
            chord_m: tolerance_m,
            place: None,
        };
        let found = work.outlines(&asked).unwrap();
        assert!(found.faulty.is_empty() && found.meetings.is_empty(), "{}: {:?}", case.file, found.faulty);
        for (layer, areas) in &case.areas_m2 {
            let place = work.layer(layer).unwrap_or_else(|| panic!("{}: no layer {layer}", case.file));
            let loops: Vec<_> = found.loops.iter().filter(|one| one.layer == place).collect();
            assert_eq!(loops.len(), areas.len(), "{} {layer}", case.file);
            for (one, area) in loops.iter().zip(areas) {
                // Chords inside of arcs lose at most the tolerance along the whole way round.
                let around: f64 =
                    one.corners.iter().zip(one.corners.iter().cycle().skip(1)).map(|(a, b)| a.distance(*b)).sum();
                let curved = found.curves > 0;
                let allowed = if curved { around * tolerance_m } else { 1e-6 };
                assert!((one.area_m2 - area).abs() <= allowed, "{} {layer}: {} {area}", case.file, one.area_m2);
                compared += 1;
            }
        }
        let all: usize = case.areas_m2.values().map(Vec::len).sum();
        assert_eq!(found.loops.len(), all, "{}: no outline that the others did not find", case.file);
    }
    assert_eq!(compared, 112);
}

#[test]
fn finer_chords_come_nearer_to_the_area_of_the_arcs() {
    // A circle of 1.5 m: π 1.5² = 7.06858347 m²; chords of sagitta s lose about 4/3 s √(2 r s) each way round, 0.07 % at 1 mm.
    let work = read(&drawing("lines_of_release_12.dxf")).unwrap();
    let layers: std::collections::BTreeSet<usize> = [work.layer("PLANT").unwrap()].into();
    let circle = std::f64::consts::PI * 2.25;
    let mut before = f64::INFINITY;
    for tolerance_m in [0.1, 0.01, 0.001, 0.0001] {
        let asked = Asked {
            layers: layers.clone(),
            unit: Some(LengthUnit::Millimeter),
            tolerance_m,
            chord_m: tolerance_m,
            place: None,
        };
        let short = circle - work.outlines(&asked).unwrap().loops[0].area_m2;
        assert!(short > 0.0 && short < before && short <= 2.0 * std::f64::consts::PI * 1.5 * tolerance_m, "{short}");
        before = short;
    }
}

#[test]
fn degrees_lie_where_proj_puts_them() {
    let work = read(&drawing("degrees.geojson")).unwrap();
    assert!(matches!(work.measure, Measure::Degrees { .. }));
    let found = all(&work, None).unwrap();
    let expected = expected().degrees;
    for DVec2Given(x, y) in expected.corners_m {
        let nearest = found.loops[0].corners.iter().map(|at| at.distance(DVec2::new(x, y))).fold(f64::MAX, f64::min);
        assert!(nearest < 1e-6, "{nearest}");
    }
    for (one, area) in found.loops.iter().zip(&expected.areas_m2) {
        assert!((one.area_m2 - area).abs() < 1e-3, "{} {area}", one.area_m2);
    }
    assert_eq!(found.loops[1].inside, Some(0));
}

#[test]
fn units_that_are_not_stated_are_asked_for() {
    let work = read(&drawing("lines_of_release_12.dxf")).unwrap();
    assert_eq!((work.measure, all(&work, None)), (Measure::NotStated, Err(OutlineFault::UnitsNotStated)));
    assert!(all(&work, Some(LengthUnit::Millimeter)).is_ok());
    assert_eq!(work.passed_over.get("TEXT"), Some(&1));
    let notes = &work.layers[work.layer("notes").unwrap()];
    assert_eq!((notes.traces, notes.others), (0, 1));
}

#[test]
fn a_site_far_from_the_origin_keeps_its_grid_in_an_offset() {
    let work = read(&drawing("far_from_the_origin.dxf")).unwrap();
    let found = all(&work, None).unwrap();
    assert_eq!(found.origin_m, DVec2::new(412_340.0, 5_654_320.0));
    // The corner drawn at (412 378.678, 5 654 342.098): its lines end 2 mm west and north of it, and are joined between.
    let corner = found.origin_m
        + found.loops[0].corners.iter().copied().fold(DVec2::splat(f64::MIN), |a, b| if b.x > a.x { b } else { a });
    assert!(corner.distance(DVec2::new(412_381.677, 5_654_325.099)) < 1e-6, "{corner}");
    assert_eq!(found.loops[0].gaps.len(), 6);
    assert!(found.loops[0].gaps.iter().all(|gap| (gap.width_m - 0.002 * 2.0_f64.sqrt()).abs() < 1e-6));
    // A plan that has its own origin keeps it.
    let asked = Asked {
        layers: [0].into(),
        unit: None,
        tolerance_m: 0.005,
        chord_m: 0.005,
        place: Some(KeptPlace { origin_m: DVec2::new(412_300.0, 5_654_300.0), plane: None }),
    };
    let found = work.outlines(&asked).unwrap();
    assert!(found.bounds.unwrap().min_m.distance(DVec2::new(42.678, 21.098)) < 0.01);
}

#[test]
fn a_loop_that_crosses_itself_is_refused_with_the_place() {
    let text = with_entities(&ring("A", &[(0., 0.), (4., 4.), (4., 0.), (0., 4.)]));
    let found = outlines(&text);
    assert!(found.loops.is_empty());
    assert_eq!(found.faulty[0].place(), DVec2::new(2.0, 2.0));
    assert!(found.faulty[0].why.to_string().contains("cross"), "{}", found.faulty[0].why);
}

#[test]
fn outlines_in_outlines_are_told_and_loops_that_meet_are_named() {
    let rings = [
        ring("A", &[(0., 0.), (30., 0.), (30., 30.), (0., 30.)]),
        ring("A", &[(5., 5.), (25., 5.), (25., 25.), (5., 25.)]),
        ring("A", &[(10., 10.), (20., 10.), (20., 20.), (10., 20.)]),
        ring("B", &[(28., 40.), (28., 28.), (40., 28.), (40., 40.)]),
        // Drawn twice, from another corner.
        ring("B", &[(40., 28.), (40., 40.), (28., 40.), (28., 28.)]),
    ];
    let found = outlines(&with_entities(&rings.concat()));
    let depths: Vec<(f64, usize)> = found.loops.iter().map(|one| (one.area_m2, one.depth)).collect();
    assert_eq!(depths, [(900.0, 0), (400.0, 1), (144.0, 0), (100.0, 2)]);
    assert_eq!((found.meetings.len(), found.doubled), (1, 1));
    assert!(
        found.meetings[0].at.distance(DVec2::new(28.0, 30.0)) < 1e-9
            || found.meetings[0].at.distance(DVec2::new(30.0, 28.0)) < 1e-9
    );
}

#[test]
fn frozen_layers_paper_and_blocks_elsewhere_are_told_and_not_mixed_in() {
    let tables = "0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLAYER\n0\nLAYER\n2\nOLD\n70\n1\n62\n7\n0\nLAYER\n2\nOFF\n70\n0\n62\n-3\n0\nENDTAB\n0\nENDSEC\n";
    let blocks = "0\nBLOCK\n8\n0\n2\nSITE\n70\n4\n10\n0\n20\n0\n1\nsite.dwg\n0\nENDBLK\n";
    let entities = [
        ring("OLD", &[(0., 0.), (3., 0.), (3., 3.)]),
        ring("OFF", &[(9., 0.), (13., 0.), (13., 3.)]),
        "0\nINSERT\n8\n0\n2\nsite\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nLOST\n10\n0\n20\n0\n".to_owned(),
        "0\nLINE\n67\n1\n8\nFRAME\n10\n0\n20\n0\n11\n841\n21\n0\n".to_owned(),
    ];
    let text = with_blocks(blocks, &entities.concat()).replacen(
        "0\nSECTION\n2\nBLOCKS",
        &format!("{tables}0\nSECTION\n2\nBLOCKS"),
        1,
    );
    let work = read(text.as_bytes()).unwrap();
    assert!(work.layers.iter().all(|layer| !layer.shown), "{:?}", work.layers);
    assert_eq!(work.layers.iter().map(|layer| layer.name.as_str()).collect::<Vec<_>>(), ["OFF", "OLD"]);
    let said: Vec<&str> = work.passed_over.keys().map(String::as_str).collect();
    assert_eq!(
        said,
        [
            "INSERT of \"site\", which is in another file",
            "INSERT of block \"LOST\", which the file does not hold",
            "on the paper's own space"
        ]
    );
}
