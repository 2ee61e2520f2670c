//! System packages: installed where that is allowed, named where it is not.

use std::path::Path;
use std::process::Command;

use crate::steps::{Done, run};

/// Sees to it that Debian packages are there. Without apt or without the right to use it, the error says what to type.
pub fn install(packages: &[&str], why: &str) -> Done {
    let list = packages.join(" ");
    if !has_apt() {
        return Err(format!("{why}. On Debian and Ubuntu the packages are: {list}"));
    }
    if !is_root() {
        return Err(format!("{why}. Install it with: sudo apt-get install --no-install-recommends {list}"));
    }
    println!("{why}: installing {list}");
    let quiet = || {
        let mut command = Command::new("apt-get");
        command.env("DEBIAN_FRONTEND", "noninteractive").arg("-q");
        command
    };
    // A stale list of packages is the usual reason for a failure: only then is it renewed.
    if run(quiet().args(["install", "-y", "--no-install-recommends"]).args(packages)).is_ok() {
        return Ok(());
    }
    run(quiet().arg("update"))?;
    run(quiet().args(["install", "-y", "--no-install-recommends"]).args(packages))
}

fn has_apt() -> bool {
    cfg!(target_os = "linux") && Path::new("/usr/bin/apt-get").exists()
}

/// Whether this process may install packages, as `id` tells.
fn is_root() -> bool {
    Command::new("id").arg("-u").output().is_ok_and(|answer| answer.stdout.trim_ascii() == b"0")
}
