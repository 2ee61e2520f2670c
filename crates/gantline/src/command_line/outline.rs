//! `gantline outline`: a plan of the outlines in a drawing.

use std::collections::BTreeSet;

use gantline_editor::document::new_plan;
use gantline_editor::tools::scene::FIRST_ROOF_LEVEL_M;
use gantline_exchange::disk::{plan_file, read_within};
use gantline_exchange::outline::limits::LARGEST_FILE_BYTES;
use gantline_exchange::outline::{self, Asked, Heights, LineWork, OutlineFault};
use gantline_plan::change::apply;

use super::args::OutlineArgs;
use super::ending::{Ending, NoAnswer};
use super::outline_told::{layers_told, taken_told};
use super::told::{tell, tell_beside};

/// Makes a plan, or lists the layers.
pub fn outline(args: &OutlineArgs) -> Result<Ending, NoAnswer> {
    let fault = |fault: OutlineFault| NoAnswer::Drawing { path: args.drawing.clone(), fault };
    let bytes = read_within(&args.drawing, LARGEST_FILE_BYTES)?;
    let work = outline::read(&bytes).map_err(fault)?;
    drop(bytes);
    if args.layers.is_empty() {
        tell(&layers_told(&work))?;
        return Err(NoAnswer::NoLayer { path: args.drawing.clone() });
    }
    let output = args.output.as_ref().ok_or(NoAnswer::NoOutput)?;
    let asked = Asked {
        layers: layers(&work, &args.layers).map_err(fault)?,
        unit: args.units.map(super::args::DrawingUnits::unit),
        tolerance_m: args.tolerance,
        chord_m: args.chords,
        place: None,
    };
    let found = work.outlines(&asked).map_err(fault)?;
    let level_m = args.level.unwrap_or(FIRST_ROOF_LEVEL_M);
    let heights =
        Heights { roof_level_m: level_m, lower_roof_level_m: level_m, obstacle_from_m: 0.0, obstacle_to_m: 0.0 };
    let plan = new_plan().map_err(NoAnswer::NewPlan)?;
    let roles = found.usual_roles();
    let taking = |fault| NoAnswer::Taking { path: args.drawing.clone(), fault };
    // What stood in the way is told before it is said that nothing is left.
    tell_beside(&taken_told(&work, &found, &roles, args.level.is_none().then_some(level_m)))?;
    let change = found.change(&plan, &roles, &heights).map_err(taking)?;
    let mut plan = apply(&plan, &change).map_err(|refused| taking(refused.into()))?.plan;
    plan.title.remark = format!("Outline from {}", name_of(args));
    plan_file::save(output, &plan, None)?;
    tell_beside(&format!("written: {}\n", output.display()))?;
    Ok(if found.faulty.is_empty() && found.meetings.is_empty() { Ending::Clear } else { Ending::Blocked })
}

fn name_of(args: &OutlineArgs) -> String {
    args.drawing.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default()
}

fn layers(work: &LineWork, names: &[String]) -> Result<BTreeSet<usize>, OutlineFault> {
    let place = |name: &String| work.layer(name).ok_or_else(|| OutlineFault::NoSuchLayer { name: name.clone() });
    names.iter().map(place).collect()
}
