//! Bases: each with its place, its anchors, its states, and every look at it. Bases alike in make-up and surroundings are printed
//! once with all their tags.

use super::base;
use super::blocks::{chapter, paragraph};
use super::given::Given;
use crate::paper::Block;

/// The chapter.
pub fn bases_chapter(given: &Given<'_>) -> Vec<Block> {
    let mut blocks = vec![chapter("Bases")];
    if given.bases.is_empty() {
        blocks.push(paragraph("The plan has no bases."));
        return blocks;
    }
    let count: usize = given.bases.iter().map(|alike| alike.all.len()).sum();
    blocks.push(paragraph(&format!(
        "{count} bases, of which {} differ in make-up or surroundings. Those whose figures are the same to the last bit, but for \
         tag and place, are printed once.",
        given.bases.len()
    )));
    for (index, alike) in given.bases.iter().enumerate() {
        blocks.extend(base::blocks(given, index, alike));
    }
    blocks
}
