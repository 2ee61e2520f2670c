//! Pages over the sheet.

pub mod basis;
pub mod cant_open;
pub mod find_tag;
pub mod path;
pub mod preferences;
pub mod shortcuts;
pub mod sourced_row;
