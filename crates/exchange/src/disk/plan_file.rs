//! Opening and saving a plan: bytes with their stamp in, and out again only over what was seen.

use std::path::{Path, PathBuf};

use gantline_plan::document::Plan;
use gantline_plan::file::{self, ReadError, SoundParts, limits::LARGEST_FILE_BYTES};

use super::replace::{behind_links, put_in_place, write_beside};
use super::{DiskFault, Since, Stamp, previous, read_within};

/// A plan just opened.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened {
    /// The plan.
    pub plan: Plan,
    /// The file as it was when it was read.
    pub stamp: Stamp,
}

/// Why a plan can't be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenFault {
    /// The file can't be read.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// Its content is no plan of ours.
    #[error("{}: {what}", path.display())]
    Content {
        /// The file.
        path: PathBuf,
        /// Where in the file and what.
        what: ReadError,
    },
}

/// Why a plan can't be saved.
#[derive(Debug, thiserror::Error)]
pub enum SaveFault {
    /// The file can't be written.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// The plan holds a number that JSON has no text for.
    #[error("the plan can't be written as text: {0}")]
    Text(#[from] serde_json::Error),
    /// Someone else wrote the file since it was opened or saved here.
    #[error("{} was changed by someone else since it was opened here", path.display())]
    ChangedSince {
        /// The file.
        path: PathBuf,
    },
}

/// Opens a plan.
pub fn open(path: &Path) -> Result<Opened, OpenFault> {
    let bytes = read(path)?;
    let stamp = Stamp::of_bytes(path, &bytes);
    let plan = file::read(&bytes).map_err(|what| OpenFault::Content { path: path.to_owned(), what })?;
    Ok(Opened { plan, stamp })
}

/// Opens what is sound of a plan file that can't be read whole.
pub fn open_sound_parts(path: &Path) -> Result<SoundParts, OpenFault> {
    let bytes = read(path)?;
    file::read_sound_parts(&bytes).map_err(|what| OpenFault::Content { path: path.to_owned(), what })
}

/// Saves a plan and keeps the version before. `seen` is the file as this program last read or wrote it; none means that
/// whoever saves has been asked and wants whatever is there replaced. A file that has gone since is made anew.
pub fn save(path: &Path, plan: &Plan, seen: Option<&Stamp>) -> Result<Stamp, SaveFault> {
    let text = file::write(plan)?;
    save_text(path, &text, seen)
}

/// Saves a plan that is text already, as a worker thread gets it.
pub fn save_text(path: &Path, text: &str, seen: Option<&Stamp>) -> Result<Stamp, SaveFault> {
    let target = behind_links(path);
    let new = write_beside(&target, text.as_bytes())?;
    if let Some(seen) = seen
        && seen.compare(&target)? == Since::Changed
    {
        return Err(SaveFault::ChangedSince { path: path.to_owned() });
    }
    previous::keep(&target)?;
    put_in_place(new, &target)?;
    Ok(Stamp::of_bytes(&target, text.as_bytes()))
}

/// All bytes of a file that is not larger than a plan may be.
pub fn read(path: &Path) -> Result<Vec<u8>, DiskFault> {
    read_within(path, LARGEST_FILE_BYTES)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use gantline_plan::basis::{DesignCode, presets};

    use super::super::previous::previous_path;
    use super::*;

    fn plan(job: &str) -> Plan {
        let basis = presets().unwrap().remove(0).basis;
        let mut plan = Plan::empty(basis, DesignCode::eurocode());
        job.clone_into(&mut plan.title.job);
        plan
    }

    #[test]
    fn a_saved_plan_opens_as_the_same_plan_and_saves_as_the_same_bytes() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        let stamp = save(&path, &plan("Harbor hall"), None).unwrap();
        let first = fs::read(&path).unwrap();
        let opened = open(&path).unwrap();
        assert_eq!(opened, Opened { plan: plan("Harbor hall"), stamp: stamp.clone() });
        save(&path, &opened.plan, Some(&stamp)).unwrap();
        assert_eq!(fs::read(&path).unwrap(), first);
    }

    #[test]
    fn what_someone_else_saved_is_not_overwritten_unless_asked_and_then_kept() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        let mine = save(&path, &plan("mine"), None).unwrap();
        save(&path, &plan("theirs"), None).unwrap();
        let fault = save(&path, &plan("mine again"), Some(&mine)).unwrap_err();
        assert!(matches!(fault, SaveFault::ChangedSince { .. }), "{fault}");
        assert_eq!(open(&path).unwrap().plan.title.job, "theirs");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2, "plan and version before, no temporary file");
        save(&path, &plan("mine again"), None).unwrap();
        assert_eq!(open(&path).unwrap().plan.title.job, "mine again");
        assert_eq!(open(&previous_path(&path)).unwrap().plan.title.job, "theirs");
    }

    #[test]
    fn a_file_that_has_gone_is_made_anew() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        let seen = save(&path, &plan("a"), None).unwrap();
        fs::remove_file(&path).unwrap();
        save(&path, &plan("b"), Some(&seen)).unwrap();
        assert_eq!(open(&path).unwrap().plan.title.job, "b");
    }

    #[test]
    fn a_file_that_is_no_plan_is_named_with_the_place_of_the_trouble() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("roof.json");
        let missing = open(&path).unwrap_err();
        assert!(matches!(&missing, OpenFault::Disk(fault) if fault.is_not_there()), "{missing}");
        fs::write(&path, "{\"format\":").unwrap();
        let fault = open(&path).unwrap_err();
        assert!(matches!(fault, OpenFault::Content { what: ReadError::NotJson { line: 1, .. }, .. }), "{fault}");
        assert!(fault.to_string().contains("roof.json: line 1"), "{fault}");
    }

    #[test]
    fn a_file_larger_than_any_plan_is_refused_before_it_is_read() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("huge.json");
        let file = fs::File::create(&path).unwrap();
        // A hole in the file: it has the size and takes no room.
        file.set_len(LARGEST_FILE_BYTES as u64 + 1).unwrap();
        assert!(matches!(open(&path), Err(OpenFault::Disk(DiskFault::TooLarge { .. }))));
    }
}
