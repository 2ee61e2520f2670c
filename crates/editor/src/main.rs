//! `gantline`: opens the editor, or answers on the command line.

use std::path::PathBuf;
use std::process::ExitCode;

mod command_line;

fn main() -> ExitCode {
    command_line::run(window)
}

/// Opens the window, with a plan or with the start page.
fn window(plan: Option<PathBuf>) -> ExitCode {
    match gantline_editor::shell::run(plan) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("gantline: {fault}");
            ExitCode::from(2)
        }
    }
}
