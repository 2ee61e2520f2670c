//! Lines and areas, in points of the page. What has no extent or no finite place leaves no ink.

use gantline_exchange::palette::Color;
use glam::DVec2;
use krilla::color::rgb;
use krilla::geom::{Path, PathBuilder};
use krilla::num::NormalizedF32;
use krilla::paint::{Fill, FillRule, LineJoin, Paint, Stroke, StrokeDash};
use krilla::surface::Surface;

use crate::PT_PER_MM;

/// A path through points.
pub fn path(points: impl IntoIterator<Item = DVec2>, closed: bool) -> Option<Path> {
    let mut builder = PathBuilder::new();
    add(&mut builder, points, closed);
    builder.finish()
}

/// A path of closed rings.
pub fn rings<R: IntoIterator<Item = DVec2>>(rings: impl IntoIterator<Item = R>) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for ring in rings {
        add(&mut builder, ring, true);
    }
    builder.finish()
}

/// A path of single strokes.
pub fn strokes(strokes: impl IntoIterator<Item = (DVec2, DVec2)>) -> Option<Path> {
    let mut builder = PathBuilder::new();
    for (from, to) in strokes {
        add(&mut builder, [from, to], false);
    }
    builder.finish()
}

fn add(builder: &mut PathBuilder, points: impl IntoIterator<Item = DVec2>, closed: bool) {
    let mut count = 0;
    for point in points.into_iter().filter(|point| point.is_finite()) {
        let (x, y) = (point.x as f32, point.y as f32);
        if count == 0 {
            builder.move_to(x, y);
        } else {
            builder.line_to(x, y);
        }
        count += 1;
    }
    if closed && count > 0 {
        builder.close();
    }
}

/// Draws a path as a line.
pub fn stroke(surface: &mut Surface<'_>, path: Option<Path>, ink: Color, width_mm: f64, dash_mm: &[f64]) {
    let Some(path) = path.filter(|_| width_mm.is_finite()) else { return };
    let dash = (!dash_mm.is_empty())
        .then(|| StrokeDash { array: dash_mm.iter().map(|&mm| (mm * PT_PER_MM) as f32).collect(), offset: 0.0 });
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke {
        paint: paint(ink),
        width: (width_mm * PT_PER_MM) as f32,
        line_join: LineJoin::Round,
        dash,
        ..Stroke::default()
    }));
    surface.draw_path(&path);
    surface.set_stroke(None);
}

/// Fills a path by the even-odd rule.
pub fn fill(surface: &mut Surface<'_>, path: Option<Path>, ink: Color) {
    let Some(path) = path else { return };
    surface.set_stroke(None);
    surface.set_fill(Some(solid(ink)));
    surface.draw_path(&path);
}

/// A solid color, by the even-odd rule.
pub fn solid(ink: Color) -> Fill {
    Fill { paint: paint(ink), opacity: NormalizedF32::ONE, rule: FillRule::EvenOdd }
}

fn paint(ink: Color) -> Paint {
    let [red, green, blue] = ink.0;
    rgb::Color::new(red, green, blue).into()
}
