//! The legend at the lower right of the plan: a sample of every hatch that is on it, with its word.

use egui::{Painter, Rect, Stroke, pos2, vec2};
use gantline_drawing::legend::{entries, legend_marks};
use gantline_drawing::{Drawing, Scale};
use glam::DVec2;

use super::paint::{Painted, scale_of};
use crate::session::{Camera, SheetRect};
use crate::theme::Palette;

/// Rows of a column, and those of a long legend, so that it keeps clear of the scale bar.
const ROWS: usize = 3;
const MANY: usize = 12;
const ROWS_OF_MANY: usize = 4;
const MARGIN_PT: f32 = 14.0;
const PADDING_PT: f32 = 9.0;

/// Draws the legend of a drawing.
pub fn paint(painter: &Painter, drawing: &Drawing, camera: &Camera, sheet: SheetRect, palette: &Palette) {
    let kinds = entries(drawing);
    if kinds.is_empty() {
        return;
    }
    let scale: Scale = scale_of(camera);
    let rows = if kinds.len() > MANY { ROWS_OF_MANY } else { ROWS };
    let legend = Drawing::of(scale, legend_marks(&kinds, DVec2::ZERO, rows, scale));
    let Some(bounds) = legend.bounds() else {
        return;
    };
    let size = bounds.size_m() / camera.m_per_pt;
    let size = vec2(size.x as f32, size.y as f32) + vec2(PADDING_PT, PADDING_PT) * 2.0;
    let corner = pos2(sheet.max.x as f32 - MARGIN_PT, sheet.max.y as f32 - MARGIN_PT);
    let frame = Rect::from_min_max(corner - size, corner);
    painter.rect(frame, 4.0, palette.panel, Stroke::new(1.0, palette.hairline), egui::StrokeKind::Inside);
    // A sheet of its own, in whose middle the legend lies.
    let own = SheetRect {
        min: DVec2::new(f64::from(frame.min.x), f64::from(frame.min.y)),
        max: DVec2::new(f64::from(frame.max.x), f64::from(frame.max.y)),
    };
    let eye = Camera { center: (bounds.min_m + bounds.max_m) / 2.0, ..*camera };
    Painted::of(&legend, &eye, own, palette, painter).paint(&eye, own, painter);
}
