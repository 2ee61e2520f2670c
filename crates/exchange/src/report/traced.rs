//! A trace written out: formula, symbols with their values and where they were entered, sums part by part, the result.

use gantline_plan::explain::{Sum, Symbol, Term, Trace};
use gantline_plan::quantity::{Kind, UnitSystem};

use super::blocks::{counted, formula, paragraph, row, strong, symbol, table, told, words};
use super::figures::precise;
use super::put_in::{Value, put_in, up_to_words};
use crate::paper::Block;

/// Everything of a trace: what it starts from, then what it adds up to.
pub fn whole(trace: &Trace, units: UnitSystem) -> Vec<Block> {
    let mut blocks = vec![paragraph(&format!("{}: {}.", trace.title, precise(trace.result, units)))];
    blocks.extend(symbols(&trace.symbols, units));
    blocks.extend(sums(trace, units));
    blocks
}

/// The formula with numbers put in, and its sums part by part, without what it starts from.
pub fn sums(trace: &Trace, units: UnitSystem) -> Vec<Block> {
    let mut blocks = vec![formula(&trace.formula, &trace.source)];
    blocks.extend(trace.sums.iter().filter_map(|sum| parts(sum, units)));
    let of_sums = trace.sums.iter().map(|sum| (sum.symbol.as_str(), precise(sum.amount, units)));
    let values: Vec<Value<'_>> = values(&trace.symbols, units).chain(of_sums).collect();
    let (left, right) = trace.formula.split_once('=').unwrap_or(("", &trace.formula));
    let name = left.trim();
    let result = precise(trace.result, units);
    let right = up_to_words(right).trim();
    let with_numbers = if right.contains('Σ') { None } else { put_in(right, &values) };
    blocks.push(match (with_numbers, name) {
        // A share of a resistance is not what the formula itself gives.
        (Some(put), name) if trace.result.kind == Kind::Share && !name.is_empty() => {
            formula(&format!("{name} = {put}; use {result}"), "")
        }
        (Some(put), "") => formula(&format!("{put} → {result}"), ""),
        (Some(put), name) => formula(&format!("{name} = {put} = {result}"), ""),
        (None, "") => formula(&result, ""),
        (None, name) => formula(&format!("{name} = {result}"), ""),
    });
    blocks
}

fn values(symbols: &[Symbol], units: UnitSystem) -> impl Iterator<Item = Value<'_>> {
    symbols.iter().map(move |symbol| (symbol.symbol.as_str(), precise(symbol.amount, units)))
}

/// Symbols with what they are, their values, and where they were entered.
pub fn symbols(symbols: &[Symbol], units: UnitSystem) -> Option<Block> {
    let rows = symbols.iter().map(|one| {
        let entered = one.entered.as_deref().unwrap_or("computed");
        row(vec![symbol(&one.symbol), words(&precise(one.amount, units)), words(&one.says), words(entered)])
    });
    let columns = vec![told("Symbol", 0.7), counted("Value", 1.0), told("What it is", 2.6), told("Entered at", 2.4)];
    table(columns, rows.collect())
}

/// A sum with each of its parts in numbers.
fn parts(sum: &Sum, units: UnitSystem) -> Option<Block> {
    let mut rows: Vec<_> = sum
        .terms
        .iter()
        .map(|term| {
            row(vec![words(&term.says), words(&numbers(sum, term, units)), words(&precise(term.amount, units))])
        })
        .collect();
    if rows.is_empty() {
        return None;
    }
    rows.push(strong(vec![words(&format!("{} in all", sum.symbol)), words(""), words(&precise(sum.amount, units))]));
    let head = format!("{} in numbers", sum.formula);
    table(vec![told("Part", 2.0), told(&head, 3.2), counted(&sum.symbol, 1.0)], rows)
}

/// The formula of a part with its own numbers; where it has none of the formula's symbols, nothing.
fn numbers(sum: &Sum, term: &Term, units: UnitSystem) -> String {
    let values: Vec<Value<'_>> = values(&term.symbols, units).collect();
    put_in(&sum.formula, &values).unwrap_or_default()
}
