//! Single load cases of the worked units against two general-purpose frame programs.

use gantline_mechanics::unit::UnitModel;
use gantline_mechanics::wrench::Wrench;
use glam::DVec3;

use crate::near::near;
use crate::worked::{NAMES, Worked};

/// Rounding of the file: three digits after the point, displacements seven.
const FORCE: f64 = 0.0006;
const DISPLACEMENT: f64 = 0.6e-7;

fn turned(v: DVec3, angle: f64) -> DVec3 {
    Wrench { force_n: v, moment_nm: DVec3::ZERO }.slewed(angle).force_n
}

#[test]
fn single_cases_answer_as_two_frame_programs_do() {
    let worked = Worked::read();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        for case in 0..2 {
            let key = format!("{name}.single.{case}");
            let number = |k: &str| worked.number(&format!("{key}.{k}"));
            let slew = number("slew_deg").to_radians();
            let pull = DVec3::from_array(std::array::from_fn(|i| number(&format!("pull_at_tip_N.{i}"))));
            let pull_in_arm_axes = turned(pull, -slew);
            let at = model.influence(slew).unwrap();
            let of = |row: DVec3| row.dot(pull_in_arm_axes);

            let rows = at.base_of_pull(0).unwrap();
            let weight = at.base_of_weight().unwrap();
            let base = Wrench::from_six(std::array::from_fn(|i| of(rows[i]) + weight[i]));
            let base = base.slewed(slew).six();
            for (i, component) in ["Fx", "Fy", "Fz", "Mx", "My", "Mz"].iter().enumerate() {
                let expected = number(&format!("base_action_on_structure.{component}"));
                near(&format!("{key} {component}"), base[i], expected, FORCE);
            }

            let axial = of(at.brace_of_pull(0).unwrap()) + at.brace_of_weight().unwrap();
            let expected = number("brace_axial_tension_positive_N");
            near(&format!("{key} brace"), axial, expected, FORCE);

            let rows = at.foot_of_pull(0).unwrap();
            let foot = DVec3::from_array(rows.map(of)) + at.foot_of_weight().unwrap();
            let foot = turned(foot, slew).to_array();
            for (i, got) in foot.into_iter().enumerate() {
                let expected = worked.maybe(&format!("{key}.foot_action_on_structure.{i}"));
                near(&format!("{key} foot"), got, expected.unwrap_or(0.0), FORCE);
            }

            let rows = at.displacement_of_pull(0, 0).unwrap();
            let tip = DVec3::from_array(rows.map(of)) + at.displacement_of_weight(0).unwrap();
            let tip = turned(tip, slew).to_array();
            for (i, got) in tip.into_iter().enumerate() {
                let expected = number(&format!("tip_displacement_m.{i}"));
                near(&format!("{key} tip"), got, expected, DISPLACEMENT);
            }
        }
    }
}

/// The greatest bending moments hypot(M_y, M_z) along mast and arm. The programs looked at the ends
/// of their members, and so do the cuts.
#[test]
fn greatest_bending_moments_are_those_of_two_frame_programs() {
    use gantline_mechanics::unit::Part;
    let worked = Worked::read();
    for name in NAMES {
        let model = UnitModel::new(&worked.unit(name)).unwrap();
        for case in 0..2 {
            let key = format!("{name}.single.{case}");
            let number = |k: &str| worked.number(&format!("{key}.{k}"));
            let slew = number("slew_deg").to_radians();
            let pull = DVec3::from_array(std::array::from_fn(|i| number(&format!("pull_at_tip_N.{i}"))));
            let pull = turned(pull, -slew);
            let at = model.influence(slew).unwrap();
            for (part, field) in [(Part::Mast, "mast_M_max_Nm"), (Part::Arm, "arm_M_max_Nm")] {
                let stations = model.stations(0);
                let moments = stations.iter().filter(|s| s.part == part).map(|&s| {
                    let rows = at.section_of_pull(s, 0).unwrap();
                    let weight = at.section_of_weight(s).unwrap();
                    let m = |i: usize| rows[i].dot(pull) + weight[i];
                    m(4).hypot(m(5))
                });
                let greatest = moments.fold(0.0, f64::max);
                near(&format!("{key} {field}"), greatest, number(field), FORCE);
            }
        }
    }
}
