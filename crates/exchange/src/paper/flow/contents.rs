//! The list of contents: each heading with the page it stands on, which is known only when all pages are filled.

use glam::DVec2;

use super::piece::{Keep, Piece, Role, set_apart};
use super::sheet::HAIRLINE_MM;
use crate::paper::block::Block;
use crate::paper::ink::{Hand, rule_ink};
use crate::paper::measure::{lines, width_mm};
use crate::paper::page::{OnPage, Words};

/// Room for the number of a page.
const NUMBER_MM: f64 = 12.0;
/// How far sections stand in.
const INDENT_MM: f64 = 5.0;

/// Level and words of all headings, in order.
pub(super) fn headings(blocks: &[Block]) -> Vec<(u8, &str)> {
    let mut all = Vec::new();
    for block in blocks {
        match block {
            Block::Heading { level, words } => all.push((*level, words.as_str())),
            Block::Together(inside) => all.extend(headings(inside)),
            _ => {}
        }
    }
    all
}

/// The list.
pub(super) fn contents(headings: &[(u8, &str)], wide_mm: f64, high_mm: f64) -> Vec<Piece> {
    let all = of_levels(headings, 2, wide_mm);
    let title = Hand::heading(2);
    let mut pieces = vec![Piece::line("Contents".to_owned(), title, 0.0)];
    let tall: f64 = all.iter().map(|entry| entry.height_mm + entry.before_mm).sum();
    pieces.extend(if tall + 2.0 * title.line_mm() > high_mm { of_levels(headings, 1, wide_mm) } else { all });
    if let Some(first) = pieces.first_mut() {
        first.keep = Keep::WithNext;
        first.behind_mm = 1.6;
    }
    let before = pieces.first().map_or(0.0, |first| first.before_mm);
    set_apart(&mut pieces, before.max(6.0), 4.0);
    pieces
}

fn of_levels(headings: &[(u8, &str)], deepest: u8, wide_mm: f64) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (number, &(level, words)) in headings.iter().enumerate() {
        if level == 0 || level > deepest {
            continue;
        }
        let at = INDENT_MM * f64::from(level - 1);
        let all = lines(words, Hand::body(), wide_mm - at - NUMBER_MM);
        let count = all.len();
        for (index, line) in all.into_iter().enumerate() {
            let end = at + width_mm(&line, Hand::body());
            let mut piece = Piece::line(line, Hand::body(), at);
            piece.before_mm = if level == 1 && index == 0 { 1.2 } else { 0.0 };
            if index + 1 == count {
                piece.role = Role::Entry(number);
                leader(&mut piece, end + 2.0, wide_mm - NUMBER_MM + 2.0);
            } else {
                piece.keep = Keep::WithNext;
            }
            pieces.push(piece);
        }
    }
    pieces
}

/// Leads the eye from the words to the number.
fn leader(piece: &mut Piece, from_mm: f64, to_mm: f64) {
    if to_mm > from_mm {
        let up = -Hand::body().baseline_mm();
        let points_mm = vec![DVec2::new(from_mm, up), DVec2::new(to_mm, up)];
        piece.things.push(OnPage::Line { points_mm, width_mm: HAIRLINE_MM, ink: rule_ink() });
    }
}

/// The number of a page, for the entry whose upper left corner is there.
pub(super) fn number(page: usize, at_mm: DVec2, wide_mm: f64) -> OnPage {
    let Hand { face, size_mm, ink } = Hand::body();
    let words = page.to_string();
    let right = wide_mm - width_mm(&words, Hand::body());
    OnPage::Words(Words { words, at_mm: at_mm + DVec2::new(right, -Hand::body().baseline_mm()), size_mm, face, ink })
}
