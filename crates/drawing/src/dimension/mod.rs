//! Dimensions in one style: extension lines with a gap, oblique ticks, the figure above the line, never upside down.

mod axis;
mod chain;
mod figure;
mod measured;

pub use axis::{DimensionLine, readable};
pub use chain::{ROW_MM, chain, chain_or_ticks, chain_with_room, depth_mm, dimension};
pub use measured::Measured;
