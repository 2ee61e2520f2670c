//! The calculation report: everything that a reviewer needs to follow a plan from its loads to its verdicts, as blocks of text.
//!
//! Each file is a chapter or a part of one; [`blocks`], [`figures`], [`put_in`] and [`traced`] are what all of them write with.
//! Nothing is computed here: figures are those of the assessment, and how they came about is asked of `plan::explain`.

mod assumptions;
mod base;
mod base_chain;
mod base_place;
mod base_records;
mod base_states;
mod bases;
mod basis;
mod blocks;
mod catalog;
mod catalog_fixings;
mod catalog_parts;
mod cover;
mod diagrams;
mod facades;
mod figures;
mod findings;
mod given;
mod kinds;
mod members;
mod put_in;
mod reactions;
mod traced;
mod unit_picture;
mod units;

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use crate::documents::Imprint;
use crate::paper::Block;
use given::Given;

/// The calculation report of a plan, chapter by chapter. The same plan gives the same blocks.
pub fn report(plan: &Plan, assessment: &Assessment, imprint: &Imprint, units: UnitSystem) -> Vec<Block> {
    let given = Given::of(plan, assessment, units);
    let chapters = [
        cover::first_page(&given, imprint),
        basis::basis_chapter(&given),
        catalog::catalog_chapter(&given),
        units::units_chapter(&given),
        bases::bases_chapter(&given),
        facades::facades_chapter(&given),
        findings::findings_chapter(&given),
        assumptions::assumptions_chapter(&given),
    ];
    let mut blocks = Vec::new();
    for chapter in chapters {
        if !blocks.is_empty() {
            blocks.push(Block::NewPage);
        }
        blocks.extend(chapter);
    }
    blocks
}
