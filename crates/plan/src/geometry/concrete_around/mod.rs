//! The concrete round the anchors of a base, from the slab's real outline: areas, edges, corners, thickness, neighbors.
//!
//! A wall is the same with its face for a slab: a rectangle in the wall's own plane.

mod borders;
mod cells;
mod clip;
mod loaded;
mod local;
mod setting;
mod surroundings;
mod zones;

pub use loaded::LoadedAround;
pub use local::LocalSetting;
pub use setting::{ConcreteFault, PlateFrame, Setting, ThicknessZone};
pub use surroundings::ConcreteAround;
