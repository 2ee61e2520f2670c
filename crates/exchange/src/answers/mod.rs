//! Answers: what `check` and `reactions` print for other programs, with the schema that documents them.
//!
//! All figures are SI, each key says its unit, and figures carry nine significant digits, since the last bits of sines and
//! cosines differ between systems.

pub mod base;
pub mod check_answer;
pub mod combination;
pub mod csv;
pub mod facade;
pub mod figure;
pub mod finding;
pub mod make_up;
pub mod names;
pub mod plan_named;
pub mod reactions_answer;
pub mod schema;
pub mod strength;
pub mod unit_place;
pub mod unit_reach;
pub mod unit_reactions;

pub use check_answer::CheckAnswer;
pub use csv::sets_as_csv;
pub use figure::Figure;
pub use reactions_answer::ReactionsAnswer;
pub use schema::{check_schema, reactions_schema};
