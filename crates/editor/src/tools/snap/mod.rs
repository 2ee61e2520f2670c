//! Snapping: what a point can be caught by, and which of it catches.

pub mod candidates;
pub mod choose;

pub use candidates::{Candidate, CatchKind, Locus, Moving};
pub use choose::{Caught, choose};
