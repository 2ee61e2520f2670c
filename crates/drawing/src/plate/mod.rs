//! The plate of a base or a foot seen from above, or from in front of a wall: tube, anchors with their tension, the part
//! that presses, the neutral axis, where arm and rope point, on which side edges lie.
//!
//! Drawing coordinates: the axes of the plate, m. For a base on a roof x points away from the building, at the right.

mod anchors;
mod options;
mod scene;
mod sides;
mod view;
mod writing;

pub use options::{PlateOptions, scale_for};
pub use view::plate;
