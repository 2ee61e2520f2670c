//! Elevations: one of each facade that needs access, with what is reached and what is not.

use std::sync::Arc;

use gantline_drawing::compass::compass_word;
use gantline_drawing::{ElevationOptions, elevation};
use gantline_plan::assess::FacadeAssessment;
use gantline_plan::quantity;

use super::arranged::{Captioned, sheets, taken_mm};
use super::given::Given;
use super::sheet::{Aside, Draft, Series};
use super::usual_scale::UsualScale;

/// The largest scale that elevations are drawn at.
const LARGEST: f64 = 96.0;

/// Sheets of elevations; facades that need no access are named beside the first.
pub fn elevations(given: &Given<'_>) -> Vec<Draft> {
    let all = given.assessment.facades.values();
    let (needed, idle): (Vec<_>, Vec<_>) =
        all.partition(|found| found.facade.data.needs_access || !found.served_by.is_empty());
    // Those at one scale stand together; the order of facades is kept within it.
    let mut drawn: Vec<(UsualScale, Vec<Captioned>)> = Vec::new();
    for found in needed {
        let Some((scale, one)) = at_its_scale(given, found) else { continue };
        match drawn.iter_mut().find(|(known, _)| *known == scale) {
            Some((_, together)) => together.push(one),
            None => drawn.push((scale, vec![one])),
        }
    }
    let sheet = |(scale, together): &(UsualScale, Vec<Captioned>)| {
        sheets(given, Series::Elevation, "Elevations: reach and gaps", *scale, together)
    };
    let mut drafts: Vec<Draft> = drawn.iter().flat_map(sheet).collect();
    if let Some(first) = drafts.first_mut()
        && !idle.is_empty()
    {
        let names: Vec<String> = idle.iter().map(|found| name(given, found)).collect();
        first.aside.push(Aside::Note(format!("Not drawn, as they need no access: {}.", names.join("; "))));
    }
    drafts
}

/// A facade at the largest usual scale at which a sheet has room for it, or at the smallest.
fn at_its_scale(given: &Given<'_>, found: &FacadeAssessment) -> Option<(UsualScale, Captioned)> {
    let room_mm = given.size.room().size_mm();
    let smallest = UsualScale::smallest(given.units);
    for scale in UsualScale::between(given.units, LARGEST, f64::INFINITY) {
        let one = captioned(given, found, scale)?;
        if taken_mm(&one).cmple(room_mm).all() || scale == smallest {
            return Some((scale, one));
        }
    }
    None
}

fn captioned(given: &Given<'_>, found: &FacadeAssessment, scale: UsualScale) -> Option<Captioned> {
    let options = ElevationOptions { units: given.units, ..ElevationOptions::at(scale.scale()) };
    let drawing = elevation(given.plan, given.assessment, found.facade.key, &options)?;
    let tag = |id| given.plan.placements.get(id).map(|placement| placement.tag.0.clone());
    let tags: Vec<String> = found.served_by.iter().filter_map(tag).collect();
    let served =
        if tags.is_empty() { "served by no unit".to_owned() } else { format!("served by {}", tags.join(", ")) };
    let caption = format!("At {}, from {} on; {served}.", scale.words, found.facade.key);
    Some(Captioned { drawing: Arc::new(drawing), caption })
}

fn name(given: &Given<'_>, found: &FacadeAssessment) -> String {
    let roof = given.plan.roofs.get(&found.facade.roof).map_or("", |roof| roof.name.as_str());
    let side = compass_word(found.facade.line.outward_rad(), given.plan.datum.north_rad);
    let long = quantity::length(found.facade.line.length_m, given.units);
    format!("{roof}, to the {side}, {long} ({})", found.facade.key)
}
