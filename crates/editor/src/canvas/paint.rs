//! Paints a drawing: its marks become shapes of the screen, with pens and hatches in the colors of the theme.
//!
//! Shapes are made relative to an origin in the drawing, so that a pan only moves them.

use egui::epaint::{Mesh, Tessellator, TextShape, Vertex, WHITE_UV};
use egui::{Color32, Painter, Pos2, Shape, Stroke, Vec2, pos2};
use gantline_drawing::{
    Area, Drawing, Fill, Layer, Line, Mark, Pen, Polygon, Scale, Shape as Drawn, Stress, Text, hatch,
};
use gantline_plan::document::ThingId;
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::polygons::{self, triangulate};
use glam::DVec2;

use crate::session::{Camera, SheetRect};
use crate::theme::{Palette, fonts, pens};

/// Shapes of a drawing, relative to an origin in it.
#[derive(Debug, Clone, Default)]
pub struct Painted {
    origin: DVec2,
    m_per_pt: f64,
    pt_per_mm: f64,
    shapes: Vec<Shape>,
    /// What the shapes hold; beyond it they must be made anew.
    holds: Option<Bounds>,
    /// The shapes where they were painted last: a pointer that moves leaves them there.
    placed: Option<(Vec2, Vec<Shape>)>,
    pixels_per_point: f32,
}

/// Thinnest line on screen, points.
const THINNEST: f32 = 0.75;

/// The scale of drawings made for a camera.
pub fn scale_of(camera: &Camera) -> Scale {
    Scale { m_per_mm: camera.m_per_pt * camera.pt_per_mm }
}

impl Painted {
    /// Shapes of all marks in and around what a camera sees.
    pub fn of(drawing: &Drawing, camera: &Camera, sheet: SheetRect, palette: &Palette, painter: &Painter) -> Self {
        let seen = camera.seen(sheet);
        let holds = seen.grown(seen.size_m().max_element() * 0.3);
        let mut brush = Brush {
            origin: camera.center,
            m_per_pt: camera.m_per_pt,
            pt_per_mm: camera.pt_per_mm,
            scale: drawing.scale,
            palette,
            painter,
            holds,
            shapes: Vec::new(),
        };
        for mark in &drawing.marks {
            brush.mark(mark);
        }
        Self {
            origin: camera.center,
            m_per_pt: camera.m_per_pt,
            pt_per_mm: camera.pt_per_mm,
            shapes: as_triangles(brush.shapes, painter),
            holds: Some(holds),
            placed: None,
            pixels_per_point: painter.ctx().pixels_per_point(),
        }
    }

    /// Whether the shapes still serve a camera.
    pub fn serves(&self, camera: &Camera, sheet: SheetRect, pixels_per_point: f32) -> bool {
        let seen = camera.seen(sheet);
        self.m_per_pt == camera.m_per_pt
            && self.pixels_per_point == pixels_per_point
            && self.pt_per_mm == camera.pt_per_mm
            && self
                .holds
                .is_some_and(|holds| seen.min_m.cmpge(holds.min_m).all() && seen.max_m.cmple(holds.max_m).all())
    }

    /// Paints the shapes where a camera has them.
    pub fn paint(&mut self, camera: &Camera, sheet: SheetRect, painter: &Painter) {
        let at = camera.screen_from_drawing(sheet, self.origin);
        // Whole pixels, so that lines set on pixels stay on them.
        let pixels = painter.ctx().pixels_per_point();
        let by = (Vec2::new(at.x as f32, at.y as f32) * pixels).round() / pixels;
        if self.placed.as_ref().is_none_or(|(known, _)| *known != by) {
            let moved = self.shapes.iter().cloned().map(|mut shape| {
                shape.translate(by);
                shape
            });
            self.placed = Some((by, moved.collect()));
        }
        if let Some((_, shapes)) = &self.placed {
            painter.extend(shapes.iter().cloned());
        }
    }
}

/// The same shapes with runs of everything but texts turned into triangles once, rather than in every frame. Texts stay
/// texts: their letters may be somewhere else in the font's picture in the next frame.
fn as_triangles(shapes: Vec<Shape>, painter: &Painter) -> Vec<Shape> {
    let options = painter.ctx().options(|options| options.tessellation_options);
    // Without ready discs small circles are made of triangles too; they need no picture of the font.
    let mut tessellator = Tessellator::new(painter.ctx().pixels_per_point(), options, [1, 1], Vec::new());
    let mut all: Vec<Shape> = Vec::new();
    let mut run = Mesh::default();
    for shape in shapes {
        if matches!(shape, Shape::Text(_)) {
            if !run.is_empty() {
                all.push(Shape::mesh(std::mem::take(&mut run)));
            }
            all.push(shape);
        } else {
            tessellator.tessellate_shape(shape, &mut run);
        }
    }
    if !run.is_empty() {
        all.push(Shape::mesh(run));
    }
    all
}

