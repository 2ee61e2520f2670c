//! What a user would miss after a restart in any project.

use std::path::{Path, PathBuf};

use gantline_plan::quantity::UnitSystem;
use serde::{Deserialize, Serialize};

use crate::session::OverlaySet;

/// Preferences of a user.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Preferences {
    /// Units of measure on screen.
    pub units: UnitSystem,
    /// Light or dark.
    pub theme: ThemeChoice,
    /// What the wheel does.
    pub wheel: WheelDoes,
    /// The overlay set shown last.
    pub overlays: OverlaySet,
    /// Files opened last, the newest first.
    pub recent: Vec<PathBuf>,
}

/// Light or dark.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ThemeChoice {
    /// As the system has it.
    #[default]
    System,
    /// Ink on paper.
    Light,
    /// Chalk on slate.
    Dark,
}

/// What the wheel does over a sheet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WheelDoes {
    /// Zooms at the pointer.
    #[default]
    Zooms,
    /// Pans, as two fingers on a touchpad do.
    Pans,
}

/// How many files are remembered.
const REMEMBERED: usize = 8;

impl Preferences {
    /// Remembers a file as the newest.
    pub fn remember(&mut self, path: &Path) {
        self.recent.retain(|known| known != path);
        self.recent.insert(0, path.to_owned());
        self.recent.truncate(REMEMBERED);
    }
}
