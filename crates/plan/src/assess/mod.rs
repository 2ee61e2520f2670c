//! What is computed about a plan: reach, coverage, clear zones, reactions, findings.

pub mod coverage;
pub mod reach;
pub mod stand_off;
