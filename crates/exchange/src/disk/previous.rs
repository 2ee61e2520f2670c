//! The version before: each save keeps the file it replaces as `name.previous.json` beside it.

use std::fs;
use std::path::{Path, PathBuf};

use super::recovery_copy::remove;
use super::replace::{flush_folder, folder_of, put_in_place, write_beside};
use super::{Deed, DiskFault, leftover};

/// Where the version before of a file is kept: `roof.json` → `roof.previous.json`.
pub fn previous_path(path: &Path) -> PathBuf {
    let mut name = path.file_stem().unwrap_or_default().to_os_string();
    name.push(".previous");
    if let Some(extension) = path.extension() {
        name.push(".");
        name.push(extension);
    }
    path.with_file_name(name)
}

/// Keeps the file as it is now as its version before; nothing to do where there is none. The file itself stays in its
/// place all the time, so that there is never a moment without it.
pub fn keep(path: &Path) -> Result<(), DiskFault> {
    if !path.is_file() {
        return Ok(());
    }
    let kept = previous_path(path);
    if link_over(path, &kept)? {
        return flush_folder(&kept);
    }
    let bytes = fs::read(path).map_err(|cause| DiskFault::system(Deed::KeepPrevious, path, cause))?;
    put_in_place(write_beside(&kept, &bytes)?, &kept)
}

/// A second name for the same bytes, put over the kept one by a rename; false where the disk has no such links.
fn link_over(path: &Path, kept: &Path) -> Result<bool, DiskFault> {
    let prefix = leftover::prefix_of(path);
    let mut builder = tempfile::Builder::new();
    builder.prefix(&prefix).suffix(leftover::SUFFIX);
    let Ok(linked) = builder.make_in(folder_of(path)?, |second_name| fs::hard_link(path, second_name)) else {
        return Ok(false);
    };
    let second_name = linked.path().to_owned();
    linked.persist(kept).map_err(|error| DiskFault::system(Deed::KeepPrevious, path, error.error))?;
    // Where the kept file was the same file already, the rename does nothing and leaves both names.
    remove(&second_name)?;
    Ok(true)
}

#[cfg(test)]
mod tests {
    use super::super::replace::replace;
    use super::*;

    #[test]
    fn the_version_before_has_its_own_name() {
        assert_eq!(previous_path(Path::new("job/roof.json")), Path::new("job/roof.previous.json"));
        assert_eq!(previous_path(Path::new("roof")), Path::new("roof.previous"));
        assert_eq!(previous_path(Path::new("a.b.json")), Path::new("a.b.previous.json"));
    }

    #[test]
    fn keeping_twice_without_a_change_keeps_the_same_and_leaves_nothing_behind() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        keep(&path).unwrap();
        assert!(!previous_path(&path).exists());
        replace(&path, b"one").unwrap();
        keep(&path).unwrap();
        keep(&path).unwrap();
        replace(&path, b"two").unwrap();
        assert_eq!(fs::read(previous_path(&path)).unwrap(), b"one");
        keep(&path).unwrap();
        assert_eq!(fs::read(previous_path(&path)).unwrap(), b"two");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
    }
}
