//! The command line: answers about a plan without a window, for people and for other programs.
//!
//! Exit codes: 0 nothing blocks, 1 something blocks, 2 the plan or the command line can't be read.

mod args;
mod check;
mod demonstration;
mod documents;
mod ending;
mod outline;
mod outline_told;
mod reactions;
mod run;
mod schema;
mod tally;
mod told;

pub use run::run;
