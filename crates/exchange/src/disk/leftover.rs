//! Leftovers: temporary files of a save that was killed before its rename. They are never read, only swept away.

use std::fs;
use std::path::Path;
use std::time::SystemTime;

use super::replace::folder_of;
use super::{Deed, DiskFault};

/// How the name of a temporary file ends.
pub(super) const SUFFIX: &str = ".saving";

/// How the names of a file's temporary files begin: hidden, and with the file's own name.
pub(super) fn prefix_of(path: &Path) -> String {
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    format!(".{name}.")
}

/// Removes a file's leftovers last written before a time; returns how many. Give a time some hours back: a younger one
/// may belong to a save that is going on in another window.
pub fn sweep(path: &Path, written_before: SystemTime) -> Result<usize, DiskFault> {
    let folder = folder_of(path)?;
    let prefix = prefix_of(path);
    let entries = fs::read_dir(folder).map_err(|cause| DiskFault::system(Deed::List, folder, cause))?;
    let mut swept = 0;
    for entry in entries.flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        let is_leftover = name.starts_with(&prefix) && name.ends_with(SUFFIX);
        let is_old = || entry.metadata().and_then(|data| data.modified()).is_ok_and(|at| at < written_before);
        if is_leftover && is_old() {
            fs::remove_file(entry.path()).map_err(|cause| DiskFault::system(Deed::Remove, &entry.path(), cause))?;
            swept += 1;
        }
    }
    Ok(swept)
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::super::replace::{replace, write_beside};
    use super::*;

    #[test]
    fn only_old_leftovers_of_this_file_are_swept() {
        let folder = tempfile::tempdir().unwrap();
        let [path, other] = ["roof.json", "yard.json"].map(|name| folder.path().join(name));
        replace(&path, b"roof").unwrap();
        std::mem::forget(write_beside(&path, b"half").unwrap());
        std::mem::forget(write_beside(&other, b"half").unwrap());
        let now = SystemTime::now();
        assert_eq!(sweep(&path, now - Duration::from_hours(1)).unwrap(), 0);
        assert_eq!(sweep(&path, now + Duration::from_hours(1)).unwrap(), 1);
        assert_eq!(fs::read(&path).unwrap(), b"roof");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
    }
}
