//! A text flows over pages: a [`Sheet`] is their format with what stands on each, blocks become pieces that are never broken
//! (`text`, `table`, `picture`, `contents`), and [`lay_out`] puts the pieces on pages.

mod contents;
mod pages;
mod picture;
mod piece;
mod sheet;
mod table;
mod text;

#[cfg(test)]
mod laws;

pub use pages::lay_out;
pub use sheet::{Format, Sheet};
