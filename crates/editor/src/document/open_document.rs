//! An open plan: history, file, what was saved last.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use gantline_exchange::disk::Stamp;
use gantline_plan::change::History;
use gantline_plan::document::Plan;

/// An open plan.
#[derive(Debug, Clone)]
pub struct OpenDocument {
    /// The plan with what was done to it.
    pub history: History,
    /// Its file; none for a plan never saved.
    pub path: Option<PathBuf>,
    /// The file as this program last read or wrote it.
    pub stamp: Option<Stamp>,
    /// Tells plans never saved apart.
    pub untitled: u64,
    /// Name shown for a plan without a file.
    name: String,
    saved: Option<Arc<Plan>>,
    copied: Option<Arc<Plan>>,
    changed: (u64, bool),
    /// Why the last save failed, until one succeeds.
    pub save_trouble: Option<SaveTrouble>,
}

/// A save that failed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaveTrouble {
    /// Where.
    pub path: PathBuf,
    /// Why.
    pub why: String,
}

impl OpenDocument {
    /// A plan without a file; an empty one counts as saved, since nothing would be lost.
    pub fn untitled(plan: Plan, name: impl Into<String>, untitled: u64) -> Self {
        let mut document = Self::of(plan, name.into(), untitled);
        document.saved = Some(Arc::clone(document.history.plan()));
        document.copied.clone_from(&document.saved);
        document
    }

    /// A plan read from a file.
    pub fn opened(plan: Plan, path: PathBuf, stamp: Stamp, untitled: u64) -> Self {
        let mut document = Self::untitled(plan, String::new(), untitled);
        document.path = Some(path);
        document.stamp = Some(stamp);
        document
    }

    /// A plan rescued from a copy: never saved in this state.
    pub fn rescued(plan: Plan, path: Option<PathBuf>, untitled: u64) -> Self {
        let mut document = Self::of(plan, "Rescued plan".to_owned(), untitled);
        document.path = path;
        document.changed = (document.history.revision(), true);
        document
    }

    /// What is sound of a file that could not be read whole: has no file yet.
    pub fn part(plan: Plan, name: String, untitled: u64) -> Self {
        let mut document = Self::of(plan, name, untitled);
        document.changed = (document.history.revision(), true);
        document
    }

    fn of(plan: Plan, name: String, untitled: u64) -> Self {
        Self {
            history: History::new(plan),
            path: None,
            stamp: None,
            untitled,
            name,
            saved: None,
            copied: None,
            changed: (0, false),
            save_trouble: None,
        }
    }

    /// The plan as it is now, an open gesture included.
    pub fn plan(&self) -> &Arc<Plan> {
        self.history.plan()
    }

    /// The plan without an open gesture: what is saved, and from what gestures are replayed.
    pub fn settled(&self) -> &Arc<Plan> {
        self.history.before_gesture().unwrap_or_else(|| self.history.plan())
    }

    /// Name in the top bar.
    pub fn name(&self) -> String {
        match self.path.as_deref().and_then(Path::file_name) {
            Some(name) => name.to_string_lossy().into_owned(),
            None if self.name.is_empty() => "Untitled plan".to_owned(),
            None => self.name.clone(),
        }
    }

    /// Looks again whether the plan differs from what was saved last; to be called after each change.
    pub fn renew_changed(&mut self) {
        let revision = self.history.revision();
        if self.changed.0 != revision {
            let settled = Arc::clone(self.settled());
            self.changed = (revision, self.saved.as_ref().is_none_or(|saved| **saved != *settled));
        }
    }

    /// Whether there is something that a close would lose.
    pub fn is_changed(&self) -> bool {
        self.changed.1
    }

    /// The plan was saved as it is given.
    pub fn was_saved(&mut self, plan: Arc<Plan>, path: PathBuf, stamp: Stamp) {
        self.changed = (self.history.revision(), *plan != **self.settled());
        self.saved = Some(Arc::clone(&plan));
        self.copied = Some(plan);
        self.path = Some(path);
        self.stamp = Some(stamp);
        self.save_trouble = None;
    }

    /// The plan to be copied for recovery, if it differs from the last copy and from what was saved.
    pub fn to_be_copied(&self) -> Option<Arc<Plan>> {
        let settled = self.settled();
        let known = self.copied.as_ref().is_some_and(|copied| Arc::ptr_eq(copied, settled) || **copied == **settled);
        (!known).then(|| Arc::clone(settled))
    }

    /// A copy for recovery was asked for.
    pub fn copy_asked(&mut self, plan: Arc<Plan>) {
        self.copied = Some(plan);
    }
}
