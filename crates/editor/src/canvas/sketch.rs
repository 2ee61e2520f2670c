//! Paints what a tool wants to have drawn over the sheet.

use egui::{Align2, Color32, FontId, Painter, Pos2, Shape, Stroke, vec2};
use gantline_plan::quantity::{UnitSystem, length};
use glam::DVec2;

use crate::session::{Camera, SheetRect};
use crate::theme::{Palette, type_scale};
use crate::tools::sketch::{LineRole, Sketch};
use crate::tools::snap::{Caught, Locus};

/// Draws a sketch.
pub fn paint(
    painter: &Painter,
    sketch: &Sketch,
    camera: &Camera,
    sheet: SheetRect,
    units: UnitSystem,
    palette: &Palette,
) {
    let place = |point: DVec2| {
        let at = camera.screen_from_drawing(sheet, point);
        Pos2::new(at.x as f32, at.y as f32)
    };
    if let Some(caught) = &sketch.caught {
        guides(painter, caught, &place, palette);
    }
    for line in &sketch.lines {
        let points: Vec<Pos2> = line.points.iter().copied().map(place).collect();
        let (ink, width, dashes): (Color32, f32, Option<(f32, f32)>) = match line.role {
            LineRole::Drawn => (palette.accent, 2.0, None),
            LineRole::Pending => (palette.accent, 1.6, Some((7.0, 4.0))),
            LineRole::Refused => (palette.blocking, 1.8, Some((3.0, 3.0))),
            LineRole::Ghost => (palette.ink_faint, 1.0, Some((5.0, 5.0))),
            LineRole::BoxInside => (palette.accent, 1.2, None),
            LineRole::BoxTouched => (palette.accent, 1.2, Some((6.0, 4.0))),
        };
        let stroke = Stroke::new(width, ink);
        if matches!(line.role, LineRole::BoxInside | LineRole::BoxTouched) {
            painter.add(Shape::convex_polygon(points.clone(), ink.gamma_multiply(0.08), Stroke::NONE));
        }
        let mut whole = points.clone();
        if line.closed
            && let Some(&first) = points.first()
        {
            whole.push(first);
        }
        match dashes {
            Some((dash, gap)) => {
                painter.extend(Shape::dashed_line(&whole, stroke, dash, gap));
            }
            None => {
                painter.add(Shape::line(whole, stroke));
            }
        }
        if line.role == LineRole::Drawn {
            for &point in &points {
                painter.circle(point, 3.5, palette.sheet, Stroke::new(1.5, palette.accent));
            }
        }
    }
    if let Some(at) = sketch.cross {
        cross(painter, place(at), palette.blocking);
    }
    if let Some((from, to)) = sketch.dimension {
        let middle = place(from.midpoint(to));
        let galley = painter.layout_no_wrap(
            length(from.distance(to), units),
            FontId::new(type_scale::BODY, type_scale::semibold()),
            palette.ink,
        );
        let rect = Align2::CENTER_CENTER.anchor_size(middle - vec2(0.0, 14.0), galley.size());
        painter.rect_filled(rect.expand(3.0), 3.0, palette.sheet.gamma_multiply(0.85));
        painter.galley(rect.min, galley, palette.ink);
    }
}

/// A cross at a place that can't be taken.
pub fn cross(painter: &Painter, at: Pos2, ink: Color32) {
    let stroke = Stroke::new(2.2, ink);
    painter.line_segment([at - vec2(7.0, 7.0), at + vec2(7.0, 7.0)], stroke);
    painter.line_segment([at - vec2(7.0, -7.0), at + vec2(7.0, -7.0)], stroke);
}

/// The lines and points by which the pointer is caught.
fn guides(painter: &Painter, caught: &Caught, place: &impl Fn(DVec2) -> Pos2, palette: &Palette) {
    let stroke = Stroke::new(1.0, palette.accent.gamma_multiply(0.7));
    for by in std::iter::once(caught.by).chain(caught.and) {
        let at = place(caught.at);
        let from = match by.locus {
            Locus::Point(_) => continue,
            Locus::Line { through, .. } => place(through),
            Locus::Segment { from, to } => {
                painter.line_segment([place(from), place(to)], Stroke::new(1.6, palette.accent.gamma_multiply(0.5)));
                continue;
            }
        };
        let way = (at - from).normalized();
        painter.extend(Shape::dashed_line(&[from, at + way * 40.0], stroke, 3.0, 3.0));
        painter.circle_stroke(from, 3.0, stroke);
    }
    painter.circle_stroke(place(caught.at), 5.0, Stroke::new(1.6, palette.accent));
}
