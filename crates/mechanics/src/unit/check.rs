//! Every number of a unit is looked at once, by name, before anything is computed.

use super::build_frame::LEAST_STRETCH_M;
use super::describe::{BaseFixity, Brace, FootFrom, HeadJoint, Place, Unit};
use super::fault::UnitFault;
use crate::stiffness::BarStiffness;

/// Passes a unit whose numbers all make sense, or names the first field that doesn't.
pub(super) fn check(unit: &Unit) -> Result<(), UnitFault> {
    positive("mast_height_m", unit.mast_height_m)?;
    let heights = [LEAST_STRETCH_M, f64::MAX];
    within("mast_height_m", unit.mast_height_m, heights, "5 mm, below which there is no mast")?;
    positive("outreach_m", unit.outreach_m)?;
    not_negative("tail_m", unit.tail_m)?;
    bar("mast", &unit.mast)?;
    bar("arm", &unit.arm)?;
    if let BaseFixity::TiltSpring(k) = unit.base {
        positive("base.tilt_spring_nm_per_rad", k)?;
    }
    for (name, v) in [("pins.upper_m", unit.pins.upper_m), ("pins.lower_m", unit.pins.lower_m)] {
        for value in v.to_array() {
            finite(name, value)?;
        }
    }
    brace(unit)?;
    for (i, point) in unit.points.iter().enumerate() {
        on_arm(&format!("points[{i}].x_m"), point.x_m, unit)?;
        finite(&format!("points[{i}].sideways_m"), point.sideways_m)?;
        finite(&format!("points[{i}].drop_m"), point.drop_m)?;
    }
    for (i, lump) in unit.lumps.iter().enumerate() {
        not_negative(&format!("lumps[{i}].weight_n"), lump.weight_n)?;
        on_unit(&format!("lumps[{i}].on.at_m"), lump.on, unit)?;
    }
    Ok(())
}

/// Whether a place lies on the unit.
pub(super) fn on_unit(field: &str, place: Place, unit: &Unit) -> Result<(), UnitFault> {
    match place {
        Place::Mast { at_m } => on_mast(field, at_m, unit),
        Place::Arm { at_m } => on_arm(field, at_m, unit),
    }
}

fn brace(unit: &Unit) -> Result<(), UnitFault> {
    match unit.brace {
        Brace::None if unit.head == HeadJoint::Pinned => Err(UnitFault::ArmSwings),
        Brace::None => Ok(()),
        Brace::RearToMast { tail_at_m, mast_at_m, bar: b, .. } => {
            on_tail("brace.tail_at_m", tail_at_m, unit)?;
            on_mast("brace.mast_at_m", mast_at_m, unit)?;
            axial_bar(&b)
        }
        Brace::RearToBase { tail_at_m, base_at_m, bar: b, .. } => {
            on_tail("brace.tail_at_m", tail_at_m, unit)?;
            not_negative("brace.base_at_m", base_at_m)?;
            axial_bar(&b)
        }
        Brace::Front { arm_at_m, mast_at_m, bar: b, .. } => {
            positive("brace.arm_at_m", arm_at_m)?;
            within("brace.arm_at_m", arm_at_m, [0.0, unit.outreach_m], "0 to outreach_m")?;
            on_mast("brace.mast_at_m", mast_at_m, unit)?;
            axial_bar(&b)
        }
        Brace::RearFoot { .. } => foot(unit),
    }
}

fn foot(unit: &Unit) -> Result<(), UnitFault> {
    let Brace::RearFoot {
        from,
        distance_m,
        foot_level_m,
        bearing_rad,
        allowed_turn_rad,
        foot_spring_n_per_m,
        bar: b,
        ..
    } = unit.brace
    else {
        return Ok(());
    };
    match from {
        FootFrom::MastHead if unit.head == HeadJoint::Pinned => return Err(UnitFault::ArmSwings),
        FootFrom::MastHead => {}
        FootFrom::ArmTail { at_m } => on_tail("brace.from.at_m", at_m, unit)?,
    }
    positive("brace.distance_m", distance_m)?;
    finite("brace.foot_level_m", foot_level_m)?;
    finite("brace.bearing_rad", bearing_rad)?;
    within("brace.allowed_turn_rad", allowed_turn_rad, [0.0, std::f64::consts::PI], "0 to a half turn")?;
    if let Some(k) = foot_spring_n_per_m {
        positive("brace.foot_spring_n_per_m", k)?;
    }
    axial_bar(&b)
}

fn bar(name: &str, b: &BarStiffness) -> Result<(), UnitFault> {
    positive(&format!("{name}.ea_n"), b.ea_n)?;
    positive(&format!("{name}.ei_y_nm2"), b.ei_y_nm2)?;
    positive(&format!("{name}.ei_z_nm2"), b.ei_z_nm2)?;
    positive(&format!("{name}.gj_nm2"), b.gj_nm2)?;
    not_negative(&format!("{name}.weight_n_per_m"), b.weight_n_per_m)
}

fn axial_bar(b: &BarStiffness) -> Result<(), UnitFault> {
    positive("brace.bar.ea_n", b.ea_n)?;
    not_negative("brace.bar.weight_n_per_m", b.weight_n_per_m)
}

fn on_mast(field: &str, at_m: f64, unit: &Unit) -> Result<(), UnitFault> {
    within(field, at_m, [0.0, unit.mast_height_m], "0 to mast_height_m")
}

fn on_arm(field: &str, at_m: f64, unit: &Unit) -> Result<(), UnitFault> {
    within(field, at_m, [-unit.tail_m, unit.outreach_m], "-tail_m to outreach_m")
}

fn on_tail(field: &str, at_m: f64, unit: &Unit) -> Result<(), UnitFault> {
    positive(field, at_m)?;
    within(field, at_m, [0.0, unit.tail_m], "0 to tail_m")
}

fn within(field: &str, value: f64, bounds: [f64; 2], bound_by: &'static str) -> Result<(), UnitFault> {
    finite(field, value)?;
    let [least, most] = bounds;
    if (least..=most).contains(&value) {
        Ok(())
    } else {
        Err(UnitFault::OutOfRange { field: field.to_owned(), value, least, most, bound_by })
    }
}

fn positive(field: &str, value: f64) -> Result<(), UnitFault> {
    finite(field, value)?;
    if value > 0.0 { Ok(()) } else { Err(UnitFault::NotPositive { field: field.to_owned(), value }) }
}

fn not_negative(field: &str, value: f64) -> Result<(), UnitFault> {
    finite(field, value)?;
    if value >= 0.0 { Ok(()) } else { Err(UnitFault::Negative { field: field.to_owned(), value }) }
}

fn finite(field: &str, value: f64) -> Result<(), UnitFault> {
    if value.is_finite() { Ok(()) } else { Err(UnitFault::NotFinite { field: field.to_owned(), value }) }
}
