//! The sheet: one response for pointer and keys, what lies under the pointer, how drawings are painted.

pub mod accessible;
#[allow(clippy::module_inception, reason = "the canvas is the idea of this folder")]
pub mod canvas;
pub mod card;
pub mod compass;
pub mod elsewhere;
pub mod grid;
pub mod handles;
pub mod legend;
pub mod paint;
pub mod pick;
pub mod sketch;
pub mod tags;
pub mod underlay;
