//! A part of a drawing on a page, looking as it does as SVG: pens, tints, hatches and letters are the same.

use gantline_drawing::text::Across;
use gantline_drawing::{Area, Drawing, Fill, Hatch, Mark, Polygon, Scale, Shape, Stress, Text, hatch};
use gantline_exchange::palette;
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;
use krilla::paint::FillRule;
use krilla::surface::Surface;

use crate::PT_PER_MM;
use crate::ink;
use crate::lettering::{Faces, Line};
use crate::page::Place;

/// Marks farther than this beside the window have no ink in it, paper mm: more than half of the widest pen.
const INK_BESIDE_MM: f64 = 2.0;

/// Prints what lies in a window of a drawing; the window's lower left corner lies at a place of the page.
pub fn print(surface: &mut Surface<'_>, page: Place, part: (&Drawing, Bounds, DVec2), faces: &Faces) {
    let (drawing, window, at_mm) = part;
    let lies = Lies { page, scale: drawing.scale, window, at_mm };
    let corners = [
        window.min_m,
        DVec2::new(window.max_m.x, window.min_m.y),
        window.max_m,
        DVec2::new(window.min_m.x, window.max_m.y),
    ];
    let Some(frame) = ink::path(corners.map(|corner| lies.pt(corner)), true) else { return };
    let seen = window.grown(drawing.scale.m(INK_BESIDE_MM));
    surface.push_clip_path(&frame, &FillRule::NonZero);
    for mark in drawing.marks.iter().filter(|mark| touches(mark, seen, drawing.scale)) {
        lies.mark(surface, mark, faces);
    }
    surface.pop();
}

/// Whether a mark's box meets the window.
fn touches(mark: &Mark, window: Bounds, scale: Scale) -> bool {
    let bounds = match &mark.shape {
        Shape::Line(line) => Bounds::of(line.points.iter().copied()),
        Shape::Area(area) => Bounds::of(area.polygon.outer.iter().copied()),
        Shape::Text(text) => Bounds::of(text.corners(scale)),
    };
    bounds.is_some_and(|bounds| bounds.meets(&window))
}

/// Where the drawing's meters lie on the page.
struct Lies {
    page: Place,
    scale: Scale,
    window: Bounds,
    at_mm: DVec2,
}

impl Lies {
    fn pt(&self, at_m: DVec2) -> DVec2 {
        self.page.pt(self.at_mm + (at_m - self.window.min_m) / self.scale.m_per_mm)
    }

    fn points<'a>(&'a self, points: &'a [DVec2]) -> impl Iterator<Item = DVec2> + 'a {
        points.iter().map(|&point| self.pt(point))
    }

    fn mark(&self, surface: &mut Surface<'_>, mark: &Mark, faces: &Faces) {
        let stress = mark.stress;
        match &mark.shape {
            Shape::Line(line) => {
                let path = ink::path(self.points(&line.points), line.closed);
                let (color, width_mm) = (palette::ink(line.pen, stress), palette::width_mm(line.pen, stress));
                ink::stroke(surface, path, color, width_mm, line.pen.dash_mm());
            }
            Shape::Area(area) => self.area(surface, area, stress),
            Shape::Text(text) => self.text(surface, text, stress, faces),
        }
    }

    fn area(&self, surface: &mut Surface<'_>, area: &Area, stress: Stress) {
        let path = || ink::rings(area.polygon.rings().map(|ring| self.points(ring)));
        if let Some(color) = palette::tint(area.fill, stress) {
            ink::fill(surface, path(), color);
        }
        if let Fill::Hatch(hatch) = area.fill {
            self.hatch(surface, &area.polygon, hatch, stress);
        }
        if let Some(pen) = area.edge {
            let (color, width_mm) = (palette::ink(pen, stress), palette::width_mm(pen, stress));
            ink::stroke(surface, path(), color, width_mm, pen.dash_mm());
        }
    }

    /// Strokes of one width go into one path.
    fn hatch(&self, surface: &mut Surface<'_>, polygon: &Polygon, hatch: Hatch, stress: Stress) {
        let color = palette::hatch_ink(hatch, stress);
        for same in hatch::strokes(polygon, hatch, self.scale).chunk_by(|a, b| a.width_mm == b.width_mm) {
            let path = ink::strokes(same.iter().map(|stroke| (self.pt(stroke.from), self.pt(stroke.to))));
            let width_mm = same.first().map_or(0.0, |stroke| stroke.width_mm);
            ink::stroke(surface, path, color, width_mm, &[]);
        }
    }

    fn text(&self, surface: &mut Surface<'_>, text: &Text, stress: Stress, faces: &Faces) {
        let begins = match text.anchor.across {
            Across::Start => 0.0,
            Across::Middle => 0.5,
            Across::End => 1.0,
        };
        let line = Line {
            words: &text.words,
            face: text.style.face(),
            size_pt: text.style.size_mm() * PT_PER_MM,
            ink: palette::ink(text.pen, stress),
            turn_rad: text.rotation_rad,
            begins,
            drop_pt: text.drop_mm() * PT_PER_MM,
        };
        faces.write(surface, self.pt(text.at), &line);
    }
}
