//! Views: what the drawer shows.

pub mod against_slew_chart;
pub mod along_members;
pub mod chart;
pub mod findings;
pub mod ledger;
pub mod ledger_columns;
pub mod ledger_row;
pub mod outline_sheet;
pub mod setback_chart;
