//! The plan document, its changes, its file format and everything assessed about it.
#![warn(missing_docs)]

pub mod assess;
pub mod geometry;
