//! What can lie over the sheet: pages, the drawer, questions.

use std::path::PathBuf;

/// A page over the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    /// Shortcuts and words.
    Shortcuts,
    /// Preferences.
    Preferences,
    /// The search for a tag.
    FindTag,
    /// The load basis and the design code, value by value.
    Basis,
    /// A path to be typed, where the desktop shows no dialog.
    Path(PathQuestion),
    /// A file that can't be opened.
    CantOpen {
        /// Its path.
        path: PathBuf,
        /// Where in it, and what was expected.
        what: String,
        /// What would be missing if the rest were opened; none where there is no sound rest.
        left_out: Option<Vec<String>>,
    },
}

/// What a typed path is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PathQuestion {
    /// A plan to open.
    Open,
    /// Where to save.
    Save,
    /// A folder for documents.
    Folder,
    /// Where a picture goes.
    Picture,
    /// A drawing whose outlines are to be taken.
    Drawing,
    /// A drawing or a scan to be laid under the plan.
    Underlay,
}

/// What the drawer shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drawer {
    /// All units.
    Units,
    /// All findings.
    Findings,
    /// Charts of the selected unit.
    Charts,
}

impl Drawer {
    /// All in order.
    pub const EACH: [Self; 3] = [Self::Units, Self::Findings, Self::Charts];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Units => "Units",
            Self::Findings => "Findings",
            Self::Charts => "Charts",
        }
    }
}

/// A question that must be answered before anything else.
#[derive(Debug, Clone, PartialEq)]
pub enum Question {
    /// The plan has changes that are not saved.
    Unsaved(Next),
    /// Someone else changed the file since it was read.
    ChangedOnDisk(PathBuf),
    /// Deleting a roof takes things along.
    DeleteRoof {
        /// Name of the roof.
        name: String,
        /// Units that go with it.
        units: usize,
        /// Obstacles that go with it.
        obstacles: usize,
    },
    /// A plan that was opened to be looked at is about to be changed.
    Edit,
    /// Work of an earlier run was found.
    Recover {
        /// The copy.
        copy: PathBuf,
        /// What it is a copy of, in words.
        of: String,
    },
}

/// What goes on after the question about unsaved changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Next {
    /// A new plan.
    New,
    /// Another plan, chosen by a dialog.
    Open,
    /// This plan.
    OpenPath(PathBuf),
    /// What is sound of this plan.
    OpenSoundParts(PathBuf),
    /// A demonstration plan.
    OpenDemonstration(usize),
    /// Back to the start page.
    Close,
    /// The end of the program.
    Quit,
}
