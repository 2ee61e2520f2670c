//! What the space frame says of a unit as a whole: tip deflection, critical load factor; and the mast's wall in its socket.

use gantline_mechanics::envelope::{Actions, Component as Row, Extreme, movement_envelope};
use gantline_mechanics::unit::UnitModel;
use glam::DVec3;

use super::acting::turned;
use super::inside::{self, ROPE};
use super::subject::{Subject, force, moment, number};
use super::trace::{Sum, Symbol, Term, Trace};
use crate::assess::Amount;
use crate::assess::member_phase::{HALF_CONTACT_RAD, mouth_actions};
use crate::basis::LoadLevel;
use crate::catalog::SectionShape;
use crate::quantity::Kind;

/// The trace of the largest tip deflection in service: the space frame's answer to each load, added up.
pub fn tip_deflection(subject: &Subject<'_>) -> Option<Trace> {
    let (model, range) = subject.model()?;
    let results = &subject.reactions()?.combinations;
    let service = results.iter().enumerate().filter(|(_, r)| r.level == LoadLevel::Service && r.pull_n > 0.0);
    let looks = service.flat_map(|(index, _)| {
        let all = subject.actions(index).unwrap_or_default();
        all.into_iter()
            .flat_map(|actions| {
                let envelope = movement_envelope(&model, 0, &actions, &range).ok();
                let extremes = envelope.map(|found| found.extremes).unwrap_or_default();
                extremes.into_iter().map(move |extreme| (index, actions.clone(), extreme)).collect::<Vec<_>>()
            })
            .collect::<Vec<_>>()
    });
    let (index, actions, extreme) = looks.reduce(|a, b| if b.2.value.abs() > a.2.value.abs() { b } else { a })?;
    let symbols = inside::symbols(subject, index, &actions, &extreme.causes, extreme.slew_rad);
    let (formula, sums) = movement(&model, &actions, &extreme)?;
    let value = sums.iter().map(|sum| sum.amount.value).fold(0.0, f64::hypot);
    Some(Trace {
        title: format!("Tip deflection of unit {}, {}", subject.tag, subject.combined(index)?.name),
        formula: formula.to_owned(),
        symbols,
        sums,
        result: Amount::length(value),
        source: "direct stiffness of the space frame, by superposition; Euler–Bernoulli, small displacements"
            .to_owned(),
    })
}

/// Parts of a movement in the arm's axes: along the arm, across it, upward, or the horizontal resultant.
fn movement(model: &UnitModel, actions: &Actions, extreme: &Extreme) -> Option<(&'static str, Vec<Sum>)> {
    let sum = |axis: usize, symbol: &str| moved(model, actions, extreme, axis, symbol);
    Some(match extreme.component {
        Row::Ux => ("u = |Ux|", vec![sum(0, "Ux")?]),
        Row::Uy => ("u = |Uy|", vec![sum(1, "Uy")?]),
        Row::Uz => ("u = |Uz|", vec![sum(2, "Uz")?]),
        _ => ("u = √(Ux² + Uy²)", vec![sum(0, "Ux")?, sum(1, "Uy")?]),
    })
}

fn moved(model: &UnitModel, actions: &Actions, extreme: &Extreme, axis: usize, symbol: &str) -> Option<Sum> {
    let slew = extreme.slew_rad;
    let without = extreme.causes.brace_slack || extreme.causes.foot_lost;
    let influence = if without { model.influence_without_brace(slew)? } else { model.influence(slew).ok()? };
    let term = |says: &str, symbols, value| Term { says: says.to_owned(), symbols, amount: Amount::length(value) };
    let mut terms = Vec::new();
    for (pull, force_n) in actions.pulls.iter().zip(&extreme.causes.pulls_n) {
        let per_newton = influence.displacement_of_pull(0, pull.point).ok()?[axis];
        let pull_n = turned(*force_n, -slew);
        terms.push(term(ROPE, per_kilonewton(per_newton, pull_n), per_newton.dot(pull_n)));
    }
    let of_weight = influence.displacement_of_weight(0).ok()?[axis] * actions.weight_factor;
    terms.push(term("self-weight", Vec::new(), of_weight));
    if actions.wind.is_some() {
        let so_far: f64 = terms.iter().map(|term| term.amount.value).sum();
        terms.push(term("wind on the unit", Vec::new(), extreme.concurrent[axis] - so_far));
    }
    Some(Sum::of(symbol, "(f_x·Fx + f_y·Fy + f_z·Fz)", Kind::Length, terms))
}

