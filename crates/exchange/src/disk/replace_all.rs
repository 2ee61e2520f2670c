//! Several files are replaced together: all new bytes go onto the disk beside their files first, then come the renames.
//!
//! A full disk or a folder that can't be written is met before the first rename, so that old and new are not mixed.

use std::path::{Path, PathBuf};

use super::DiskFault;
use super::replace::{behind_links, put_in_place, write_beside};

/// Replaces files by these bytes, or makes them.
pub fn replace_all(files: &[(PathBuf, &[u8])]) -> Result<(), DiskFault> {
    let mut ready = Vec::with_capacity(files.len());
    for (path, bytes) in files {
        let target = behind_links(path);
        ready.push((write_beside(&target, bytes)?, target));
    }
    ready.into_iter().try_for_each(|(new, target): (_, PathBuf)| put_in_place(new, Path::new(&target)))
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
}
