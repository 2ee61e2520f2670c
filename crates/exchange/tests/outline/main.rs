//! Outlines from drawings: against areas that other programs found, and against files that are broken or hostile.

mod broken;
mod drawings;
mod given;
mod taken;
