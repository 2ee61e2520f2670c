//! Format and version of the plan file. Older versions are migrated, newer ones refused with a clear word.

/// What the file says it is.
pub const FORMAT: &str = "gantline-plan";

/// The version written.
pub const VERSION: u64 = 2;
