//! Bytes to plan, or where in the file the trouble is and what was expected there.

use serde::Deserialize;
use serde_json::Value;

use super::sound::{self, Unsound};
use super::{FORMAT, VERSION, limits, migrate};
use crate::document::Plan;

/// Why a file can't be read as a plan.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ReadError {
    /// Too many bytes.
    #[error("the file has {has} bytes; at most {most} are read")]
    TooLarge {
        /// Bytes in the file.
        has: usize,
        /// Bytes that are read.
        most: usize,
    },
    /// Too much in it besides attachments.
    #[error("the file has {has} bytes besides its texts and attachments; at most {most} are read")]
    TooMuchText {
        /// Bytes outside of strings.
        has: usize,
        /// Bytes that are read.
        most: usize,
    },
    /// Not JSON text.
    #[error("line {line}, column {column}: {what}")]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// JSON, but no plan of ours.
    #[error("this is not a Gantline plan: \"format\" is {found}, not \"{FORMAT}\"")]
    OtherFormat {
        /// What stands there.
        found: String,
    },
    /// Made by a newer version of the program.
    #[error("the file is of version {found}; this program reads up to version {VERSION}: open it with a newer one")]
    Newer {
        /// The file's version.
        found: u64,
    },
    /// No version, or one that never was.
    #[error("\"version\" is {found}; it must be a whole number from 1")]
    NoVersion {
        /// What stands there.
        found: String,
    },
    /// A part that is missing, of the wrong kind or out of range.
    #[error("{path}: {what}")]
    Part {
        /// Where in the file, such as `placements › unit-17 › stands`.
        path: String,
        /// What is wrong there.
        what: String,
    },
}

impl From<Unsound> for ReadError {
    fn from(unsound: Unsound) -> Self {
        Self::Part { path: unsound.path, what: unsound.what }
    }
}

/// Reads a plan file.
pub fn read(bytes: &[u8]) -> Result<Plan, ReadError> {
    plan_of(&members_of(bytes)?)
}

/// The members of a file of ours, without `format` and `version`.
pub(super) fn members_of(bytes: &[u8]) -> Result<Value, ReadError> {
    if bytes.len() > limits::LARGEST_FILE_BYTES {
        return Err(ReadError::TooLarge { has: bytes.len(), most: limits::LARGEST_FILE_BYTES });
    }
    let most = limits::MOST_OUTSIDE_STRINGS_BYTES;
    if bytes.len() > most {
        let outside = outside_strings(bytes);
        if outside > most {
            return Err(ReadError::TooMuchText { has: outside, most });
        }
    }
    let mut value: Value = serde_json::from_slice(bytes).map_err(|error| ReadError::NotJson {
        line: error.line(),
        column: error.column(),
        what: error.to_string(),
    })?;
    let version = check_version(&value)?;
    if let Value::Object(members) = &mut value {
        members.remove("format");
        members.remove("version");
        migrate::migrate(members, version);
    }
    Ok(value)
}

/// The plan that members make, if it hangs together.
pub(super) fn plan_of(members: &Value) -> Result<Plan, ReadError> {
    let plan = plan_from(members)?;
    sound::check(&plan)?;
    Ok(plan)
}

/// How many bytes stand outside of strings; the marks around a string count as outside.
fn outside_strings(bytes: &[u8]) -> usize {
    let (mut outside, mut is_inside, mut is_escaped) = (0, false, false);
    for &byte in bytes {
        match (is_inside, byte) {
            (true, _) if is_escaped => is_escaped = false,
            (true, b'\\') => is_escaped = true,
            (_, b'"') => {
                is_inside = !is_inside;
                outside += 1;
            }
            (true, _) => {}
            (false, _) => outside += 1,
        }
    }
    outside
}

fn check_version(value: &Value) -> Result<u64, ReadError> {
    let shown = |found: Option<&Value>| found.map_or_else(|| "missing".to_owned(), Value::to_string);
    if value.get("format").and_then(Value::as_str) != Some(FORMAT) {
        return Err(ReadError::OtherFormat { found: shown(value.get("format")) });
    }
    match value.get("version").and_then(Value::as_u64) {
        Some(found @ 1..=VERSION) => Ok(found),
        Some(found) if found > VERSION => Err(ReadError::Newer { found }),
        _ => Err(ReadError::NoVersion { found: shown(value.get("version")) }),
    }
}

/// Reads the whole; on failure looks for the deepest part that is at fault, to name it.
fn plan_from(value: &Value) -> Result<Plan, ReadError> {
    Plan::deserialize(value).map_err(|error| {
        let path = fault_path(value);
        ReadError::Part {
            path: if path.is_empty() { "plan".to_owned() } else { path.join(" › ") },
            what: error.to_string(),
        }
    })
}

/// Finds which member of the plan fails by reading the members of its maps one by one.
fn fault_path(value: &Value) -> Vec<String> {
    use crate::basis::{DesignCode, LoadBasis};
    use crate::catalog::{Family, MakeUp};
    use crate::document::{
        Attachment, ContentHash, Corner, Datum, Obstacle, Placement, Roof, Slab, Standing, Title, Underlay,
    };

    fn fails<T: for<'de> Deserialize<'de>>(value: &Value) -> bool {
        T::deserialize(value).is_err()
    }
    let mut path = Vec::new();
    let Value::Object(members) = value else {
        return path;
    };
    for (key, member) in members {
        let is_at_fault = match key.as_str() {
            "title" => fails::<Title>(member),
            "datum" => fails::<Datum>(member),
            "basis" => fails::<LoadBasis>(member),
            "code" => fails::<DesignCode>(member),
            _ => false,
        };
        if is_at_fault {
            path.push(key.clone());
            return path;
        }
        let Value::Object(items) = member else {
            continue;
        };
        for (name, item) in items {
            let is_at_fault = match key.as_str() {
                "roofs" => fails::<Roof>(item),
                "obstacles" => fails::<Obstacle>(item),
                "families" => fails::<Family>(item),
                "placements" => fails::<Placement>(item),
                "underlays" => fails::<Underlay>(item),
                "attachments" => name.parse::<ContentHash>().is_err() || fails::<Attachment>(item),
                _ => false,
            };
            if !is_at_fault {
                continue;
            }
            path.extend([key.clone(), name.clone()]);
            let inner: Option<&str> = match key.as_str() {
                "placements" if item.get("stands").is_none_or(fails::<Standing>) => Some("stands"),
                "placements" if item.get("make_up").is_none_or(fails::<MakeUp>) => Some("make_up"),
                "roofs" if item.get("slab").is_some_and(fails::<Slab>) => Some("slab"),
                "roofs" if item.get("outer").is_none_or(fails::<Vec<Corner>>) => Some("outer"),
                _ => None,
            };
            path.extend(inner.map(str::to_owned));
            return path;
        }
    }
    path
}
