//! Writes the demonstration plans of `demo-projects/`: scenarios and families are invented.
//!
//! `cargo run -p gantline-plan --example make_demo_projects -- demo-projects`

mod drafting_table;
mod small_roof;

use std::error::Error;
use std::path::Path;

use gantline_plan::file::write;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| "demo-projects".to_owned());
    std::fs::create_dir_all(&folder)?;
    for (name, plan) in [("small-roof.json", small_roof::plan()?)] {
        std::fs::write(Path::new(&folder).join(name), write(&plan)?)?;
    }
    Ok(())
}
