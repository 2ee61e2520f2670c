//! One line of the check on its way to a verdict or to a record: the same numbers for both, on the stack.

use super::mode_shares::ModeShares;
use super::record::{About, Mode, Outcome, Record, Symbol, Verdict};

/// What a line is about, without owning it.
#[derive(Debug, Clone, Copy)]
pub(super) enum Of<'a> {
    Group,
    Anchor(usize),
    Anchors(&'a [usize]),
    Edge(usize),
}

/// One line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line<'a> {
    pub mode: Mode,
    pub of: Of<'a>,
    pub clause: &'static str,
    pub formula: &'static str,
    pub symbols: &'a [Symbol],
    pub resistance_n: Option<f64>,
    pub action_n: Option<f64>,
    pub outcome: Outcome,
}

/// Where lines go.
pub(super) trait Sink {
    fn take(&mut self, line: &Line<'_>);
}

impl Sink for Verdict {
    fn take(&mut self, line: &Line<'_>) {
        self.take(line.mode, line.outcome);
    }
}

impl Sink for ModeShares {
    fn take(&mut self, line: &Line<'_>) {
        self.take(line.mode, line.outcome);
    }
}

impl Sink for Vec<Record> {
    fn take(&mut self, line: &Line<'_>) {
        self.push(Record {
            mode: line.mode,
            about: match line.of {
                Of::Group => About::Group,
                Of::Anchor(i) => About::Anchor(i),
                Of::Anchors(set) => About::Anchors(set.to_vec()),
                Of::Edge(i) => About::Edge(i),
            },
            clause: line.clause,
            formula: line.formula,
            symbols: line.symbols.to_vec(),
            resistance_n: line.resistance_n,
            action_n: line.action_n,
            outcome: line.outcome,
        });
    }
}

impl<'a> Line<'a> {
    /// A line with a resistance: utilization = action over resistance; nothing left of the resistance is no pass.
    pub(super) fn against(
        mode: Mode,
        of: Of<'a>,
        (clause, formula): (&'static str, &'static str),
        symbols: &'a [Symbol],
        (action, resistance): (f64, f64),
    ) -> Self {
        let share = if action <= 0.0 { 0.0 } else { action / resistance.max(0.0) };
        Self {
            mode,
            of,
            clause,
            formula,
            symbols,
            resistance_n: Some(resistance),
            action_n: Some(action),
            outcome: Outcome::Utilization(share),
        }
    }

    /// A line that needs only its outcome.
    pub(super) const fn only(mode: Mode, clause: &'static str, outcome: Outcome) -> Self {
        Self { mode, of: Of::Group, clause, formula: "", symbols: &[], resistance_n: None, action_n: None, outcome }
    }
}

pub(super) const fn newtons(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "N" }
}

pub(super) const fn newton_meters(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "N*m" }
}

pub(super) const fn meters(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "m" }
}

pub(super) const fn square_meters(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "m2" }
}

pub(super) const fn pascals(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "Pa" }
}

pub(super) const fn number(symbol: &'static str, value: f64) -> Symbol {
    Symbol { symbol, value, unit: "" }
}
