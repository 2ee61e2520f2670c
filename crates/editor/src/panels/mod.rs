//! Panels around and over the sheet. They read, and push intents; none names another.

pub mod anchor;
pub mod ask;
pub mod companion;
pub mod drawer;
pub mod inspector;
pub mod outgoing;
pub mod outline;
pub mod over_sheet;
pub mod page;
pub mod pages;
pub mod save_trouble;
pub mod start;
pub mod status_line;
pub mod top_bar;
pub mod underlay;
