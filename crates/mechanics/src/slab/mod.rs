//! Concrete slabs under a base: indicative punching, downward and upward, for the structural engineer to confirm.
//!
//! `PunchingDesign::prepare` builds the control perimeters once, cut by edges and openings; `PunchingCheck::judge` then answers for many
//! actions without allocation, and `PunchingCheck::records` lists every symbol.

mod code;
mod design;
mod fault;
mod lines;
mod perimeter;
mod punching;
#[cfg(test)]
mod witnesses;

pub use code::{AciPunching, EnPunching, PunchingCode};
pub use design::{FreeEdge, PunchingDesign, SlabDepth};
pub use fault::SlabFault;
pub use punching::{PunchingCheck, PunchingRecord, PunchingUse, PunchingWay, SlabActions};
