//! Every force that acts on a unit at once at an extreme, with its point of attack: what statics adds up.

use gantline_mechanics::envelope::{Actions, Causes};
use gantline_mechanics::unit::{Brace, FootFrom, Unit};
use glam::{DVec2, DVec3};

use super::inside::ROPE;

/// What a force acts on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum On {
    /// The mast.
    Mast,
    /// The arm.
    Arm,
    /// The base itself: it strains nothing of the unit.
    Base,
    /// A separate foot: nothing of it comes to the base.
    Foot,
}

/// One force.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// What it is.
    pub says: String,
    /// What it acts on.
    pub on: On,
    /// The force, N.
    pub force_n: DVec3,
    /// Where it acts, from the base's reference point, m.
    pub at: DVec3,
}

/// A brace's pins in arm axes, from the base's reference point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pins {
    /// Upper pin, m.
    pub upper: DVec3,
    /// What it sits on.
    pub upper_on: On,
    /// Lower pin, m.
    pub lower: DVec3,
    /// What it sits on.
    pub lower_on: On,
}

impl Pins {
    /// The pins of a unit's brace at a slew; none without a brace.
    pub fn of(unit: &Unit, slew_rad: f64) -> Option<Self> {
        let head = DVec3::Z * unit.mast_height_m;
        let arm = |x: f64| (On::Arm, head + DVec3::X * x);
        let ((upper_on, upper), (lower_on, lower)) = match unit.brace {
            Brace::None => return None,
            Brace::RearToMast { tail_at_m, mast_at_m, .. } => (arm(-tail_at_m), (On::Mast, DVec3::Z * mast_at_m)),
            Brace::RearToBase { tail_at_m, base_at_m, .. } => (arm(-tail_at_m), (On::Base, DVec3::X * -base_at_m)),
            Brace::Front { arm_at_m, mast_at_m, .. } => (arm(arm_at_m), (On::Mast, DVec3::Z * mast_at_m)),
            Brace::RearFoot { from, distance_m, foot_level_m, bearing_rad, .. } => {
                let upper = match from {
                    FootFrom::MastHead => (On::Mast, head),
                    FootFrom::ArmTail { at_m } => arm(-at_m),
                };
                let foot = DVec3::new(-distance_m, 0.0, foot_level_m);
                (upper, (On::Foot, turned(foot, bearing_rad - slew_rad)))
            }
        };
        let lower_offset = if lower_on == On::Foot { DVec3::ZERO } else { unit.pins.lower_m };
        Some(Self { upper: upper + unit.pins.upper_m, upper_on, lower: lower + lower_offset, lower_on })
    }

    /// Unit vector from the lower to the upper pin.
    pub fn axis(&self) -> DVec3 {
        (self.upper - self.lower).normalize_or_zero()
    }

    /// Distance between the pins, m.
    pub fn length_m(&self) -> f64 {
        self.upper.distance(self.lower)
    }
}

/// A vector turned about z, counter-clockwise seen from above.
pub fn turned(v: DVec3, angle_rad: f64) -> DVec3 {
    let turned = DVec2::from_angle(angle_rad).rotate(v.truncate());
    turned.extend(v.z)
}

/// Everything that acts, in arm axes: forces and points turned back by the slew.
pub fn loads(unit: &Unit, actions: &Actions, causes: &Causes, slew_rad: f64) -> Vec<Load> {
    let mut all = Vec::new();
    for (pull, force_n) in actions.pulls.iter().zip(&causes.pulls_n) {
        let Some(point) = unit.points.get(pull.point) else { continue };
        let at = DVec3::new(point.x_m, point.sideways_m, unit.mast_height_m - point.drop_m);
        all.push(Load { says: ROPE.into(), on: On::Arm, force_n: turned(*force_n, -slew_rad), at });
    }
    let pins = Pins::of(unit, slew_rad);
    weights(unit, pins.as_ref(), actions.weight_factor, &mut all);
    let wind = turned(causes.wind.extend(0.0), -slew_rad);
    winds(unit, pins.as_ref(), actions, wind, &mut all);
    if let Some(tether) = actions.tether {
        let force_n = turned(causes.tether.extend(0.0), -slew_rad) * tether.force_n;
        let at = DVec3::Z * tether.height_m;
        all.push(Load { says: "tether at the base's eye".into(), on: On::Base, force_n, at });
    }
    all
}

