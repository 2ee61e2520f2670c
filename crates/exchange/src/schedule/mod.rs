//! The schedule: bases, reactions, parts, findings and basis as tables, in a workbook for people and as CSV for programs.
//!
//! [`table`] is what a table is; each table is a file with its columns in one list; [`workbook()`] and [`csv`](mod@csv) print them.

pub mod anchorage;
pub mod bases;
pub mod basis;
mod cover;
pub mod csv;
pub mod findings;
pub mod parts;
pub mod reactions;
mod sheet;
pub mod table;
pub mod workbook;

pub use csv::csv;
pub use table::Table;
pub use workbook::{ScheduleFault, workbook};
