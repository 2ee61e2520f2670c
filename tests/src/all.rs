//! Tests that cross rooms, in one binary: each further one would link the editor and its renderer again.

mod house;
mod pictures;
mod walks;
