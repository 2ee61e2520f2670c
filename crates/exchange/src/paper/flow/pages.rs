//! Pieces on pages: a piece goes on the page if it and what must stand with it fit, else on the next.

use glam::DVec2;

use super::piece::{Keep, Piece, Role};
use super::sheet::Sheet;
use super::{contents, picture, table, text};
use crate::paper::block::{Block, Look};
use crate::paper::page::{OnPage, Page};

/// Lays a text out on pages. The same text gives the same pages; there is at least one, which may be empty.
pub fn lay_out(blocks: &[Block], sheet: &Sheet) -> Vec<Page> {
    let headings = contents::headings(blocks);
    let mut pieces = Vec::new();
    for (block, next) in with_next(blocks) {
        pieces.extend(leading_on(pieces_of(block, &headings, sheet), block, next));
    }
    let mut filling = Filling::new(sheet);
    filling.take(&mut pieces);
    filling.finished()
}

fn pieces_of(block: &Block, headings: &[(u8, &str)], sheet: &Sheet) -> Vec<Piece> {
    let (wide_mm, high_mm) = (sheet.width_mm(), sheet.height_mm());
    match block {
        Block::Heading { level, words } => text::heading(*level, words, wide_mm),
        Block::Paragraph { words, look } => text::paragraph(words, *look, wide_mm),
        Block::Formula { formula, source } => text::formula(formula, source, wide_mm),
        Block::Table(table) => table::table(table, wide_mm, high_mm),
        Block::Picture { drawing, caption } => picture::picture(drawing, caption, wide_mm, high_mm),
        Block::Contents => contents::contents(headings, wide_mm, high_mm),
        Block::Together(inside) => {
            let each = with_next(inside);
            let mut pieces: Vec<Piece> =
                each.flat_map(|(block, next)| leading_on(pieces_of(block, headings, sheet), block, next)).collect();
            together(&mut pieces, high_mm);
            pieces
        }
        Block::NewPage => vec![Piece { role: Role::NewPage, ..Piece::default() }],
    }
}

/// Each block with the one behind it.
fn with_next(blocks: &[Block]) -> impl Iterator<Item = (&Block, Option<&Block>)> {
    blocks.iter().zip(blocks.iter().skip(1).map(Some).chain([None]))
}

/// No more lines lead on to what follows them.
const LEADING_LINES: usize = 3;

/// A few words right before a table, a formula or a drawing say what it is: they stay with it.
fn leading_on(mut pieces: Vec<Piece>, block: &Block, next: Option<&Block>) -> Vec<Piece> {
    let leads = matches!(block, Block::Paragraph { look: Look::Plain | Look::Remark, .. })
        && matches!(next, Some(Block::Table(_) | Block::Formula { .. } | Block::Picture { .. }))
        && pieces.len() <= LEADING_LINES;
    if leads && let Some(last) = pieces.last_mut() {
        last.keep = Keep::WithNext;
    }
    pieces
}

/// Holds pieces together if a page can hold them all.
fn together(pieces: &mut [Piece], high_mm: f64) {
    if stack_mm(pieces) > high_mm {
        return;
    }
    if let Some((_, all_but_last)) = pieces.split_last_mut() {
        for piece in all_but_last {
            piece.keep = piece.keep.max(Keep::Together);
        }
    }
}

/// Height of some pieces one under the other, from the top of the first to the foot of the last.
fn stack_mm(pieces: &[Piece]) -> f64 {
    let gaps = pieces.iter().zip(pieces.iter().skip(1)).map(|(over, under)| gap_mm(over.behind_mm, under));
    pieces.iter().map(|piece| piece.height_mm).sum::<f64>() + gaps.sum::<f64>()
}

fn gap_mm(behind_mm: f64, under: &Piece) -> f64 {
    behind_mm.max(under.before_mm)
}

/// So that heights that add up to a page's to the last bit are not too high.
const SLACK_MM: f64 = 1e-6;

struct Filling<'a> {
    sheet: &'a Sheet,
    done: Vec<(Option<String>, Vec<OnPage>)>,
    bookmark: Option<String>,
    things: Vec<OnPage>,
    /// How far the page is filled, mm.
    used_mm: f64,
    /// Free height that the last piece asks for behind it.
    behind_mm: f64,
    is_fresh: bool,
    /// Page of each heading.
    headings: Vec<usize>,
    /// Entries of the list of contents: page (from 0), upper left corner, heading.
    entries: Vec<(usize, DVec2, usize)>,
}

