//! Group codes and values, a line each, and handles that are never used twice.

use std::fmt::Write as _;

use glam::DVec2;

/// A handle: the name of a thing in the file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Handle(pub u32);

/// The text of a DXF file, as it grows.
#[derive(Debug)]
pub struct Pairs {
    text: String,
    next: u32,
}

/// Handles below this are given to what every file has.
const FIRST_FREE: u32 = 0x40;

impl Pairs {
    /// An empty text.
    pub fn new() -> Self {
        Self::continuing(Handle(FIRST_FREE))
    }

    /// An empty text that gives handles from this one on.
    pub fn continuing(free: Handle) -> Self {
        Self { text: String::new(), next: free.0 }
    }

    /// The text, and the next handle that would be free.
    pub fn done(self) -> (String, Handle) {
        (self.text, Handle(self.next))
    }

    /// A handle that no one has.
    pub fn mint(&mut self) -> Handle {
        self.next += 1;
        Handle(self.next - 1)
    }

    /// A word of the format itself.
    pub fn word(&mut self, code: u16, word: &str) {
        let _ = write!(self.text, "{code:>3}\r\n{word}\r\n");
    }

    /// Words of people.
    pub fn words(&mut self, code: u16, words: &str) {
        let escaped = escaped(words);
        self.word(code, &escaped);
    }

    /// A whole number.
    pub fn whole(&mut self, code: u16, value: i64) {
        let _ = write!(self.text, "{code:>3}\r\n{value}\r\n");
    }

    /// A number of things that follow.
    pub fn count(&mut self, code: u16, count: usize) {
        let _ = write!(self.text, "{code:>3}\r\n{count}\r\n");
    }

    /// A number, to the millionth of a unit.
    pub fn number(&mut self, code: u16, value: f64) {
        let _ = write!(self.text, "{code:>3}\r\n{}\r\n", decimal(value));
    }

    /// A handle.
    pub fn handle(&mut self, code: u16, handle: Handle) {
        let _ = write!(self.text, "{code:>3}\r\n{:X}\r\n", handle.0);
    }

    /// A point in the plane: its z is 0.
    pub fn point(&mut self, code: u16, at: DVec2) {
        self.flat_point(code, at);
        self.number(code + 20, 0.0);
    }

    /// A point that has no z.
    pub fn flat_point(&mut self, code: u16, at: DVec2) {
        self.number(code, at.x);
        self.number(code + 10, at.y);
    }

    /// Begins a section.
    pub fn section(&mut self, name: &str) {
        self.word(0, "SECTION");
        self.word(2, name);
    }

    /// Ends a section.
    pub fn end_section(&mut self) {
        self.word(0, "ENDSEC");
    }
}

/// A number with at most six decimals, always with a point: readers tell reals by it.
pub fn decimal(value: f64) -> String {
    let text = format!("{value:.6}");
    let text = text.trim_end_matches('0');
    let text = if text.ends_with('.') { format!("{text}0") } else { text.to_owned() };
    if text == "-0.0" { "0.0".to_owned() } else { text }
}

/// Words as the format holds them: letters beyond the file's code page by their number, "%%" so that it is no sign of
/// the format, nothing that ends a line.
pub fn escaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    for letter in words.replace("%%", "%%%%%%").chars() {
        match letter {
            '\\' => text.push_str("\\U+005C"),
            '^' => text.push_str("^ "),
            letter if letter.is_control() => text.push(' '),
            letter if letter.is_ascii() || LATIN.contains(&letter) => text.push(letter),
            letter => {
                let mut halves = [0; 2];
                for half in letter.encode_utf16(&mut halves) {
                    let _ = write!(text, "\\U+{half:04X}");
                }
            }
        }
    }
    text
}

/// Letters beyond ASCII that the file's code page, Windows 1252, has at their own numbers.
const LATIN: std::ops::RangeInclusive<char> = '\u{a0}'..='\u{ff}';

/// The text in the file's code page; [`escaped`] has left no other letters in it.
pub fn in_code_page(text: &str) -> Vec<u8> {
    text.chars().map(|letter| u8::try_from(u32::from(letter)).unwrap_or(b'?')).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_a_point_and_no_empty_sign() {
        assert_eq!(decimal(12.0), "12.0");
        assert_eq!(decimal(-1e-9), "0.0");
        assert_eq!(decimal(0.1234567), "0.123457");
    }

    #[test]
    fn letters_that_the_format_gives_a_meaning_stay_letters() {
        assert_eq!(escaped("84 % · γ"), "84 % · \\U+03B3");
        assert_eq!(in_code_page("5 m²"), b"5 m\xb2");
        assert_eq!(escaped("100%%u\nx"), "100%%%%%%u x");
        assert_eq!(escaped("a\\b^J"), "a\\U+005Cb^ J");
    }
}
