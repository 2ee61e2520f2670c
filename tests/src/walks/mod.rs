//! Walks: the main job done in the real editor by pointer and keyboard, read back from its accessibility tree.

mod bases;
mod broken_file;
mod buildings;
mod by_pointer;
mod clearances;
mod drawings_in;
mod editing;
mod files;
mod keyboard;
mod many_units;
mod painted;
pub mod papers;
mod pointing;
mod reach;
mod sketching;
mod slab_bars;
mod underlays;
mod unit_views;
mod units_of_measure;
pub mod walker;
