//! A trace: how one figure came about, so that a reviewer can follow it with a pocket calculator.

use super::subject::Subject;
use super::{
    FigureId, brace_and_foot, clearance, facade, joint, member, of_plan, place, plate, reach, reaction, stiffness,
};
use crate::assess::{Amount, Assessment, Memo, assess};
use crate::document::Plan;
use crate::quantity::Kind;

/// How a figure came about.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    /// What it is.
    pub title: String,
    /// The formula in symbols.
    pub formula: String,
    /// Its symbols with their values.
    pub symbols: Vec<Symbol>,
    /// Symbols that are sums, part by part.
    pub sums: Vec<Sum>,
    /// The figure.
    pub result: Amount,
    /// Law, standard, book, or derivation.
    pub source: String,
}

/// A symbol with its value.
#[derive(Debug, Clone, PartialEq)]
pub struct Symbol {
    /// The symbol in the formula.
    pub symbol: String,
    /// What it is, in words.
    pub says: String,
    /// Its value.
    pub amount: Amount,
    /// Where it was entered, such as "unit B-07 › setback"; none for a figure that is computed itself.
    pub entered: Option<String>,
}

/// A symbol that is a sum of parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Sum {
    /// The symbol.
    pub symbol: String,
    /// What each part is, in symbols: "z·Fx − x·Fz".
    pub formula: String,
    /// The parts.
    pub terms: Vec<Term>,
    /// Their sum.
    pub amount: Amount,
}

/// One part of a sum.
#[derive(Debug, Clone, PartialEq)]
pub struct Term {
    /// What it is: "weight of the arm".
    pub says: String,
    /// Its own symbols.
    pub symbols: Vec<Symbol>,
    /// Its value.
    pub amount: Amount,
}

impl Symbol {
    /// A value that someone entered.
    pub(super) fn entered(symbol: &str, says: &str, amount: Amount, entered: String) -> Self {
        Self { entered: Some(entered), ..Self::computed(symbol, says, amount) }
    }

    /// A value that follows from others.
    pub(super) fn computed(symbol: &str, says: &str, amount: Amount) -> Self {
        Self { symbol: symbol.to_owned(), says: says.to_owned(), amount, entered: None }
    }
}

impl Sum {
    /// A sum of parts of one kind.
    pub(super) fn of(symbol: &str, formula: &str, kind: Kind, terms: Vec<Term>) -> Self {
        let value = terms.iter().map(|term| term.amount.value).sum();
        Self { symbol: symbol.to_owned(), formula: formula.to_owned(), terms, amount: Amount { kind, value } }
    }
}

/// How a figure of a plan came about; none when the plan has no such figure. The plan is assessed for it: whoever has its
/// assessment at hand asks [`explain_in`].
pub fn explain(plan: &Plan, figure: &FigureId) -> Option<Trace> {
    explain_in(plan, &assess(plan, &mut Memo::new()), figure)
}

/// How a figure of a plan came about, given the plan's assessment.
pub fn explain_in(plan: &Plan, assessment: &Assessment, figure: &FigureId) -> Option<Trace> {
    let subject = |id| Subject::of(plan, assessment, id);
    match *figure {
        FigureId::Reaction { unit, combination, component, sense } => {
            reaction::trace(&subject(unit)?, combination, component, sense)
        }
        FigureId::Twist(unit) => reaction::twist(&subject(unit)?),
        FigureId::BraceForce { unit, combination, sense } => brace_and_foot::brace(&subject(unit)?, combination, sense),
        FigureId::FootReaction { unit, combination, component, sense } => {
            brace_and_foot::foot(&subject(unit)?, combination, component, sense)
        }
        FigureId::JointUplift { unit, row } => joint::trace(&subject(unit)?, row),
        FigureId::MemberUse { unit, row } => member::trace(&subject(unit)?, row),
        FigureId::PlateAction { unit, row, component } => plate::action(&subject(unit)?, row, component),
        FigureId::PlateBalance { unit, row, component } => plate::balance(&subject(unit)?, row, component),
        FigureId::AnchorTension { unit, row, anchor } => plate::anchor_tension(&subject(unit)?, row, anchor),
        FigureId::SocketUse { unit, row } => stiffness::socket(&subject(unit)?, row),
        FigureId::TipDeflection(unit) => stiffness::tip_deflection(&subject(unit)?),
        FigureId::CriticalFactor(unit) => stiffness::critical_factor(&subject(unit)?),
        FigureId::UseAtRating(unit) => member::at_rating(&subject(unit)?),
        FigureId::Clearance { unit, row } => clearance::trace(&subject(unit)?, row),
        FigureId::StandOff { unit, facade } => reach::stand_off(&subject(unit)?, facade),
        FigureId::TopBelowTip { unit, facade } => reach::top_below_tip(&subject(unit)?, facade),
        FigureId::HalfWidth { unit, facade, depth_m } => reach::half_width(&subject(unit)?, facade, depth_m),
        FigureId::Drop(unit) => reach::drop(&subject(unit)?),
        FigureId::UnitCovers { unit, facade } => facade::unit_covers(&subject(unit)?, facade),
        FigureId::SettingOut { unit, from } => place::setting_out(&subject(unit)?, from),
        FigureId::Guard(unit) => place::guard(&subject(unit)?),
        FigureId::FacadeHeight(key) => facade::height(plan, assessment, key),
        FigureId::FacadeArea(key) => facade::area(plan, assessment, key),
        FigureId::FacadeCovered(key) => facade::covered(plan, assessment, key),
        FigureId::FacadeOpen(key) => facade::open(assessment, key),
        FigureId::ConeNeeded => Some(of_plan::cone_needed(plan)),
    }
}
