//! Words and lines on a sheet: styles of lettering, words in lines that are not too long.

use gantline_drawing::letter_width::{Face, width_em};
use glam::DVec2;

use super::paper_size::Area;
use crate::palette::{BLACK, Color, GRAY};
use crate::paper::{OnPage, Words};

/// A style of lettering on sheets. The smallest has capitals of 1.95 mm: what is smaller than 1.8 mm can't be read on a roof.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Style {
    /// The em, mm.
    pub size_mm: f64,
    /// Cut.
    pub face: Face,
    /// Color.
    pub ink: Color,
}

/// Text of notes, tables and title block.
pub const TEXT: Style = Style { size_mm: 2.8, face: Face::Condensed, ink: BLACK };
/// What a text is about.
pub const LABEL: Style = Style { size_mm: 2.8, face: Face::Condensed, ink: GRAY };
/// Heads of tables and of parts of the strip.
pub const STRONG: Style = Style { size_mm: 2.8, face: Face::SemiBold, ink: BLACK };
/// Titles.
pub const TITLE: Style = Style { size_mm: 4.6, face: Face::SemiBold, ink: BLACK };
/// The sheet's number.
pub const NUMBER: Style = Style { size_mm: 9.0, face: Face::SemiBold, ink: BLACK };

impl Style {
    /// From one line to the next, mm.
    pub fn line_mm(self) -> f64 {
        self.size_mm * 1.3
    }

    /// Width of words, mm.
    pub fn width_mm(self, words: &str) -> f64 {
        width_em(words, self.face) * self.size_mm
    }

    /// Words that begin at a place.
    pub fn at(self, words: impl Into<String>, at_mm: DVec2) -> OnPage {
        OnPage::Words(Words { words: words.into(), at_mm, size_mm: self.size_mm, face: self.face, ink: self.ink })
    }

    /// Words that end at a place.
    pub fn ending_at(self, words: impl Into<String>, at_mm: DVec2) -> OnPage {
        let words = words.into();
        let width_mm = self.width_mm(&words);
        self.at(words, at_mm - DVec2::X * width_mm)
    }

    /// Words in lines no longer than a width; a word longer than that is cut where it ends.
    pub fn lines(self, words: &str, width_mm: f64) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        let mut line = String::new();
        for word in words.split_whitespace() {
            let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
            if self.width_mm(&longer) <= width_mm {
                line = longer;
                continue;
            }
            if !line.is_empty() {
                lines.push(std::mem::take(&mut line));
            }
            for letter in word.chars() {
                line.push(letter);
                if self.width_mm(&line) > width_mm && line.chars().count() > 1 {
                    line.pop();
                    lines.push(std::mem::replace(&mut line, letter.to_string()));
                }
            }
        }
        if !line.is_empty() {
            lines.push(line);
        }
        lines
    }
}

/// A line through points.
pub fn line(points_mm: impl Into<Vec<DVec2>>, width_mm: f64) -> OnPage {
    OnPage::Line { points_mm: points_mm.into(), width_mm, ink: BLACK }
}

/// A level line.
pub fn rule(from_mm: DVec2, length_mm: f64, width_mm: f64) -> OnPage {
    line([from_mm, from_mm + DVec2::X * length_mm], width_mm)
}

/// The outline of an area.
pub fn outline(area: Area, width_mm: f64) -> OnPage {
    let (a, c) = (area.min_mm, area.max_mm);
    line([a, DVec2::new(c.x, a.y), c, DVec2::new(a.x, c.y), a, DVec2::new(c.x, a.y)], width_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_all_words_and_none_is_too_long() {
        let hash = "0123456789abcdef".repeat(4);
        let words = format!("Plan of a roof, {hash} and what follows");
        let lines = TEXT.lines(&words, 40.0);
        assert!(lines.iter().all(|line| TEXT.width_mm(line) <= 40.0), "{lines:?}");
        let letters = |text: &str| text.chars().filter(|letter| !letter.is_whitespace()).collect::<String>();
        assert_eq!(letters(&lines.concat()), letters(&words));
        assert!(TEXT.lines("  ", 40.0).is_empty());
    }

    #[test]
    fn nothing_on_a_sheet_is_too_small_to_be_read() {
        for style in [TEXT, LABEL, STRONG, TITLE, NUMBER] {
            assert!(style.size_mm * gantline_drawing::text::CAP_PER_EM >= 1.8, "{style:?}");
        }
        for style in gantline_drawing::TextStyle::ALL {
            assert!(style.cap_mm() >= 1.8, "{style:?}");
        }
    }
}
