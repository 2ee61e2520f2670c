//! Sizes and depths that are accepted, so that a hostile file can't exhaust a machine.

/// Largest plan file, bytes: all attachments in base64, and the rest.
pub const LARGEST_FILE_BYTES: usize = 200 * 1024 * 1024;

/// Most of it that may stand outside of strings, bytes: values take up many times their text in memory, strings do not.
pub const MOST_OUTSIDE_STRINGS_BYTES: usize = 64 * 1024 * 1024;

/// Most corners in all rings and outlines together.
pub const MOST_CORNERS: usize = 100_000;

/// Most units.
pub const MOST_PLACEMENTS: usize = 10_000;
