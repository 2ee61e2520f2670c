//! ACI 318-19 chapter 17: every mode of a group of fasteners, in tension, shear and both.
//!
//! `Prepared::new` does all that depends on place, product and concrete; `judge` then gives the worst mode without
//! allocating (but for the first time that a set of fasteners is pulled or sheared), `records` gives every mode in full.
//! Both come from the same formulas.
//!
//! One system of units: the SI coefficients of ACI 318M-19 throughout. They are roundings of those in pounds and inches,
//! off by up to 3.3 % (0.6 for 7 in shear breakout; 13 for 160 in blow-out is 2.1 % safe); where a US source is a witness,
//! its numbers are brought to the SI coefficient first.
//!
//! Tension modes take the fasteners in tension only; those farther apart than the critical spacing stand alone. Toward an
//! edge the front row takes all the shear (commentary R17.7.2.1, case 3): no gain from rear rows is counted. Forces are
//! static ones or static equivalents of others: see [`OUTSIDE`].

mod blow_out;
mod bond;
mod breakout;
mod cluster;
mod distances;
mod edge;
mod evaluate;
mod factors;
mod interaction;
mod material;
mod outside;
mod prepared;
mod pry_out;
mod pull_out;
mod steel;

#[cfg(test)]
mod hand;
#[cfg(test)]
mod laws;
#[cfg(test)]
mod published;
#[cfg(test)]
mod samples;

pub use factors::Aci318Factors;
pub use outside::OUTSIDE;
pub use prepared::Prepared;
