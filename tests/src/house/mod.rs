//! The house rules that a machine can check, read from the sources.

mod demands;
mod figures;
mod manners;
mod rooms;
mod source;
