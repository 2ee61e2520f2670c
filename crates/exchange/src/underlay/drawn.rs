//! Lines of a drawing as pixels: white where there is a line, so that whoever shows them gives them a color.

use glam::DVec2;
use resvg::tiny_skia::{Paint, PathBuilder, Pixmap, Stroke, Transform};

use super::lines::Lines;
use super::pixels::{Extent, Pixels, Wanted};

/// Around lines that run along the rim, pixels.
const RIM_PX: f64 = 2.0;

/// Width of a line, pixels.
const LINE_PX: f32 = 1.2;

/// A part of a drawing; none when it lies beside it.
pub fn drawn(lines: &Lines, wanted: &Wanted) -> Option<Pixels> {
    let rim = RIM_PX / wanted.px_per_unit;
    let part = wanted.part.common(&lines.extent.grown(rim))?;
    let wanted = Wanted { part, px_per_unit: wanted.px_per_unit }.within_limits();
    let scale = wanted.px_per_unit;
    let size_px = (part.size() * scale).ceil().max(DVec2::ONE);
    let mut pixmap = Pixmap::new(size_px.x as u32, size_px.y as u32)?;
    let mut path = PathBuilder::new();
    let in_pixels = |at: DVec2| ((at.x - part.min.x) * scale, (part.max.y - at.y) * scale);
    let mut last = None;
    for segment in lines.segments() {
        let around = Extent { min: segment.from.min(segment.to), max: segment.from.max(segment.to) };
        if around.grown(rim).common(&part).is_none() {
            continue;
        }
        if last != Some(segment.from) {
            let (x, y) = in_pixels(segment.from);
            path.move_to(x as f32, y as f32);
        }
        let (x, y) = in_pixels(segment.to);
        path.line_to(x as f32, y as f32);
        last = Some(segment.to);
    }
    if let Some(path) = path.finish() {
        let mut paint = Paint::default();
        paint.set_color_rgba8(255, 255, 255, 255);
        let stroke = Stroke { width: LINE_PX, ..Stroke::default() };
        pixmap.stroke_path(&path, &paint, &stroke, Transform::identity(), None);
    }
    let min = DVec2::new(part.min.x, part.max.y - size_px.y / scale);
    Some(Pixels {
        part: Extent { min, max: min + size_px / scale },
        px_per_unit: scale,
        width: size_px.x as usize,
        height: size_px.y as usize,
        rgba: pixmap.take(),
    })
}
