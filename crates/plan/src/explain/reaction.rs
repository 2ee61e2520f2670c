//! Reactions at the base by statics: every force that acts, times its lever, added up.
//!
//! Action of the unit on the structure about the base's reference point: F = Σ F_i, M = Σ r_i × F_i. For an arm that points
//! straight out, a rope that leans outward by θ and weights G_i at x_i that is
//! Fz = −(T·cos θ + Σ G), My = a·T·cos θ + H·T·sin θ + Σ G_i·x_i. Source: equilibrium. A brace from arm to mast or base is an
//! inner force and drops out; a foot of its own takes its pull away from the base.

use gantline_mechanics::envelope::{Actions, Causes, Component as Row, Sense as End, base_envelope};
use gantline_mechanics::unit::Unit;
use glam::DVec3;

use super::acting::{Load, On, Pins, loads_in_base_axes, total_n, turned};
use super::inside;
use super::subject::{Subject, force, moment, most_extreme};
use super::trace::{Sum, Symbol, Term, Trace};
use crate::assess::{Amount, Component, Sense};
use crate::basis::LoadLevel;
use crate::quantity::Kind;

const SOURCE: &str = "equilibrium of the unit about the base's reference point";

/// The trace of one extreme.
pub fn trace(subject: &Subject<'_>, combination: usize, component: Component, sense: Sense) -> Option<Trace> {
    let (model, range) = subject.model()?;
    let looks = subject.actions(combination)?.into_iter().filter_map(|actions| {
        let envelope = base_envelope(&model, &actions, &range).ok()?;
        Some((actions, envelope.get(row(component), end(sense))?.clone()))
    });
    let (actions, extreme) = most_extreme(looks, sense)?;
    let at_base = DVec3::new(extreme.concurrent[0], extreme.concurrent[1], extreme.concurrent[2]);
    let name = &subject.combined(combination)?.name;
    let title = format!("{} of unit {}, {name}", component.symbol(), subject.tag);
    let state = Acting { combination, actions: &actions, causes: &extreme.causes, slew_rad: extreme.slew_rad, at_base };
    Some(at_the_base(subject, model.unit(), &title, component, &state))
}

/// All that acts on a unit at once, and the force that comes of it at the base.
pub struct Acting<'a> {
    /// Index of the combination in the basis.
    pub combination: usize,
    /// The actions.
    pub actions: &'a Actions,
    /// Which way they act.
    pub causes: &'a Causes,
    /// Slew of the arm.
    pub slew_rad: f64,
    /// Force on the base, N.
    pub at_base: DVec3,
}

/// One component at the base, added up from all that acts.
pub fn at_the_base(
    subject: &Subject<'_>,
    unit: &Unit,
    title: &str,
    component: Component,
    acting: &Acting<'_>,
) -> Trace {
    let Acting { combination, actions, causes, slew_rad, at_base } = *acting;
    let mut loads = loads_in_base_axes(unit, actions, causes, slew_rad);
    loads.retain(|load| load.on != On::Foot);
    let mut symbols = inside::symbols(subject, combination, actions, causes, slew_rad);
    if let Some((strut, axial)) = taken_by_foot(unit, slew_rad, total_n(&loads) - at_base) {
        symbols.push(axial);
        loads.push(strut);
    }
    added_up(title, component, symbols, &loads)
}

/// What a strut to a foot of its own takes away from the base. Its force comes from the space frame; statics alone can't
/// part what base and foot take.
fn taken_by_foot(unit: &Unit, slew_rad: f64, missing_n: DVec3) -> Option<(Load, Symbol)> {
    let pins = Pins::of(unit, slew_rad).filter(|pins| pins.lower_on == On::Foot)?;
    let axis = turned(pins.axis(), slew_rad);
    let axial_n = missing_n.dot(axis);
    let says = "force in the strut to the foot, tension positive, by the space frame";
    let load = Load {
        says: "taken by the strut to the foot".to_owned(),
        on: On::Foot,
        force_n: axis * -axial_n,
        at: turned(pins.upper, slew_rad),
    };
    Some((load, Symbol::computed("N", says, force(axial_n))))
}

