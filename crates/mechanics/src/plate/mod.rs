//! A stiff plate on concrete: which anchors it pulls, where it presses, how it shares shear, what its steel makes of that.
//!
//! The concrete carries no tension and an anchor no pressure; the plate stays plane. That is a cracked elastic section of
//! any shape under a force and two moments ([`PreparedPlate::solve`]). [`shear`] shares out what acts in the plane, [`bending`]
//! says whether the plate is strong enough for all of it, [`prying`] what a plate that bends adds to its anchors, and [`wall`]
//! turns the actions of a mast into the axes of a plate on a wall. [`UnitOnPlate`] finds the worst that a unit does to it, over
//! all that may act and all slews, and keeps what it solved.

#[cfg(test)]
mod anchorage_witnesses;
mod ascend;
mod axes;
pub mod bending;
mod covered;
mod evenly;
mod limit;
mod looks;
mod moments;
mod on_unit;
#[cfg(test)]
mod on_unit_witnesses;
pub mod prying;
mod scatter;
mod search;
#[cfg(test)]
mod search_witnesses;
mod shape;
pub mod shear;
mod slope;
mod solution;
mod solve;
pub mod wall;
#[cfg(test)]
mod witnesses;

pub use axes::{PlateAxes, PlateOn};
pub use on_unit::UnitOnPlate;
pub use search::{Candidate, Judge, Searched};
pub use shape::{Bearing, Plate, PlateAnchor, PlateFault};
pub use solution::PlateSolution;
pub use solve::PreparedPlate;
