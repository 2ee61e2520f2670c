//! Forty units of every brace kind against two general-purpose programs, and eight with pins off the axes against one.
//!
//! `units.py` solves each whole frame by PyNiteFEA in structure axes, `opensees_units.py` by OpenSeesPy in arm axes. The
//! program itself solves the tree of mast and arm and adds the brace as one unknown.

use gantline_mechanics::unit::{Influence, Part, Side, Station, UnitModel};
use gantline_mechanics::wrench::Wrench;
use glam::DVec3;
use serde_json::Value;

use crate::given::{list, name, number, numbers, unit, vector};

/// Share of the largest force (moment, displacement) of a case. The two programs agree with each other to 4e-10 of it:
/// members of 50 mm make their matrices lose six of sixteen digits.
const SHARE: f64 = 2e-9;

const PYNITE: &str = include_str!("../../../../tests/reference/expected/units.json");
const OPENSEES: &str = include_str!("../../../../tests/reference/expected/opensees_units.json");

/// The answers of one case, in the order of the file.
struct Answers {
    /// Base, brace, foot, cuts, in N and N·m, each with its name.
    forces: Vec<(String, f64)>,
    /// Displacements of the rope points, m.
    moved: Vec<(String, f64)>,
}

struct Loaded<'a> {
    at: Influence<'a>,
    pulls: Vec<DVec3>,
    weight_factor: f64,
    slew_rad: f64,
}

impl<'a> Loaded<'a> {
    fn new(model: &'a UnitModel, case: &Value) -> Self {
        let slew_rad = number(case, "slew_rad");
        let pulls = list(&case["pulls_n"]).iter().map(|p| turned(vector(p), -slew_rad)).collect();
        let at = model.influence(slew_rad).unwrap();
        Self { at, pulls, weight_factor: number(case, "weight_factor"), slew_rad }
    }

    /// Rows of each rope's pull and what the weight does, put together.
    fn sum<const N: usize>(&self, of_pull: impl Fn(usize) -> [DVec3; N], of_weight: [f64; N]) -> [f64; N] {
        let mut sum = of_weight.map(|w| w * self.weight_factor);
        for (point, pull) in self.pulls.iter().enumerate() {
            for (total, row) in sum.iter_mut().zip(of_pull(point)) {
                *total += row.dot(*pull);
            }
        }
        sum
    }

    fn base(&self) -> [f64; 6] {
        let six = self.sum(|p| self.at.base_of_pull(p).unwrap(), self.at.base_of_weight().unwrap());
        Wrench::from_six(six).slewed(self.slew_rad).six()
    }

    fn brace(&self) -> [f64; 1] {
        self.sum(|p| [self.at.brace_of_pull(p).unwrap()], [self.at.brace_of_weight().unwrap()])
    }

    fn foot(&self) -> [f64; 3] {
        let weight = self.at.foot_of_weight().unwrap().to_array();
        let force = self.sum(|p| self.at.foot_of_pull(p).unwrap(), weight);
        turned(DVec3::from_array(force), self.slew_rad).to_array()
    }

    fn inner(&self, cut: Station) -> [f64; 6] {
        let weight = self.at.section_of_weight(cut).unwrap();
        self.sum(|p| self.at.section_of_pull(cut, p).unwrap(), weight)
    }

    fn moved(&self, point: usize) -> [f64; 3] {
        let weight = self.at.displacement_of_weight(point).unwrap().to_array();
        let moved = self.sum(|pulled| self.at.displacement_of_pull(point, pulled).unwrap(), weight);
        turned(DVec3::from_array(moved), self.slew_rad).to_array()
    }
}

fn turned(v: DVec3, angle: f64) -> DVec3 {
    Wrench { force_n: v, moment_nm: DVec3::ZERO }.slewed(angle).force_n
}

fn station(given: &Value) -> Station {
    let part = if given["part"] == "mast" { Part::Mast } else { Part::Arm };
    let side = if given["side"] == "before" { Side::Before } else { Side::After };
    Station { part, at_m: number(given, "at_m"), side }
}

