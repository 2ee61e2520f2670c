//! The table of demands in DEVELOPERS.md names tests that are there.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use super::source::{none, sources};

/// Every name between back-ticks in the second column of the table.
fn named_tests(text: &str) -> Vec<&str> {
    let table = text.split("| demand | held by |").nth(1).unwrap_or_default();
    let rows = table.lines().skip(2).take_while(|line| line.starts_with('|'));
    let held_by = rows.filter_map(|row| row.trim_matches('|').split_once('|').map(|(_, second)| second));
    held_by.flat_map(|second| second.split('`').skip(1).step_by(2)).collect()
}

#[test]
fn every_test_that_the_table_of_demands_names_is_there() {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().join("DEVELOPERS.md");
    let text = fs::read_to_string(file).unwrap();
    let named = named_tests(&text);
    assert!(named.len() > 40, "the table is where it is looked for");
    let mut known = BTreeSet::new();
    for source in sources("crates").into_iter().chain(sources("tests")) {
        for after in source.text.split("fn ").skip(1) {
            known.insert(after.split('(').next().unwrap_or_default().to_owned());
        }
    }
    let gone = named.into_iter().filter(|name| !known.contains(*name)).map(str::to_owned);
    none(&gone.collect::<Vec<_>>(), "DEVELOPERS.md names tests that are not there");
}

#[test]
fn names_are_read_from_the_second_column_only() {
    let text = "| demand | held by |\n| --- | --- |\n| `a` walk | `b`, `c` |\n| d | missing |\n\n| `e` | `f` |\n";
    assert_eq!(named_tests(text), ["b", "c"]);
}