impl<'a> Filling<'a> {
    const fn new(sheet: &'a Sheet) -> Self {
        Self {
            sheet,
            done: Vec::new(),
            bookmark: None,
            things: Vec::new(),
            used_mm: 0.0,
            behind_mm: 0.0,
            is_fresh: true,
            headings: Vec::new(),
            entries: Vec::new(),
        }
    }

    fn take(&mut self, pieces: &mut [Piece]) {
        let mut at = 0;
        while let Some(piece) = pieces.get(at) {
            if piece.role == Role::NewPage {
                if !self.is_fresh {
                    self.next_page();
                }
                at += 1;
                continue;
            }
            let end = self.chain(pieces, at);
            let chain = pieces.get_mut(at..end).unwrap_or_default();
            if !self.is_fresh && !self.has_room(chain) {
                self.next_page();
            }
            for piece in chain {
                self.put(piece);
            }
            at = end.max(at + 1);
        }
    }

    /// The end of the pieces that stand on one page with the one at hand: all that belong together if a page can hold them,
    /// else those that must never part, else the one alone.
    fn chain(&self, pieces: &[Piece], at: usize) -> usize {
        let page_mm = self.sheet.height_mm();
        for least in [Keep::Together, Keep::WithNext] {
            let mut end = at + 1;
            let mut high_mm = pieces.get(at).map_or(0.0, |piece| piece.height_mm + over_mm(piece));
            while let (Some(last), Some(next)) = (pieces.get(end - 1), pieces.get(end)) {
                if last.keep < least || next.role == Role::NewPage || high_mm > page_mm {
                    break;
                }
                high_mm += gap_mm(last.behind_mm, next) + next.height_mm;
                end += 1;
            }
            if high_mm <= page_mm + SLACK_MM {
                return end;
            }
        }
        at + 1
    }

    fn has_room(&self, chain: &[Piece]) -> bool {
        let gap = chain.first().map_or(0.0, |first| gap_mm(self.behind_mm, first));
        self.used_mm + gap + stack_mm(chain) <= self.sheet.height_mm() + SLACK_MM
    }

    fn put(&mut self, piece: &mut Piece) {
        if self.is_fresh {
            if let Some(head) = piece.head.take() {
                let at = self.at_mm();
                self.things.extend(head.things.iter().cloned().map(|thing| thing.moved(at)));
                self.used_mm += head.height_mm;
            }
        } else {
            self.used_mm += gap_mm(self.behind_mm, piece);
        }
        self.is_fresh = false;
        let at = self.at_mm();
        self.things.extend(std::mem::take(&mut piece.things).into_iter().map(|thing| thing.moved(at)));
        self.used_mm += piece.height_mm;
        self.behind_mm = piece.behind_mm;
        match &piece.role {
            Role::Heading { level, words } => {
                self.headings.push(self.done.len() + 1);
                if *level == 1 {
                    self.bookmark = Some(match self.bookmark.take() {
                        Some(first) => format!("{first}, {words}"),
                        None => words.clone(),
                    });
                }
            }
            Role::Entry(heading) => self.entries.push((self.done.len(), at, *heading)),
            Role::Plain | Role::NewPage => {}
        }
    }

    /// Where the next piece's upper left corner lies on the page.
    fn at_mm(&self) -> DVec2 {
        self.sheet.top_left_mm() - DVec2::new(0.0, self.used_mm)
    }

    fn next_page(&mut self) {
        self.done.push((self.bookmark.take(), std::mem::take(&mut self.things)));
        self.used_mm = 0.0;
        self.behind_mm = 0.0;
        self.is_fresh = true;
    }

    fn finished(mut self) -> Vec<Page> {
        if !self.is_fresh || self.done.is_empty() {
            self.next_page();
        }
        for (page, at_mm, heading) in &self.entries {
            if let (Some((_, things)), Some(number)) = (self.done.get_mut(*page), self.headings.get(*heading)) {
                things.push(contents::number(*number, *at_mm, self.sheet.width_mm()));
            }
        }
        let count = self.done.len();
        let sheet = self.sheet;
        let page = |(index, (bookmark, mut things)): (usize, (Option<String>, Vec<OnPage>))| {
            things.extend(sheet.around(index + 1, count));
            Page { size_mm: sheet.format.size_mm(), bookmark, things }
        };
        self.done.into_iter().enumerate().map(page).collect()
    }
}

/// Height of what stands over a piece where it is the first on a page.
fn over_mm(piece: &Piece) -> f64 {
    piece.head.as_ref().map_or(0.0, |head| head.height_mm)
}
