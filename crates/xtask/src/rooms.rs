//! `rooms`: imports between the crates run one way, and each outside package stays in the rooms that may know it.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use crate::bench::files;
use crate::steps::{Done, root};

/// Each room with the rooms it may enter. `xtask` and `mechanics` enter none.
const MAY_ENTER: [(&str, &[&str]); 9] = [
    ("mechanics", &[]),
    ("plan", &["mechanics"]),
    ("drawing", &["plan", "mechanics"]),
    ("exchange", &["drawing", "plan", "mechanics"]),
    ("print", &["exchange", "drawing", "plan"]),
    ("editor", &["exchange", "drawing", "plan", "mechanics"]),
    ("gantline", &["editor", "print", "exchange", "drawing", "plan"]),
    ("tests", &["editor", "exchange", "drawing", "plan", "mechanics"]),
    ("xtask", &[]),
];

/// Outside packages that only these rooms may use, in their code as in their tests, but for [`FOR_ANY_TEST`].
const ONLY_IN: [(&str, &[&str]); 28] = [
    ("egui", &["editor", "tests"]),
    ("eframe", &["editor"]),
    ("egui_extras", &["editor"]),
    ("egui_plot", &["editor"]),
    ("egui_kittest", &["editor", "tests"]),
    ("rfd", &["editor"]),
    ("directories", &["editor"]),
    ("clap", &["gantline"]),
    ("serde", &["plan", "exchange", "editor"]),
    ("serde_json", &["plan", "exchange", "editor", "gantline", "tests"]),
    ("schemars", &["plan", "exchange"]),
    ("tempfile", &["exchange", "editor", "gantline", "tests"]),
    ("base64", &["plan"]),
    ("csv", &["exchange"]),
    ("encoding_rs", &["exchange"]),
    ("geojson", &["exchange"]),
    ("hayro", &["exchange"]),
    ("png", &["exchange"]),
    ("resvg", &["exchange"]),
    ("calamine", &["exchange"]),
    ("dxf", &["exchange"]),
    ("rust_xlsxwriter", &["exchange"]),
    ("krilla", &["print"]),
    ("rustybuzz", &["print"]),
    ("zune-core", &["exchange"]),
    ("zune-jpeg", &["exchange"]),
    ("i_overlay", &["plan"]),
    ("nalgebra", &["mechanics", "tests"]),
];

/// Packages that any room's tests may use: they read catalogs and reference values with them.
const FOR_ANY_TEST: [&str; 1] = ["serde_json"];

/// Checks every room's `Cargo.toml` and sources.
pub fn rooms() -> Done {
    let root = root()?;
    let mut trespasses = Vec::new();
    for (room, may_enter) in MAY_ENTER {
        let folder = if room == "tests" { root.join("tests") } else { root.join("crates").join(room) };
        let manifest = read(&folder.join("Cargo.toml"))?;
        trespasses.extend(of_manifest(room, may_enter, &manifest));
        for file in sources(&folder)? {
            let place = file.strip_prefix(&root).unwrap_or(&file).display().to_string();
            trespasses.extend(of_source(room, may_enter, &read(&file)?).map(|what| format!("{place}: {what}")));
        }
    }
    let known: Vec<&str> = MAY_ENTER.iter().map(|(room, _)| *room).collect();
    for folder in files(&root.join("crates"))? {
        let name = folder.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if !known.contains(&name.as_str()) {
            trespasses.push(format!("crates/{name} is no room that this check knows"));
        }
    }
    if trespasses.is_empty() {
        println!("Imports run one way: gantline, editor and print, exchange, drawing, plan, mechanics.");
        return Ok(());
    }
    Err(format!("imports that may not be:\n  {}", trespasses.join("\n  ")))
}

/// What a manifest asks for and may not.
fn of_manifest<'a>(room: &'a str, may_enter: &'a [&str], manifest: &str) -> impl Iterator<Item = String> + 'a {
    dependencies(manifest).into_iter().filter_map(move |(package, section)| {
        let is_allowed = match package.strip_prefix("gantline-") {
            Some(other) => may_enter.contains(&other),
            None if section.starts_with("dev-") && FOR_ANY_TEST.contains(&package.as_str()) => true,
            None => ONLY_IN.iter().find(|(name, _)| *name == package).is_none_or(|(_, rooms)| rooms.contains(&room)),
        };
        (!is_allowed).then(|| format!("{room} has {package} among its {section}"))
    })
}

