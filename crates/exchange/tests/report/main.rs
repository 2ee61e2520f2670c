//! The calculation report of the demonstration plans, read block by block.

mod by_hand;
mod content;
mod hostile;
mod pages;
mod printed;
mod reading;
