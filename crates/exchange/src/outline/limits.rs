//! Sizes and depths that are accepted, so that a hostile file can't exhaust a machine.

/// Largest file, bytes.
pub const LARGEST_FILE_BYTES: usize = 256 * 1024 * 1024;

/// Most straight and curved pieces after blocks are unfolded; an empty block that is unfolded counts as one.
pub const MOST_PIECES: usize = 2_000_000;

/// Most corners after curves have become chords.
pub const MOST_CORNERS: usize = 4_000_000;

/// How deep blocks may lie in blocks.
pub const DEEPEST_BLOCK: usize = 32;

/// Most closed outlines in the chosen layers.
pub const MOST_LOOPS: usize = 5_000;

/// Most corners of one closed outline: each becomes an edge that someone has to look at.
pub const MOST_CORNERS_OF_A_LOOP: usize = 2_000;

/// Finest and coarsest tolerance, m.
pub const TOLERANCE_M: (f64, f64) = (0.0001, 0.5);

/// How far outlines may spread, m.
pub const WIDEST_M: u32 = 20_000;
