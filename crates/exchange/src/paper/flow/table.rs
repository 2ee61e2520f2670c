//! A table as pieces: its head, which stands again on each page, and its rows.

use std::rc::Rc;

use glam::DVec2;

use super::piece::{Head, Keep, Piece, hold_ends, set_apart};
use super::sheet::HAIRLINE_MM;
use crate::paper::block::{Cell, Column, Row, Table};
use crate::paper::formula::{Laid, lines as formula_lines, set};
use crate::paper::ink::{Hand, rule_ink, strong_rule_ink};
use crate::paper::measure::{lines, widest_word_mm, width_mm};
use crate::paper::page::OnPage;

/// Free width between columns.
const GAP_MM: f64 = 2.4;
/// No column is narrower; a table with more columns than fit goes on below with the rest of them.
const LEAST_MM: f64 = 9.0;
/// No column asks for more so that its longest word or figure stays whole.
const MOST_ASKED_MM: f64 = 34.0;
/// Free height over and under the words of a row.
const PADDING_MM: f64 = 0.75;
/// Line under the head and at the end.
const STRONG_RULE_MM: f64 = 0.25;
/// Free height around a formula in a cell.
const AROUND_FORMULA_MM: f64 = 0.2;
/// A head that is higher than this share of a page does not stand again.
const HIGHEST_HEAD: f64 = 0.3;

/// A table.
pub(super) fn table(table: &Table, wide_mm: f64, high_mm: f64) -> Vec<Piece> {
    let at_once = ((wide_mm / LEAST_MM) as usize).max(1);
    let mut pieces = Vec::new();
    for first in (0..table.columns.len()).step_by(at_once) {
        let columns = table.columns.get(first..).unwrap_or_default();
        let columns = columns.get(..at_once.min(columns.len())).unwrap_or_default();
        pieces.extend(columns_of(columns, first, &table.rows, wide_mm, high_mm));
    }
    pieces
}

fn columns_of(columns: &[Column], first: usize, rows: &[Row], wide_mm: f64, high_mm: f64) -> Vec<Piece> {
    let spans = spans(columns, &asked(columns, first, rows), wide_mm);
    let head = head(columns, &spans, wide_mm);
    let head_mm = head.first().map_or(0.0, |head| head.height_mm);
    let is_repeated = head.len() == 1 && head_mm < HIGHEST_HEAD * high_mm;
    let repeated = head.first().filter(|_| is_repeated);
    let repeated = repeated.map(|head| Rc::new(Head { height_mm: head.height_mm, things: head.things.clone() }));
    let room_mm = high_mm - if is_repeated { head_mm } else { 0.0 };
    let mut body: Vec<Piece> = Vec::with_capacity(rows.len());
    for row in rows {
        let hand = Hand::cell(row.is_strong);
        let cells = row.cells.get(first..).unwrap_or_default();
        let broken = spans.iter().zip(cells).map(|(span, cell)| (span, cell_lines(cell, hand, span.wide_mm)));
        body.extend(row_pieces(&broken.collect::<Vec<_>>(), hand, room_mm, wide_mm));
    }
    hold_ends(&mut body);
    if let Some(last) = body.last_mut() {
        last.things.push(rule(wide_mm, -last.height_mm, STRONG_RULE_MM));
    }
    for piece in &mut body {
        piece.head.clone_from(&repeated);
    }
    let is_bare = body.is_empty();
    let mut pieces = if is_repeated { head } else { sliced_head(columns, &spans, wide_mm) };
    for piece in &mut pieces {
        piece.keep = Keep::WithNext;
    }
    if is_bare && let Some(last) = pieces.last_mut() {
        last.keep = Keep::Free;
    }
    pieces.extend(body);
    set_apart(&mut pieces, 1.6, 3.6);
    pieces
}

/// Where a column stands.
struct Span {
    at_mm: f64,
    wide_mm: f64,
    is_figures: bool,
}

