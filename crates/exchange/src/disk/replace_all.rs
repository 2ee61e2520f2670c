//! Several files are replaced together: all new bytes go onto the disk beside their files first, then come the renames.
//!
//! What can be known is looked at before the first rename, so that old and new are not mixed: a full disk, a folder that can't
//! be written, a folder where a file should be, a file that another program holds. A rename that fails in spite of that, after
//! others were made, says which.

use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::replace::{behind_links, put_in_place, write_beside};
use super::{Deed, DiskFault};

/// Replaces files by these bytes, or makes them.
pub fn replace_all(files: &[(PathBuf, &[u8])]) -> Result<(), DiskFault> {
    let mut ready = Vec::with_capacity(files.len());
    for (path, bytes) in files {
        let target = behind_links(path);
        see_that_it_can_be_replaced(&target)?;
        ready.push((write_beside(&target, bytes)?, target));
    }
    put_all_in_place(ready)
}

fn see_that_it_can_be_replaced(target: &Path) -> Result<(), DiskFault> {
    if target.is_dir() {
        return Err(DiskFault::IsAFolder { path: target.to_owned() });
    }
    // Where open files can't be replaced, one that can't be opened for writing is held by someone.
    if cfg!(windows) && target.exists() {
        let opened = std::fs::OpenOptions::new().write(true).open(target);
        opened.map_err(|cause| DiskFault::system(Deed::Replace, target, cause))?;
    }
    Ok(())
}

fn put_all_in_place(ready: Vec<(NamedTempFile, PathBuf)>) -> Result<(), DiskFault> {
    let mut replaced = Vec::with_capacity(ready.len());
    for (new, target) in ready {
        match put_in_place(new, &target) {
            Ok(()) => replaced.push(target),
            Err(cause) if replaced.is_empty() => return Err(cause),
            Err(cause) => return Err(DiskFault::InPart { replaced, cause: Box::new(cause) }),
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    #[test]
    fn where_one_can_not_be_written_the_others_stay_as_they_were() {
        let folder = tempfile::tempdir().unwrap();
        let first = folder.path().join("a.csv");
        fs::write(&first, b"old").unwrap();
        let nowhere = folder.path().join("gone").join("b.csv");
        let fault = replace_all(&[(first.clone(), b"new".as_slice()), (nowhere, b"new".as_slice())]).unwrap_err();
        assert!(matches!(fault, DiskFault::NoFolder { .. }), "{fault}");
        assert_eq!(fs::read(&first).unwrap(), b"old");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1, "no temporary file stays");
        replace_all(&[(first.clone(), b"new".as_slice())]).unwrap();
        assert_eq!(fs::read(&first).unwrap(), b"new");
    }

    #[test]
    fn a_folder_in_the_place_of_one_is_met_before_any_is_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let [first, second] = ["a.csv", "b.csv"].map(|name| folder.path().join(name));
        fs::write(&first, b"old").unwrap();
        fs::create_dir(&second).unwrap();
        let fault =
            replace_all(&[(first.clone(), b"new".as_slice()), (second.clone(), b"new".as_slice())]).unwrap_err();
        assert!(matches!(&fault, DiskFault::IsAFolder { path } if *path == second), "{fault}");
        assert_eq!(fs::read(&first).unwrap(), b"old");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2, "no temporary file stays");
    }

    #[test]
    fn a_rename_that_fails_after_others_says_which_were_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let [first, second] = ["a.csv", "b.csv"].map(|name| folder.path().join(name));
        let ready = [&first, &second].map(|path| (write_beside(path, b"new").unwrap(), path.clone()));
        // Someone makes a folder of that name in the meantime.
        fs::create_dir(&second).unwrap();
        let fault = put_all_in_place(ready.into()).unwrap_err();
        assert!(matches!(&fault, DiskFault::InPart { replaced, .. } if *replaced == [first.clone()]), "{fault}");
        assert!(fault.to_string().contains(&format!("already replaced: {}", first.display())), "{fault}");
        assert_eq!(fs::read(&first).unwrap(), b"new");
    }
}
