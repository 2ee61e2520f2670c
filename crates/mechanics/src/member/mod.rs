//! Resistance of one member: what share of its strength given internal forces use, by which mode and clause.
//!
//! `Member::resistance` does all that depends on section, material, lengths and code once; the result is then asked
//! for many sets of forces, either with every term (`checks`) or quickly and without allocation (`governing`).

mod actions;
mod aisc360;
mod check;
mod code;
mod design;
mod en1993;
mod en1999;
mod pin_hole;
mod resistance;
mod shear_use;

#[cfg(test)]
mod monotony;
#[cfg(test)]
mod witnesses;

pub use actions::{At, InternalForces, MemberActions, SpanMaxima};
pub use check::{ByMode, Governing, MemberCheck, Mode, NotChecked, Outcome, Term};
pub use code::{Aisc360Factors, En1993Factors, En1999Factors, FactorFault, MemberCode};
pub use design::{Member, MemberFault, MomentShape, Welds};
pub use pin_hole::{HoleAxis, PinHole, PinHoleFault};
pub use resistance::MemberResistance;
