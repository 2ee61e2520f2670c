//! `gantline`: opens the editor, or answers on the command line.

use std::process::ExitCode;

fn main() -> ExitCode {
    let plan = std::env::args_os().nth(1).map(std::path::PathBuf::from);
    match gantline_editor::shell::run(plan) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("gantline: {fault}");
            ExitCode::from(2)
        }
    }
}
