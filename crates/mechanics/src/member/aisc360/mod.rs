//! Steel tubes by AISC 360: chapters D to H for round and rectangular hollow sections.
//!
//! Chapters F, G and H from memory, to be confirmed against the specification, save what the published cases bear out.
//! The wall is the design wall thickness: 0.93 of the nominal one for electric-resistance-welded tubes (B4.2) is for
//! whoever enters the section.

mod hss_member;
mod strength;

pub(super) use hss_member::Aisc360Member;
