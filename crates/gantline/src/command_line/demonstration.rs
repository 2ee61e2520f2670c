//! `gantline demonstration`: the main job without a window, on a demonstration plan.
//!
//! Checks, reactions and drawings come from the same code as the window's.

use std::path::Path;

use gantline_drawing::section::{BaseActions, SectionLoads};
use gantline_drawing::sheet::{North, sheet};
use gantline_drawing::{
    Drawing, ElevationOptions, PlanViewOptions, Scale, SectionOptions, elevation, plan_view, section,
};
use gantline_exchange::answers::{CheckAnswer, ReactionsAnswer, sets_as_csv};
use gantline_exchange::disk::replace;
use gantline_exchange::png::png;
use gantline_exchange::svg::svg;
use gantline_plan::assess::{Assessment, Component, Memo, Sense, assess};
use gantline_plan::document::{PlacementId, Plan};
use gantline_plan::file::read;
use gantline_plan::quantity::UnitSystem;

use super::args::DemonstrationArgs;
use super::ending::{Ending, NoAnswer};
use super::tally::tally_line;
use super::told::tell;

/// The small demonstration plan: an invented scenario with invented families.
const SMALL_ROOF: &str = include_str!("../../../../demo-projects/small-roof.json");

/// Pixels for a paper millimeter.
const PX_PER_MM: f64 = 5.0;

/// Writes the demonstration.
pub fn demonstration(args: &DemonstrationArgs) -> Result<Ending, NoAnswer> {
    let folder = &args.to;
    std::fs::create_dir_all(folder).map_err(|cause| NoAnswer::Folder { folder: folder.clone(), cause })?;
    let plan = read(SMALL_ROOF.as_bytes())?;
    let assessment = assess(&plan, &mut Memo::new());
    let reactions = ReactionsAnswer::of(&plan, &assessment);
    keep_text(folder, "plan.json", SMALL_ROOF)?;
    keep_text(folder, "check.json", &serde_json::to_string_pretty(&CheckAnswer::of(&plan, &assessment))?)?;
    keep_text(folder, "reactions.json", &serde_json::to_string_pretty(&reactions)?)?;
    let table = sets_as_csv(&reactions).map_err(|fault| NoAnswer::Csv(fault.to_string()))?;
    keep_text(folder, "reactions.csv", &table)?;
    drawings(folder, &plan, &assessment)?;
    tell(&format!(
        "{}\nWritten to {}: plan.json, check.json, reactions.json, reactions.csv, and plan, section and elevation as SVG and \
         PNG.\n{}",
        plan.title.remark,
        folder.display(),
        tally_line(assessment.tally())
    ))?;
    Ok(Ending::Clear)
}

fn drawings(folder: &Path, plan: &Plan, assessment: &Assessment) -> Result<(), NoAnswer> {
    let seen = plan_view(plan, assessment, &PlanViewOptions::at(Scale::one_to(50.0)));
    keep_drawing(folder, "plan", &sheet(seen, plan, North::Shown, UnitSystem::Si))?;
    if let Some(&id) = plan.placements.keys().next() {
        let options = SectionOptions { loads: loads(assessment, id), ..SectionOptions::at(Scale::one_to(20.0)) };
        if let Some(cut) = section(plan, assessment, id, &options) {
            keep_drawing(folder, "section", &sheet(cut, plan, North::Left, UnitSystem::Si))?;
        }
    }
    let served = assessment.facades.values().find(|found| found.facade.data.needs_access);
    if let Some(found) = served
        && let Some(face) = elevation(plan, assessment, found.facade.key, &ElevationOptions::at(Scale::one_to(100.0)))
    {
        keep_drawing(folder, "elevation", &sheet(face, plan, North::Left, UnitSystem::Si))?;
    }
    Ok(())
}

/// The set with the largest moment about the edge, of the combination that governs.
fn loads(assessment: &Assessment, id: PlacementId) -> SectionLoads {
    let reactions = assessment.units.get(&id).and_then(|unit| unit.reactions.as_ref());
    let Some(result) = reactions.and_then(|reactions| reactions.governing()) else { return SectionLoads::default() };
    let Some(set) = result.extreme(Component::My, Sense::Max) else { return SectionLoads::default() };
    let [outward_n, _, up_n, _, tilting_nm, _] = set.concurrent;
    SectionLoads {
        rope_n: (result.pull_n > 0.0).then_some(result.pull_n),
        base: Some(BaseActions { outward_n, up_n, tilting_nm }),
        words: format!("{}, {} level: largest My", result.name, result.level.name()),
    }
}

fn keep_text(folder: &Path, name: &str, text: &str) -> Result<(), NoAnswer> {
    Ok(replace(&folder.join(name), text.as_bytes())?)
}

fn keep_drawing(folder: &Path, name: &str, drawing: &Drawing) -> Result<(), NoAnswer> {
    keep_text(folder, &format!("{name}.svg"), &svg(drawing))?;
    Ok(replace(&folder.join(format!("{name}.png")), &png(drawing, PX_PER_MM)?)?)
}