/// Lights up every mark about a thing.
pub fn light_up(drawing: &Drawing, thing: ThingId, camera: &Camera, sheet: SheetRect, ink: Color32, painter: &Painter) {
    let place = |point: DVec2| {
        let at = camera.screen_from_drawing(sheet, point);
        pos2(at.x as f32, at.y as f32)
    };
    let stroke = Stroke::new(4.0, ink.gamma_multiply(0.35));
    let shown = |mark: &&Mark| mark.about == Some(thing) && is_body(mark.layer) && mark.stress != Stress::Selected;
    for mark in drawing.marks.iter().filter(shown) {
        match &mark.shape {
            Drawn::Line(line) => {
                let points: Vec<Pos2> = line.points.iter().copied().map(place).collect();
                painter.add(if line.closed { Shape::closed_line(points, stroke) } else { Shape::line(points, stroke) });
            }
            Drawn::Area(area) if area.edge.is_some() => {
                painter.add(Shape::closed_line(area.polygon.outer.iter().copied().map(place).collect(), stroke));
            }
            Drawn::Area(_) | Drawn::Text(_) => {}
        }
    }
}

/// Layers of things themselves, rather than of what is said about them.
fn is_body(layer: Layer) -> bool {
    matches!(layer, Layer::Unit | Layer::Obstacle | Layer::Outline | Layer::Ground)
}

struct Brush<'a> {
    origin: DVec2,
    m_per_pt: f64,
    pt_per_mm: f64,
    scale: Scale,
    palette: &'a Palette,
    painter: &'a Painter,
    holds: Bounds,
    shapes: Vec<Shape>,
}

impl Brush<'_> {
    fn place(&self, point: DVec2) -> Pos2 {
        let from_origin = (point - self.origin) / self.m_per_pt;
        pos2(from_origin.x as f32, -from_origin.y as f32)
    }

    fn mark(&mut self, mark: &Mark) {
        match &mark.shape {
            Drawn::Line(line) => self.line(line, mark.stress),
            Drawn::Area(area) => self.area(area, mark.stress),
            Drawn::Text(text) => self.text(text, mark.stress),
        }
    }

    fn is_out_of_sight(&self, points: &[DVec2]) -> bool {
        Bounds::of(points.iter().copied()).is_none_or(|bounds| !bounds.meets(&self.holds))
    }

    fn stroke(&self, pen: Pen, stress: Stress) -> Stroke {
        let width = ((pen.width_mm() * self.pt_per_mm) as f32).max(THINNEST);
        let ink = pens::ink(pen, self.palette);
        match stress {
            Stress::Faint => Stroke::new(width, ink.gamma_multiply(0.45)),
            Stress::Plain => Stroke::new(width, ink),
            Stress::Selected => Stroke::new(width + 0.9, self.palette.accent),
        }
    }

    fn line(&mut self, line: &Line, stress: Stress) {
        if !self.is_out_of_sight(&line.points) {
            self.path(&line.points, line.closed, line.pen, stress);
        }
    }

    fn path(&mut self, points: &[DVec2], closed: bool, pen: Pen, stress: Stress) {
        let mut placed: Vec<Pos2> = points.iter().map(|&point| self.place(point)).collect();
        let stroke = self.stroke(pen, stress);
        let dashes = pen.dash_mm();
        if dashes.is_empty() {
            self.shapes.push(if closed { Shape::closed_line(placed, stroke) } else { Shape::line(placed, stroke) });
            return;
        }
        if closed && let Some(&first) = placed.first() {
            placed.push(first);
        }
        let length = |mm: &f64| (mm * self.pt_per_mm) as f32;
        let lines: Vec<f32> = dashes.iter().step_by(2).map(length).collect();
        let gaps: Vec<f32> = dashes.iter().skip(1).step_by(2).map(length).collect();
        for piece in within(&placed, self.place_box()) {
            self.shapes.extend(Shape::dashed_line_with_offset(&piece, stroke, &lines, &gaps, 0.0));
        }
    }

    /// What the shapes hold, on the screen.
    fn place_box(&self) -> egui::Rect {
        egui::Rect::from_two_pos(self.place(self.holds.min_m), self.place(self.holds.max_m))
    }

    fn area(&mut self, area: &Area, stress: Stress) {
        if self.is_out_of_sight(&area.polygon.outer) {
            return;
        }
        let faded = |color: Color32| if stress == Stress::Faint { color.gamma_multiply(0.45) } else { color };
        match area.fill {
            Fill::Paper => self.solid(&area.polygon, self.palette.sheet),
            Fill::Ink(pen) => {
                let ink = self.stroke(pen, stress).color;
                self.solid(&area.polygon, ink);
            }
            Fill::Hatch(hatch) => {
                let (tint, ink) = pens::hatch(hatch, self.palette);
                if let Some(tint) = tint {
                    self.solid(&area.polygon, faded(tint));
                }
                self.hatch(&area.polygon, hatch, faded(ink));
            }
        }
        if let Some(pen) = area.edge {
            for ring in area.polygon.rings() {
                self.path(ring, true, pen, stress);
            }
        }
    }

    fn solid(&mut self, polygon: &Polygon, color: Color32) {
        let mut mesh = Mesh::default();
        for triangle in triangulate(polygon) {
            let first = mesh.vertices.len() as u32;
            mesh.indices.extend([first, first + 1, first + 2]);
            mesh.vertices.extend(triangle.map(|corner| Vertex { pos: self.place(corner), uv: WHITE_UV, color }));
        }
        self.shapes.push(Shape::mesh(mesh));
    }

    /// Hatch lines, only where they can be seen: a long parapet seen from near would have thousands of them.
    fn hatch(&mut self, polygon: &Polygon, kind: gantline_drawing::Hatch, ink: Color32) {
        if kind.lines().is_empty() {
            return;
        }
        let inside = polygon.bounds().is_some_and(|bounds| {
            bounds.min_m.cmpge(self.holds.min_m).all() && bounds.max_m.cmple(self.holds.max_m).all()
        });
        let view = Polygon::rectangle(self.holds.min_m, self.holds.max_m);
        let pieces = if inside {
            vec![polygon.clone()]
        } else {
            polygons::intersection(std::slice::from_ref(polygon), &[view]).unwrap_or_default()
        };
        for stroke in pieces.iter().flat_map(|piece| hatch::strokes(piece, kind, self.scale)) {
            let width = ((stroke.width_mm * self.pt_per_mm) as f32).max(THINNEST);
            let ends = [self.place(stroke.from), self.place(stroke.to)];
            self.shapes.push(Shape::line_segment(ends, Stroke::new(width, ink)));
        }
    }

    fn text(&mut self, text: &Text, stress: Stress) {
        let corners = text.corners(self.scale);
        if self.is_out_of_sight(&corners) {
            return;
        }
        let font = fonts::of(text.style.face(), (text.style.size_mm() * self.pt_per_mm) as f32);
        let ink = self.stroke(text.pen, stress).color;
        let galley = self.painter.layout_no_wrap(text.words.clone(), font, ink);
        let baseline = galley.rows.first().and_then(|row| row.row.glyphs.first()).map_or(0.0, |glyph| glyph.pos.y);
        // The drawing knows where the baseline begins; letters measured here may be a hair wider than there.
        let drawn_pt = (text.width_mm() * self.pt_per_mm) as f32;
        let share = match text.anchor.across {
            gantline_drawing::text::Across::Start => 0.0,
            gantline_drawing::text::Across::Middle => 0.5,
            gantline_drawing::text::Across::End => 1.0,
        };
        let shift = (drawn_pt - galley.size().x) * share;
        let angle = -text.rotation_rad as f32;
        let turn = egui::emath::Rot2::from_angle(angle);
        let at = self.place(corners[0]) + turn * Vec2::new(shift, -baseline);
        let mut shape = TextShape::new(at, galley, ink);
        shape.angle = angle;
        self.shapes.push(Shape::Text(shape));
    }
}

