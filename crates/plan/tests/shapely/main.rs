//! Reach, clear zones and the concrete round anchors against what shapely found for the same arrangements.
//!
//! The answers were made by the scripts in `tests/reference` and are read from there; nothing else is needed to run this.

mod clear_zones;
mod concrete_around;
mod reach;
