//! Comparing two texts that hold numbers: everything else must be equal, numbers within a tolerance.

/// The first place where two texts differ.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Line in the first text, from 1.
    pub line: usize,
    /// What the first text says there.
    pub first: String,
    /// What the second text says there.
    pub second: String,
}

/// The first difference, if there is one; numbers may differ by `relative` of the larger of them and 1.
pub fn difference(first: &str, second: &str, relative: f64) -> Option<Difference> {
    let (mut firsts, mut seconds) = (words(first), words(second));
    loop {
        let (a, b) = match (firsts.next(), seconds.next()) {
            (None, None) => return None,
            (a, b) => (a.unwrap_or((0, "end of text")), b.unwrap_or((0, "end of text"))),
        };
        if !agree(a.1, b.1, relative) {
            return Some(Difference { line: a.0, first: a.1.to_owned(), second: b.1.to_owned() });
        }
    }
}

fn agree(a: &str, b: &str, relative: f64) -> bool {
    match (a.parse::<f64>(), b.parse::<f64>()) {
        (Ok(a), Ok(b)) => (a - b).abs() <= relative * a.abs().max(b.abs()).max(1.0),
        _ => a == b,
    }
}

/// Words between blanks, commas, colons, brackets and braces, with their lines. JSON's strings are split at blanks too,
/// which does no harm where only equality is asked for.
fn words(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let is_between = |letter: char| letter.is_whitespace() || ",:[]{}".contains(letter);
    (1..).zip(text.lines()).flat_map(move |(line, words)| {
        words.split(is_between).filter(|word| !word.is_empty()).map(move |word| (line, word))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_digits_of_a_number_may_differ_and_nothing_else() {
        let first = "{\"made_by\": \"a.py\",\n \"x_m\": [1.0, 2.5e3]}";
        assert_eq!(difference(first, "{\"made_by\":\"a.py\",\"x_m\":[1.0000000000001,2500]}", 1e-9), None);
        let found = difference(first, "{\"made_by\": \"a.py\",\n \"x_m\": [1.0, 2500.01]}", 1e-9).unwrap();
        assert_eq!((found.line, found.second.as_str()), (2, "2500.01"));
        assert!(difference(first, "{\"made_by\": \"b.py\",\n \"x_m\": [1.0, 2.5e3]}", 1e-9).is_some());
    }

    #[test]
    fn a_text_that_ends_early_differs() {
        let found = difference("[1, 2, 3]", "[1, 2]", 1e-9).unwrap();
        assert_eq!(found.second, "end of text");
    }
}
