//! Lengths and angles closer together than a hair are the same.
//!
//! A millimeter is what can be set out on a roof and a nanometer is what the polygon operations resolve.
//! A hair lies far below the first and at the second, so that a clearance that exactly equals its limit meets it
//! whatever the last digit of a sum says.

/// Two lengths that differ by less than this are equal, m.
pub const HAIR_M: f64 = 1e-9;

/// Two directions that differ by less than this are equal, rad.
pub const HAIR_RAD: f64 = 1e-9;
