//! A mast-and-arm unit: what it is made of, and how it answers to any load, linearly.
//!
//! Everything here is in **arm axes**: origin where the mast axis meets the structure, x along the
//! arm (outboard), z up, y = z × x. Structure axes are the same at slew 0; a vector in structure
//! axes is the vector in arm axes turned by the slew about z.
//!
//! Idealization: `frame`'s, and a brace is a pin-ended bar whose weight goes half to each end.

mod brace_line;
mod build_frame;
mod check;
mod column;
mod describe;
mod fault;
mod influence;
mod joint;
mod model;
mod point_pull;
mod station;

pub use build_frame::{FrameOfUnit, Pieces};
pub use describe::{BaseFixity, Brace, BraceAction, FootFrom, HeadJoint, Lump, PinOffsets, Place, RopePoint, Unit};
pub use fault::UnitFault;
pub use influence::Influence;
pub use joint::Joint;
pub use model::UnitModel;
pub use point_pull::PointPull;
pub use station::{Part, Side, Station};

pub(crate) use brace_line::turned;
pub(crate) use column::Column;
