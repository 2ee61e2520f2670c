//! `test`: sees to what the tests need and runs them all. They need neither a display nor Python.

use std::path::Path;

use crate::packages;
use crate::steps::{Done, cargo, run};

/// Folders where drivers for drawing without a screen announce themselves.
const DRIVER_FOLDERS: [&str; 3] = ["/usr/share/vulkan/icd.d", "/etc/vulkan/icd.d", "/usr/local/share/vulkan/icd.d"];

/// Runs all tests; words after it go to `cargo test`.
pub fn test(rest: &[String]) -> Done {
    if cfg!(target_os = "linux") && !has_driver() {
        packages::install(&["mesa-vulkan-drivers"], "The editor's tests draw pictures without a screen by Vulkan")?;
    }
    run(cargo()?.args(["test", "--locked", "--workspace"]).args(rest))
}

fn has_driver() -> bool {
    let is_announced = |folder: &str| {
        Path::new(folder).read_dir().is_ok_and(|mut files| {
            files.any(|file| file.is_ok_and(|file| file.path().extension().is_some_and(|ending| ending == "json")))
        })
    };
    std::env::var_os("VK_DRIVER_FILES").is_some() || DRIVER_FOLDERS.iter().any(|folder| is_announced(folder))
}
