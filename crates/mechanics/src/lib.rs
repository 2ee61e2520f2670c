//! Statics and resistance of portable mast-and-arm units: pure functions on plain data, in SI units.

pub mod buckling;
pub mod cone;
pub mod frame;
pub mod material;
pub mod member;
pub mod pin;
pub mod section;
pub mod stiffness;
pub mod unit;
pub mod wrench;
