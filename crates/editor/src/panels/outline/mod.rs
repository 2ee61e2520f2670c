//! The dialog that takes outlines from a drawing: a preview with what each outline is taken for, and beside it what can be
//! chosen.

mod choices;
mod frame;
mod loops;
mod preview;

pub use frame::show;
