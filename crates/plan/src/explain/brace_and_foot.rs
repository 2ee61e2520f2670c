//! The force in a brace, by moments about the pin of the arm where that is enough, and what a foot of its own takes.

use gantline_mechanics::envelope::{Actions, Component as Row, Extreme, brace_envelope, foot_envelope};
use gantline_mechanics::unit::{HeadJoint, UnitModel};
use glam::DVec3;

use super::acting::{Load, On, Pins, loads, loads_in_base_axes, total_n, turned};
use super::inside::{self, ROPE};
use super::reaction::{added_up, end, row};
use super::subject::{Subject, force, most_extreme};
use super::trace::{Sum, Symbol, Term, Trace};
use crate::assess::{Amount, Component, Sense};
use crate::quantity::Kind;

/// The trace of the largest or smallest pull in the brace.
///
/// With the arm on a pin: N = ΣM / (u × n)_y, ΣM = the moment of everything on the arm about the pin, u = from the pin to the
/// brace's upper pin, n = along the brace. For a tie at x_b and angle β below the arm that is N = T·a/(x_b·sin β). Source:
/// equilibrium of the arm. Otherwise the share of brace and mast depends on their stiffness and comes from the space frame.
pub fn brace(subject: &Subject<'_>, combination: usize, sense: Sense) -> Option<Trace> {
    let (model, range) = subject.model()?;
    let looks = subject.actions(combination)?.into_iter().filter_map(|actions| {
        let envelope = brace_envelope(&model, &actions, &range).ok()?;
        Some((actions, envelope.get(Row::Axial, end(sense))?.clone()))
    });
    let (actions, extreme) = most_extreme(looks, sense)?;
    let symbols = inside::symbols(subject, combination, &actions, &extreme.causes, extreme.slew_rad);
    let title = format!("Force in the brace of unit {}, {}", subject.tag, subject.combined(combination)?.name);
    let pins = Pins::of(model.unit(), extreme.slew_rad)?;
    if extreme.causes.brace_slack || extreme.causes.foot_lost {
        let formula = "N = 0: slack, or its foot lost".to_owned();
        let source = "a brace that only pulls, or a foot that may be lost".to_owned();
        return Some(Trace { title, formula, symbols, sums: Vec::new(), result: force(0.0), source });
    }
    if model.unit().head == HeadJoint::Pinned && pins.upper_on == On::Arm {
        return Some(by_moments(title, symbols, &model, &pins, &loads_of(&model, &actions, &extreme)));
    }
    by_frame(title, symbols, &model, &actions, &extreme)
}

fn loads_of(model: &UnitModel, actions: &Actions, extreme: &Extreme) -> Vec<Load> {
    loads(model.unit(), actions, &extreme.causes, extreme.slew_rad)
}

fn by_moments(title: String, mut symbols: Vec<Symbol>, model: &UnitModel, pins: &Pins, loads: &[Load]) -> Trace {
    let head = DVec3::Z * model.unit().mast_height_m;
    let on_arm: Vec<Load> = loads
        .iter()
        .filter(|load| load.on == On::Arm)
        .map(|load| Load { at: load.at - head, ..load.clone() })
        .collect();
    let (u, n) = (pins.upper - head, pins.axis());
    let lever_m = u.z * n.x - u.x * n.z;
    symbols.extend([
        Symbol::computed("u_x", "from the arm's pin to the brace's upper pin, along the arm", Amount::length(u.x)),
        Symbol::computed("u_z", "the same, upward", Amount::length(u.z)),
        Symbol::computed("n_x", "direction of the brace from its lower pin up, along the arm", number(n.x)),
        Symbol::computed("n_z", "the same, upward: sin β", number(n.z)),
        Symbol::computed("e", "lever of the brace about the pin, u_z·n_x − u_x·n_z", Amount::length(lever_m)),
    ]);
    let about_pin = added_up("", Component::My, Vec::new(), &on_arm);
    Trace {
        title,
        formula: "N = My / e, My = Σ (z·Fx − x·Fz) of everything on the arm about its pin".to_owned(),
        symbols,
        result: force(about_pin.result.value / lever_m),
        sums: about_pin.sums,
        source: "equilibrium of the arm about its pin".to_owned(),
    }
}

