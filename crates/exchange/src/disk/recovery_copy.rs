//! A recovery copy: a plan as it was at work, with one line before it that says what it is a copy of.
//!
//! One file, so that it is replaced whole like any other; without its first line it is a plan file, so that a person can
//! rescue it with a text editor too.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::plan_file::read;
use super::{Deed, DiskFault};

/// How the name of a recovery copy ends.
pub(super) const ENDING: &str = "recovery";
const FORMAT: &str = "gantline-recovery";

/// A recovery copy found on a disk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecoveryCopy {
    /// The copy itself.
    pub file: PathBuf,
    /// The plan file it is a copy of; none for a plan never saved.
    pub of: Option<PathBuf>,
    /// When it was written, where the disk tells.
    pub written: Option<SystemTime>,
    /// The running of the program that wrote it.
    pub(super) session: String,
}

#[derive(Debug, Serialize, Deserialize)]
struct Header {
    format: String,
    of: Option<PathBuf>,
    session: String,
}

impl RecoveryCopy {
    /// Reads what a copy is a copy of.
    pub fn find(file: &Path) -> Result<Self, DiskFault> {
        let bytes = read(file)?;
        let (header, _) = split(file, &bytes)?;
        let written = fs::metadata(file).and_then(|data| data.modified()).ok();
        Ok(Self { file: file.to_owned(), of: header.of, written, session: header.session })
    }

    /// The bytes of the plan in it.
    pub fn plan_bytes(&self) -> Result<Vec<u8>, DiskFault> {
        let bytes = read(&self.file)?;
        let (_, plan) = split(&self.file, &bytes)?;
        Ok(plan.to_vec())
    }

    /// Removes the copy; one that has gone already is as good.
    pub fn remove(&self) -> Result<(), DiskFault> {
        remove(&self.file)
    }
}

/// Removes a file that may have gone already.
pub(super) fn remove(file: &Path) -> Result<(), DiskFault> {
    match fs::remove_file(file) {
        Err(cause) if cause.kind() != std::io::ErrorKind::NotFound => Err(DiskFault::system(Deed::Remove, file, cause)),
        _ => Ok(()),
    }
}

/// The bytes of a copy.
pub(super) fn bytes_of_copy(of: Option<&Path>, session: &str, plan: &str) -> Result<Vec<u8>, serde_json::Error> {
    let header = Header { format: FORMAT.to_owned(), of: of.map(Path::to_owned), session: session.to_owned() };
    let mut bytes = serde_json::to_vec(&header)?;
    bytes.push(b'\n');
    bytes.extend_from_slice(plan.as_bytes());
    Ok(bytes)
}

/// Where the copy of a saved plan goes: beside it, `roof.json.recovery`.
pub(super) fn beside(plan: &Path) -> PathBuf {
    let mut name = plan.file_name().unwrap_or_default().to_os_string();
    name.push(".");
    name.push(ENDING);
    plan.with_file_name(name)
}

/// Where it goes when its own folder can't be written: named by the path, so that it is found again.
pub(super) fn elsewhere(folder: &Path, plan: &Path) -> PathBuf {
    let stem = plan.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let digest = Sha256::digest(plan.as_os_str().as_encoded_bytes());
    let short = digest.iter().take(6).fold(0_u64, |number, &byte| number << 8 | u64::from(byte));
    folder.join(format!("{stem}-{short:012x}.{ENDING}"))
}

fn split<'a>(file: &Path, bytes: &'a [u8]) -> Result<(Header, &'a [u8]), DiskFault> {
    let fault = |what: String| DiskFault::NotARecoveryCopy { path: file.to_owned(), what };
    let end = bytes.iter().position(|&byte| byte == b'\n').ok_or_else(|| fault("it has one line only".to_owned()))?;
    let header: Header = serde_json::from_slice(&bytes[..end]).map_err(|error| fault(error.to_string()))?;
    if header.format != FORMAT {
        return Err(fault(format!("its first line says \"{}\"", header.format)));
    }
    Ok((header, &bytes[end + 1..]))
}
