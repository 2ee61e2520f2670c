//! `start`: builds the editor and opens it; without a display the same job is done headless and said to be.

use crate::libraries::{display, missing_packages};
use crate::packages;
use crate::steps::{Done, cargo, root, run};

/// Where the headless demonstration writes to, in the project's folder.
const DEMONSTRATION: &str = "target/demonstration";

/// Builds and starts the editor; words after it go to the editor.
pub fn start(rest: &[String]) -> Done {
    let Some(display) = display() else {
        println!("There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set): the job is done headless.");
        return headless();
    };
    let missing = missing_packages(display);
    if !missing.is_empty()
        && let Err(what) = packages::install(&missing, "The window needs libraries that this system lacks")
    {
        println!("{what}\nUntil then the job is done headless.");
        return headless();
    }
    run(cargo()?.args(EDITOR).arg("--").args(rest))
}

/// Building and running the editor.
const EDITOR: [&str; 6] = ["run", "--locked", "--package", "gantline", "--bin", "gantline"];

fn headless() -> Done {
    run(cargo()?.args(EDITOR).args(["--", "demonstration", "--to", DEMONSTRATION]))?;
    println!("Written to {}", root()?.join(DEMONSTRATION).display());
    Ok(())
}