/// The parts of a line in and around a box, so that dashes beyond the window are not cut.
fn within(points: &[Pos2], bounds: egui::Rect) -> Vec<Vec<Pos2>> {
    let mut pieces: Vec<Vec<Pos2>> = Vec::new();
    for pair in points.windows(2) {
        let Some((from, to)) = clipped(pair[0], pair[1], bounds) else {
            continue;
        };
        match pieces.last_mut() {
            Some(piece) if piece.last() == Some(&from) => piece.push(to),
            _ => pieces.push(vec![from, to]),
        }
    }
    pieces
}

/// The part of a segment inside a box (Liang and Barsky 1984).
fn clipped(from: Pos2, to: Pos2, bounds: egui::Rect) -> Option<(Pos2, Pos2)> {
    let way = to - from;
    let (mut enters, mut leaves) = (0.0_f32, 1.0_f32);
    let sides = [
        (-way.x, from.x - bounds.min.x),
        (way.x, bounds.max.x - from.x),
        (-way.y, from.y - bounds.min.y),
        (way.y, bounds.max.y - from.y),
    ];
    for (toward, room) in sides {
        if toward == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if toward < 0.0 {
            enters = enters.max(room / toward);
        } else {
            leaves = leaves.min(room / toward);
        }
    }
    let at = |share: f32| {
        if share <= 0.0 {
            from
        } else if share >= 1.0 {
            to
        } else {
            from + way * share
        }
    };
    (enters <= leaves).then(|| (at(enters), at(leaves)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_segment_is_clipped_to_the_part_inside_the_box() {
        let bounds = egui::Rect::from_min_max(pos2(0.0, 0.0), pos2(10.0, 10.0));
        let inside = clipped(pos2(-5.0, 5.0), pos2(15.0, 5.0), bounds);
        assert_eq!(inside, Some((pos2(0.0, 5.0), pos2(10.0, 5.0))));
        assert_eq!(clipped(pos2(-5.0, 12.0), pos2(15.0, 12.0), bounds), None);
        assert_eq!(clipped(pos2(1.0, 1.0), pos2(2.0, 2.0), bounds), Some((pos2(1.0, 1.0), pos2(2.0, 2.0))));
    }
}
