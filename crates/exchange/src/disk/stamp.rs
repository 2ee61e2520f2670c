//! A stamp of a file as it was read or written, to see later whether someone else changed it.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;
use std::time::SystemTime;

use sha2::{Digest, Sha256};

use super::{Deed, DiskFault};

/// Size, time and content of a file at one moment.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stamp {
    /// Its size.
    pub size_bytes: u64,
    /// When it was last written, where the disk tells.
    pub modified: Option<SystemTime>,
    /// SHA-256 of its content.
    pub content: [u8; 32],
}

/// What became of a file since it was stamped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Since {
    /// The same content, even if someone touched it.
    Unchanged,
    /// Someone wrote something else into it.
    Changed,
    /// It is no longer there.
    Gone,
}

impl Stamp {
    /// The stamp of bytes that are this file's content now.
    pub(super) fn of_bytes(path: &Path, bytes: &[u8]) -> Self {
        let modified = fs::metadata(path).and_then(|data| data.modified()).ok();
        Self { size_bytes: bytes.len() as u64, modified, content: Sha256::digest(bytes).into() }
    }

    /// The stamp of a file that this program has not seen: whatever is there counts as changed.
    pub const fn unseen() -> Self {
        Self { size_bytes: 0, modified: None, content: [0; 32] }
    }

    /// The stamp of a file as it is now.
    pub fn of(path: &Path) -> Result<Self, DiskFault> {
        stamp(path).map_err(|cause| DiskFault::system(Deed::Read, path, cause))
    }

    /// What became of the file since: equal size and time count as unchanged without reading it. Quick enough to ask
    /// whenever the window gets the focus; a change within the clock's grain needs [`Stamp::compare`].
    pub fn glance(&self, path: &Path) -> Result<Since, DiskFault> {
        match fs::metadata(path) {
            Ok(now)
                if now.len() == self.size_bytes && self.modified.is_some() && now.modified().ok() == self.modified =>
            {
                Ok(Since::Unchanged)
            }
            _ => self.compare(path),
        }
    }

    /// What became of the file since, by its content.
    pub fn compare(&self, path: &Path) -> Result<Since, DiskFault> {
        match stamp(path) {
            Ok(now) if now.content == self.content => Ok(Since::Unchanged),
            Ok(_) => Ok(Since::Changed),
            Err(cause) if cause.kind() == io::ErrorKind::NotFound => Ok(Since::Gone),
            Err(cause) => Err(DiskFault::system(Deed::Read, path, cause)),
        }
    }
}

/// Reads piece by piece, so that a huge file that took the place of a plan costs time and no memory.
fn stamp(path: &Path) -> io::Result<Stamp> {
    let mut file = File::open(path)?;
    let modified = file.metadata()?.modified().ok();
    let (mut hash, mut size_bytes, mut piece) = (Sha256::new(), 0, vec![0; 64 * 1024]);
    loop {
        let count = file.read(&mut piece)?;
        if count == 0 {
            return Ok(Stamp { size_bytes, modified, content: hash.finalize().into() });
        }
        hash.update(&piece[..count]);
        size_bytes += count as u64;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_change_of_equal_length_is_seen_and_a_touch_is_none() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        fs::write(&path, "abc").unwrap();
        let seen = Stamp::of(&path).unwrap();
        assert_eq!(seen, Stamp::of_bytes(&path, b"abc"));
        assert_eq!(seen.compare(&path).unwrap(), Since::Unchanged);
        fs::write(&path, "abc").unwrap();
        assert_eq!(seen.compare(&path).unwrap(), Since::Unchanged);
        assert_eq!(seen.glance(&path).unwrap(), Since::Unchanged);
        fs::write(&path, "abd").unwrap();
        assert_eq!(seen.compare(&path).unwrap(), Since::Changed);
        fs::remove_file(&path).unwrap();
        assert_eq!(seen.compare(&path).unwrap(), Since::Gone);
        assert_eq!(seen.glance(&path).unwrap(), Since::Gone);
    }

    /// Witness: FIPS 180-4's example, SHA-256 of "abc".
    #[test]
    fn the_content_is_hashed_as_the_standard_says() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("abc");
        fs::write(&path, "abc").unwrap();
        let content = Stamp::of(&path).unwrap().content;
        assert_eq!(content[..4], [0xba, 0x78, 0x16, 0xbf]);
        assert_eq!(content[28..], [0xf2, 0x00, 0x15, 0xad]);
    }
}
