//! A source as these tests read it: its code without comments and without its tests.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// One source file.
#[derive(Debug)]
pub struct Source {
    /// Its place in the project, with `/` between folders.
    pub place: String,
    /// Its whole text.
    pub text: String,
    /// Its lines without comments, up to where its tests begin.
    pub code: String,
}

/// All Rust sources below a folder of the project, in order. A folder that is not there has none.
pub fn sources(folder: &str) -> Vec<Source> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the tests lie in the project's folder");
    let mut files = Vec::new();
    collect(&root.join(folder), &mut files);
    files.sort();
    let texts: Vec<(PathBuf, String)> =
        files.into_iter().map(|file| (file.clone(), fs::read_to_string(file).unwrap())).collect();
    let of_tests: BTreeSet<PathBuf> = texts.iter().flat_map(|(file, text)| test_modules(file, text)).collect();
    let own = texts.into_iter().map(|(file, text)| {
        let place = file.strip_prefix(root).unwrap().to_string_lossy().replace('\\', "/");
        let code = if of_tests.contains(&file) { String::new() } else { code_of(&text) };
        Source { place, text, code }
    });
    own.collect()
}

/// All sources of the crates' own code: not their tests, benches and examples.
pub fn all_sources() -> Vec<Source> {
    let mut all = sources("crates");
    all.retain(|source| source.place.split('/').nth(2) == Some("src"));
    assert!(all.len() > 100, "the sources are where they are looked for");
    all
}

fn collect(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).into_iter().flatten() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            collect(&path, files);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            files.push(path);
        }
    }
}

/// Everything from a module of tests on is left out: tests stand at the end of a file.
fn code_of(text: &str) -> String {
    let tests = modules_of_tests(text).find(|(_, declared)| declared.ends_with('{'));
    let own = tests.map_or(text, |(at, _)| &text[..at]);
    own.lines().filter(|line| !line.trim_start().starts_with("//")).flat_map(|line| [line, "\n"]).collect()
}

/// Modules that exist in tests only: where they are declared, and the line that does it from the name on.
fn modules_of_tests(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mark = "#[cfg(test)]\n";
    text.match_indices(mark).filter_map(move |(at, _)| {
        let line = text[at + mark.len()..].lines().next()?;
        let line = line.strip_prefix("pub(crate) ").or_else(|| line.strip_prefix("pub ")).unwrap_or(line);
        Some((at, line.strip_prefix("mod ")?))
    })
}

/// Files that a source names as modules of tests alone.
fn test_modules(file: &Path, text: &str) -> Vec<PathBuf> {
    let owns_folder = file.file_name().is_some_and(|name| name == "mod.rs" || name == "lib.rs" || name == "main.rs");
    let folder = if owns_folder { file.parent().unwrap().to_owned() } else { file.with_extension("") };
    let named = modules_of_tests(text).filter_map(|(_, declared)| declared.strip_suffix(';'));
    named.flat_map(|name| [folder.join(format!("{name}.rs")), folder.join(name).join("mod.rs")]).collect()
}

/// Fails with every offender and what it did.
pub fn none(offenses: &[String], rule: &str) {
    assert!(offenses.is_empty(), "{rule}:\n  {}", offenses.join("\n  "));
}

/// Each source that names one of these words, with the word.
pub fn naming<'a>(sources: &'a [Source], words: &'a [&'a str]) -> Vec<String> {
    let offenses = sources.iter().flat_map(|source| {
        let named = words.iter().filter(|word| names(&source.code, word));
        named.map(|word| format!("{} names {word}", source.place))
    });
    offenses.collect()
}

/// Whether a word stands in a code by itself and not as a part of a longer one.
pub fn names(code: &str, word: &str) -> bool {
    let is_letter = |letter: Option<char>| letter.is_some_and(|letter| letter.is_alphanumeric() || letter == '_');
    code.match_indices(word)
        .any(|(at, _)| !is_letter(code[..at].chars().next_back()) && !is_letter(code[at + word.len()..].chars().next()))
}

#[test]
fn a_word_counts_by_itself_only_and_tests_and_comments_do_not_count() {
    assert!(names("use std::fs;", "std::fs"));
    assert!(names("egui::Ui", "egui"));
    assert!(!names("my_egui::Ui", "egui"));
    assert!(!names("egui_plot", "egui"));
    let text = "use a;\n// b\nfn c() {}\n#[cfg(test)]\nmod tests {\n use d;\n}\n";
    assert_eq!(code_of(text), "use a;\nfn c() {}\n");
    let text = "#[cfg(test)]\nmod witnesses;\nfn c() {}\n";
    assert_eq!(code_of(text), text);
    assert_eq!(test_modules(Path::new("a/mod.rs"), text)[0], Path::new("a/witnesses.rs"));
    assert_eq!(test_modules(Path::new("a/b.rs"), text)[0], Path::new("a/b/witnesses.rs"));
}
