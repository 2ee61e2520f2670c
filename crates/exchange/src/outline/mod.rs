//! Outlines of roofs from drawings that others made: DXF and GeoJSON in, closed loops and changes of a plan out.
//!
//! [`read()`] gives the [`LineWork`] of a file, blocks unfolded, with its layers and what it says about its units.
//! [`LineWork::outlines`] puts the lines of chosen layers together to closed [`Loop`]s in meters. What is closed, joined,
//! left open or refused is told with its place; nothing is drawn by eye and nothing is guessed. [`Outlines::change`] makes
//! roofs, holes and obstacles of them, one change of the plan.

pub mod chain;
pub mod curve;
mod dxf;
mod entity;
pub mod fault;
mod geo;
mod layer_list;
pub mod length_unit;
pub mod limits;
pub mod line_work;
pub mod local_plane;
pub mod nesting;
pub mod outlines;
mod pairs;
mod read;
pub mod spline;
pub mod taking;
mod unfold;
pub mod usual;

pub use chain::ClosedGap;
pub use fault::{OutlineFault, Place};
pub use length_unit::LengthUnit;
pub use line_work::{Layer, LineWork, Measure};
pub use nesting::Meeting;
pub use outlines::{Asked, FaultyLoop, Loop, LoopFault, OpenRun, Outlines};
pub use read::{read, read_until};
pub use taking::{Heights, KeptPlace, Role, TakeFault, place_to_keep};
