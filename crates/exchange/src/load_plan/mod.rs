//! The load plan for whoever designs the structure: every base with its place and direction, what it brings, in sets that act
//! together, and what it stands on.
//!
//! `sheets` puts plan and tables together; `groups` are bases that bring the same; `tables` tell places, plates and
//! reactions; `axes` draws the directions that are counted positive.

mod axes;
mod groups;
mod sheets;
mod tables;

pub use sheets::load_plan;
