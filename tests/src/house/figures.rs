//! No figure with its unit is written in the editor: `plan::quantity` formats every one, so that units can be chosen.

use super::source::{none, sources};

/// Units as they stand on the screen, longer ones first.
const UNITS: [&str; 16] =
    ["kN·m", "kN m", "N·m", "m²", "mm", "cm", "km", "kN", "kPa", "MPa", "kg", "lbf", "ft", "lb", "m", "N"];

#[test]
fn no_figure_with_a_unit_is_written_in_the_editor() {
    let mut offenses = Vec::new();
    for source in sources("crates/editor/src") {
        for text in texts(&source.code) {
            offenses.extend(figure_with_unit(text).map(|unit| format!("{}: {unit} in \"{text}\"", source.place)));
        }
    }
    none(&offenses, "plan::quantity writes figures with their units, the editor does not");
}

/// The contents of all string literals of a code, raw ones included.
fn texts(code: &str) -> Vec<&str> {
    let bytes = code.as_bytes();
    let mut found = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        match bytes[at] {
            // A character, perhaps a quote itself; a lifetime has no second quote so near.
            b'\'' if bytes.get(at + 2) == Some(&b'\'') => at += 3,
            b'\'' if bytes.get(at + 1) == Some(&b'\\') && bytes.get(at + 3) == Some(&b'\'') => at += 4,
            b'"' => {
                let hashes = bytes[..at].iter().rev().take_while(|&&byte| byte == b'#').count();
                let is_raw = at > hashes && bytes[at - hashes - 1] == b'r';
                let end = if is_raw { raw_end(code, at + 1, hashes) } else { plain_end(bytes, at + 1) };
                found.push(&code[at + 1..end]);
                at = end + 1;
            }
            _ => at += 1,
        }
    }
    found
}

fn raw_end(code: &str, from: usize, hashes: usize) -> usize {
    let closing = format!("\"{}", "#".repeat(hashes));
    code[from..].find(&closing).map_or(code.len(), |at| from + at)
}

fn plain_end(bytes: &[u8], from: usize) -> usize {
    let mut at = from;
    while at < bytes.len() && bytes[at] != b'"' {
        at += if bytes[at] == b'\\' { 2 } else { 1 };
    }
    at.min(bytes.len())
}

/// The unit that stands behind a digit or a placeholder, with at most one blank between.
fn figure_with_unit(text: &str) -> Option<&'static str> {
    let stands_alone =
        |rest: &str| !rest.chars().next().is_some_and(|letter| letter.is_alphanumeric() || letter == '/');
    text.char_indices().filter(|(_, letter)| letter.is_ascii_digit() || *letter == '}').find_map(|(at, _)| {
        let behind = &text[at + 1..];
        let behind = behind.strip_prefix([' ', '\u{a0}', '\u{202f}']).unwrap_or(behind);
        UNITS.into_iter().find(|unit| behind.strip_prefix(unit).is_some_and(stands_alone))
    })
}

#[test]
fn figures_with_units_are_found_in_literals_and_nowhere_else() {
    assert_eq!(texts(r##"a("x \" y", '"', r#"z " z"#)"##), [r#"x \" y"#, r#"z " z"#]);
    assert_eq!(figure_with_unit("at least 1.10 m over"), Some("m"));
    assert_eq!(figure_with_unit("{:.1} kN"), Some("kN"));
    assert_eq!(figure_with_unit("{length}, 3 more of 5 near"), None);
    assert_eq!(figure_with_unit("M 12"), None);
}