/// The same in the base's axes.
pub fn loads_in_base_axes(unit: &Unit, actions: &Actions, causes: &Causes, slew_rad: f64) -> Vec<Load> {
    let turn = |load: Load| Load { force_n: turned(load.force_n, slew_rad), at: turned(load.at, slew_rad), ..load };
    loads(unit, actions, causes, slew_rad).into_iter().map(turn).collect()
}

fn middle_of_arm(unit: &Unit) -> DVec3 {
    DVec3::new((unit.outreach_m - unit.tail_m) / 2.0, 0.0, unit.mast_height_m)
}

fn weights(unit: &Unit, pins: Option<&Pins>, factor: f64, all: &mut Vec<Load>) {
    let down = |weight_n: f64| DVec3::Z * (-weight_n * factor);
    let arm_m = unit.outreach_m + unit.tail_m;
    all.push(Load {
        says: "weight of the mast".into(),
        on: On::Mast,
        force_n: down(unit.mast.weight_n_per_m * unit.mast_height_m),
        at: DVec3::Z * (unit.mast_height_m / 2.0),
    });
    all.push(Load {
        says: "weight of the arm".into(),
        on: On::Arm,
        force_n: down(unit.arm.weight_n_per_m * arm_m),
        at: middle_of_arm(unit),
    });
    if let (Some(pins), Some(weight_n_per_m)) = (pins, brace_weight_n_per_m(&unit.brace)) {
        halves("weight of the brace", pins, down(weight_n_per_m * pins.length_m()), all);
    }
}

const fn brace_weight_n_per_m(brace: &Brace) -> Option<f64> {
    match brace {
        Brace::None => None,
        Brace::RearToMast { bar, .. }
        | Brace::RearToBase { bar, .. }
        | Brace::Front { bar, .. }
        | Brace::RearFoot { bar, .. } => Some(bar.weight_n_per_m),
    }
}

fn halves(says: &str, pins: &Pins, whole_n: DVec3, all: &mut Vec<Load>) {
    let half = whole_n / 2.0;
    all.push(Load { says: format!("half the {says}, upper pin"), on: pins.upper_on, force_n: half, at: pins.upper });
    all.push(Load { says: format!("half the {says}, lower pin"), on: pins.lower_on, force_n: half, at: pins.lower });
}

/// Wind along the mast's whole height, across the arm, on the arm's end, and on the brace.
fn winds(unit: &Unit, pins: Option<&Pins>, actions: &Actions, wind: DVec3, all: &mut Vec<Load>) {
    let Some(on) = &actions.wind else { return };
    let arm_m = unit.outreach_m + unit.tail_m;
    let head = DVec3::Z * unit.mast_height_m;
    all.push(Load {
        says: "wind on the mast".into(),
        on: On::Mast,
        force_n: wind * (on.mast_n_per_m * unit.mast_height_m),
        at: head / 2.0,
    });
    all.push(Load {
        says: "wind across the arm".into(),
        on: On::Arm,
        force_n: DVec3::Y * (wind.y * on.arm_n_per_m * arm_m),
        at: middle_of_arm(unit),
    });
    all.push(Load {
        says: "wind on the arm's end".into(),
        on: On::Arm,
        force_n: DVec3::X * (wind.x * on.arm_end_n),
        at: head + DVec3::X * unit.outreach_m,
    });
    if let Some(pins) = pins {
        halves("wind on the brace", pins, wind * on.brace_n, all);
    }
}

/// The sum of some loads' forces, N.
pub fn total_n<'a>(loads: impl IntoIterator<Item = &'a Load>) -> DVec3 {
    loads.into_iter().map(|load| load.force_n).sum()
}
