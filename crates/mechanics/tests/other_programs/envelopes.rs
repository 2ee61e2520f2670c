//! Envelopes of six units against brute force over directions, on the same raster of slews, 1° apart.
//!
//! `unit_envelopes.py` takes what a pull does from PyNiteFEA and looks for the greatest value among ever finer rasters of
//! directions; the program computes it from the cone in closed form.

use gantline_mechanics::cone::{Lean, LoadCone};
use gantline_mechanics::envelope::{
    Actions, Component, Envelope, Pull, Sense, SlewHold, SlewRange, base_envelope, brace_envelope, foot_envelope,
};
use gantline_mechanics::unit::UnitModel;
use serde_json::{Map, Value};

use crate::given::{list, name, number, numbers, unit};

/// Share of the largest extreme of a unit. The last raster is so fine that brute force misses nothing that a number can hold;
/// PyNiteFEA's rounding leaves 1e-11 in these units, and the file's twelve digits after the point half as much.
const SHARE: f64 = 1e-10;

/// Share that a raster of 1° may miss of the continuous turn: 1 − cos 0.5° = 4e-5 of a vector that turns with the slew once;
/// what a foot does changes a few times faster.
const BETWEEN_SLEWS: f64 = 4e-4;

const FILE: &str = include_str!("../../../../tests/reference/expected/unit_envelopes.json");

const COMPONENTS: [(&str, Component); 8] = [
    ("Fx", Component::Fx),
    ("Fy", Component::Fy),
    ("Fz", Component::Fz),
    ("Mx", Component::Mx),
    ("My", Component::My),
    ("Mz", Component::Mz),
    ("V", Component::V),
    ("M", Component::M),
];

fn actions(asked: &Value) -> Actions {
    let lean = (!asked["lean_rad"].is_null()).then(|| {
        let [inward_rad, outward_rad] = numbers(&asked["lean_rad"])[..] else { panic!("two limits of lean") };
        Lean { inward_rad, outward_rad }
    });
    let cone = LoadCone { half_angle_rad: number(asked, "half_angle_rad"), lean };
    let held = asked["slew_is_held"].as_bool().unwrap();
    Actions {
        slew_hold: if held { SlewHold::Held } else { SlewHold::Free },
        ..Actions::of_pull(Pull::new(0, number(asked, "tension_n"), cone), number(asked, "weight_factor"))
    }
}

fn ends_deg(asked: &Value) -> [i32; 2] {
    [0, 1].map(|i| i32::try_from(asked["slews_deg"][i].as_i64().unwrap()).unwrap())
}

fn raster(asked: &Value) -> SlewRange {
    let [first, last] = ends_deg(asked);
    SlewRange::At((first..=last).map(|degree| f64::from(degree).to_radians()).collect())
}

fn continuous(asked: &Value) -> SlewRange {
    let [first, last] = ends_deg(asked);
    if last - first == 359 {
        return SlewRange::WholeTurn;
    }
    SlewRange::Between { from_rad: f64::from(first).to_radians(), to_rad: f64::from(last).to_radians() }
}

/// What the file has an extreme of, and where the program has it.
fn found(key: &str, [base, brace, foot]: [&Option<Envelope>; 3], sense: Sense) -> f64 {
    let (envelope, key) = match (key, key.strip_prefix("foot ")) {
        ("brace", _) => return brace.as_ref().unwrap().get(Component::Axial, sense).unwrap().value,
        (_, Some(of_foot)) => (foot, of_foot),
        (of_base, None) => (base, of_base),
    };
    let (_, component) = COMPONENTS.iter().find(|(name, _)| *name == key).unwrap();
    envelope.as_ref().unwrap().get(*component, sense).unwrap().value
}

/// Calls `see` with a label and, counted so that greater is more extreme, the program's value and the file's as shares of the
/// largest.
fn each(given: &Value, unit_n: f64, range: &SlewRange, mut see: impl FnMut(&str, f64, f64)) {
    let (model, asked) = (UnitModel::new(&unit(given)).unwrap(), &given["envelope"]);
    let actions = actions(asked);
    let expected: &Map<String, Value> = asked["expected"].as_object().unwrap();
    let base = Some(base_envelope(&model, &actions, range).unwrap());
    let brace = expected.contains_key("brace").then(|| brace_envelope(&model, &actions, range).unwrap());
    let foot = expected.contains_key("foot Fz").then(|| foot_envelope(&model, &actions, range).unwrap());
    let values = expected.values().flat_map(|e| e.as_object().unwrap().values()).map(|v| v.as_f64().unwrap().abs());
    let largest = values.fold(0.0, f64::max) * unit_n;
    for (key, extremes) in expected {
        for (which, value) in extremes.as_object().unwrap() {
            let (sense, sign) = if which == "max" { (Sense::Max, 1.0) } else { (Sense::Min, -1.0) };
            let got = found(key, [&base, &brace, &foot], sense);
            let label = format!("{}, {which} {key}", name(given));
            see(&label, sign * got / largest, sign * value.as_f64().unwrap() * unit_n / largest);
        }
    }
}

#[test]
fn on_a_raster_of_slews_envelopes_are_those_of_brute_force() {
    let file: Value = serde_json::from_str(FILE).unwrap();
    let units = list(&file["units"]);
    assert_eq!(units.len(), 6);
    for given in units {
        each(given, number(&file, "force_unit_n"), &raster(&given["envelope"]), |what, got, expected| {
            let off = (got - expected).abs();
            assert!(off <= SHARE, "{what}: got {got}, expected {expected}: {off:.1e}");
        });
    }
}

#[test]
fn over_the_continuous_turn_envelopes_are_a_little_wider_than_on_a_raster() {
    let file: Value = serde_json::from_str(FILE).unwrap();
    for given in list(&file["units"]) {
        each(given, number(&file, "force_unit_n"), &continuous(&given["envelope"]), |what, got, expected| {
            assert!(got >= expected - SHARE, "{what}: got {got}, expected {expected}");
            assert!(got <= expected + BETWEEN_SLEWS, "{what}: got {got}, expected {expected}");
        });
    }
}
