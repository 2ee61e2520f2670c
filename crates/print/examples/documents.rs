//! Writes the documents of a plan, and beside them the answers that they are compared with.
//!
//! `cargo run -p gantline-print --example documents -- PLAN FOLDER [us] [grid X Y]`, the last to give the plan's origin
//! coordinates in the grid of a drawing, m.

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
    let mut units = UnitSystem::Si;
    let mut grid_origin_m = None;
    while let Some(word) = given.next() {
        let mut figure =
            || -> Result<f64, Box<dyn Error>> { Ok(given.next().ok_or("a figure is asked for")?.parse()?) };
        match word.as_str() {
            "us" => units = UnitSystem::UsCustomary,
            "grid" => grid_origin_m = Some([figure()?, figure()?]),
            other => return Err(format!("\"{other}\" is not understood").into()),
        }
    }
    let folder = PathBuf::from(folder);
    fs::create_dir_all(&folder)?;
    let mut plan = open(plan.as_ref())?.plan;
    if let Some(origin) = grid_origin_m {
        plan.datum.grid_origin_m = origin.into();
    }
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
    let corners: Vec<_> = plan.roofs.values().flat_map(|roof| roof.outer.points()).collect();
    fs::write(folder.join("outlines.json"), serde_json::to_string(&(plan.datum.grid_origin_m, corners))?)?;
    fs::write(folder.join("check.json"), serde_json::to_string(&CheckAnswer::of(&plan, &assessment))?)?;
    fs::write(folder.join("reactions.json"), serde_json::to_string(&ReactionsAnswer::of(&plan, &assessment))?)?;
    Ok(())
}
