//! Answers about the demonstration plans: true to their schema, in balance with themselves, as tables that read back.

mod balance;
mod plans;
mod schema;
mod table;
mod valid;
