//! Critical factors of six units against a frame that numpy built and solved (`unit_buckling.py`).

use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{Actions, Pull, SlewRange, least_critical_factor};
use gantline_mechanics::unit::{Pieces, PointPull, UnitModel};
use serde_json::Value;

use crate::given::{list, name, number, unit, vector};

const FILE: &str = include_str!("../../../../tests/reference/expected/unit_buckling.json");

fn critical_factor(given: &Value, longest_m: f64) -> f64 {
    let (model, case) = (UnitModel::new(&unit(given)).unwrap(), &given["case"]);
    let frame = model.frame(Pieces::Whole, longest_m, number(case, "slew_rad")).unwrap();
    let pull = PointPull { point: 0, force_n: vector(&case["pull_in_arm_axes_n"]) };
    let loads = model.load_case(&frame, &[pull], 1.0).unwrap();
    let factored = frame.frame.factor().unwrap();
    factored.critical_factor(&factored.solve(&loads).unwrap()).unwrap().unwrap()
}

/// Each unit's factor with members up to a length must be the file's, but for a share.
fn each(longest_m: impl Fn(&Value) -> f64, most_off: f64) {
    let file: Value = serde_json::from_str(FILE).unwrap();
    let units = list(&file["units"]);
    assert_eq!(units.len(), 6);
    for given in units {
        let (found, expected) = (critical_factor(given, longest_m(&file)), number(&given["case"], "alpha_cr"));
        let off = (found / expected - 1.0).abs();
        assert!(off <= most_off, "{}: {found} instead of {expected}: {off:.1e}", name(given));
    }
}

/// Both solve for eigenvalues of the same matrices; rounding leaves 2e-10 in the file, as other orders of the unknowns show.
#[test]
fn six_units_buckle_at_the_factor_that_numpy_finds_with_the_same_mesh() {
    each(|file| number(file, "longest_m"), 1e-8);
}

/// Each member has its mean axial force, so what the weight adds along it is off with the square of its length. Halving members
/// of 120 mm changes the factors of `unit_buckling.py` by up to 2.4e-5, so these are off by 3.2e-5, and members of 250 mm by
/// (250/120)² times that, 1.4e-4.
#[test]
fn members_of_a_quarter_meter_are_fine_enough_for_a_critical_factor() {
    each(|_| 0.25, 2e-4);
}

/// The climb over pulls finds what a raster of directions and ever finer ones around its worst find. The program's members are
/// up to half a mast long and numpy's 250 mm: the first are 5e-4 off in a cantilever (two cubics against Euler), the second
/// 1.4e-4, and lengths on which weight adds up are off the other way.
#[test]
fn the_least_factor_over_a_cone_is_that_of_brute_force() {
    let file: Value = serde_json::from_str(FILE).unwrap();
    let cone = LoadCone::whole(number(&file["cone"], "half_angle_rad"));
    let actions = Actions::of_pull(Pull::new(0, number(&file["cone"], "tension_n"), cone), 1.0);
    for given in list(&file["units"]) {
        let (model, case) = (UnitModel::new(&unit(given)).unwrap(), &given["case"]);
        let slew = SlewRange::At(vec![number(case, "slew_rad")]);
        let found = least_critical_factor(&model, &actions, &slew).unwrap().alpha_cr;
        let expected = number(case, "least_alpha_cr");
        let off = (found / expected - 1.0).abs();
        assert!(off <= 1e-3, "{}: {found} instead of {expected}: {off:.1e}", name(given));
    }
}
