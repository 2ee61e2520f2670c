//! Sizes and depths that are accepted, so that a hostile file can't exhaust a machine.

/// Largest plan file, bytes.
pub const LARGEST_FILE_BYTES: usize = 64 * 1024 * 1024;

/// Most corners in all rings and outlines together.
pub const MOST_CORNERS: usize = 100_000;

/// Most units.
pub const MOST_PLACEMENTS: usize = 10_000;
