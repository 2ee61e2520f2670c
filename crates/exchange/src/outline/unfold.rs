//! Unfolds blocks: each insert becomes the lines and curves of its block where it puts them, blocks in blocks as well.

use std::collections::{BTreeMap, HashMap};

use glam::{DAffine2, DVec2};

use super::curve::Trace;
use super::entity::{Insert, Shape};
use super::fault::OutlineFault;
use super::layer_list::LayerList;
use super::limits::{DEEPEST_BLOCK, MOST_PIECES};

/// A block of a file.
#[derive(Debug, Clone)]
pub struct Block {
    /// Its name.
    pub name: String,
    /// The point of it that an insert puts somewhere.
    pub base: DVec2,
    /// What it holds.
    pub shapes: Vec<Shape>,
    /// Whether what it holds is in another file.
    pub is_elsewhere: bool,
}

/// All lines and curves of `drawn`, blocks unfolded. Blocks are known by their names in small letters.
pub fn unfold(
    drawn: Vec<Shape>,
    blocks: &HashMap<Vec<u8>, Block>,
    passed_over: &mut BTreeMap<String, usize>,
) -> Result<Vec<Trace>, OutlineFault> {
    let mut traces = Vec::with_capacity(drawn.len());
    let mut folded = Folded { blocks, passed_over, pieces: 0 };
    for shape in drawn {
        match shape {
            Shape::Trace(trace) => {
                folded.count(trace.weight())?;
                traces.push(trace);
            }
            Shape::Insert(insert) => folded.insert(&insert, &DAffine2::IDENTITY, insert.layer, 1, &mut traces)?,
            Shape::PassedOver(_) => {}
        }
    }
    Ok(traces)
}

struct Folded<'a> {
    blocks: &'a HashMap<Vec<u8>, Block>,
    passed_over: &'a mut BTreeMap<String, usize>,
    pieces: usize,
}

impl Folded<'_> {
    fn count(&mut self, pieces: usize) -> Result<(), OutlineFault> {
        self.pieces = self.pieces.saturating_add(pieces);
        if self.pieces > MOST_PIECES { Err(OutlineFault::TooMany { most: MOST_PIECES }) } else { Ok(()) }
    }

    fn insert(
        &mut self,
        insert: &Insert,
        outer: &DAffine2,
        layer: usize,
        depth: usize,
        traces: &mut Vec<Trace>,
    ) -> Result<(), OutlineFault> {
        // Counted before anything is looked up: an insert of a block that the file does not hold takes its time too.
        self.count(1)?;
        let Some(block) = self.blocks.get(insert.block.to_ascii_lowercase().as_slice()) else {
            let name = super::pairs::shown(&insert.block);
            *self
                .passed_over
                .entry(format!("INSERT of block \"{name}\", which the file does not hold"))
                .or_default() += 1;
            return Ok(());
        };
        if block.is_elsewhere && block.shapes.is_empty() {
            *self.passed_over.entry(format!("INSERT of \"{}\", which is in another file", block.name)).or_default() +=
                1;
            return Ok(());
        }
        if depth > DEEPEST_BLOCK {
            return Err(OutlineFault::TooDeep { block: block.name.clone(), most: DEEPEST_BLOCK });
        }
        let (columns, rows) = insert.count;
        let own = insert.place * DAffine2::from_translation(-block.base);
        for row in 0..rows {
            for column in 0..columns {
                // An array of nothing is counted as well: it too takes its time.
                self.count(1)?;
                let aside = insert.step.0 * column as f64 + insert.step.1 * row as f64;
                let place = *outer * DAffine2::from_translation(aside) * own;
                self.shapes(block, &place, layer, depth, traces)?;
            }
        }
        Ok(())
    }

    fn shapes(
        &mut self,
        block: &Block,
        place: &DAffine2,
        layer: usize,
        depth: usize,
        traces: &mut Vec<Trace>,
    ) -> Result<(), OutlineFault> {
        let of_insert = |own: usize| if own == LayerList::OF_INSERT { layer } else { own };
        for shape in &block.shapes {
            match shape {
                Shape::Trace(trace) => {
                    self.count(trace.weight())?;
                    let placed = trace.placed(place);
                    traces.push(Trace { layer: of_insert(trace.layer), ..placed });
                }
                Shape::Insert(inner) => self.insert(inner, place, of_insert(inner.layer), depth + 1, traces)?,
                Shape::PassedOver(_) => {}
            }
        }
        Ok(())
    }
}
