//! Words measured and broken into lines, by the widths of the shipped typeface's letters.

use gantline_drawing::letter_width::{Face, width_em};

use super::ink::Hand;

/// Units that stay on the line of their figure.
const UNITS: [&str; 25] = [
    "kNm", "m", "mm", "cm", "m²", "mm²", "m³", "N", "kN", "N·m", "kN·m", "Pa", "kPa", "MPa", "N/m", "kN/m", "kg", "t",
    "%", "in", "ft", "lbf", "lb", "kip", "psi",
];

/// Width of words in a line, mm.
pub fn width_mm(words: &str, hand: Hand) -> f64 {
    width_em(words, hand.face) * hand.size_mm
}

/// Words without what can't stand in a line: signs of control are blanks, signs that turn the direction of writing are left
/// out, so that nothing stands elsewhere than it is read.
pub fn clean(words: &str) -> String {
    let seen = words.chars().filter(|letter| !matches!(letter, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}'));
    seen.map(|letter| if letter.is_control() && letter != '\n' { ' ' } else { letter }).collect()
}

/// Words in lines no wider than asked, mm; a line break in them begins a new line. A word that is wider than a line is cut.
/// At least one line, perhaps empty.
pub fn lines(words: &str, hand: Hand, width_mm: f64) -> Vec<String> {
    let width_em = if width_mm > 0.0 { width_mm / hand.size_mm } else { 0.0 };
    let mut lines = Vec::new();
    for part in clean(words).split(['\n', '\u{2028}', '\u{2029}', '\u{85}']) {
        let mut filling = Filling { lines: &mut lines, line: String::new(), used_em: 0.0, width_em, face: hand.face };
        for word in unbroken(part) {
            filling.take(&word);
        }
        let last = filling.line;
        lines.push(last);
    }
    lines
}

/// Words between blanks; a figure and its unit are one.
fn unbroken(words: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for word in words.split([' ', '\t']).filter(|word| !word.is_empty()) {
        let bare = word.trim_end_matches([',', '.', ';', ':', ')']);
        match all.last_mut() {
            Some(last) if UNITS.contains(&bare) && last.ends_with(|letter: char| letter.is_ascii_digit()) => {
                last.push('\u{a0}');
                last.push_str(word);
            }
            _ => all.push(word.to_owned()),
        }
    }
    all
}

/// Width of the widest word that should not be cut, mm.
pub fn widest_word_mm(words: &str, hand: Hand) -> f64 {
    let all = words.split('\n').flat_map(unbroken);
    all.map(|word| width_mm(&word, hand)).fold(0.0, f64::max)
}

struct Filling<'a> {
    lines: &'a mut Vec<String>,
    line: String,
    used_em: f64,
    width_em: f64,
    face: Face,
}

/// So that a sum of widths that fills a line to the last bit is not too wide.
const SLACK_EM: f64 = 1e-9;

impl Filling<'_> {
    fn take(&mut self, word: &str) {
        let wide = width_em(word, self.face);
        let gap = if self.line.is_empty() { 0.0 } else { width_em(" ", self.face) };
        if self.used_em + gap + wide > self.width_em + SLACK_EM {
            if !self.line.is_empty() {
                self.lines.push(std::mem::take(&mut self.line));
                self.used_em = 0.0;
            }
            let (rest, rest_em) = self.cut(word, wide);
            self.line = rest;
            self.used_em = rest_em;
            return;
        }
        if gap > 0.0 {
            self.line.push(' ');
        }
        self.line.push_str(word);
        self.used_em += gap + wide;
    }

    /// Puts what does not fit of a word into lines of its own; gives the rest with its width.
    fn cut(&mut self, word: &str, wide: f64) -> (String, f64) {
        let mut rest = word;
        let mut rest_em = wide;
        while rest_em > self.width_em + SLACK_EM {
            let at = cut_at(rest, self.face, self.width_em);
            let (head, tail) = rest.split_at(at);
            if tail.is_empty() {
                break;
            }
            self.lines.push(head.to_owned());
            rest_em -= width_em(head, self.face);
            rest = tail;
        }
        (rest.to_owned(), rest_em)
    }
}

/// Where a word is cut: behind a sign that parts it if one is in the last half of the line, else where the line ends; never
/// before its second letter.
pub(super) fn cut_at(word: &str, face: Face, room_em: f64) -> usize {
    let mut used_em = 0.0;
    let mut at_sign = None;
    for (at, letter) in word.char_indices() {
        let mut bytes = [0; 4];
        used_em += width_em(letter.encode_utf8(&mut bytes), face);
        if used_em > room_em + SLACK_EM && at > 0 {
            return at_sign.unwrap_or(at);
        }
        if used_em > room_em / 2.0 && matches!(letter, '-' | '/' | '_' | ',' | '.' | ';' | '–' | '·' | '\u{a0}') {
            at_sign = Some(at + letter.len_utf8());
        }
    }
    word.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(words: &str, width_mm: f64) -> Vec<String> {
        lines(words, Hand::body(), width_mm)
    }

    #[test]
    fn words_fill_lines_and_a_line_break_begins_a_new_one() {
        assert_eq!(of("the rope hangs\nfrom the arm", 15.0), ["the rope", "hangs", "from the", "arm"]);
        assert_eq!(of("", 15.0), [""]);
        assert_eq!(of("a\u{7}b\u{202e}c", 50.0), ["a bc"]);
    }

    #[test]
    fn a_figure_stays_with_its_unit() {
        assert_eq!(of("a pull of 12.50 kN, down", 23.0), ["a pull of", "12.50\u{a0}kN, down"]);
    }

    #[test]
    fn a_long_word_is_cut_and_loses_no_letter() {
        let word = "x".repeat(5000);
        let lines = of(&word, 40.0);
        assert!(lines.iter().all(|line| width_mm(line, Hand::body()) <= 40.0 + 1e-6));
        assert_eq!(lines.concat(), word);
        assert_eq!(of("roof/plan/of-the-north-wing", 30.0), ["roof/plan/of-the-", "north-wing"]);
        assert_eq!(of("wide", 0.0), ["w", "i", "d", "e"], "at least a letter a line");
    }
}
