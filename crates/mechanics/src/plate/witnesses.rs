//! Plates of many outlines and patterns against another program.

use glam::DVec2;
use serde_json::Value;

use super::{Bearing, Plate, PlateAnchor, PreparedPlate};

const MILLI: f64 = 1e-3;

/// Points of a list of pairs in mm.
fn points(list: &Value) -> Vec<DVec2> {
    let pair = |p: &Value| DVec2::new(p[0].as_f64().unwrap(), p[1].as_f64().unwrap()) * MILLI;
    list.as_array().unwrap().iter().map(pair).collect()
}

fn plate_of(case: &Value) -> Plate {
    let area_m2 = case["area_mm2"].as_f64().unwrap() * MILLI * MILLI;
    Plate {
        outline: points(&case["outline_mm"]),
        thickness_m: 0.02,
        anchors: points(&case["anchors_mm"]).into_iter().map(|at| PlateAnchor::new(at, area_m2)).collect(),
        bearing: Bearing::Concrete,
        modular_ratio: case["modular"].as_f64().unwrap(),
    }
}

/// The program is concreteproperties: it was given the plane of strain and told force, moments and tensions, so that the plane is
/// what has to be found again here. It integrates a linear pressure on triangles, exactly but for its cutting them at the
/// neutral axis and its figures of ten digits: 0.01 % of the greatest tension, where 0.5 % were asked for.
#[test]
fn eighty_plates_of_four_outlines_pull_and_press_as_another_program_says() {
    let file: Value = serde_json::from_str(include_str!("../../../../tests/reference/expected/plates.json")).unwrap();
    let cases = file["cases"].as_array().unwrap();
    assert!(cases.len() >= 80);
    let mut pulled = 0;
    for case in cases {
        let of = |key: &str| case[key].as_f64().unwrap();
        let prepared = PreparedPlate::new(plate_of(case)).unwrap();
        let (presses_x_nm, presses_y_nm) = (of("moment_x_nmm") * MILLI, of("moment_y_nmm") * MILLI);
        let found = prepared.solve(-of("press_n"), -presses_y_nm, presses_x_nm).unwrap();
        let wanted: Vec<f64> = case["tension_n"].as_array().unwrap().iter().map(|t| t.as_f64().unwrap()).collect();
        let most = wanted.iter().copied().fold(0.0, f64::max);
        pulled += usize::from(most > 0.0);
        for (a, b) in found.tension_n.iter().zip(&wanted) {
            assert!((a - b).abs() <= 1e-4 * most.max(1.0), "{:?} {case}", found.tension_n);
        }
        let pressure_pa = of("pressure_mpa") * 1e6;
        assert!((found.greatest_pressure_pa - pressure_pa).abs() <= 1e-4 * pressure_pa, "{case}");
    }
    assert!(pulled >= 60, "{pulled}");
}
