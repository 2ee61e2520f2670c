//! The plan as a building model (IFC4, ISO 16739-1:2018, as a STEP file of ISO 10303-21): roofs, bases, units, clear zones.
//!
//! No crate writes it, so the lines are written here: `step` writes them, `guid` gives every thing an identity that
//! stays while its id in the plan stays, `shapes` are the solids, and each kind of thing is a file.

mod anchorage;
mod bases;
pub mod file;
mod guid;
mod look;
mod mesh;
mod project;
mod properties;
mod reactions;
mod roofs;
mod shapes;
mod step;
mod units;
mod zones;

pub use file::ifc;
