//! EN 1992-4:2018: every mode of a group of fasteners, in tension, shear and both.
//!
//! `Prepared::new` does all that depends on place, product and concrete; `judge` then gives the worst mode without
//! allocating (but for the first time that a set of fasteners is in tension), `records` gives every mode in full. Both
//! come from the same formulas. Formulas are in N and mm in the standard; here they take and give SI.
//!
//! Modes are those of Tables 7.1 and 7.2. Tension modes take the fasteners in tension only; those farther apart than the
//! characteristic spacing stand alone. Toward an edge only the front row counts. Not built: fatigue, seismic, fire,
//! lightweight concrete, anchor channels, and the grout factor of 6.2.2.3(2), which asks for a connection without bending
//! and tension: a mast's base never is one, so that the lever arm stands instead.

mod bars;
mod blow_out;
mod bond;
mod cell;
mod cluster;
mod cone;
mod distances;
mod edge;
mod evaluate;
mod factors;
mod interaction;
mod material;
mod prepared;
mod pry_out;
mod pull_out;
mod shear_modes;
mod splitting;
mod steel;
mod steel_modes;
mod tension_modes;

#[cfg(test)]
mod hand;
#[cfg(test)]
mod hand_limits;
#[cfg(test)]
mod laws;
#[cfg(test)]
mod published;
#[cfg(test)]
mod samples;

pub use factors::En1992Factors;
pub use prepared::Prepared;