/// Packages with the section of the manifest they stand in.
fn dependencies(manifest: &str) -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    let mut section = String::new();
    for line in manifest.lines().map(str::trim) {
        if let Some(name) = line.strip_prefix('[').and_then(|rest| rest.strip_suffix(']')) {
            name.clone_into(&mut section);
            // The long form, `[dependencies.egui]`, opens a section of its own.
            if let Some((kind, package)) = section.split_once("dependencies.") {
                found.insert(package.to_owned(), format!("{kind}dependencies"));
            }
        } else if section.ends_with("dependencies") && !line.starts_with('#') {
            let end = line.find(|letter: char| "=. \t".contains(letter)).unwrap_or(0);
            if end > 0 {
                found.insert(line[..end].trim_matches('"').to_owned(), section.clone());
            }
        }
    }
    found
}

/// What a source names and may not; a path to a crate of ours is an import wherever it stands.
fn of_source<'a>(room: &'a str, may_enter: &'a [&str], source: &'a str) -> impl Iterator<Item = String> + 'a {
    MAY_ENTER.iter().filter(move |(other, _)| *other != room && !may_enter.contains(other)).filter_map(
        move |(other, _)| {
            let path = format!("gantline_{other}::");
            let mut code = source.lines().filter(|line| !line.trim_start().starts_with("//"));
            code.any(|line| line.contains(&path)).then(|| format!("{room} names {path}"))
        },
    )
}

/// All Rust sources below a folder, in order.
fn sources(folder: &Path) -> Done<Vec<PathBuf>> {
    let mut found = Vec::new();
    for file in files(folder)? {
        if file.is_dir() && file.file_name().is_some_and(|name| name != "target") {
            found.extend(sources(&file)?);
        } else if file.extension().is_some_and(|ending| ending == "rs") {
            found.push(file);
        }
    }
    Ok(found)
}

fn read(file: &Path) -> Done<String> {
    fs::read_to_string(file).map_err(|cause| format!("can't read {}: {cause}", file.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trespasses(room: &str, manifest: &str) -> Vec<String> {
        let (_, may_enter) = MAY_ENTER.iter().find(|(name, _)| *name == room).unwrap();
        of_manifest(room, may_enter, manifest).collect()
    }

    #[test]
    fn a_room_may_enter_the_rooms_below_it_only() {
        assert!(trespasses("plan", "[dependencies]\ngantline-mechanics.workspace = true\n").is_empty());
        let up = trespasses("plan", "[dev-dependencies]\ngantline-drawing = { path = \"../drawing\" }\n");
        assert_eq!(up, ["plan has gantline-drawing among its dev-dependencies"]);
    }

    #[test]
    fn the_toolkit_is_for_the_editor_only_however_it_is_written() {
        assert_eq!(trespasses("drawing", "[dependencies.egui]\nversion = \"1\"\n").len(), 1);
        assert_eq!(trespasses("exchange", "[target.'cfg(unix)'.dependencies]\nrfd = \"1\"\n").len(), 1);
        assert_eq!(trespasses("mechanics", "[dependencies]\nserde.workspace = true\n").len(), 1);
        assert!(trespasses("editor", "[dependencies]\negui.workspace = true\n").is_empty());
    }

    #[test]
    fn tests_may_read_json_in_every_room() {
        assert!(trespasses("mechanics", "[dev-dependencies]\nserde_json.workspace = true\n").is_empty());
        assert_eq!(trespasses("mechanics", "[dependencies]\nserde_json.workspace = true\n").len(), 1);
    }

    #[test]
    fn a_path_in_the_code_counts_and_one_in_a_comment_does_not() {
        // Put together here, so that this file does not name the room itself.
        let path = ["gantline_plan", "document"].join("::");
        assert_eq!(of_source("mechanics", &[], &format!("use {path};")).count(), 1);
        assert_eq!(of_source("mechanics", &[], &format!("// as in {path}")).count(), 0);
    }
}
