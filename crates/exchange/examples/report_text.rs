//! Writes the calculation report of a plan as plain text, to be read without a printer, and how long it took to put together.
//!
//! `cargo run -p gantline-exchange --example report_text -- PLAN`

use std::error::Error;
use std::time::Instant;

use gantline_exchange::documents::Imprint;
use gantline_exchange::paper::{Block, Cell, Formula};
use gantline_exchange::report::report;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("which plan?")?;
    let plan = read(&std::fs::read(path)?)?;
    let assessment = assess(&plan, &mut Memo::new());
    let begun = Instant::now();
    let blocks = report(&plan, &assessment, &Imprint::of(&plan, None), UnitSystem::Si);
    let taken = begun.elapsed();
    blocks.iter().for_each(tell);
    eprintln!("{} blocks in {taken:?}", blocks.len());
    Ok(())
}

fn tell(block: &Block) {
    match block {
        Block::Heading { level, words } => println!("\n{} {words}", "#".repeat(usize::from(*level))),
        Block::Paragraph { words, look } => println!("{words}   [{look:?}]"),
        Block::Formula { formula, source } => println!("    {}   ({source})", text(formula)),
        Block::Table(table) => {
            let heads: Vec<&str> = table.columns.iter().map(|column| column.head.as_str()).collect();
            println!("  | {}", heads.join(" | "));
            for row in &table.rows {
                let cells: Vec<String> = row.cells.iter().map(cell).collect();
                println!("  {} {}", if row.is_strong { "*" } else { "|" }, cells.join(" | "));
            }
        }
        Block::Picture { drawing, caption } => println!("[picture of {} marks: {caption}]", drawing.marks.len()),
        Block::Together(blocks) => blocks.iter().for_each(tell),
        Block::Contents => println!("[list of contents]"),
        Block::NewPage => println!("\n----------"),
    }
}

fn cell(cell: &Cell) -> String {
    match cell {
        Cell::Words(words) => words.clone(),
        Cell::Formula(formula) => text(formula),
    }
}

/// A formula in one line.
fn text(formula: &Formula) -> String {
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
