//! The chapters of the report in their order.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use super::given::Given;
use super::{assumptions, bases, basis, catalog, cover, facades, findings, units};
use crate::documents::Imprint;
use crate::paper::Block;

/// The calculation report of a plan, chapter by chapter. The same plan gives the same blocks.
pub fn report(plan: &Plan, assessment: &Assessment, imprint: &Imprint, shown_in: UnitSystem) -> Vec<Block> {
    let given = Given::of(plan, assessment, shown_in);
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
