//! `gantline`: opens the editor, or answers on the command line.

use std::path::PathBuf;
use std::process::ExitCode;
use std::time::Instant;

mod command_line;

fn main() -> ExitCode {
    let begun = Instant::now();
    command_line::run(|plan| window(plan, begun))
}

/// Opens the window, with a plan or with the start page.
fn window(plan: Option<PathBuf>, begun: Instant) -> ExitCode {
    match gantline_editor::shell::run(plan, begun, gantline_print::pdf) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("gantline: {fault}");
            ExitCode::from(2)
        }
    }
}
