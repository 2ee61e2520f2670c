//! Changes: everything that can be asked of a plan, and the history of what was done.

mod anchor_bars;
pub mod apply;
pub mod asked;
pub mod history;
pub mod place;
pub mod refused;
pub mod ring_edit;
pub mod underlay;

pub use apply::{Applied, apply};
pub use asked::{Change, EdgePatch, PlacementPatch, RoofPatch, UnderlayPatch};
pub use history::{Done, History};
pub use refused::Refused;
