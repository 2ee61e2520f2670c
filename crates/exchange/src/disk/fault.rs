//! Why a file could not be read or written: what was tried, on which path, and what the system answered.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// What was tried with a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Deed {
    /// Reading it.
    Read,
    /// Writing the new version beside it.
    Write,
    /// Putting the new version in its place.
    Replace,
    /// Keeping the version before.
    KeepPrevious,
    /// Removing it.
    Remove,
    /// Looking into a folder.
    List,
    /// Making a folder.
    MakeFolder,
}

impl fmt::Display for Deed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Read => "read",
            Self::Write => "write",
            Self::Replace => "replace",
            Self::KeepPrevious => "keep the version before of",
            Self::Remove => "remove",
            Self::List => "look into",
            Self::MakeFolder => "make the folder",
        })
    }
}

/// Why something on a disk could not be done.
#[derive(Debug, thiserror::Error)]
pub enum DiskFault {
    /// The folder of the file is not there (any more).
    #[error("can't {deed} {}: its folder {} is not there", path.display(), folder.display())]
    NoFolder {
        /// What was tried.
        deed: Deed,
        /// The file.
        path: PathBuf,
        /// The folder that is missing.
        folder: PathBuf,
    },
    /// A path that names no file, such as one that ends in `..`.
    #[error("{} names no file", path.display())]
    NoFileName {
        /// The path as given.
        path: PathBuf,
    },
    /// A folder stands where a file is to be put.
    #[error("can't replace {}: it is a folder", path.display())]
    IsAFolder {
        /// The folder.
        path: PathBuf,
    },
    /// Of several files that belong together some were replaced and one could not be.
    #[error("{cause}; already replaced: {}", listed(replaced))]
    InPart {
        /// Those that are new.
        replaced: Vec<PathBuf>,
        /// Why the next one is not; those after it are not either.
        cause: Box<DiskFault>,
    },
    /// More bytes than are read.
    #[error("{} has {has_bytes} bytes; at most {most_bytes} are read", path.display())]
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its size.
        has_bytes: u64,
        /// What is read at most.
        most_bytes: u64,
    },
    /// A recovery copy without the line that says what it is a copy of.
    #[error("{} is no recovery copy: {what}", path.display())]
    NotARecoveryCopy {
        /// The file.
        path: PathBuf,
        /// What is wrong with its first line.
        what: String,
    },
    /// What the system answered.
    #[error("can't {deed} {}: {cause}", path.display())]
    System {
        /// What was tried.
        deed: Deed,
        /// The file or folder.
        path: PathBuf,
        /// The system's answer.
        cause: io::Error,
    },
}

fn listed(paths: &[PathBuf]) -> String {
    paths.iter().map(|path| path.display().to_string()).collect::<Vec<_>>().join(", ")
}

impl DiskFault {
    pub(super) fn system(deed: Deed, path: &Path, cause: io::Error) -> Self {
        if let Some(folder) = path.parent()
            && cause.kind() == io::ErrorKind::NotFound
            && deed != Deed::Read
            && !folder.as_os_str().is_empty()
            && !folder.is_dir()
        {
            return Self::NoFolder { deed, path: path.to_owned(), folder: folder.to_owned() };
        }
        Self::System { deed, path: path.to_owned(), cause }
    }

    /// The file or folder it is about.
    pub fn path(&self) -> &Path {
        match self {
            Self::NoFolder { path, .. }
            | Self::NoFileName { path }
            | Self::IsAFolder { path }
            | Self::TooLarge { path, .. }
            | Self::NotARecoveryCopy { path, .. }
            | Self::System { path, .. } => path,
            Self::InPart { cause, .. } => cause.path(),
        }
    }

    /// Whether the file simply is not there.
    pub fn is_not_there(&self) -> bool {
        matches!(self, Self::System { cause, .. } if cause.kind() == io::ErrorKind::NotFound)
    }
}
