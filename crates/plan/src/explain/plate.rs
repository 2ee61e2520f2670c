//! What acts on the plate of a base where a look at it is worst, what anchors and pressure answer, and the tension of one anchor.
//!
//! The plate stays plane: an anchor n times as stiff as concrete pulls with N = n·A_s·p·d/e, where p is the largest pressure, e
//! its distance from the neutral axis and d that of the anchor. Source: the cracked elastic section of any book on reinforced
//! concrete. Pulls N at (x, y), and the push of the pressure as a negative one, hold what acts: Fz = Σ N, Mx = Σ y·N,
//! My = Σ −x·N. Source: equilibrium of the plate.

use glam::{DVec2, DVec3};

use super::entered::of_part;
use super::reaction::{Acting, at_the_base};
use super::subject::{Subject, area, force, moment, number};
use super::trace::{Sum, Symbol, Term, Trace};
use crate::assess::anchorage::{BaseUse, Fixed, PlateState};
use crate::assess::{Amount, Component, UnitAssessment};
use crate::catalog::{Base, BaseKind, Fixing};
use crate::quantity::Kind;

fn worst<'a>(subject: &'a Subject<'_>, row: usize) -> Option<(&'a BaseUse, &'a PlateState)> {
    let used = subject.result.base.as_ref()?.uses.get(row)?;
    Some((used, used.state.as_deref()?))
}

/// The base or foot that a look is about, with what it is fixed with.
fn parts<'a>(subject: &'a Subject<'_>, of: Fixed) -> Option<(&'a Base, Option<&'a Fixing>)> {
    match of {
        Fixed::Base => Some((&subject.unit.base, subject.unit.fixing.as_ref())),
        Fixed::Foot => subject.unit.foot.as_ref().map(|foot| (&foot.base, foot.fixing.as_ref())),
    }
}

/// Whether what acts on a plate is what acts on the base, in the same axes: not on a wall, and not at a foot of its own.
pub fn acts_as_on_the_base(unit: &UnitAssessment, of: Fixed) -> bool {
    let on_wall =
        unit.resolved.as_ref().is_ok_and(|resolved| matches!(resolved.base.kind, BaseKind::WallSocket { .. }));
    of == Fixed::Base && !on_wall
}

fn title(subject: &Subject<'_>, used: &BaseUse, what: &str) -> String {
    format!("{what} at the {} of unit {}, worst for {}", used.of.word(), subject.tag, used.look.words())
}

/// The trace of a component of what acts, from the forces on the unit.
pub fn action(subject: &Subject<'_>, row: usize, component: Component) -> Option<Trace> {
    let (used, state) = worst(subject, row)?;
    let causes = state.causes.as_ref()?;
    if !acts_as_on_the_base(subject.result, used.of) {
        return None;
    }
    let (model, _) = subject.model()?;
    let weighted = subject.actions(state.combination)?.into_iter();
    let actions = weighted.into_iter().find(|actions| actions.weight_factor == state.weight_factor)?;
    let at_base = DVec3::new(state.action[0], state.action[1], state.action[2]);
    let acting =
        Acting { combination: state.combination, actions: &actions, causes, slew_rad: state.slew_rad, at_base };
    let title = title(subject, used, component.symbol());
    Some(at_the_base(subject, model.unit(), &title, component, &acting))
}

