//! Every look at a base: first all in one table, then each with clause, formula, numbers put in, action, resistance and use.

use gantline_plan::assess::anchorage::{BaseUse, Record, RecordSymbol, Used};
use gantline_plan::quantity::{self, UnitSystem, traced};

use super::base_states::States;
use super::blocks::{caution, counted, formula, paragraph, part, row, strong, symbol, table, told, words};
use super::figures::force;
use super::given::Given;
use super::put_in::{Value, put_in, up_to_words};
use crate::paper::{Block, Row};

/// All looks in one table; what is used beyond its resistance or was not checked stands out.
pub fn overview(given: &Given<'_>, uses: &[(usize, &BaseUse)], states: &States) -> Vec<Block> {
    let columns = vec![
        told("Looked at", 1.5),
        told("Clause", 2.0),
        counted("Acts", 0.9),
        counted("Resists", 0.9),
        counted("Use", 0.9),
        counted("State", 0.5),
    ];
    let rows: Vec<Row> = uses.iter().filter_map(|(_, used)| of_use(given, used, states)).collect();
    let mut blocks = vec![part("What is looked at")];
    blocks.extend(table(columns, rows));
    blocks
}

fn of_use(given: &Given<'_>, used: &BaseUse, states: &States) -> Option<Row> {
    let record = used.record.as_ref();
    let or_none =
        |value: Option<f64>| words(&value.map_or_else(|| "none".to_owned(), |value| force(value, given.units)));
    let (share, is_met) = match &used.outcome {
        Used::Share(share) => (quantity::utilization(*share), *share <= 1.0),
        Used::NotChecked(_) => ("not checked".to_owned(), false),
        Used::NotApplicable(_) => return None,
    };
    let cells = vec![
        words(used.look.words()),
        words(record.map_or("", |record| record.clause.as_str())),
        or_none(record.and_then(|record| record.action_n)),
        or_none(record.and_then(|record| record.resistance_n)),
        words(&share),
        words(&states.number(used).map_or_else(|| "none".to_owned(), |number| number.to_string())),
    ];
    Some(if is_met { row(cells) } else { strong(cells) })
}

/// Every record.
pub fn records(given: &Given<'_>, uses: &[(usize, &BaseUse)], states: &States) -> Vec<Block> {
    let told = uses.iter().filter_map(|(_, used)| {
        let record = used.record.as_ref()?;
        let state = states.number(used).map_or_else(String::new, |number| format!(", state {number}"));
        let mut blocks = vec![part(&format!("{}{state}", used.look.words()))];
        blocks.extend(written_out(record, used, given.units));
        Some(blocks)
    });
    told.flatten().collect()
}

/// A record step by step: formula, symbols with their values, numbers put in, action over resistance.
pub fn written_out(record: &Record, used: &BaseUse, units: UnitSystem) -> Vec<Block> {
    let mut blocks = vec![formula(&record.formula, &record.clause)];
    blocks.extend(symbols(record, units));
    // Codes write their formulas in newtons and millimeters: there are constants in them.
    let values: Vec<Value<'_>> =
        record.symbols.iter().map(|one| (one.symbol.as_str(), traced(one.value, one.unit, UnitSystem::Si))).collect();
    let (left, right) = split(&record.formula);
    if let Some(put) = put_in(up_to_words(right), &values) {
        let result =
            record.resistance_n.map_or_else(String::new, |value| format!(" = {}", force(value, UnitSystem::Si)));
        blocks.push(formula(&format!("{left}{put}{result}"), ""));
    }
    blocks.extend(verdict(record, used, units));
    if !record.caution.is_empty() {
        blocks.push(caution(&record.caution));
    }
    blocks
}

/// The left side of a formula with its sign, and the right side.
fn split(formula: &str) -> (&str, &str) {
    let is_equality = |at: &usize| {
        let before = formula[..*at].chars().next_back();
        !matches!(before, Some('<' | '>'))
    };
    match formula.find('=').filter(is_equality) {
        Some(at) => formula.split_at(at + 1),
        None => ("", formula),
    }
}

/// So many symbols with their values stand beside each other.
const BESIDE: usize = 3;

fn symbols(record: &Record, units: UnitSystem) -> Option<Block> {
    let us = units == UnitSystem::UsCustomary;
    let beside = if us { BESIDE - 1 } else { BESIDE };
    let told_of = |one: &RecordSymbol| {
        let mut cells = vec![symbol(&one.symbol), words(&traced(one.value, one.unit, UnitSystem::Si))];
        if us {
            cells.push(words(&traced(one.value, one.unit, units)));
        }
        cells
    };
    let mut columns = vec![told("Symbol", 1.0), counted("Value", 1.0)];
    if us {
        columns.push(counted("In US customary units", 1.0));
    }
    let width = columns.len() * beside.min(record.symbols.len());
    let rows = record.symbols.chunks(beside).map(|some| {
        let told = some.iter().flat_map(told_of);
        row(told.chain(std::iter::repeat_with(|| words(""))).take(width).collect())
    });
    table(columns.into_iter().cycle().take(width).collect(), rows.collect())
}

/// Action over resistance.
fn verdict(record: &Record, used: &BaseUse, units: UnitSystem) -> Vec<Block> {
    let said = match &used.outcome {
        Used::Share(share) => quantity::utilization(*share),
        Used::NotChecked(what) => return vec![caution(&format!("Not checked, so not met. Missing: {what}."))],
        Used::NotApplicable(why) => return vec![paragraph(&format!("Does not apply: {why}."))],
    };
    let sides = match (record.action_n, record.resistance_n) {
        (Some(action_n), Some(resistance_n)) => {
            format!("Acts {}, resists {}, ", force(action_n, units), force(resistance_n, units))
        }
        (Some(action_n), None) => format!("Acts {}, ", force(action_n, units)),
        (None, Some(resistance_n)) => format!("Resists {}, ", force(resistance_n, units)),
        (None, None) => return vec![paragraph(&format!("Use {said}."))],
    };
    vec![paragraph(&format!("{sides}use {said}."))]
}
