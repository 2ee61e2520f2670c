//! A quiet grid on the sheet, in steps of 1, 2 or 5 times a power of ten.

use egui::{Painter, Stroke};
use glam::DVec2;

use crate::session::{Camera, SheetRect};
use crate::theme::Palette;

/// Least distance of grid lines, points.
const LEAST_PT: f64 = 28.0;

/// Distance of grid lines, m.
pub fn pitch_m(m_per_pt: f64) -> f64 {
    // Tool steps are at least four points; a grid of seven times that is calm.
    crate::tools::gesture::step_m(m_per_pt * LEAST_PT / 4.0)
}

/// Draws it.
pub fn paint(painter: &Painter, camera: &Camera, sheet: SheetRect, palette: &Palette) {
    let seen = camera.seen(sheet);
    let pitch = pitch_m(camera.m_per_pt);
    let (low, high) = ((seen.min_m / pitch).floor(), (seen.max_m / pitch).ceil());
    let stroke = |index: f64| Stroke::new(if (index % 5.0) == 0.0 { 1.3 } else { 0.7 }, palette.grid);
    let mut index = low.x;
    while index <= high.x {
        let x = camera.screen_from_drawing(sheet, DVec2::new(index * pitch, 0.0)).x as f32;
        painter.vline(x, (sheet.min.y as f32)..=(sheet.max.y as f32), stroke(index));
        index += 1.0;
    }
    let mut index = low.y;
    while index <= high.y {
        let y = camera.screen_from_drawing(sheet, DVec2::new(0.0, index * pitch)).y as f32;
        painter.hline((sheet.min.x as f32)..=(sheet.max.x as f32), y, stroke(index));
        index += 1.0;
    }
}
