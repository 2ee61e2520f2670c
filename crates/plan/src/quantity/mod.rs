//! Quantities as people read and type them: SI or US customary, sensible digits, the unit always shown.

pub mod format;
pub mod parse;
pub mod unit_system;

pub use format::{angle, area, force, length, level, mass, moment, number, share, stress};
pub use parse::{ParseFault, parse_angle, parse_length, parse_mass, parse_number};
pub use unit_system::{Kind, UnitSystem};
