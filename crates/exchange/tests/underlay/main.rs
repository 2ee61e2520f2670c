//! Underlays from files: what they show at a wanted resolution, and what is broken, cut off, locked or too large.

mod broken;
mod given;
mod lines;
mod shown;
