//! Writes the calculation report of a plan as PDF, and tells how long each step took.
//!
//! `cargo run -p gantline-print --example report -- PLAN FILE.pdf [us]`

use std::error::Error;
use std::fs;
use std::time::Instant;

use gantline_exchange::disk::plan_file::open;
use gantline_exchange::documents::Imprint;
use gantline_exchange::paper::{Format, Paper, Sheet, lay_out};
use gantline_exchange::report::report;
use gantline_plan::assess::{Memo, assess};
use gantline_plan::quantity::UnitSystem;

fn main() -> Result<(), Box<dyn Error>> {
    let mut given = std::env::args().skip(1);
    let (Some(plan), Some(file)) = (given.next(), given.next()) else {
        return Err("a plan and a file are asked for".into());
    };
    let is_us = given.next().as_deref() == Some("us");
    let (units, format) = if is_us { (UnitSystem::UsCustomary, Format::Letter) } else { (UnitSystem::Si, Format::A4) };
    let plan = open(plan.as_ref())?.plan;
    let assessment = assess(&plan, &mut Memo::new());
    let imprint = Imprint::of(&plan, None);
    let begun = Instant::now();
    let blocks = report(&plan, &assessment, &imprint, units);
    let told = begun.elapsed();
    let sheet = Sheet {
        format,
        head_left: imprint.line(),
        head_right: "Calculation report".to_owned(),
        foot: "For planning; to be verified by a licensed structural engineer.".to_owned(),
    };
    let begun = Instant::now();
    let pages = lay_out(&blocks, &sheet);
    let laid = begun.elapsed();
    println!("{} blocks in {told:?}, {} pages in {laid:?}", blocks.len(), pages.len());
    let begun = Instant::now();
    let paper = Paper { title: "Calculation report".to_owned(), author: String::new(), date: None, pages };
    fs::write(file, gantline_print::pdf(&paper)?)?;
    println!("printed in {:?}", begun.elapsed());
    Ok(())
}
