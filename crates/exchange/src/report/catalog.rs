//! Catalog data in use: families and where their data come from, make-ups, then parts, materials and fixings.

use gantline_plan::catalog::{Family, Origin};

use super::blocks::{caution, chapter, counted, named, paragraph, row, section, table, told, words};
use super::given::Given;
use super::{catalog_fixings, catalog_parts};
use crate::paper::Block;

/// The chapter.
pub fn catalog_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Catalog data")];
    blocks.push(section("Families"));
    if given.plan.families.is_empty() {
        blocks.push(paragraph("The plan has no families."));
    }
    let families = given.plan.families.values();
    let rows = families.map(|family| row(vec![words(&named(&family.name)), words(&origin(family))]));
    blocks.extend(table(vec![told("Family", 1.4), told("Where its data come from", 2.0)], rows.collect()));
    blocks.push(section("Make-ups"));
    blocks.push(paragraph(
        "Units of one make-up that are judged alike are numbered here, and are called so from here on.",
    ));
    let rows = given.kinds.iter().enumerate().filter_map(|(index, kind)| {
        let unit = given.unit(kind.first)?.resolved.as_ref().ok()?;
        let brace = unit.brace.as_ref().map_or_else(|| "none".to_owned(), |brace| named(&brace.name));
        let parts = [named(&unit.mast.name), named(&unit.arm.name), brace, named(&unit.base.name)];
        let count = kind.all.len().to_string();
        let numbered = std::iter::once(words(&(index + 1).to_string()));
        Some(row(numbered.chain(parts.iter().map(|part| words(part))).chain([words(&count)]).collect()))
    });
    let columns = vec![
        counted("Unit", 0.4),
        told("Mast", 1.0),
        told("Arm", 1.3),
        told("Brace", 1.1),
        told("Base", 1.3),
        counted("How many", 0.6),
    ];
    blocks.extend(table(columns, rows.collect()));
    blocks.extend(not_whole(given));
    blocks.extend(catalog_parts::blocks(given));
    blocks.extend(catalog_fixings::blocks(given));
    blocks
}

/// Where a family's data come from.
fn origin(family: &Family) -> String {
    match &family.origin {
        Origin::Invented => "invented for demonstration: no such parts are made".to_owned(),
        Origin::DeclaredBy(who) => format!("declared by {}", named(who)),
    }
}

/// Units of which something is missing; nothing is calculated for them, and nothing of them is met.
fn not_whole(given: &Given<'_>) -> Vec<Block> {
    let faults = given.assessment.units.iter().filter_map(|(&id, unit)| Some((id, unit.resolved.as_ref().err()?)));
    let told = faults.map(|(id, fault)| caution(&format!("Unit {} is not calculated: {fault}.", given.tag(id))));
    told.collect()
}
