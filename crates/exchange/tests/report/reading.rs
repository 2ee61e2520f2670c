//! Reads a report: blocks under a heading, tables, words.

use gantline_exchange::documents::Imprint;
use gantline_exchange::paper::formula::parse;
use gantline_exchange::paper::{Block, Cell, Formula, Row, Table};
use gantline_exchange::report::report;
use gantline_plan::assess::{Assessment, Memo, assess};
use gantline_plan::document::Plan;
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

/// A plan without mistakes, one that is full of them, and one of three hundred units.
pub const SMALL: &str = include_str!("../../../../demo-projects/small-roof.json");
pub const COURTYARD: &str = include_str!("../../../../demo-projects/courtyard-building.json");
pub const LARGE: &str = include_str!("../../../../demo-projects/large-complex.json");

/// A plan with its assessment and its report, whatever stands together taken apart.
pub struct Reported {
    pub plan: Plan,
    pub assessment: Assessment,
    pub blocks: Vec<Block>,
}

impl Reported {
    pub fn of(text: &str) -> Self {
        Self::from(read(text.as_bytes()).unwrap(), UnitSystem::Si)
    }

    pub fn from(plan: Plan, units: UnitSystem) -> Self {
        let assessment = assess(&plan, &mut Memo::new());
        let mut blocks = Vec::new();
        flatten(report(&plan, &assessment, &Imprint::of(&plan, None), units), &mut blocks);
        Self { plan, assessment, blocks }
    }

    /// What stands under the first heading that begins so, up to the next of its level or above.
    pub fn under(&self, heading: &str) -> &[Block] {
        under(&self.blocks, heading).unwrap_or_else(|| panic!("no heading begins with {heading}"))
    }
}

fn flatten(blocks: Vec<Block>, into: &mut Vec<Block>) {
    for block in blocks {
        match block {
            Block::Together(inner) => flatten(inner, into),
            other => into.push(other),
        }
    }
}

/// What stands under the first heading that begins so.
pub fn under<'a>(blocks: &'a [Block], heading: &str) -> Option<&'a [Block]> {
    let (at, own) = blocks.iter().enumerate().find_map(|(at, block)| match block {
        Block::Heading { level, words } if words.starts_with(heading) => Some((at, *level)),
        _ => None,
    })?;
    let rest = &blocks[at + 1..];
    let ends = |block: &Block| matches!(block, Block::Heading { level, .. } if *level <= own);
    Some(&rest[..rest.iter().position(ends).unwrap_or(rest.len())])
}

pub fn tables(blocks: &[Block]) -> Vec<&Table> {
    let mut found = Vec::new();
    for block in blocks {
        if let Block::Table(table) = block {
            found.push(table);
        }
    }
    found
}

/// Tables with a column of this head, in order.
pub fn tables_with<'a>(blocks: &'a [Block], head: &str) -> Vec<&'a Table> {
    tables(blocks).into_iter().filter(|table| table.columns.iter().any(|column| column.head == head)).collect()
}

pub fn cells(row: &Row) -> Vec<String> {
    row.cells.iter().map(cell).collect()
}

/// The cell after the one that says this, as words or as a symbol.
pub fn said(table: &Table, name: &str) -> String {
    let as_symbol = text(&parse(name));
    let after = |cells: Vec<String>| {
        let at = cells.iter().position(|cell| *cell == name || *cell == as_symbol)?;
        cells.get(at + 1).cloned()
    };
    table.rows.iter().map(cells).find_map(after).unwrap_or_else(|| panic!("no {name} in {table:?}"))
}

fn cell(cell: &Cell) -> String {
    match cell {
        Cell::Words(words) => words.clone(),
        Cell::Formula(formula) => text(formula),
    }
}

/// A formula in one line.
pub fn text(formula: &Formula) -> String {
    match formula {
        Formula::Row(parts) => parts.iter().map(text).collect(),
        Formula::Plain(words) => words.clone(),
        Formula::Marked { of, below, above } => {
            let below = below.as_ref().map_or_else(String::new, |below| format!("_{}", text(below)));
            let above = above.as_ref().map_or_else(String::new, |above| format!("^{}", text(above)));
            format!("{}{below}{above}", text(of))
        }
        Formula::Fraction(over, under) => format!("({})/({})", text(over), text(under)),
        Formula::Root(of) => format!("sqrt({})", text(of)),
    }
}

/// Every word of a block.
pub fn words(block: &Block) -> Vec<String> {
    match block {
        Block::Heading { words, .. } | Block::Paragraph { words, .. } => vec![words.clone()],
        Block::Formula { formula, source } => vec![text(formula), source.clone()],
        Block::Table(table) => {
            let heads = table.columns.iter().map(|column| column.head.clone());
            heads.chain(table.rows.iter().flat_map(cells)).collect()
        }
        Block::Picture { caption, .. } => vec![caption.clone()],
        Block::Together(inner) => inner.iter().flat_map(words).collect(),
        Block::Contents | Block::NewPage => Vec::new(),
    }
}