const fn number(value: f64) -> Amount {
    Amount { kind: Kind::Number, value }
}

/// By superposition: the space frame's answer to each load, one after the other.
fn by_frame(
    title: String,
    symbols: Vec<Symbol>,
    model: &UnitModel,
    actions: &Actions,
    extreme: &Extreme,
) -> Option<Trace> {
    let influence = model.influence(extreme.slew_rad).ok()?;
    let mut terms = Vec::new();
    for (pull, force_n) in actions.pulls.iter().zip(&extreme.causes.pulls_n) {
        let per_newton = influence.brace_of_pull(pull.point).ok()?;
        let pull_n = turned(*force_n, -extreme.slew_rad);
        terms.push(Term {
            says: ROPE.to_owned(),
            symbols: dotted(per_newton, pull_n),
            amount: force(per_newton.dot(pull_n)),
        });
    }
    let of_weight = influence.brace_of_weight().ok()? * actions.weight_factor;
    terms.push(Term { says: "self-weight".to_owned(), symbols: Vec::new(), amount: force(of_weight) });
    let so_far: f64 = terms.iter().map(|term| term.amount.value).sum();
    if actions.wind.is_some() {
        let rest = force(extreme.value - so_far);
        terms.push(Term { says: "wind on the unit".to_owned(), symbols: Vec::new(), amount: rest });
    }
    let sum = Sum::of("N", "(i_x·Fx + i_y·Fy + i_z·Fz)", Kind::Force, terms);
    Some(Trace {
        title,
        formula: "N = Σ i·F, i = force in the brace under unit forces at the rope's point".to_owned(),
        symbols,
        result: sum.amount,
        sums: vec![sum],
        source: "direct stiffness of the space frame, by superposition".to_owned(),
    })
}

fn dotted(per_newton: DVec3, pull_n: DVec3) -> Vec<Symbol> {
    let factors = ["i_x", "i_y", "i_z"].into_iter().zip(per_newton.to_array()).map(|(s, v)| (s, number(v)));
    let forces = ["Fx", "Fy", "Fz"].into_iter().zip(pull_n.to_array()).map(|(s, v)| (s, force(v)));
    factors.chain(forces).map(|(symbol, amount)| Symbol::computed(symbol, "in the arm's axes", amount)).collect()
}

/// The trace of an extreme at a separate foot: the strut's pull along its line, and what hangs on the foot itself.
pub fn foot(subject: &Subject<'_>, combination: usize, component: Component, sense: Sense) -> Option<Trace> {
    let (model, range) = subject.model()?;
    let looks = subject.actions(combination)?.into_iter().filter_map(|actions| {
        let envelope = foot_envelope(&model, &actions, &range).ok()?;
        Some((actions, envelope.get(row(component), end(sense))?.clone()))
    });
    let (actions, extreme) = most_extreme(looks, sense)?;
    let (causes, slew) = (&extreme.causes, extreme.slew_rad);
    let pins = Pins::of(model.unit(), slew)?;
    let mut here = loads_in_base_axes(model.unit(), &actions, causes, slew);
    here.retain(|load| load.on == On::Foot && !causes.foot_lost && !causes.brace_slack);
    let axis = turned(pins.axis(), slew);
    let concurrent = DVec3::new(extreme.concurrent[0], extreme.concurrent[1], extreme.concurrent[2]);
    let axial_n = (concurrent - total_n(&here)).dot(axis);
    let mut symbols = inside::symbols(subject, combination, &actions, causes, slew);
    let says = "force in the strut, tension positive, by the space frame; see the force in the brace";
    symbols.push(Symbol::computed("N", says, force(axial_n)));
    here.insert(
        0,
        Load { says: "pull of the strut".into(), on: On::Foot, force_n: axis * axial_n, at: turned(pins.lower, slew) },
    );
    let name = &subject.combined(combination)?.name;
    let title = format!("{} at the foot of unit {}, {name}", component.symbol(), subject.tag);
    let source = "equilibrium of the foot".to_owned();
    Some(Trace { source, ..added_up(&title, component, symbols, &here) })
}
