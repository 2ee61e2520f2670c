//! `bench`: runs every bench of every crate, one after another, so that none disturbs another.

use std::path::{Path, PathBuf};

use crate::steps::{Done, cargo, root, run};

/// Runs the benches; words after it go to criterion.
pub fn bench(rest: &[String]) -> Done {
    for (package, name) in benches(&root()?)? {
        let mut command = cargo()?;
        command.args(["bench", "--locked", "--package", &package, "--bench", &name]);
        if !rest.is_empty() {
            command.arg("--").args(rest);
        }
        run(&mut command)?;
    }
    Ok(())
}

/// Packages and names of the benches, in order.
fn benches(root: &Path) -> Done<Vec<(String, String)>> {
    let mut found = Vec::new();
    for room in files(&root.join("crates"))? {
        let name = room.file_name().unwrap_or_default().to_string_lossy().into_owned();
        for file in files(&room.join("benches")).unwrap_or_default() {
            if file.extension().is_some_and(|ending| ending == "rs") {
                let bench = file.file_stem().unwrap_or_default().to_string_lossy().into_owned();
                found.push((format!("gantline-{name}"), bench));
            }
        }
    }
    Ok(found)
}

/// What lies in a folder, in order.
pub fn files(folder: &Path) -> Done<Vec<PathBuf>> {
    let entries = folder.read_dir().map_err(|cause| format!("can't look into {}: {cause}", folder.display()))?;
    let mut files: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
    files.sort();
    Ok(files)
}
