//! Facades: what is reached of each, by whom, and what is not.

use gantline_plan::assess::FacadeAssessment;
use gantline_plan::document::{EdgeId, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity;

use super::blocks::{chapter, counted, item, paragraph, row, section, strong, table, told, words};
use super::given::Given;
use crate::paper::{Block, Row};

/// The chapter.
pub fn facades_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Facades")];
    let facades = &given.assessment.facades;
    if facades.is_empty() {
        blocks.push(paragraph("The plan has no facades."));
        return blocks;
    }
    let columns = vec![
        told("Facade below", 1.4),
        told("Needs access", 0.8),
        counted("Length", 0.8),
        counted("Height", 0.8),
        counted("Area", 0.8),
        counted("Reached", 0.8),
        counted("Share", 0.6),
        counted("Gaps", 0.5),
    ];
    blocks.extend(table(columns, facades.values().map(|facade| of_facade(given, facade)).collect()));
    for facade in facades.values().filter(|found| found.facade.data.needs_access) {
        blocks.extend(told_of(given, facade));
    }
    blocks
}

fn name(given: &Given<'_>, key: EdgeId, facade: &FacadeAssessment) -> String {
    format!("{key}, {}", given.name(ThingId::Roof(facade.facade.roof)))
}

fn of_facade(given: &Given<'_>, found: &FacadeAssessment) -> Row {
    let (units, facade) = (given.units, &found.facade);
    let share = if found.area_m2 > 0.0 { quantity::share(found.covered_m2 / found.area_m2) } else { "none".to_owned() };
    let cells = vec![
        words(&name(given, facade.key, found)),
        words(if facade.data.needs_access { "yes" } else { "no" }),
        words(&quantity::length(facade.line.length_m, units)),
        words(&quantity::length(facade.height_m(), units)),
        words(&quantity::area(found.area_m2, units)),
        words(&quantity::area(found.covered_m2, units)),
        words(&share),
        words(&found.gaps.len().to_string()),
    ];
    if facade.data.needs_access && !found.gaps.is_empty() { strong(cells) } else { row(cells) }
}

/// Who serves it, and each gap.
fn told_of(given: &Given<'_>, found: &FacadeAssessment) -> Vec<Block> {
    let units = given.units;
    let mut blocks = vec![section(&format!("Facade below {}", name(given, found.facade.key, found)))];
    if found.served_by.is_empty() {
        blocks.push(paragraph("Served by no unit."));
    }
    blocks.extend(given.tag_list("Served by", &found.served_by));
    if found.gaps.is_empty() {
        blocks.push(paragraph("No part of it is left out."));
    }
    for (index, gap) in found.gaps.iter().enumerate() {
        let Some(around) = Bounds::of(gap.outline.iter().copied()) else { continue };
        let length = |value_m: f64| quantity::length(value_m, units);
        blocks.push(item(&format!(
            "Gap {}: {} that nobody reaches, from {} to {} along it, from {} to {} below its top.",
            index + 1,
            quantity::area(gap.area_m2, units),
            length(around.min_m.x),
            length(around.max_m.x),
            length(around.min_m.y),
            length(around.max_m.y)
        )));
    }
    blocks
}
