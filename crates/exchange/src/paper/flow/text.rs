//! Headings, paragraphs and formulas as pieces.

use glam::DVec2;

use super::piece::{Keep, Piece, Role, hold_ends, set_apart};
use crate::paper::block::Look;
use crate::paper::formula::{Formula, lines as formula_lines};
use crate::paper::ink::{ASCENT_EM, DESCENT_EM, Hand, caution_ink};
use crate::paper::measure::{clean, lines, width_mm};
use crate::paper::page::OnPage;

/// Where the words of an item begin, behind its dot.
const ITEM_MM: f64 = 4.0;
/// Where formulas begin.
const FORMULA_MM: f64 = 6.0;
/// Free height over and under each line of a formula.
const OVER_FORMULA_MM: f64 = 0.4;
/// A source has at most this share of a formula's line; a longer one stands under it.
const SOURCE_SHARE: f64 = 0.42;
/// Frame of a caution: width of its line, and room between it and the words.
const FRAME_MM: f64 = 0.35;
const IN_FRAME_MM: f64 = 2.6;

/// A heading.
pub(super) fn heading(level: u8, words: &str, wide_mm: f64) -> Vec<Piece> {
    let hand = Hand::heading(level);
    let mut pieces: Vec<Piece> =
        lines(words, hand, wide_mm).into_iter().map(|line| Piece::line(line, hand, 0.0)).collect();
    for piece in &mut pieces {
        piece.keep = Keep::WithNext;
    }
    let (before, behind) = match level {
        0 | 1 => (9.0, 2.6),
        2 => (6.5, 1.6),
        _ => (4.0, 0.9),
    };
    set_apart(&mut pieces, before, behind);
    if let Some(first) = pieces.first_mut() {
        first.role = Role::Heading { level, words: clean(words).replace('\n', " ").trim().to_owned() };
    }
    pieces
}

/// A paragraph.
pub(super) fn paragraph(words: &str, look: Look, wide_mm: f64) -> Vec<Piece> {
    let plain = |hand: Hand, at_mm: f64, before_mm: f64, behind_mm: f64| {
        let lines = lines(words, hand, wide_mm - at_mm);
        let mut pieces: Vec<Piece> = lines.into_iter().map(|line| Piece::line(line, hand, at_mm)).collect();
        hold_ends(&mut pieces);
        set_apart(&mut pieces, before_mm, behind_mm);
        pieces
    };
    match look {
        Look::Plain => plain(Hand::body(), 0.0, 1.0, 1.8),
        Look::Remark => plain(Hand::remark(), 0.0, 0.6, 1.4),
        Look::Item => {
            let mut pieces = plain(Hand::body(), ITEM_MM, 0.4, 0.7);
            if let Some(first) = pieces.first_mut() {
                first.put_words("•".to_owned(), Hand::body(), DVec2::new(1.0, -Hand::body().baseline_mm()));
            }
            pieces
        }
        Look::Caution => caution(words, wide_mm),
    }
}

/// Words in a frame; each line carries its part of it, so that a long caution goes on over pages.
fn caution(words: &str, wide_mm: f64) -> Vec<Piece> {
    let hand = Hand::body();
    let lines = lines(words, hand, wide_mm - 2.0 * IN_FRAME_MM);
    let count = lines.len();
    let (left, right) = (FRAME_MM / 2.0, wide_mm - FRAME_MM / 2.0);
    let mut pieces = Vec::with_capacity(count);
    for (index, line) in lines.into_iter().enumerate() {
        let (is_first, is_last) = (index == 0, index + 1 == count);
        let over = if is_first { IN_FRAME_MM - 0.6 } else { 0.0 };
        let under = if is_last { IN_FRAME_MM - 0.6 } else { 0.0 };
        let height_mm = hand.line_mm() + over + under;
        let mut piece =
            Piece { height_mm, keep: if is_last { Keep::Free } else { Keep::Together }, ..Piece::default() };
        let mut stroke = |from: DVec2, to: DVec2| {
            piece.things.push(OnPage::Line { points_mm: vec![from, to], width_mm: FRAME_MM, ink: caution_ink() });
        };
        let low = if is_last { FRAME_MM / 2.0 - height_mm } else { -height_mm };
        for x in [left, right] {
            stroke(DVec2::new(x, 0.0), DVec2::new(x, low));
        }
        for (is_there, y) in [(is_first, -FRAME_MM / 2.0), (is_last, low)] {
            if is_there {
                stroke(DVec2::new(0.0, y), DVec2::new(wide_mm, y));
            }
        }
        piece.put_words(line, hand, DVec2::new(IN_FRAME_MM, -over - hand.baseline_mm()));
        pieces.push(piece);
    }
    set_apart(&mut pieces, 2.0, 3.0);
    pieces
}

/// A formula with its source at the right margin.
pub(super) fn formula(formula: &Formula, source: &str, wide_mm: f64) -> Vec<Piece> {
    let (hand, small) = (Hand::body(), Hand::remark());
    let source = clean(source).replace('\n', " ");
    let source_wide = width_mm(source.trim(), small);
    let is_beside = source_wide > 0.0 && source_wide <= SOURCE_SHARE * wide_mm;
    let room = wide_mm - FORMULA_MM - if is_beside { source_wide + 4.0 } else { 0.0 };
    let mut pieces = Vec::new();
    let mut baseline_mm = 0.0;
    for laid in formula_lines(formula, hand, room) {
        let (up, down) = (laid.up_mm.max(ASCENT_EM * hand.size_mm), laid.down_mm.max(DESCENT_EM * hand.size_mm));
        baseline_mm = up + OVER_FORMULA_MM;
        let height_mm = baseline_mm + down + OVER_FORMULA_MM;
        let mut piece = Piece { height_mm, keep: Keep::Together, ..Piece::default() };
        piece.put_laid(laid, DVec2::new(FORMULA_MM, -baseline_mm));
        pieces.push(piece);
    }
    if is_beside {
        if let Some(last) = pieces.last_mut() {
            last.put_words_ending(source.trim().to_owned(), small, DVec2::new(wide_mm, -baseline_mm));
        }
    } else if source_wide > 0.0 {
        for line in lines(&source, small, wide_mm - FORMULA_MM) {
            let mut piece = Piece { height_mm: small.line_mm(), keep: Keep::Together, ..Piece::default() };
            piece.put_words_ending(line, small, DVec2::new(wide_mm, -small.baseline_mm()));
            pieces.push(piece);
        }
    }
    if let Some(last) = pieces.last_mut() {
        last.keep = Keep::Free;
    }
    set_apart(&mut pieces, 1.2, 1.6);
    pieces
}
