//! Formulas: a [`Formula`] is read by [`parse()`] from the plain text of records and traces, [`set()`] puts its letters, bars
//! and roots where they stand, [`lines()`] breaks one that is too long.

mod grouping;
#[cfg(test)]
mod laws;
mod lines;
mod name;
mod parse;
mod set;
mod tree;

pub use lines::lines;
pub use parse::parse;
pub use set::{Laid, set};
pub use tree::Formula;
