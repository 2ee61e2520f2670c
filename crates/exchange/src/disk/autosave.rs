//! Autosave: recovery copies of the plans at work, and finding those that a crash left behind.
//!
//! A saved plan's copy lies beside it, or in the user's data folder where that can't be written; a plan never saved has
//! its copy in the data folder. Each running of the program holds a lock on a file of its own there; a copy whose lock
//! nobody holds any more was left by a crash. The system gives locks back when a program ends, however it ends.

use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::recovery_copy::{ENDING, beside, bytes_of_copy, elsewhere, remove};
use super::{Deed, DiskFault, RecoveryCopy, SaveFault, replace};

/// Recovery copies of one running of the program. Dropped, it gives its lock back; copies not removed by then count as
/// left by a crash.
#[derive(Debug)]
pub struct Autosave {
    folder: PathBuf,
    lock: NamedTempFile,
}

/// What a crash left.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Found {
    /// Copies, newest first.
    pub copies: Vec<RecoveryCopy>,
    /// Files that look like copies and can't be read as such.
    pub unreadable: Vec<PathBuf>,
}

impl Autosave {
    /// Begins with the user's data folder for plans, which is made if it is not there.
    pub fn begin(folder: &Path) -> Result<Self, DiskFault> {
        fs::create_dir_all(folder).map_err(|cause| DiskFault::system(Deed::MakeFolder, folder, cause))?;
        let fault = |cause| DiskFault::system(Deed::Write, folder, cause);
        let lock = tempfile::Builder::new().prefix("session-").suffix(".lock").tempfile_in(folder).map_err(fault)?;
        // A disk without locks: then copies of another window that still runs are offered as well. Better than no copies.
        drop(lock.as_file().lock());
        Ok(Self { folder: folder.to_owned(), lock })
    }

    fn session(&self) -> String {
        self.lock.path().file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default()
    }

    /// Writes the copy of a plan, given as the text of its file; returns where it lies. `untitled` tells plans never
    /// saved apart while the program runs.
    pub fn write(&self, of: Option<&Path>, untitled: u64, text: &str) -> Result<PathBuf, SaveFault> {
        let of = of.map(whole_path);
        let bytes = bytes_of_copy(of.as_deref(), &self.session(), text)?;
        let Some(plan) = of else {
            let file = self.untitled_file(untitled);
            replace(&file, &bytes)?;
            return Ok(file);
        };
        let near = beside(&plan);
        if replace(&near, &bytes).is_ok() {
            return Ok(near);
        }
        let far = elsewhere(&self.folder, &plan);
        replace(&far, &bytes)?;
        Ok(far)
    }

    /// Removes the copy of a plan, once it is saved or closed: wherever it may lie.
    pub fn remove(&self, of: Option<&Path>, untitled: u64) -> Result<(), DiskFault> {
        let Some(plan) = of.map(whole_path) else {
            return remove(&self.untitled_file(untitled));
        };
        remove(&beside(&plan))?;
        remove(&elsewhere(&self.folder, &plan))
    }

    fn untitled_file(&self, untitled: u64) -> PathBuf {
        let session = self.session();
        let stem = session.trim_end_matches(".lock");
        self.folder.join(format!("untitled-{untitled}-{stem}.{ENDING}"))
    }

    /// The copy that a crash left of this plan, if there is one.
    pub fn left_of(&self, plan: &Path) -> Option<RecoveryCopy> {
        let plan = whole_path(plan);
        [beside(&plan), elsewhere(&self.folder, &plan)]
            .iter()
            .filter_map(|file| RecoveryCopy::find(file).ok())
            .filter(|copy| copy.of.as_ref() == Some(&plan) && !self.is_at_work(copy))
            .max_by_key(|copy| copy.written)
    }

