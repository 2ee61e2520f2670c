//! Outside formats and the disk: what the plan's assessment says and what the drawings show, in files of other kinds.
#![warn(missing_docs)]

pub mod palette;
pub mod png;
pub mod svg;
