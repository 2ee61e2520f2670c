//! The sheet that a text is printed on: its format, its margins, what stands at head and foot of every page.

use glam::DVec2;

use crate::paper::ink::{Hand, rule_ink};
use crate::paper::measure::{clean, lines, width_mm};
use crate::paper::page::{OnPage, Words};

/// Format of a page, upright.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Format {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 in (ANSI/ASME Y14.1).
    Letter,
}

impl Format {
    /// Width and height, mm.
    pub const fn size_mm(self) -> DVec2 {
        match self {
            Self::A4 => DVec2::new(210.0, 297.0),
            Self::Letter => DVec2::new(215.9, 279.4),
        }
    }
}

/// Margins, mm; the left one has room for a punch.
const LEFT_MM: f64 = 24.0;
const RIGHT_MM: f64 = 18.0;
const TOP_MM: f64 = 24.0;
const BOTTOM_MM: f64 = 22.0;
/// From the text to the line under the head, and from that to the head's words.
const RULE_OVER_TEXT_MM: f64 = 5.0;
const WORDS_OVER_RULE_MM: f64 = 1.6;
/// From the text's lower end to the foot's words.
const FOOT_UNDER_TEXT_MM: f64 = 9.0;
/// Width of thin lines, mm.
pub(super) const HAIRLINE_MM: f64 = 0.12;

/// What is the same on every page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Format.
    pub format: Format,
    /// At the head, left: what the document is of.
    pub head_left: String,
    /// At the head, right: its revision and date.
    pub head_right: String,
    /// At the foot, left; right of it stands the number of the page.
    pub foot: String,
}

impl Sheet {
    /// Width of the text, mm.
    pub fn width_mm(&self) -> f64 {
        self.format.size_mm().x - LEFT_MM - RIGHT_MM
    }

    /// Height of the text, mm.
    pub fn height_mm(&self) -> f64 {
        self.format.size_mm().y - TOP_MM - BOTTOM_MM
    }

    /// Upper left corner of the text, from the page's lower left, mm.
    pub fn top_left_mm(&self) -> DVec2 {
        DVec2::new(LEFT_MM, self.format.size_mm().y - TOP_MM)
    }

    /// Head and foot of a page; pages count from 1.
    pub(super) fn around(&self, page: usize, pages: usize) -> Vec<OnPage> {
        let (left, top) = (LEFT_MM, self.top_left_mm().y);
        let right = left + self.width_mm();
        let rule = top + RULE_OVER_TEXT_MM;
        let (head, foot) = (rule + WORDS_OVER_RULE_MM, BOTTOM_MM - FOOT_UNDER_TEXT_MM);
        let number = format!("page {page} of {pages}");
        let mut things = Vec::new();
        if !(self.head_left.is_empty() && self.head_right.is_empty()) {
            let points_mm = vec![DVec2::new(left, rule), DVec2::new(right, rule)];
            things.push(OnPage::Line { points_mm, width_mm: HAIRLINE_MM, ink: rule_ink() });
        }
        self.pair(&self.head_left, &self.head_right, head, &mut things);
        self.pair(&self.foot, &number, foot, &mut things);
        things
    }

    /// Words at the left and at the right end of a line; the right ones have at most two fifths of it, and the left ones
    /// what they leave.
    fn pair(&self, left: &str, right: &str, up_mm: f64, things: &mut Vec<OnPage>) {
        let width = self.width_mm();
        let right = fitted(right, width * 0.4);
        let right_wide = width_mm(&right, Hand::remark());
        let left = fitted(left, width - right_wide - 4.0);
        let at = DVec2::new(LEFT_MM, up_mm);
        for (words, at_mm) in [(left, at), (right, at + DVec2::new(width - right_wide, 0.0))] {
            if !words.is_empty() {
                let Hand { face, size_mm, ink } = Hand::remark();
                things.push(OnPage::Words(Words { words, at_mm, size_mm, face, ink }));
            }
        }
    }
}

/// Words in one line; what does not fit is left out and a sign says so.
fn fitted(words: &str, wide_mm: f64) -> String {
    let words = clean(words).replace('\n', " ");
    if width_mm(&words, Hand::remark()) <= wide_mm {
        return words.trim().to_owned();
    }
    let room_mm = wide_mm - width_mm("…", Hand::remark());
    let first = lines(&words, Hand::remark(), room_mm).into_iter().next().unwrap_or_default();
    first + "…"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_words_at_the_head_are_cut_and_say_so() {
        let sheet = Sheet { head_left: "Some long name of a building ".repeat(20), ..Sheet::default() };
        let things = sheet.around(1, 2);
        let words: Vec<&Words> = things
            .iter()
            .filter_map(|thing| if let OnPage::Words(words) = thing { Some(words) } else { None })
            .collect();
        assert!(words[0].words.ends_with('…'));
        assert!(width_mm(&words[0].words, Hand::remark()) <= sheet.width_mm());
        assert_eq!(words[1].words, "page 1 of 2");
    }
}
