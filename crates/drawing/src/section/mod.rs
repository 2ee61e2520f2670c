//! The section through one unit, upright in the plane of its arm at the drawn slew: building cut, unit, clear zones, loads,
//! dimensions.
//!
//! Drawing coordinates: x from the mast axis along the arm, y over the underside of the base's plate, m.

mod anchors;
mod base;
mod building;
mod conflicts;
mod dimensions;
mod facade;
mod heading;
mod loads;
mod options;
mod plane;
mod scene;
mod unit;
mod view;
mod zones;

pub use options::{BaseActions, SectionDetail, SectionLoads, SectionOptions};
pub use plane::SectionPlane;
pub use view::section;
