//! The plan view as a drawing for CAD (DXF of AutoCAD 2000), true to size, with layers by meaning and a block for each base.
//!
//! The reader crate's writer knows no hatches and leaves handles and tables to be repaired, so the group codes are written here,
//! by the published DXF reference of the format: `pairs` writes them, `tables` what a file begins with, `entities`
//! what is drawn, `blocks` the bases, `file` puts the sections together.

mod blocks;
mod entities;
pub mod file;
mod fixed;
mod layers;
mod objects;
mod pairs;
pub mod sheet;
mod tables;

pub use file::{DrawingUnit, dxf};
pub use sheet::plan_sheet;
