//! Quantities as people read and type them: SI or US customary, sensible digits, the unit always shown.

pub mod format;
pub mod parse;
pub mod traced;
pub mod unit_system;

pub use format::{angle, area, digits, force, length, level, mass, moment, number, share, stress};
pub use parse::{
    ParseFault, parse, parse_angle, parse_area, parse_force, parse_length, parse_mass, parse_moment, parse_number,
    parse_share, parse_stress,
};
pub use traced::{NOTHING_RESISTS, traced, utilization};
pub use unit_system::{Kind, UnitSystem};
