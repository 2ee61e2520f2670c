//! Writes the documents of a plan, and beside them the answers that they are compared with.
//!
//! `cargo run -p gantline-print --example documents -- PLAN FOLDER [us]`

use std::error::Error;
use std::fs;
use std::ops::ControlFlow;
use std::path::PathBuf;
use std::time::Instant;

use gantline_exchange::answers::{CheckAnswer, ReactionsAnswer};
use gantline_exchange::disk::plan_file::open;
use gantline_exchange::documents::{Wanted, make, write};
use gantline_plan::assess::{Memo, assess};
use gantline_plan::quantity::UnitSystem;

fn main() -> Result<(), Box<dyn Error>> {
    let mut given = std::env::args().skip(1);
    let (Some(plan), Some(folder)) = (given.next(), given.next()) else {
        return Err("a plan and a folder are asked for".into());
    };
    let units = if given.next().as_deref() == Some("us") { UnitSystem::UsCustomary } else { UnitSystem::Si };
    let folder = PathBuf::from(folder);
    fs::create_dir_all(&folder)?;
    let plan = open(plan.as_ref())?.plan;
    let assessment = assess(&plan, &mut Memo::new());
    let mut begun = Instant::now();
    let mut told = |progress: gantline_exchange::documents::Progress| {
        println!("{:?} before the {}", begun.elapsed(), progress.next.words());
        begun = Instant::now();
        ControlFlow::Continue(())
    };
    let documents = make(&plan, &assessment, &Wanted::all(units), gantline_print::pdf, &mut told)?;
    println!("{:?} to the end", begun.elapsed());
    write(&folder, &documents)?;
    fs::write(folder.join("check.json"), serde_json::to_string(&CheckAnswer::of(&plan, &assessment))?)?;
    fs::write(folder.join("reactions.json"), serde_json::to_string(&ReactionsAnswer::of(&plan, &assessment))?)?;
    Ok(())
}
