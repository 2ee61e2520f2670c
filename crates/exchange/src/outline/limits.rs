//! Sizes and depths that are accepted, so that a hostile file can't exhaust a machine.

/// Largest file, bytes.
pub const LARGEST_FILE_BYTES: usize = 256 * 1024 * 1024;

/// Largest GeoJSON file, bytes: read whole, it takes some ten times as much memory.
pub const LARGEST_GEOJSON_BYTES: usize = 32 * 1024 * 1024;

/// Most layers of a file.
pub const MOST_LAYERS: usize = 20_000;

/// Most blocks of a file.
pub const MOST_BLOCKS: usize = 100_000;

/// Most pairs of group code and value of one entity.
pub const MOST_PAIRS_OF_AN_ENTITY: usize = 1_000_000;

/// Most pairs of sides that are compared to tell whether outlines cross themselves.
pub const MOST_COMPARED_WITHIN: usize = 400_000_000;

/// Most pairs of sides that are compared to tell how outlines lie to each other.
pub const MOST_COMPARED_BETWEEN: usize = 60_000_000;

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
