//! Statics and resistance of portable mast-and-arm units: pure functions on plain data, in SI units.

pub mod anchorage;
pub mod bearing;
pub mod buckling;
pub mod cone;
pub mod diagrams;
pub mod envelope;
pub mod frame;
pub mod material;
pub mod member;
pub mod pin;
pub mod plate;
pub mod retention;
pub mod ring;
pub mod section;
pub mod slab;
pub mod sleeve;
pub mod slew_hold;
pub mod socket;
pub mod stability;
pub mod steel_bolt;
pub mod stiffness;
pub mod unit;
pub mod weld;
pub mod wind;
pub mod wrench;
