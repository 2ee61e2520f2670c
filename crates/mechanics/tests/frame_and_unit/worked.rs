//! The three worked units of `data/worked_units.txt`: how they are read and built.

use std::collections::BTreeMap;

use gantline_mechanics::stiffness::BarStiffness;
use gantline_mechanics::unit::{BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, PinOffsets, RopePoint, Unit};

pub const NAMES: [&str; 3] = ["front", "rear", "rear_foot"];

pub struct Worked {
    values: BTreeMap<String, String>,
}

impl Worked {
    pub fn read() -> Self {
        let text = include_str!("../data/worked_units.txt");
        let values = text
            .lines()
            .filter(|line| !line.starts_with('#'))
            .filter_map(|line| line.split_once(' '))
            .map(|(key, value)| (key.to_owned(), value.to_owned()))
            .collect();
        Self { values }
    }

    pub fn number(&self, key: &str) -> f64 {
        self.values[key].parse().unwrap()
    }

    pub fn maybe(&self, key: &str) -> Option<f64> {
        self.values.get(key).map(|v| v.parse().unwrap())
    }

    pub fn unit(&self, name: &str) -> Unit {
        let n = |key: &str| self.number(&format!("{name}.input.{key}"));
        let bar = |part: &str| {
            let n = |key: &str| n(&format!("{part}.{key}"));
            BarStiffness::round(n("EA"), n("EI"), n("GJ"), n("w"))
        };
        let brace_bar = BarStiffness::round(n("brace.EA"), 0.0, 0.0, n("brace.w"));
        let action = BraceAction::Both;
        let brace = match name {
            "front" => Brace::Front { arm_at_m: n("brace.x_b"), mast_at_m: n("brace.h_b"), bar: brace_bar, action },
            "rear" => Brace::RearToMast { tail_at_m: n("t"), mast_at_m: n("brace.h_b"), bar: brace_bar, action },
            _ => Brace::RearFoot {
                from: FootFrom::MastHead,
                distance_m: n("brace.d"),
                foot_level_m: 0.0,
                bearing_rad: 0.0,
                allowed_turn_rad: std::f64::consts::FRAC_PI_2,
                foot_spring_n_per_m: None,
                bar: brace_bar,
                action,
            },
        };
        let pinned = self.values[&format!("{name}.input.arm_joint")] == "pinned";
        Unit {
            mast: bar("mast"),
            mast_height_m: n("H"),
            base: BaseFixity::Rigid,
            arm: bar("arm"),
            outreach_m: n("L"),
            tail_m: n("t"),
            head: if pinned { HeadJoint::Pinned } else { HeadJoint::Rigid },
            brace,
            pins: PinOffsets::default(),
            points: vec![RopePoint { x_m: n("L"), sideways_m: 0.0, drop_m: 0.0 }],
            lumps: Vec::new(),
        }
    }
}
