//! How sources are written: what opens a file, what a `mod.rs` holds, which names and which traps there are none of.

use super::source::{all_sources, none};

#[test]
fn every_source_opens_with_its_most_important_sentence() {
    let mute = all_sources().into_iter().filter(|source| !source.text.starts_with("//!"));
    none(&mute.map(|source| source.place).collect::<Vec<_>>(), "a file opens with a sentence");
}

#[test]
fn no_file_is_a_drawer_for_odds_and_ends() {
    let drawers = ["utils.rs", "util.rs", "helpers.rs", "helper.rs", "common.rs", "types.rs", "misc.rs"];
    let all = all_sources().into_iter().map(|source| source.place);
    let found = all.filter(|place| drawers.contains(&place.rsplit('/').next().unwrap_or_default()));
    none(&found.collect::<Vec<_>>(), "a file is named for its one idea");
}

/// Files that bend the rule below; DEVELOPERS.md says why. None is to be added.
const HOLD_MORE: [&str; 3] = [
    "crates/plan/src/assess/rules/mod.rs",
    "crates/editor/src/carry_out/mod.rs",
    "crates/editor/src/panels/inspector/mod.rs",
];

#[test]
fn a_mod_file_holds_documents_modules_and_imports_only() {
    let mut offenses = Vec::new();
    let is_held = |place: &str| place.ends_with("/mod.rs") && !HOLD_MORE.contains(&place);
    for source in all_sources().into_iter().filter(|source| is_held(&source.place)) {
        let code: String = source.code.lines().filter(|line| !line.trim_start().starts_with('#')).collect();
        for statement in code.split(';').map(str::trim).filter(|statement| !statement.is_empty()) {
            let stripped = statement.trim_start_matches("pub(crate) ").trim_start_matches("pub(super) ");
            let stripped = stripped.trim_start_matches("pub ");
            if !stripped.starts_with("mod ") && !stripped.starts_with("use ") {
                offenses.push(format!("{}: {}", source.place, statement.chars().take(60).collect::<String>()));
            }
        }
    }
    none(&offenses, "a mod.rs holds documents, modules and imports only");
}

#[test]
fn nothing_outside_tests_gives_up() {
    let traps = [".unwrap()", ".expect(", "panic!(", "todo!(", "unimplemented!(", "unreachable!("];
    let mut offenses = Vec::new();
    for source in all_sources() {
        for (number, line) in (1..).zip(source.code.lines()) {
            offenses.extend(
                traps
                    .iter()
                    .filter(|trap| line.contains(**trap))
                    .map(|trap| format!("{}, line of code {number}: {trap}", source.place)),
            );
        }
    }
    none(&offenses, "nothing that a user can type or open panics");
}

#[test]
fn nothing_tells_of_the_machine_it_was_written_on() {
    let places = ["/home/", "/root/", "/work/", "/tmp/wt"];
    let mut offenses = Vec::new();
    for source in all_sources() {
        offenses.extend(
            places
                .iter()
                .filter(|place| source.text.contains(**place))
                .map(|place| format!("{}: {place}", source.place)),
        );
    }
    none(&offenses, "no path of one machine stands in a source");
}
