//! A piece of a text that is never broken: a line, a row of a table, a drawing.

use std::rc::Rc;

use glam::DVec2;

use crate::paper::formula::Laid;
use crate::paper::ink::Hand;
use crate::paper::measure::width_mm;
use crate::paper::page::{OnPage, Words};

/// How firmly a piece stands on one page with the next.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Keep {
    /// A page may end behind it.
    #[default]
    Free,
    /// Not unless a page can't hold what belongs together.
    Together,
    /// Never: a heading with what it heads.
    WithNext,
}

/// The head of a table, to stand again on each page.
#[derive(Debug)]
pub(super) struct Head {
    pub height_mm: f64,
    /// From its upper left corner, y up.
    pub things: Vec<OnPage>,
}

/// A piece.
#[derive(Debug, Default)]
pub(super) struct Piece {
    pub height_mm: f64,
    /// Least free height to the piece before and the one behind; the larger of two counts, none at a page's ends.
    pub before_mm: f64,
    pub behind_mm: f64,
    /// From its upper left corner, y up; x from the left margin.
    pub things: Vec<OnPage>,
    pub keep: Keep,
    /// What stands over it where it is the first on a page.
    pub head: Option<Rc<Head>>,
    pub role: Role,
}

/// What a piece is for the document as a whole.
#[derive(Debug, Default, Clone, PartialEq, Eq)]
pub(super) enum Role {
    /// Nothing of its own.
    #[default]
    Plain,
    /// The first line of a heading.
    Heading { level: u8, words: String },
    /// The line in the list of contents that tells a heading's page, by the heading's number.
    Entry(usize),
    /// No piece but the end of a page.
    NewPage,
}

impl Piece {
    /// A line of words that begins at some distance from the left margin.
    pub fn line(words: String, hand: Hand, at_mm: f64) -> Self {
        let mut piece = Self { height_mm: hand.line_mm(), ..Self::default() };
        piece.put_words(words, hand, DVec2::new(at_mm, -hand.baseline_mm()));
        piece
    }

    /// Puts words on it.
    pub fn put_words(&mut self, words: String, hand: Hand, at_mm: DVec2) {
        if !words.trim().is_empty() {
            let Hand { face, size_mm, ink } = hand;
            self.things.push(OnPage::Words(Words { words, at_mm, size_mm, face, ink }));
        }
    }

    /// Puts words on it that end at some distance from the left margin.
    pub fn put_words_ending(&mut self, words: String, hand: Hand, end_mm: DVec2) {
        let at_mm = end_mm - DVec2::new(width_mm(&words, hand), 0.0);
        self.put_words(words, hand, at_mm);
    }

    /// Puts a formula on it.
    pub fn put_laid(&mut self, laid: Laid, at_mm: DVec2) {
        self.things.extend(laid.things.into_iter().map(|thing| thing.moved(at_mm)));
    }
}

/// Keeps the first two and the last two lines of a paragraph together.
pub(super) fn hold_ends(lines: &mut [Piece]) {
    let count = lines.len();
    for (index, line) in lines.iter_mut().enumerate() {
        if index + 1 < count && (index == 0 || index + 2 == count) {
            line.keep = line.keep.max(Keep::Together);
        }
    }
}

/// Free height over the first and behind the last of some pieces.
pub(super) fn set_apart(pieces: &mut [Piece], before_mm: f64, behind_mm: f64) {
    if let Some(first) = pieces.first_mut() {
        first.before_mm = before_mm;
    }
    if let Some(last) = pieces.last_mut() {
        last.behind_mm = behind_mm;
    }
}