/// The trace of the same from what anchors and pressure do to the plate.
pub fn balance(subject: &Subject<'_>, row: usize, component: Component) -> Option<Trace> {
    let (used, state) = worst(subject, row)?;
    let anchors = &parts(subject, used.of)?.0.anchors.as_ref()?.at_m;
    if state.tension_n.is_empty() {
        return None;
    }
    let (formula, kind) = match component {
        Component::Fz => ("N", Kind::Force),
        Component::Mx => ("y·N", Kind::Moment),
        Component::My => ("−x·N", Kind::Moment),
        _ => return None,
    };
    let term = |says: String, at: DVec2, pull_n: f64| {
        let (lever, value) = match component {
            Component::Mx => (Some(("y", at.y)), at.y * pull_n),
            Component::My => (Some(("x", at.x)), -at.x * pull_n),
            _ => (None, pull_n),
        };
        let lever = lever.map(|(symbol, arm_m)| Symbol::computed(symbol, "its place", Amount::length(arm_m)));
        let symbols = lever.into_iter().chain([Symbol::computed("N", "its pull on the plate", force(pull_n))]);
        Term { says, symbols: symbols.collect(), amount: Amount { kind, value } }
    };
    let pulls = anchors.iter().zip(&state.tension_n).enumerate().filter(|(_, (_, pull_n))| **pull_n != 0.0);
    let mut terms: Vec<Term> =
        pulls.map(|(index, (&at, &pull_n))| term(format!("anchor {}", index + 1), at, pull_n)).collect();
    if let Some(at) = state.pressed_at_m {
        terms.push(term("pressure under the plate, as a negative pull".to_owned(), at, -state.pressed_n));
    }
    let sum = Sum::of(component.symbol(), formula, kind, terms);
    let value = sum.amount.value;
    Some(Trace {
        title: title(subject, used, &format!("{} held by anchors and pressure", component.symbol())),
        formula: format!("{} = Σ {formula}", component.symbol()),
        symbols: Vec::new(),
        result: if component.is_moment() { moment(value) } else { force(value) },
        sums: vec![sum],
        source: "equilibrium of the plate".to_owned(),
    })
}

/// The trace of an anchor's tension; none where the plate presses nowhere.
pub fn anchor_tension(subject: &Subject<'_>, row: usize, anchor: usize) -> Option<Trace> {
    let (used, state) = worst(subject, row)?;
    let (base, fixing) = parts(subject, used.of)?;
    let fixing = fixing?;
    let at = *base.anchors.as_ref()?.at_m.get(anchor)?;
    let [from, to] = state.neutral_axis_m?;
    let along = (to - from).try_normalize()?;
    let beside_m = |point: DVec2| (point - from).perp_dot(along);
    let pressed_m = state.pressed_m.iter().map(|&corner| beside_m(corner)).fold(0.0_f64, farther);
    let anchor_m = beside_m(at);
    if pressed_m == 0.0 || anchor_m * pressed_m >= 0.0 {
        return None;
    }
    let (pressed_m, anchor_m) = (pressed_m.abs(), anchor_m.abs());
    let of_fixing = of_part(subject.unit, &fixing.name, "stress area");
    let symbols = vec![
        Symbol::computed(
            "n",
            "modulus of the anchors by that of the concrete, the worse one",
            number(state.modular_ratio),
        ),
        Symbol::entered("A_s", "stress area of an anchor", area(fixing.stress_area_m2), of_fixing),
        Symbol::computed(
            "p",
            "largest pressure under the plate",
            Amount { kind: Kind::Stress, value: state.pressure_pa },
        ),
        Symbol::computed("d", "the anchor beside the neutral axis", Amount::length(anchor_m)),
        Symbol::computed("e", "the largest pressure beside it, on the other side", Amount::length(pressed_m)),
    ];
    let value = state.modular_ratio * fixing.stress_area_m2 * state.pressure_pa * anchor_m / pressed_m;
    Some(Trace {
        title: title(subject, used, &format!("Tension of anchor {}", anchor + 1)),
        formula: "N = n·A_s·p·d/e".to_owned(),
        symbols,
        sums: Vec::new(),
        result: force(value),
        source: "a plate that stays plane on elastic concrete without tension; equilibrium of the plate fixes p and the axis"
            .to_owned(),
    })
}

/// Of two distances beside a line the larger, with its sign.
fn farther(one: f64, other: f64) -> f64 {
    if other.abs() > one.abs() { other } else { one }
}
