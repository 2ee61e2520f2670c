//! What is inside a combination: tensions, factors, lengths and masses as entered, as symbols of a trace.

use gantline_mechanics::envelope::{Actions, Causes};
use glam::DVec3;

use super::entered::{of_basis, of_case};
use super::subject::{Subject, angle, force, number};
use super::trace::Symbol;
use crate::assess::Amount;
use crate::basis::load_case::GRAVITY_M_S2;
use crate::basis::{CaseLoad, LoadLevel, Tension};
use crate::quantity::Kind;

/// What the rope's pull is called.
pub const ROPE: &str = "pull of the rope";

/// Tension, lean and lengths of the unit, weights: what statics starts from.
pub fn symbols(
    subject: &Subject<'_>,
    combination: usize,
    actions: &Actions,
    causes: &Causes,
    slew_rad: f64,
) -> Vec<Symbol> {
    let mut all = tensions(subject, combination);
    for pull_n in &causes.pulls_n {
        all.extend(pulled(*pull_n));
    }
    all.push(Symbol::computed("ψ", "slew of the arm at this extreme", angle(slew_rad)));
    all.extend(lengths(subject));
    all.extend(masses(subject));
    let gamma = if actions.weight_factor == 1.0 { "no load factor on self-weight" } else { "factor on self-weight" };
    all.push(Symbol::entered("γ_G", gamma, number(actions.weight_factor), of_basis("factors on self-weight")));
    all
}

/// How the rope pulls at this extreme: T·cos θ down, T·sin θ to the side.
fn pulled(pull_n: DVec3) -> Vec<Symbol> {
    let tension_n = pull_n.length();
    if tension_n == 0.0 {
        return vec![Symbol::computed("T", "the rope hangs slack at this extreme", force(0.0))];
    }
    let lean_rad = pull_n.truncate().length().atan2(-pull_n.z);
    let bearing_rad = pull_n.y.atan2(pull_n.x);
    vec![
        Symbol::computed("T", "tension of the rope", force(tension_n)),
        Symbol::computed("θ", "lean of the rope from straight down", angle(lean_rad)),
        Symbol::computed("φ", "direction of its lean, from straight out, counter-clockwise", angle(bearing_rad)),
    ]
}

/// The figures that a combination's tensions are made of.
fn tensions(subject: &Subject<'_>, combination: usize) -> Vec<Symbol> {
    let Some(combined) = subject.combined(combination) else { return Vec::new() };
    let mut all = Vec::new();
    for term in &combined.terms {
        let Some(case) = subject.basis.cases.get(&term.case) else { continue };
        let path = |field: &str| of_case(&case.name, field);
        match &case.load {
            CaseLoad::Rope { tension, .. } | CaseLoad::Tether { tension } => {
                all.extend(tension_symbols(subject, tension, combined.level, &case.name));
            }
            CaseLoad::Wind { load_factor, .. } => {
                let factor = if combined.level == LoadLevel::Service { 1.0 } else { load_factor.value };
                all.push(Symbol::entered("γ_W", "load factor on wind", number(factor), path("load factor")));
            }
        }
        if term.factor != 1.0 {
            let field = format!("combinations › {} › factor on {}", combined.name, case.name);
            all.push(Symbol::entered("ψ_0", "combination factor", number(term.factor), of_basis(&field)));
        }
    }
    all
}

fn tension_symbols(subject: &Subject<'_>, tension: &Tension, level: LoadLevel, case: &str) -> Vec<Symbol> {
    let path = |field: &str| of_case(case, field);
    match tension {
        Tension::Service { mass_kg, dynamic, load_factor } => {
            let factor = if level == LoadLevel::Service { 1.0 } else { load_factor.value };
            vec![
                Symbol::entered("m", "persons, tools and rope", mass(mass_kg.value), path("mass")),
                Symbol::entered("φ_d", "factor for jerks and stops", number(dynamic.value), path("dynamic factor")),
                Symbol::entered("γ_Q", "load factor; 1 in service", number(factor), path("load factor")),
            ]
        }
        Tension::Ultimate { anchor_load_n } => {
            let says = "anchor load with its factors inside";
            vec![Symbol::entered("T_u", says, force(anchor_load_n.value), path("anchor load"))]
        }
        Tension::MultipleOfRated { times } => {
            let mut all = vec![Symbol::entered("k", "multiple of the rating", number(times.value), path("times"))];
            if let Some(rating) = &subject.unit.rating {
                let path = super::entered::of_part(subject.unit, "combination", "rating");
                all.push(Symbol::entered("F_rated", "declared rating", force(rating.rated_n), path));
            }
            all
        }
    }
}

/// Outreach, tail, height.
fn lengths(subject: &Subject<'_>) -> Vec<Symbol> {
    let (mast, arm) = (&subject.unit.mast, &subject.unit.arm);
    let length = Amount::length;
    let out_m = arm.points.first().map_or(arm.outreach_m, |point| point.out_m);
    vec![
        Symbol::entered("a", "from the mast axis to the rope", length(out_m), subject.of_arm("outreach")),
        Symbol::entered("t", "from the mast axis to the tail's end", length(arm.tail_m), subject.of_arm("tail")),
        Symbol::entered("H", "from the base to the arm's axis", length(mast.height_m), subject.of_mast("height")),
    ]
}

/// Masses of the parts, and what makes weights of them.
fn masses(subject: &Subject<'_>) -> Vec<Symbol> {
    let unit = subject.unit;
    let mut all = vec![
        Symbol::computed("g", "standard gravity, m/s² (ISO 80000-3)", number(GRAVITY_M_S2)),
        Symbol::entered("m_mast", "mass of the mast", mass(unit.mast.mass_kg), subject.of_mast("mass")),
        Symbol::entered("m_arm", "mass of the arm", mass(unit.arm.mass_kg), subject.of_arm("mass")),
    ];
    if let Some(brace) = &unit.brace {
        all.push(Symbol::entered("m_brace", "mass of the brace", mass(brace.mass_kg), subject.of_brace("mass")));
    }
    all
}

/// A mass, kg.
pub const fn mass(value: f64) -> Amount {
    Amount { kind: Kind::Mass, value }
}
