//! Running other programs: each is shown before it runs, and its failure says which it was.

use std::path::{Path, PathBuf};
use std::process::Command;

/// What a chore comes to: nothing, or a sentence that says what went wrong.
pub type Done<T = ()> = Result<T, String>;

/// The project's folder.
pub fn root() -> Done<PathBuf> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).map(Path::to_owned).ok_or_else(|| format!("{} lies in no project", here.display()))
}

/// The cargo that runs this chore, in the project's folder.
pub fn cargo() -> Done<Command> {
    let mut command = Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    command.current_dir(root()?);
    Ok(command)
}

/// Runs a program to its end, with its output on the screen.
pub fn run(command: &mut Command) -> Done {
    let shown = shown(command);
    println!("$ {shown}");
    let status = command.status().map_err(|cause| format!("can't run `{shown}`: {cause}"))?;
    if status.success() { Ok(()) } else { Err(format!("`{shown}` ended with {status}")) }
}

/// The command as one would type it.
fn shown(command: &Command) -> String {
    let program = Path::new(command.get_program());
    let name = program.file_name().unwrap_or(program.as_os_str()).to_string_lossy().into_owned();
    command.get_args().fold(name, |line, word| line + " " + &word.to_string_lossy())
}

/// Where cargo puts what it builds.
pub fn target_folder() -> Done<PathBuf> {
    Ok(std::env::var_os("CARGO_TARGET_DIR").map_or(root()?.join("target"), PathBuf::from))
}
