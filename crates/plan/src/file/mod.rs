//! The plan file: text to plan and back. Bytes and strings only; putting them on a disk is done elsewhere.
//!
//! One readable JSON file, `format` and `version` first, deterministic order; the same plan gives the same bytes.

pub mod hash;
pub mod limits;
mod migrate;
pub mod read;
pub mod schema;
pub mod sound;
pub mod sound_parts;
pub mod version;
pub mod write;

pub use hash::content_hash;
pub use read::{ReadError, read};
pub use schema::schema;
pub use sound_parts::{LeftOut, SoundParts, read_sound_parts};
pub use version::{FORMAT, VERSION};
pub use write::write;
