//! Sizes that are accepted, so that a hostile file can't exhaust a machine.

/// Most pixels of an image: a sheet of A1 scanned at 300 dots an inch has 70 million.
pub const MOST_IMAGE_PIXELS: u64 = 100_000_000;

/// Most pixels of one side of an image.
pub const LONGEST_IMAGE_SIDE: u32 = 60_000;

/// Most pixels decoded at once for the screen: four bytes each.
pub const MOST_PIXELS: f64 = 16.0e6;

/// Most pixels of one side of what is decoded for the screen.
pub const LONGEST_SIDE: f64 = 8000.0;

/// Most pages of a PDF that are offered.
pub const MOST_PAGES: usize = 5_000;

/// Longest side of a PDF's page, points: 200 inches are the most that most programs write.
pub const LONGEST_PAGE: f64 = 200_000.0;

/// Most lines of a drawing that is drawn under the plan, curves as chords.
pub const MOST_SEGMENTS: usize = 1_000_000;
