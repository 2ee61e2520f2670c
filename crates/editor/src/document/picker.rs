//! Asks for a file: by the desktop's dialog, by a path typed in the window, or by a script in tests.

use std::collections::VecDeque;
use std::path::PathBuf;

/// What a file is wanted for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Wanted {
    /// A plan to open.
    Open,
    /// A drawing whose outlines are to be taken.
    Drawing,
    /// A drawing or a scan to be laid under the plan.
    Underlay,
    /// Where to save; the name suggested and the folder to begin in.
    Save {
        /// Suggested name.
        name: String,
        /// Folder to begin in.
        folder: Option<PathBuf>,
    },
    /// A folder for documents; the folder to begin in.
    Folder(Option<PathBuf>),
    /// Where a picture goes; the name suggested and the folder to begin in.
    Picture {
        /// Suggested name.
        name: String,
        /// Folder to begin in.
        folder: Option<PathBuf>,
    },
}

/// What came of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Picked {
    /// A file, or the folder that was asked for.
    File(PathBuf),
    /// The dialog was closed.
    Nothing,
    /// No dialog could be shown; why.
    NoDialog(String),
}

/// Asks for files. The answer comes later, so that the window never waits.
pub trait Picker {
    /// Asks.
    fn ask(&mut self, wanted: &Wanted);
    /// The answer, once it is there.
    fn answer(&mut self) -> Option<Picked>;
}

/// A plan's file ends in `.json`, so that other programs know what it is.
pub fn with_ending(path: PathBuf) -> PathBuf {
    if path.extension().is_some() { path } else { path.with_extension("json") }
}

/// A picture's file ends in `.svg` or `.png`, as its kind is told by it.
pub fn with_picture_ending(path: PathBuf) -> PathBuf {
    let ending = path.extension().map(|ending| ending.to_string_lossy().to_lowercase());
    if matches!(ending.as_deref(), Some("svg" | "png")) { path } else { path.with_extension("svg") }
}

/// Answers from a script, in order; without one, as if no dialog could be shown.
#[derive(Debug, Default)]
pub struct Scripted {
    /// Answers still to be given.
    pub answers: VecDeque<Picked>,
    given: Option<Picked>,
}

impl Scripted {
    /// A picker with these answers.
    pub fn with(answers: impl IntoIterator<Item = Picked>) -> Self {
        Self { answers: answers.into_iter().collect(), given: None }
    }
}

impl Picker for Scripted {
    fn ask(&mut self, _wanted: &Wanted) {
        let without = || Picked::NoDialog("this window has no file dialog".to_owned());
        self.given = Some(self.answers.pop_front().unwrap_or_else(without));
    }

    fn answer(&mut self) -> Option<Picked> {
        self.given.take()
    }
}
