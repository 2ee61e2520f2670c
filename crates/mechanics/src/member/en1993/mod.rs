//! Steel members by EN 1993-1-1: section class, cross-section, and buckling with the interaction factors of Annex B.
//!
//! Biaxial bending of a rectangular tube is judged by 6.2.9.1(6) with the exponent 1.66 at every axial force; the
//! code lets it grow with the axial force, so this is the safe side. Walls are classed as if evenly compressed.

mod buckling;
mod class;
mod cross_section;
mod steel_member;

pub(super) use steel_member::En1993Member;
