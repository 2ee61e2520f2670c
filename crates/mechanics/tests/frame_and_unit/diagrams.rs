//! Diagrams of inner forces against closed forms of a front-braced arm.

use gantline_mechanics::diagrams::{Cut, Diagrams, diagrams_under};
use gantline_mechanics::envelope::Slack;
use gantline_mechanics::unit::{Brace, BraceAction, Part, PointPull, Side, UnitFault, UnitModel};
use glam::DVec3;

use crate::near::near;
use crate::worked::Worked;

const T: f64 = 12_000.0;

fn down(newtons: f64) -> Vec<PointPull> {
    vec![PointPull { point: 0, force_n: -DVec3::Z * newtons }]
}

#[track_caller]
fn at(found: &Diagrams, part: Part, place: f64, side: Side) -> [f64; 6] {
    let hit = |s: &&Cut| s.part == part && (s.at_m - place).abs() < 1e-9 && s.side == side;
    found.cuts.iter().find(hit).unwrap().forces
}

/// Closed form with the arm's weight w per meter: beyond the brace V_z = −(T + w·(a − x)), M_y =
/// T·(a − x) + w·(a − x)²/2; at the brace V_z jumps by N·sin β and N by N·cos β.
#[test]
fn the_arm_of_a_front_braced_unit_has_the_diagram_of_a_beam_with_an_overhang() {
    let unit = Worked::read().unit("front");
    let model = UnitModel::new(&unit).unwrap();
    let found = diagrams_under(&model, 0.0, &down(T), 1.0, 3).unwrap();
    let (a, w, x_b) = (unit.outreach_m, unit.arm.weight_n_per_m, 0.5);
    let beyond: Vec<_> = found.cuts.iter().filter(|p| p.part == Part::Arm && p.at_m > x_b).collect();
    assert!(beyond.len() >= 4);
    for p in beyond {
        let left = a - p.at_m;
        near("shear", p.forces[2], -(T + w * left), 1e-6);
        near("moment", p.forces[4], T * left + w * left * left / 2.0, 1e-6);
    }
    let (before, after) = (at(&found, Part::Arm, x_b, Side::Before), at(&found, Part::Arm, x_b, Side::After));
    let beta = (unit.mast_height_m - 0.95f64).atan2(x_b);
    let n = -found.brace_axial_n;
    near("brace", n, 36040.42, 0.01);
    near("jump of shear", before[2] - after[2], n * beta.sin(), 1e-6);
    near("jump of axial force", before[0] - after[0], n * beta.cos(), 1e-6);
    near("no jump of moment", before[4], after[4], 1e-6);
    near("pin at the head", at(&found, Part::Arm, 0.0, Side::After)[4], 0.0, 1e-6);
}

/// Statics: the foot of the mast carries T·a and the weights' moment whatever braces the arm.
#[test]
fn the_mast_ends_in_the_base_moment() {
    let unit = Worked::read().unit("front");
    let model = UnitModel::new(&unit).unwrap();
    let found = diagrams_under(&model, 0.0, &down(T), 1.0, 0).unwrap();
    let foot = at(&found, Part::Mast, 0.0, Side::After);
    let a = unit.outreach_m;
    near("moment", foot[4], T * a + unit.arm.weight_n_per_m * a * a / 2.0, 1e-6);
    let weight = unit.arm.weight_n_per_m * a + unit.mast.weight_n_per_m * unit.mast_height_m;
    near("axial force", foot[0], -T - weight, 1e-6);
}

#[test]
fn a_brace_that_only_pulls_is_told_to_be_slack() {
    let mut unit = Worked::read().unit("front");
    if let Brace::Front { action, .. } = &mut unit.brace {
        *action = BraceAction::PullOnly;
    }
    let model = UnitModel::new(&unit).unwrap();
    let found = diagrams_under(&model, 0.0, &down(T), 1.0, 0).unwrap();
    assert!(matches!(found.slack, Slack::Mechanism { .. }) && found.cuts.is_empty());

    let mut unit = Worked::read().unit("rear_foot");
    if let Brace::RearFoot { action, .. } = &mut unit.brace {
        *action = BraceAction::PullOnly;
    }
    let model = UnitModel::new(&unit).unwrap();
    let pushed_back = vec![PointPull { point: 0, force_n: DVec3::new(-9e3, 0.0, -1e3) }];
    let found = diagrams_under(&model, 0.0, &pushed_back, 1.0, 0).unwrap();
    assert!(matches!(found.slack, Slack::StandsWithout { .. }));
    // Then the mast is a cantilever: M_y at its foot is that of all loads about the base.
    let loads = 1e3 * unit.outreach_m - 9e3 * unit.mast_height_m
        + unit.arm.weight_n_per_m * (unit.outreach_m.powi(2) - unit.tail_m.powi(2)) / 2.0;
    near("moment", at(&found, Part::Mast, 0.0, Side::After)[4], loads, 1e-6);
}

#[test]
fn pulls_that_are_no_numbers_are_named() {
    let model = UnitModel::new(&Worked::read().unit("front")).unwrap();
    let bad = diagrams_under(&model, 0.0, &down(f64::NAN), 1.0, 0).unwrap_err();
    assert!(matches!(bad, UnitFault::NotFinite { field, .. } if field == "pulls[0].force_n"));
    let bad = diagrams_under(&model, f64::INFINITY, &down(1.0), 1.0, 0).unwrap_err();
    assert!(matches!(bad, UnitFault::NotFinite { field, .. } if field == "slew_rad"));
}
