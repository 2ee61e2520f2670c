//! A file is replaced whole or not at all: new bytes go to a temporary file beside it and onto the disk, then one rename.
//!
//! Whoever is killed in between leaves the old file as it was, and perhaps a leftover that [`super::leftover`] sweeps.
//! On Unix the folder is flushed too, so that the rename itself survives a power cut; other systems have no such call.

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::{Deed, DiskFault, leftover};

/// Replaces a file by these bytes, or makes it. Where the path is a link, the file it leads to is replaced.
pub fn replace(path: &Path, bytes: &[u8]) -> Result<(), DiskFault> {
    let target = behind_links(path);
    let new = write_beside(&target, bytes)?;
    put_in_place(new, &target)
}

/// The file itself where the path is a link, so that saving does not turn a link into a file.
pub(super) fn behind_links(path: &Path) -> PathBuf {
    fs::canonicalize(path).unwrap_or_else(|_| path.to_owned())
}

/// The folder of a file; the working folder for a bare name.
pub(super) fn folder_of(path: &Path) -> Result<&Path, DiskFault> {
    if path.file_name().is_none() {
        return Err(DiskFault::NoFileName { path: path.to_owned() });
    }
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => Ok(folder),
        _ => Ok(Path::new(".")),
    }
}

/// First step: the new version whole and on the disk, beside the file.
pub(super) fn write_beside(path: &Path, bytes: &[u8]) -> Result<NamedTempFile, DiskFault> {
    let fault = |cause| DiskFault::system(Deed::Write, path, cause);
    let folder = folder_of(path)?;
    let prefix = leftover::prefix_of(path);
    let mut builder = tempfile::Builder::new();
    builder.prefix(&prefix).suffix(leftover::SUFFIX);
    open_to_others(&mut builder);
    let mut new = builder.tempfile_in(folder).map_err(fault)?;
    new.write_all(bytes).map_err(fault)?;
    new.flush().map_err(fault)?;
    if let Ok(known) = fs::metadata(path) {
        new.as_file().set_permissions(known.permissions()).map_err(fault)?;
    }
    new.as_file().sync_all().map_err(fault)?;
    Ok(new)
}

/// Last step: the rename, and the folder flushed.
pub(super) fn put_in_place(new: NamedTempFile, path: &Path) -> Result<(), DiskFault> {
    new.persist(path).map_err(|error| DiskFault::system(Deed::Replace, path, error.error))?;
    flush_folder(path)
}

/// Temporary files are private by default; a plan is as readable as any other file its owner makes.
#[cfg(unix)]
fn open_to_others(builder: &mut tempfile::Builder<'_, '_>) {
    use std::os::unix::fs::PermissionsExt;
    builder.permissions(fs::Permissions::from_mode(0o666));
}

#[cfg(not(unix))]
fn open_to_others(_: &mut tempfile::Builder<'_, '_>) {}

#[cfg(unix)]
pub(super) fn flush_folder(path: &Path) -> Result<(), DiskFault> {
    let folder = folder_of(path)?;
    let opened = fs::File::open(folder).and_then(|folder| folder.sync_all());
    opened.map_err(|cause| DiskFault::system(Deed::Replace, path, cause))
}

#[cfg(not(unix))]
pub(super) fn flush_folder(_: &Path) -> Result<(), DiskFault> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> =
            fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    #[test]
    fn a_file_is_made_and_replaced_and_nothing_else_stays_behind() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        replace(&path, b"first").unwrap();
        replace(&path, b"second").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"second");
        assert_eq!(names(folder.path()), ["roof.json"]);
    }

    #[test]
    fn whoever_stops_before_the_rename_leaves_the_old_file_whole() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        replace(&path, b"old").unwrap();
        // A killed process runs no destructors: the temporary file stays.
        std::mem::forget(write_beside(&path, b"new").unwrap());
        assert_eq!(fs::read(&path).unwrap(), b"old");
        assert_eq!(names(folder.path()).len(), 2);
        replace(&path, b"newer").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"newer");
    }

    #[test]
    fn a_folder_that_vanished_is_named() {
        let folder = tempfile::tempdir().unwrap();
        let gone = folder.path().join("job");
        let path = gone.join("roof.json");
        fs::create_dir(&gone).unwrap();
        replace(&path, b"x").unwrap();
        fs::remove_dir_all(&gone).unwrap();
        let fault = replace(&path, b"y").unwrap_err();
        assert!(matches!(&fault, DiskFault::NoFolder { folder, .. } if *folder == gone), "{fault}");
        assert!(fault.to_string().contains("is not there"), "{fault}");
    }

    #[test]
    fn a_path_without_a_file_name_is_refused() {
        assert!(matches!(replace(Path::new("/"), b"x"), Err(DiskFault::NoFileName { .. })));
        assert!(matches!(replace(Path::new("a/.."), b"x"), Err(DiskFault::NoFileName { .. })));
    }

    /// The kernel's own folder of processes takes no files, not even from root.
    #[cfg(target_os = "linux")]
    #[test]
    fn a_folder_that_can_not_be_written_is_named_with_the_systems_answer() {
        let fault = replace(Path::new("/proc/roof.json"), b"x").unwrap_err();
        assert!(matches!(fault, DiskFault::System { deed: Deed::Write, .. }), "{fault:?}");
        assert!(fault.to_string().starts_with("can't write /proc/roof.json: "), "{fault}");
    }

    #[cfg(unix)]
    #[test]
    fn a_read_only_folder_leaves_the_old_file_as_it_was() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        replace(&path, b"old").unwrap();
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
        // Root writes into read-only folders: then the file is replaced, else it is as it was. Never anything between.
        let expected: &[u8] = if replace(&path, b"new").is_ok() { b"new" } else { b"old" };
        assert_eq!(fs::read(&path).unwrap(), expected);
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
        assert_eq!(names(folder.path()), ["roof.json"]);
    }

    #[cfg(unix)]
    #[test]
    fn permissions_and_links_are_kept() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        replace(&path, b"old").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
        let link = folder.path().join("link.json");
        std::os::unix::fs::symlink(&path, &link).unwrap();
        replace(&link, b"new").unwrap();
        assert_eq!(fs::read(&path).unwrap(), b"new");
        assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o640);
    }
}