/// What each column asks for: so wide that no word of it is cut, and no figure parted from its unit.
fn asked(columns: &[Column], first: usize, rows: &[Row]) -> Vec<f64> {
    let mut asked: Vec<f64> =
        columns.iter().map(|column| widest_word_mm(&column.head, Hand::cell(true)).max(LEAST_MM - GAP_MM)).collect();
    for row in rows {
        let hand = Hand::cell(row.is_strong);
        let cells = row.cells.get(first..).unwrap_or_default();
        for ((asked, column), cell) in asked.iter_mut().zip(columns).zip(cells) {
            let wide = match cell {
                Cell::Words(words) if column.is_figures => {
                    words.lines().map(|line| width_mm(line, hand)).fold(0.0, f64::max)
                }
                Cell::Words(words) => widest_word_mm(words, hand),
                Cell::Formula(formula) => set(formula, hand).width_mm,
            };
            *asked = asked.max(wide);
        }
    }
    let last = columns.len().saturating_sub(1);
    let gap = |index: usize| if index < last { GAP_MM } else { 0.0 };
    asked.iter().enumerate().map(|(index, wide)| (wide.min(MOST_ASKED_MM) + gap(index)).max(LEAST_MM)).collect()
}

/// Columns by their shares, but none narrower than it asks where the others can give. Shares that are no positive numbers
/// count as nothing.
fn spans(columns: &[Column], asked: &[f64], wide_mm: f64) -> Vec<Span> {
    let share = |column: &Column| if column.share.is_finite() && column.share > 0.0 { column.share } else { 0.0 };
    let most = columns.iter().map(share).fold(0.0, f64::max);
    let part = |column: &Column| if most > 0.0 { share(column) / most } else { 1.0 };
    let sum: f64 = columns.iter().map(part).sum();
    // All that is asked for may be more than there is: everybody gets the least, and the rest by what they ask.
    let over_least: f64 = asked.iter().map(|asked| asked - LEAST_MM).sum();
    let room = (wide_mm - LEAST_MM * columns.len() as f64).max(0.0);
    let met = if over_least > room { room / over_least } else { 1.0 };
    let needs: Vec<f64> = asked.iter().map(|asked| LEAST_MM + (asked - LEAST_MM) * met).collect();
    let wanted: Vec<f64> = columns.iter().map(|column| wide_mm * part(column) / sum).collect();
    let both = || columns.iter().zip(wanted.iter().zip(&needs));
    let lacking: f64 = both().map(|(_, (wanted, need))| (need - wanted).max(0.0)).sum();
    let spare_of = |is_figures: bool| {
        let of_kind = both().filter(|(column, _)| column.is_figures == is_figures);
        of_kind.map(|(_, (wanted, need))| (wanted - need).max(0.0)).sum::<f64>()
    };
    // Figures need no more than their width, words fill lines: where it is tight, columns of figures give all they can, and
    // what that leaves over or lacks, those of words share.
    let (of_figures, of_words) = if lacking > 0.0 { (spare_of(true), spare_of(false)) } else { (0.0, 0.0) };
    let figures_give = if of_words > 0.0 || of_figures < lacking { 1.0 } else { lacking / of_figures.max(lacking) };
    let change = if of_words > 0.0 { (of_figures - lacking) / of_words } else { 0.0 };
    let widths = both().map(|(column, (wanted, need))| match (wanted - need).max(0.0) {
        _ if lacking <= 0.0 => *wanted,
        spare if wanted < need || spare <= 0.0 => *need,
        spare if column.is_figures => wanted - figures_give * spare,
        spare => wanted + change.max(-1.0) * spare,
    });
    let mut at_mm = 0.0;
    let mut spans = Vec::with_capacity(columns.len());
    for (index, (column, wide)) in columns.iter().zip(widths).enumerate() {
        let gap = if index + 1 < columns.len() { GAP_MM } else { 0.0 };
        spans.push(Span { at_mm, wide_mm: wide - gap, is_figures: column.is_figures });
        at_mm += wide;
    }
    spans
}

/// A line of a cell: what is on it, and how far its letters are from its top and its bottom.
struct Line {
    laid: Laid,
    over_mm: f64,
    under_mm: f64,
}

fn cell_lines(cell: &Cell, hand: Hand, wide_mm: f64) -> Vec<Line> {
    let laid = match cell {
        Cell::Words(words) => lines(words, hand, wide_mm).iter().map(|line| Laid::words(line, hand)).collect(),
        Cell::Formula(formula) => formula_lines(formula, hand, wide_mm),
    };
    let (over, under) = (hand.baseline_mm(), hand.line_mm() - hand.baseline_mm());
    let line = |laid: Laid| Line {
        over_mm: over.max(laid.up_mm + AROUND_FORMULA_MM),
        under_mm: under.max(laid.down_mm + AROUND_FORMULA_MM),
        laid,
    };
    laid.into_iter().map(line).collect()
}

