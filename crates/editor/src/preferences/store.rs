//! Reads and writes the preferences. Text that can't be read gives the defaults and is said, never a refusal to start.

use std::path::PathBuf;

use gantline_exchange::disk;

use super::Preferences;

/// Where preferences and recovery copies are kept.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Store {
    /// Folder of the preferences; none: they are kept only while the program runs.
    pub settings: Option<PathBuf>,
    /// Folder of recovery copies of plans never saved.
    pub recovery: Option<PathBuf>,
}

/// Names another folder for everything, for tests and for a program on a stick.
pub const FOLDER_VARIABLE: &str = "GANTLINE_CONFIG";
const FILE: &str = "preferences.json";

impl Store {
    /// The user's folders, or the one that the environment names.
    pub fn of_user() -> Self {
        if let Some(folder) = std::env::var_os(FOLDER_VARIABLE).filter(|value| !value.is_empty()) {
            return Self::in_folder(PathBuf::from(folder));
        }
        directories::ProjectDirs::from("", "", "gantline").map_or_else(Self::default, |folders| Self {
            settings: Some(folders.config_dir().to_owned()),
            recovery: Some(folders.data_dir().join("recovery")),
        })
    }

    /// Everything in one folder.
    pub fn in_folder(folder: PathBuf) -> Self {
        Self { recovery: Some(folder.join("recovery")), settings: Some(folder) }
    }

    /// The preferences, and what is to be said when they could not be read.
    pub fn read(&self) -> (Preferences, Option<String>) {
        let Some(file) = self.settings.as_ref().map(|folder| folder.join(FILE)) else {
            return (Preferences::default(), None);
        };
        match std::fs::read_to_string(&file) {
            Ok(text) => match serde_json::from_str(&text) {
                Ok(preferences) => (preferences, None),
                Err(fault) => {
                    (Preferences::default(), Some(format!("Preferences in {} are not read: {fault}", file.display())))
                }
            },
            Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => (Preferences::default(), None),
            Err(fault) => {
                (Preferences::default(), Some(format!("Preferences in {} are not read: {fault}", file.display())))
            }
        }
    }

    /// Writes the preferences; what is to be said when that failed.
    pub fn write(&self, preferences: &Preferences) -> Option<String> {
        let folder = self.settings.as_ref()?;
        let text = serde_json::to_string_pretty(preferences).ok()?;
        let made = std::fs::create_dir_all(folder).map_err(|fault| fault.to_string());
        let written =
            made.and_then(|()| disk::replace(&folder.join(FILE), text.as_bytes()).map_err(|fault| fault.to_string()));
        written.err().map(|fault| format!("Preferences are not kept: {fault}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_plan::quantity::UnitSystem;

    #[test]
    fn preferences_read_back_as_written_and_unreadable_ones_are_said() {
        let folder = tempfile::tempdir().unwrap();
        let store = Store::in_folder(folder.path().join("of-its-own"));
        assert_eq!(store.read(), (Preferences::default(), None));
        let mut preferences = Preferences { units: UnitSystem::UsCustomary, ..Preferences::default() };
        preferences.remember(std::path::Path::new("/plans/hall.json"));
        assert_eq!(store.write(&preferences), None);
        assert_eq!(store.read(), (preferences, None));
        std::fs::write(folder.path().join("of-its-own").join(FILE), "{").unwrap();
        assert!(store.read().1.is_some());
    }
}