/// A component of the loads' resultant about the reference point.
pub fn added_up(title: &str, component: Component, symbols: Vec<Symbol>, loads: &[Load]) -> Trace {
    let sum = |part: Component| sum_of(part, loads);
    let (formula, sums, value) = match component {
        Component::V => resultant("V = √(Fx² + Fy²)", sum(Component::Fx), sum(Component::Fy)),
        Component::M => resultant("M = √(Mx² + My²)", sum(Component::Mx), sum(Component::My)),
        single => {
            let sum = sum(single);
            let value = sum.amount.value;
            (format!("{} = Σ {}", single.symbol(), sum.formula), vec![sum], value)
        }
    };
    let result = if component.is_moment() { moment(value) } else { force(value) };
    Trace { title: title.to_owned(), formula, symbols, sums, result, source: SOURCE.to_owned() }
}

fn resultant(formula: &str, one: Sum, other: Sum) -> (String, Vec<Sum>, f64) {
    let value = one.amount.value.hypot(other.amount.value);
    (formula.to_owned(), vec![one, other], value)
}

fn sum_of(component: Component, loads: &[Load]) -> Sum {
    let formula = match component {
        Component::Mx => "(y·Fz − z·Fy)",
        Component::My => "(z·Fx − x·Fz)",
        Component::Mz => "(x·Fy − y·Fx)",
        other => other.symbol(),
    };
    let kind = if component.is_moment() { Kind::Moment } else { Kind::Force };
    let terms = loads.iter().map(|load| term(component, kind, load)).filter(|term| term.amount.value != 0.0);
    Sum::of(component.symbol(), formula, kind, terms.collect())
}

fn term(component: Component, kind: Kind, load: &Load) -> Term {
    let (f, r) = (load.force_n, load.at);
    let fx = ("Fx", force(f.x));
    let fy = ("Fy", force(f.y));
    let fz = ("Fz", force(f.z));
    let [x, y, z] = [("x", r.x), ("y", r.y), ("z", r.z)].map(|(symbol, at)| (symbol, Amount::length(at)));
    let (value, used) = match component {
        Component::Fx => (f.x, vec![fx]),
        Component::Fy => (f.y, vec![fy]),
        Component::Fz => (f.z, vec![fz]),
        Component::Mx => (r.y * f.z - r.z * f.y, vec![y, fz, z, fy]),
        Component::My => (r.z * f.x - r.x * f.z, vec![z, fx, x, fz]),
        Component::Mz => (r.x * f.y - r.y * f.x, vec![x, fy, y, fx]),
        // Resultants are not sums; their components are.
        Component::V | Component::M => (0.0, Vec::new()),
    };
    let symbols = used.into_iter().map(|(symbol, amount)| Symbol::computed(symbol, "", amount)).collect();
    Term { says: load.says.clone(), symbols, amount: Amount { kind, value } }
}

/// The trace of the largest twist at the design level.
pub fn twist(subject: &Subject<'_>) -> Option<Trace> {
    let reactions = subject.reactions()?;
    let design = reactions.combinations.iter().enumerate().filter(|(_, found)| found.level != LoadLevel::Service);
    let twists = design.flat_map(|(index, found)| {
        let sets = found.sets.iter().filter(|set| set.component == Component::Mz);
        sets.map(move |set| (index, set.sense, set.value))
    });
    let (index, sense, value) = twists.reduce(|a, b| if b.2.abs() > a.2.abs() { b } else { a })?;
    let found = trace(subject, index, Component::Mz, sense)?;
    let result = moment(found.result.value * value.signum());
    Some(Trace { title: format!("Largest twist of unit {}", subject.tag), result, ..found })
}

/// A component as mechanics names it.
pub const fn row(component: Component) -> Row {
    match component {
        Component::Fx => Row::Fx,
        Component::Fy => Row::Fy,
        Component::Fz => Row::Fz,
        Component::Mx => Row::Mx,
        Component::My => Row::My,
        Component::Mz => Row::Mz,
        Component::V => Row::V,
        Component::M => Row::M,
    }
}

/// A sense as mechanics names it.
pub const fn end(sense: Sense) -> End {
    match sense {
        Sense::Max => End::Max,
        Sense::Min => End::Min,
    }
}
