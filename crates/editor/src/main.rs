//! `gantline`: opens the editor, or answers on the command line.

fn main() {}