    /// Copies in the data folder that a crash left; those beside plans are found by [`Autosave::left_of`].
    pub fn left_behind(&self) -> Result<Found, DiskFault> {
        let entries = fs::read_dir(&self.folder).map_err(|cause| DiskFault::system(Deed::List, &self.folder, cause))?;
        let mut found = Found::default();
        for file in entries.flatten().map(|entry| entry.path()) {
            if file.extension().is_none_or(|ending| ending != ENDING) {
                continue;
            }
            match RecoveryCopy::find(&file) {
                Ok(copy) if self.is_at_work(&copy) => {}
                Ok(copy) => found.copies.push(copy),
                Err(_) => found.unreadable.push(file),
            }
        }
        found.copies.sort_by(|a, b| b.written.cmp(&a.written).then_with(|| a.file.cmp(&b.file)));
        found.unreadable.sort();
        Ok(found)
    }

    /// Whether the program that wrote a copy still runs, this one included.
    fn is_at_work(&self, copy: &RecoveryCopy) -> bool {
        if copy.session == self.session() {
            return true;
        }
        // The name comes from a file: it must not lead out of this folder.
        if Path::new(&copy.session).file_name() != Some(copy.session.as_ref()) {
            return false;
        }
        let Ok(lock) = File::open(self.folder.join(&copy.session)) else {
            return false;
        };
        matches!(lock.try_lock(), Err(TryLockError::WouldBlock))
    }
}

/// The same path from the root, so that a plan is known again from another working folder.
fn whole_path(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plan_never_saved_is_found_after_a_crash_and_not_before() {
        let data = tempfile::tempdir().unwrap();
        let crashed = Autosave::begin(data.path()).unwrap();
        crashed.write(None, 1, "first").unwrap();
        crashed.write(None, 1, "second").unwrap();
        crashed.write(None, 2, "another").unwrap();
        let next = Autosave::begin(data.path()).unwrap();
        assert_eq!(next.left_behind().unwrap(), Found::default(), "it still runs");
        drop(crashed);
        let found = next.left_behind().unwrap();
        let mut texts: Vec<Vec<u8>> = found.copies.iter().map(|copy| copy.plan_bytes().unwrap()).collect();
        texts.sort();
        assert_eq!(texts, [b"another".to_vec(), b"second".to_vec()]);
        found.copies.iter().for_each(|copy| copy.remove().unwrap());
        assert_eq!(next.left_behind().unwrap(), Found::default());
    }

    #[test]
    fn the_copy_of_a_saved_plan_lies_beside_it_and_goes_when_the_plan_is_saved() {
        let [data, job] = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
        let plan = job.path().join("roof.json");
        let crashed = Autosave::begin(data.path()).unwrap();
        let copy = crashed.write(Some(&plan), 1, "at work").unwrap();
        assert_eq!(copy, job.path().join("roof.json.recovery"));
        crashed.remove(Some(&plan), 1).unwrap();
        assert!(!copy.exists());
        crashed.write(Some(&plan), 1, "at work again").unwrap();
        drop(crashed);
        let next = Autosave::begin(data.path()).unwrap();
        let left = next.left_of(&plan).unwrap();
        assert_eq!(left.plan_bytes().unwrap(), b"at work again");
        assert_eq!(left.of.as_deref(), Some(plan.as_path()));
        assert_eq!(next.left_of(&job.path().join("yard.json")), None);
    }

    #[test]
    fn where_the_plans_folder_can_not_be_written_the_copy_goes_to_the_data_folder() {
        let data = tempfile::tempdir().unwrap();
        let plan = data.path().join("vanished").join("roof.json");
        let crashed = Autosave::begin(data.path()).unwrap();
        let copy = crashed.write(Some(&plan), 1, "at work").unwrap();
        assert_eq!(copy.parent(), Some(data.path()));
        drop(crashed);
        let next = Autosave::begin(data.path()).unwrap();
        assert_eq!(next.left_of(&plan).unwrap().file, copy);
        assert_eq!(next.left_behind().unwrap().copies.len(), 1);
        next.remove(Some(&plan), 1).unwrap();
        assert_eq!(next.left_of(&plan), None);
    }

    #[test]
    fn a_copy_that_can_not_be_read_is_listed_and_not_passed_over() {
        let data = tempfile::tempdir().unwrap();
        let torn = data.path().join("torn.recovery");
        fs::write(&torn, "no header").unwrap();
        let autosave = Autosave::begin(data.path()).unwrap();
        assert_eq!(autosave.left_behind().unwrap().unreadable, [torn]);
    }
}
