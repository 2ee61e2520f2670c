//! The first page: the job, what may be done with the report, how the checks came out, what is in it, how it is read.

use gantline_plan::quantity::UnitSystem;

use super::blocks::{caution, chapter, facts, item, named, paragraph, remark, section};
use super::given::Given;
use crate::answers::reactions_answer::AXES;
use crate::documents::Imprint;
use crate::documents::imprint::CAUTION;
use crate::paper::Block;
use crate::schedule::findings::tally_words;

/// What is in the report, chapter by chapter.
const CHAPTERS: [&str; 7] = [
    "Basis: every figure that something was judged by, with its source and who stands behind it",
    "Catalog data: families, make-ups, parts, materials and fixings in use",
    "Units: each make-up once, with what acts, what comes to its base, its members and joints",
    "Bases: each base with its place, anchors, plate and slab, every look with clause, formula and figures",
    "Facades: what is reached and what is not",
    "Findings: every check that is not met or could not be made",
    "Assumptions that nobody has confirmed",
];

/// The chapter.
pub fn first_page(given: &Given<'_>, imprint: &Imprint) -> Vec<Block> {
    let mut blocks = vec![chapter("Calculation report"), paragraph(&imprint.line()), caution(CAUTION)];
    if given.plan.families.values().any(|family| family.origin == gantline_plan::catalog::Origin::Invented) {
        blocks.push(caution(
            "Families that are called invented are made up for demonstration: no such parts are made. What is calculated with \
             them holds for no real unit.",
        ));
    }
    let rows = imprint.rows().into_iter().map(|(name, said)| match name {
        "Remark" | "Address" if said.is_empty() => (name, "none".to_owned()),
        _ => (name, if said.is_empty() { "not entered".to_owned() } else { named(&said) }),
    });
    blocks.extend(facts(rows.collect()));
    blocks.push(section("How the checks came out"));
    blocks.push(paragraph(&tally_words(given.assessment.tally())));
    blocks.push(section("What is in it"));
    blocks.extend(CHAPTERS.into_iter().map(item));
    blocks.push(Block::NewPage);
    blocks.push(Block::Contents);
    blocks.push(section("How it is read"));
    blocks.push(paragraph(AXES));
    blocks.push(paragraph(match given.units {
        UnitSystem::Si => "Units: SI. Lengths with which is computed on are in millimeters, forces in kilonewtons.",
        UnitSystem::UsCustomary => {
            "Units: US customary. Formulas of design codes hold in newtons and millimeters: their numbers are put in so, and \
             stand beside those in US customary units."
        }
    }));
    blocks.push(remark(
        "Figures with which is computed on have four digits: what is computed from them by hand agrees to the digits printed. \
         Formulas of design codes take lengths in mm and stresses in MPa and give forces in N.",
    ));
    blocks
}
