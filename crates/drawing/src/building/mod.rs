//! The whole building in simple outline, seen from above at a slant, with the levels of its roofs and its units.

mod order;
mod slant;
mod view;

pub use slant::Slant;
pub use view::{BuildingOptions, building};
