//! The calculation report: everything that a reviewer needs to follow a plan from its loads to its verdicts, as blocks of text.
//!
//! Each file is a chapter or a part of one; `blocks`, `figures`, `put_in` and `traced` are what all of them write with.
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
mod chapters;
mod cover;
mod diagrams;
mod facades;
mod figures;
mod findings;
mod given;
mod kinds;
mod members;
mod on_paper;
mod put_in;
mod reactions;
mod traced;
mod unit_picture;
mod units;

pub use chapters::report;
pub use on_paper::report_on_paper;
