//! Writes the demonstration plans of `demo-projects/`: scenarios and families are invented.
//!
//! `cargo run -p gantline-plan --example make_demo_projects -- demo-projects`

mod courtyard_building;
mod drafting_table;
mod large_complex;
mod mistaken_family;
mod small_roof;

use std::error::Error;
use std::path::Path;

use gantline_plan::file::write;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args().nth(1).unwrap_or_else(|| "demo-projects".to_owned());
    std::fs::create_dir_all(&folder)?;
    let plans = [
        ("small-roof.json", small_roof::plan()?),
        ("courtyard-building.json", courtyard_building::plan()?),
        ("large-complex.json", large_complex::plan()?),
    ];
    for (name, plan) in plans {
        std::fs::write(Path::new(&folder).join(name), write(&plan)?)?;
    }
    Ok(())
}
