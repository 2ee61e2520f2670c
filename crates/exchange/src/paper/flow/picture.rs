//! A drawing as a piece, at its own scale.

use std::sync::Arc;

use gantline_drawing::Drawing;
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::piece::{Keep, Piece, set_apart};
use crate::paper::ink::Hand;
use crate::paper::measure::lines;
use crate::paper::page::OnPage;

/// From the drawing to its caption.
const TO_CAPTION_MM: f64 = 1.5;
/// Lines that half the width of a pen reaches beyond a drawing's bounds, mm.
const RIM_MM: f64 = 0.5;
/// What a page keeps for the caption, mm.
const CAPTION_MM: f64 = 16.0;

/// A drawing in the middle between the margins with its caption under it. What is too large for a page is cut round its
/// middle, and the caption says so; nothing is ever scaled.
pub(super) fn picture(drawing: &Arc<Drawing>, caption: &str, wide_mm: f64, high_mm: f64) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut caption = caption.to_owned();
    let bounds = drawing.bounds().filter(Bounds::is_finite).filter(|_| drawing.scale.m_per_mm > 0.0);
    if let Some(bounds) = bounds {
        let bounds = bounds.grown(drawing.scale.m(RIM_MM));
        let whole_mm = bounds.size_m() / drawing.scale.m_per_mm;
        let room_mm = DVec2::new(wide_mm, high_mm - CAPTION_MM);
        let shown_mm = whole_mm.min(room_mm);
        let middle = (bounds.min_m + bounds.max_m) / 2.0;
        let half = shown_mm * drawing.scale.m_per_mm / 2.0;
        let window = Bounds { min_m: middle - half, max_m: middle + half };
        if shown_mm != whole_mm {
            caption = format!(
                "{caption}\nCut: at its scale the drawing is {:.0} by {:.0} mm, of which {:.0} by {:.0} mm fit on this page.",
                whole_mm.x, whole_mm.y, shown_mm.x, shown_mm.y
            );
        }
        let at_mm = DVec2::new((wide_mm - shown_mm.x) / 2.0, -shown_mm.y);
        let things = vec![OnPage::Picture { drawing: Arc::clone(drawing), window, at_mm }];
        let keep = if caption.trim().is_empty() { Keep::Free } else { Keep::WithNext };
        pieces.push(Piece { height_mm: shown_mm.y, behind_mm: TO_CAPTION_MM, things, keep, ..Piece::default() });
    }
    if !caption.trim().is_empty() {
        let hand = Hand::remark();
        let all = lines(caption.trim(), hand, wide_mm);
        let count = all.len();
        for (index, line) in all.into_iter().enumerate() {
            let mut piece = Piece::line(line, hand, 0.0);
            piece.keep = if index + 1 < count { Keep::Together } else { Keep::Free };
            pieces.push(piece);
        }
    }
    let behind = pieces.last().map_or(0.0, |last| last.behind_mm).max(3.0);
    let only = pieces.len() == 1;
    set_apart(&mut pieces, 2.0, behind);
    if !only && let Some(first) = pieces.first_mut() {
        first.behind_mm = TO_CAPTION_MM;
    }
    pieces
}
