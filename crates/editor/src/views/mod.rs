//! Views: what the drawer shows.

pub mod findings;
pub mod ledger;
pub mod ledger_row;
