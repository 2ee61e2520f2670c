//! The elevation of one facade from outside: its face with levels, what units reach of it, gaps, ropes, dimensions.
//!
//! Drawing coordinates: x along the facade from its start, which is at the left as seen from outside; y the level over
//! level zero, m.

mod face;
mod gaps;
mod heading;
mod options;
mod reach;
mod scales;
mod units;
mod view;

pub use options::ElevationOptions;
pub use view::elevation;
