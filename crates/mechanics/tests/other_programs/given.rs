//! Units and frames as the reference files describe them, read into the program's own words.

use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, Lump, PinOffsets, Place, RopePoint, Unit,
};
use glam::DVec3;
use serde_json::Value;

pub fn number(of: &Value, key: &str) -> f64 {
    of[key].as_f64().unwrap_or_else(|| panic!("{key} is {}", of[key]))
}

pub fn vector(value: &Value) -> DVec3 {
    let [x, y, z] = numbers(value)[..] else { panic!("{value} is no vector") };
    DVec3::new(x, y, z)
}

pub fn numbers(value: &Value) -> Vec<f64> {
    list(value).iter().map(|v| v.as_f64().unwrap()).collect()
}

pub fn list(value: &Value) -> &[Value] {
    value.as_array().unwrap_or_else(|| panic!("{value} is no list"))
}

pub fn name(of: &Value) -> &str {
    of["name"].as_str().unwrap()
}

pub fn stiffness(bar: &Value) -> BarStiffness {
    BarStiffness {
        ea_n: number(bar, "ea_n"),
        ei_y_nm2: number(bar, "ei_y_nm2"),
        ei_z_nm2: number(bar, "ei_z_nm2"),
        gj_nm2: number(bar, "gj_nm2"),
        weight_n_per_m: number(bar, "weight_n_per_m"),
    }
}

pub fn unit(given: &Value) -> Unit {
    Unit {
        mast: stiffness(&given["mast"]),
        mast_height_m: number(given, "mast_height_m"),
        base: given["base_tilt_spring_nm_per_rad"].as_f64().map_or(BaseFixity::Rigid, BaseFixity::TiltSpring),
        arm: stiffness(&given["arm"]),
        outreach_m: number(given, "outreach_m"),
        tail_m: number(given, "tail_m"),
        head: if given["head"] == "pinned" { HeadJoint::Pinned } else { HeadJoint::Rigid },
        brace: brace(&given["brace"]),
        pins: pins(&given["pins"]),
        points: list(&given["points"]).iter().map(rope_point).collect(),
        lumps: list(&given["lumps"]).iter().map(lump).collect(),
    }
}

fn brace(given: &Value) -> Brace {
    let Some(kind) = given["kind"].as_str() else { return Brace::None };
    let n = |key| number(given, key);
    let (ea, weight) = (number(&given["bar"], "ea_n"), number(&given["bar"], "weight_n_per_m"));
    let (bar, action) = (BarStiffness::round(ea, 0.0, 0.0, weight), BraceAction::Both);
    let from = match kind {
        "rear_to_mast" => {
            return Brace::RearToMast { tail_at_m: n("tail_at_m"), mast_at_m: n("mast_at_m"), bar, action };
        }
        "rear_to_base" => {
            return Brace::RearToBase { tail_at_m: n("tail_at_m"), base_at_m: n("base_at_m"), bar, action };
        }
        "front" => return Brace::Front { arm_at_m: n("arm_at_m"), mast_at_m: n("mast_at_m"), bar, action },
        "foot_from_head" => FootFrom::MastHead,
        "foot_from_tail" => FootFrom::ArmTail { at_m: n("tail_at_m") },
        other => panic!("no brace is called {other}"),
    };
    Brace::RearFoot {
        from,
        distance_m: n("distance_m"),
        foot_level_m: n("foot_level_m"),
        bearing_rad: n("bearing_rad"),
        allowed_turn_rad: given["allowed_turn_rad"].as_f64().unwrap_or(std::f64::consts::PI),
        foot_spring_n_per_m: given["foot_spring_n_per_m"].as_f64(),
        bar,
        action,
    }
}

fn pins(given: &Value) -> PinOffsets {
    if given.is_null() {
        return PinOffsets::default();
    }
    PinOffsets { upper_m: vector(&given["upper_m"]), lower_m: vector(&given["lower_m"]) }
}

fn rope_point(given: &Value) -> RopePoint {
    RopePoint { x_m: number(given, "x_m"), sideways_m: number(given, "sideways_m"), drop_m: number(given, "drop_m") }
}

fn lump(given: &Value) -> Lump {
    let at_m = number(given, "at_m");
    let on = if given["on"] == "mast" { Place::Mast { at_m } } else { Place::Arm { at_m } };
    Lump { on, weight_n: number(given, "weight_n") }
}
