//! Outside formats and the disk: what the plan's assessment says and what the drawings show, in files of other kinds.
//!
//! [`answers`] is the documented JSON and CSV of the command line; [`disk`] puts files on a disk whole or not at all and
//! keeps recovery copies; [`outline`] reads roofs from drawings that others made; [`svg`] and [`png`] print drawings.
#![warn(missing_docs)]

pub mod answers;
pub mod disk;
pub mod outline;
pub mod palette;
pub mod png;
pub mod svg;