/// Movements under a kilonewton along each axis, and the pull's own components.
fn per_kilonewton(per_newton: DVec3, pull_n: DVec3) -> Vec<Symbol> {
    let moved = ["f_x", "f_y", "f_z"].into_iter().zip((per_newton * 1e3).to_array());
    let moved = moved.map(|(s, v)| Symbol::computed(s, "movement under 1 kN", Amount::length(v)));
    let pulled = ["Fx", "Fy", "Fz"].into_iter().zip(pull_n.to_array());
    moved.chain(pulled.map(|(s, v)| Symbol::computed(s, "in the arm's axes", force(v)))).collect()
}

/// The trace of the critical load factor.
pub fn critical_factor(subject: &Subject<'_>) -> Option<Trace> {
    let alpha_cr = subject.reactions()?.alpha_cr?;
    let unit = subject.unit;
    let symbols = vec![
        Symbol::entered("H", "height of the mast", Amount::length(unit.mast.height_m), subject.of_mast("height")),
        Symbol::entered("a", "outreach", Amount::length(unit.arm.outreach_m), subject.of_arm("outreach")),
    ];
    Some(Trace {
        title: format!("Critical load factor of unit {}", subject.tag),
        formula: "α_cr = smallest factor on the loads at which det(K + α·K_g) = 0".to_owned(),
        symbols,
        sums: Vec::new(),
        result: number(alpha_cr),
        source: "EN 1993-1-1 5.2.1; eigenvalue of the space frame under the design loads".to_owned(),
    })
}

/// The trace of the mast's wall in its socket: σ = W·(6·m·R/t + n)/t against the strength of the mast, W = 4·V/h + 6·M/h² the
/// largest push per meter, m and n the ring's coefficients for a push spread over ±β.
pub fn socket(subject: &Subject<'_>, row: usize) -> Option<Trace> {
    let found = subject.reactions()?;
    let utilization = found.socket.get(row)?.utilization?;
    let actions = mouth_actions(found)?;
    let base = &subject.unit.base;
    let SectionShape::RoundTube { diameter_m, wall_m } = subject.unit.mast.tube.section else { return None };
    let length = Amount::length;
    let push = 4.0 * actions.shear_n / base.engaged_m + 6.0 * actions.moment_nm / base.engaged_m.powi(2);
    let symbols = vec![
        Symbol::computed("V", "largest shear at the base at the design level", force(actions.shear_n)),
        Symbol::computed("M", "largest moment at the base at the design level", moment(actions.moment_nm)),
        Symbol::entered("h", "length of mast in the socket", length(base.engaged_m), subject.of_base("engaged length")),
        Symbol::computed("W", "largest push on a meter of mast, 4·V/h + 6·M/h²", force(push)),
        Symbol::entered("D", "diameter of the mast", length(diameter_m), subject.of_mast("diameter")),
        Symbol::entered("t", "wall of the mast", length(wall_m), subject.of_mast("wall")),
        Symbol::computed(
            "β",
            "half the angle over which mast and socket touch",
            super::subject::angle(HALF_CONTACT_RAD),
        ),
    ];
    Some(Trace {
        title: format!("Mast of unit {} in its socket", subject.tag),
        formula: "σ = W·(6·m·R/t + n)/t, R = (D − t)/2, over the strength of the mast".to_owned(),
        symbols,
        sums: Vec::new(),
        result: Amount::share(utilization),
        source: found.socket.get(row)?.clause.clone(),
    })
}
