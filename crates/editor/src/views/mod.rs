//! Views: what the drawer shows.

pub mod findings;
