//! The use of a member: inner forces at the worst cut, then the code's own formula with every symbol in it.

use gantline_mechanics::member::{InternalForces, MemberResistance};

use super::entered::{of_basis, of_part};
use super::inside::symbols;
use super::subject::{Subject, force, moment, number};
use super::trace::{Symbol, Trace};
use crate::assess::Amount;
use crate::assess::member_phase::{Judged, judged_members, rated_pull, second_order_of, worst_of};
use crate::assess::worth_searching::design_actions;
use crate::quantity::Kind;

type Worst = gantline_mechanics::envelope::MemberUse;

/// The trace of a member's use.
pub fn trace(subject: &Subject<'_>, row: usize) -> Option<Trace> {
    let reactions = subject.reactions()?;
    let found = reactions.members.get(row)?;
    let (model, range) = subject.model()?;
    let judged = judged_members(subject.unit, &subject.plan.code);
    let member = judged.iter().find(|member| member.name == found.member)?;
    let second_order = second_order_of(reactions.alpha_cr);
    let here =
        design_actions(&subject.basis, subject.unit).into_iter().filter(|(index, _)| *index == found.combination);
    let looks = here.filter_map(|(_, actions)| {
        let worst = worst_of(&model, &actions, &range, member, &second_order)?;
        Some((actions, worst))
    });
    let (actions, worst) =
        looks.reduce(|a, b| if b.1.governing.utilization > a.1.governing.utilization { b } else { a })?;
    let mut all = symbols(subject, found.combination, &actions, &worst.causes, worst.slew_rad);
    all.push(amplification(reactions.alpha_cr?));
    let name = &subject.combined(found.combination)?.name;
    Some(written_out(format!("Use of the {} of unit {}, {name}", found.member, subject.tag), all, member, &worst))
}

/// From 10 on first-order moments are enough (EN 1993-1-1 5.2.1(3)); below, they are multiplied by 1/(1 − 1/α).
fn amplification(alpha_cr: f64) -> Symbol {
    Symbol::computed("α_cr", "critical over acting load; below 10 moments grow by 1/(1 − 1/α_cr)", number(alpha_cr))
}

fn written_out(title: String, mut symbols: Vec<Symbol>, member: &Judged, worst: &Worst) -> Trace {
    symbols.push(Symbol::computed("s", "place of the worst cut along the member", Amount::length(worst.station.at_m)));
    symbols.extend(inner_forces(&worst.actions.station));
    let (terms, source) = match &member.resistance {
        Ok(resistance) => code_terms(resistance, worst),
        Err(_) => (Vec::new(), ""),
    };
    symbols.extend(terms);
    let result = Amount::share(worst.governing.utilization);
    let formula = "demand over resistance by the clause named, largest over rope, slew and cut".to_owned();
    Trace { title, formula, symbols, sums: Vec::new(), result, source: source.to_owned() }
}

fn inner_forces(forces: &InternalForces) -> [Symbol; 6] {
    let says = "inner force at the cut, moments amplified";
    [
        Symbol::computed("N", says, force(forces.n_n)),
        Symbol::computed("V_y", says, force(forces.v_y_n)),
        Symbol::computed("V_z", says, force(forces.v_z_n)),
        Symbol::computed("T", says, moment(forces.t_nm)),
        Symbol::computed("M_y", says, moment(forces.m_y_nm)),
        Symbol::computed("M_z", says, moment(forces.m_z_nm)),
    ]
}

/// The symbols of the governing mode as the code prints them, and its clause.
fn code_terms(resistance: &MemberResistance, worst: &Worst) -> (Vec<Symbol>, &'static str) {
    let checks = resistance.checks(&worst.actions);
    let Some(check) = checks.into_iter().find(|check| check.mode == worst.governing.mode) else {
        return (Vec::new(), "");
    };
    let symbol = |term: &gantline_mechanics::member::Term| {
        let kind = match term.unit {
            "N" => Kind::Force,
            "N*m" => Kind::Moment,
            _ => Kind::Number,
        };
        Symbol::computed(term.symbol, "in the clause's formula", Amount { kind, value: term.value })
    };
    (check.terms.iter().map(symbol).collect(), check.clause)
}

/// The trace of the members' use at the declared rating: the worst of mast, arm and brace under rating × φ_d × γ_Q.
pub fn at_rating(subject: &Subject<'_>) -> Option<Trace> {
    let reactions = subject.reactions()?;
    let (model, range) = subject.model()?;
    let rated = rated_pull(subject.unit, &subject.basis)?;
    let second_order = second_order_of(reactions.alpha_cr);
    let judged = judged_members(subject.unit, &subject.plan.code);
    let looks = judged.iter().filter_map(|member| {
        let worst = worst_of(&model, &rated.actions, &range, member, &second_order)?;
        Some((member, worst))
    });
    let (member, worst) =
        looks.reduce(|a, b| if b.1.governing.utilization > a.1.governing.utilization { b } else { a })?;
    let rating = subject.unit.rating.as_ref()?;
    let mut symbols = vec![
        Symbol::entered(
            "F_rated",
            "declared rating",
            force(rating.rated_n),
            of_part(subject.unit, "combination", "rating"),
        ),
        Symbol::entered("φ_d", "factor for jerks and stops", number(rated.dynamic), of_basis("cases › dynamic factor")),
        Symbol::entered("γ_Q", "load factor", number(rated.load_factor), of_basis("cases › load factor")),
        Symbol::computed("T", "pull at the rating, F_rated·φ_d·γ_Q", force(rated.force_n)),
    ];
    symbols.push(amplification(reactions.alpha_cr?));
    let title = format!("Use of unit {} at its declared rating: {}", subject.tag, member.name);
    Some(written_out(title, symbols, member, &worst))
}