/// What the program answers.
fn computed(model: &UnitModel, given: &Value, case: &Value) -> Answers {
    let loaded = Loaded::new(model, case);
    let mut forces = named("base", &loaded.base());
    if !given["brace"].is_null() {
        forces.extend(named("brace", &loaded.brace()));
    }
    if model.depends_on_slew() {
        forces.extend(named("foot", &loaded.foot()));
    }
    for cut in list(&given["stations"]) {
        forces.extend(named(&cut.to_string(), &loaded.inner(station(cut))));
    }
    let points = 0..model.unit().points.len();
    Answers { forces, moved: points.flat_map(|p| named("rope point", &loaded.moved(p))).collect() }
}

/// What the file says.
fn expected(given: &Value, expected: &Value, force_unit_n: f64) -> Answers {
    let mut forces = named("base", &numbers(&expected["base"]));
    if let Some(axial) = expected["brace_axial"].as_f64() {
        forces.push(("brace[0]".to_owned(), axial));
    }
    if !expected["foot"].is_null() {
        forces.extend(named("foot", &numbers(&expected["foot"])));
    }
    for (cut, inner) in list(&given["stations"]).iter().zip(list(&expected["inner"])) {
        forces.extend(named(&cut.to_string(), &numbers(inner)));
    }
    for (_, value) in &mut forces {
        *value *= force_unit_n;
    }
    let points = list(&expected["points_moved_m"]).iter();
    Answers { forces, moved: points.flat_map(|moved| named("rope point", &numbers(moved))).collect() }
}

fn named(what: &str, values: &[f64]) -> Vec<(String, f64)> {
    values.iter().enumerate().map(|(i, v)| (format!("{what}[{i}]"), *v)).collect()
}

fn hold(unit: &str, got: &[(String, f64)], expected: &[(String, f64)]) {
    assert_eq!(got.len(), expected.len(), "{unit}");
    let largest = expected.iter().map(|(_, v)| v.abs()).fold(0.0, f64::max);
    for ((what, value), (same, other)) in got.iter().zip(expected) {
        assert_eq!(what, same, "{unit}");
        let off = (value - other).abs() / largest;
        assert!(off <= SHARE, "{unit}, {what}: got {value}, expected {other}; {off:.1e} of {largest}");
    }
}

fn compare(file: &Value, given: &Value, answers: &[&Value]) {
    let model = UnitModel::new(&unit(given)).unwrap();
    let cases = list(&given["cases"]);
    assert_eq!(cases.len(), answers.len());
    for (case, answer) in cases.iter().zip(answers) {
        let (got, other) = (computed(&model, given, case), expected(given, answer, number(file, "force_unit_n")));
        let label = format!("{} at slew {}", name(given), case["slew_rad"]);
        hold(&label, &got.forces, &other.forces);
        hold(&label, &got.moved, &other.moved);
    }
}

fn own_answers(given: &Value) -> Vec<&Value> {
    list(&given["cases"]).iter().map(|case| &case["expected"]).collect()
}

#[test]
fn forty_units_answer_as_pynite_does_in_structure_axes() {
    let file: Value = serde_json::from_str(PYNITE).unwrap();
    let units = list(&file["units"]);
    assert_eq!(units.len(), 40);
    for given in units {
        compare(&file, given, &own_answers(given));
    }
}

#[test]
fn forty_units_answer_as_opensees_does_in_arm_axes() {
    let (described, file): (Value, Value) =
        (serde_json::from_str(PYNITE).unwrap(), serde_json::from_str(OPENSEES).unwrap());
    let answers = list(&file["answers"]);
    assert_eq!(answers.len(), 40);
    for (given, answer) in list(&described["units"]).iter().zip(answers) {
        assert_eq!(name(given), name(answer));
        compare(&file, given, &list(&answer["expected"]).iter().collect::<Vec<_>>());
    }
}

#[test]
fn pins_off_the_axes_answer_as_rigid_links_do() {
    let file: Value = serde_json::from_str(OPENSEES).unwrap();
    let units = list(&file["units"]);
    assert_eq!(units.len(), 8);
    for given in units {
        compare(&file, given, &own_answers(given));
    }
}
