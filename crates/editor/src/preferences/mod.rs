//! Preferences: per user, in one file of the user's configuration folder; nothing about the work in hand.

#[allow(clippy::module_inception, reason = "preferences are the idea of this folder")]
pub mod preferences;
pub mod store;

pub use preferences::{Preferences, ThemeChoice, WheelDoes};
pub use store::Store;