/// A row as one piece; one that is higher than a page as a piece for each of its lines.
fn row_pieces(cells: &[(&Span, Vec<Line>)], hand: Hand, room_mm: f64, wide_mm: f64) -> Vec<Piece> {
    let whole = row_piece(cells, hand, wide_mm);
    if whole.height_mm <= room_mm {
        return vec![whole];
    }
    let most = cells.iter().map(|(_, lines)| lines.len()).max().unwrap_or(0);
    let mut pieces = Vec::with_capacity(most);
    for index in 0..most {
        let lines: Vec<(&Span, &Line)> =
            cells.iter().filter_map(|(span, lines)| Some((*span, lines.get(index)?))).collect();
        let over = lines.iter().map(|(_, line)| line.over_mm).fold(hand.baseline_mm(), f64::max);
        let under = lines.iter().map(|(_, line)| line.under_mm).fold(0.0, f64::max);
        let mut piece = Piece { height_mm: over + under, ..Piece::default() };
        for (span, line) in lines {
            put(&mut piece, span, &line.laid, -over);
        }
        pieces.push(piece);
    }
    if let Some(last) = pieces.last_mut() {
        last.height_mm += PADDING_MM;
        last.things.push(rule(wide_mm, -last.height_mm, HAIRLINE_MM));
    }
    pieces
}

/// The first lines of all cells stand on one line.
fn row_piece(cells: &[(&Span, Vec<Line>)], hand: Hand, wide_mm: f64) -> Piece {
    let first = cells.iter().filter_map(|(_, lines)| lines.first()).map(|line| line.over_mm);
    let first = first.fold(hand.baseline_mm(), f64::max);
    let mut piece = Piece::default();
    let mut lowest = PADDING_MM + hand.line_mm();
    for (span, lines) in cells {
        let mut down = PADDING_MM;
        for (index, line) in lines.iter().enumerate() {
            let over = if index == 0 { first } else { line.over_mm };
            put(&mut piece, span, &line.laid, -(down + over));
            down += over + line.under_mm;
        }
        lowest = lowest.max(down);
    }
    piece.height_mm = lowest + PADDING_MM;
    piece.things.push(rule(wide_mm, -piece.height_mm, HAIRLINE_MM));
    piece
}

fn put(piece: &mut Piece, span: &Span, laid: &Laid, up_mm: f64) {
    let right = if span.is_figures { (span.wide_mm - laid.width_mm).max(0.0) } else { 0.0 };
    piece.put_laid(laid.clone(), DVec2::new(span.at_mm + right, up_mm));
}

fn rule(wide_mm: f64, up_mm: f64, width_mm: f64) -> OnPage {
    let ink = if width_mm > HAIRLINE_MM { strong_rule_ink() } else { rule_ink() };
    OnPage::Line { points_mm: vec![DVec2::new(0.0, up_mm), DVec2::new(wide_mm, up_mm)], width_mm, ink }
}

/// The head in one piece; none where no column has one.
fn head(columns: &[Column], spans: &[Span], wide_mm: f64) -> Vec<Piece> {
    if columns.iter().all(|column| column.head.trim().is_empty()) {
        return Vec::new();
    }
    let hand = Hand::cell(true);
    let set: Vec<Vec<String>> =
        columns.iter().zip(spans).map(|(column, span)| lines(&column.head, hand, span.wide_mm)).collect();
    let most = set.iter().map(Vec::len).max().unwrap_or(0);
    let mut piece = Piece { height_mm: most as f64 * hand.line_mm() + 2.0 * PADDING_MM, ..Piece::default() };
    for (lines, span) in set.into_iter().zip(spans) {
        // Short heads stand at the foot of the head, on the line of the last words of long ones.
        let above = (most - lines.len()) as f64 * hand.line_mm();
        for (index, line) in lines.into_iter().enumerate() {
            let up = -(PADDING_MM + above + index as f64 * hand.line_mm() + hand.baseline_mm());
            put(&mut piece, span, &Laid::words(&line, hand), up);
        }
    }
    piece.things.push(rule(wide_mm, -piece.height_mm, STRONG_RULE_MM));
    vec![piece]
}

/// A head that is too high to stand again, line by line.
fn sliced_head(columns: &[Column], spans: &[Span], wide_mm: f64) -> Vec<Piece> {
    if columns.iter().all(|column| column.head.trim().is_empty()) {
        return Vec::new();
    }
    let hand = Hand::cell(true);
    let cells = columns.iter().zip(spans);
    let set = cells.map(|(column, span)| (span, cell_lines(&Cell::Words(column.head.clone()), hand, span.wide_mm)));
    row_pieces(&set.collect::<Vec<_>>(), hand, 0.0, wide_mm)
}
