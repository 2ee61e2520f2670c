//! Aluminum members by EN 1999-1-1: section class, local buckling, welds' heat-affected zones, buckling with bending.
//!
//! Clause numbers and constants of this module are from memory, to be confirmed against the standard, save the column
//! curve of class A and the effective thickness of internal parts, which a published example bears out. Walls are
//! classed as if evenly compressed. A slender section's walls are thinned all round, a lower bound of its modulus.

mod aluminum_member;
mod class;
mod strength;

pub(super) use aluminum_member::En1999Member;
