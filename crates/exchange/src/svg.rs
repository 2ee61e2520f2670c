//! A drawing as SVG: one user unit is one paper millimeter, so that it prints at the scale it was made for.

use std::fmt::Write as _;

use gantline_drawing::letter_width::Face;
use gantline_drawing::text::Across;
use gantline_drawing::{Area, Drawing, Fill, Layer, Line, Mark, Polygon, Scale, Shape, Stress, Text, hatch};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use crate::palette;

/// White rim around the drawing, paper mm.
const RIM_MM: f64 = 6.0;

/// A drawing as SVG text on white paper of the drawing's size and a rim.
pub fn svg(drawing: &Drawing) -> String {
    let bounds = drawing.bounds().unwrap_or(Bounds { min_m: DVec2::ZERO, max_m: DVec2::ZERO });
    svg_of(drawing, bounds.grown(drawing.scale.m(RIM_MM)))
}

/// A part of a drawing as SVG text: what lies within a window, m.
pub fn svg_of(drawing: &Drawing, window: Bounds) -> String {
    let page = Page { window, scale: drawing.scale };
    let size = window.size_m();
    let (width, height) = (page.scale.mm(size.x), page.scale.mm(size.y));
    let mut out = String::with_capacity(drawing.marks.len() * 160);
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"0 0 {0} {1}\">",
        short(width),
        short(height)
    );
    let _ = writeln!(out, "<rect width=\"{}\" height=\"{}\" fill=\"#ffffff\"/>", short(width), short(height));
    let mut open: Option<Layer> = None;
    for mark in &drawing.marks {
        if open != Some(mark.layer) {
            out.push_str(if open.is_some() { "</g>\n" } else { "" });
            let _ = writeln!(out, "<g id=\"{}\">", layer_name(mark.layer));
            open = Some(mark.layer);
        }
        page.mark(&mut out, mark);
    }
    out.push_str(if open.is_some() { "</g>\n" } else { "" });
    out.push_str("</svg>\n");
    out
}

/// Where meters lie on the page.
struct Page {
    window: Bounds,
    scale: Scale,
}

impl Page {
    fn place(&self, point: DVec2) -> (String, String) {
        let x = self.scale.mm(point.x - self.window.min_m.x);
        let y = self.scale.mm(self.window.max_m.y - point.y);
        (short(x), short(y))
    }

    fn mark(&self, out: &mut String, mark: &Mark) {
        match &mark.shape {
            Shape::Line(line) => self.line(out, line, mark.stress),
            Shape::Area(area) => self.area(out, area, mark.stress),
            Shape::Text(text) => self.text(out, text, mark.stress),
        }
    }

    fn line(&self, out: &mut String, line: &Line, stress: Stress) {
        let path = self.path(&line.points, line.closed);
        let _ = writeln!(out, "<path d=\"{path}\" fill=\"none\"{}/>", stroke(line.pen, stress));
    }

    fn area(&self, out: &mut String, area: &Area, stress: Stress) {
        let path = self.rings(&area.polygon);
        if let Some(color) = palette::tint(area.fill, stress) {
            let _ = writeln!(out, "<path d=\"{path}\" fill=\"{}\" fill-rule=\"evenodd\"/>", color.hex());
        }
        if let Fill::Hatch(hatch) = area.fill {
            self.hatch(out, &area.polygon, hatch, stress);
        }
        if let Some(pen) = area.edge {
            let _ = writeln!(out, "<path d=\"{path}\" fill=\"none\"{}/>", stroke(pen, stress));
        }
    }

    /// Strokes of one width go into one path.
    fn hatch(&self, out: &mut String, polygon: &Polygon, hatch: gantline_drawing::Hatch, stress: Stress) {
        let strokes = hatch::strokes(polygon, hatch, self.scale);
        let color = palette::hatch_ink(hatch, stress).hex();
        for same in strokes.chunk_by(|a, b| a.width_mm == b.width_mm) {
            let mut path = String::with_capacity(same.len() * 24);
            for stroke in same {
                let ((ax, ay), (bx, by)) = (self.place(stroke.from), self.place(stroke.to));
                let _ = write!(path, "M{ax} {ay}L{bx} {by}");
            }
            let width = short(same[0].width_mm);
            let _ = writeln!(out, "<path d=\"{path}\" fill=\"none\" stroke=\"{color}\" stroke-width=\"{width}\"/>");
        }
    }

    fn text(&self, out: &mut String, text: &Text, stress: Stress) {
        let (x, y) = self.place(text.at);
        let anchor = match text.anchor.across {
            Across::Start => "start",
            Across::Middle => "middle",
            Across::End => "end",
        };
        let turn = short(-text.rotation_rad.to_degrees());
        let _ = writeln!(
            out,
            "<text transform=\"translate({x} {y}) rotate({turn})\" y=\"{}\" text-anchor=\"{anchor}\" {} font-size=\"{}\" \
             fill=\"{}\">{}</text>",
            short(text.drop_mm()),
            family(text.style.face()),
            short(text.style.size_mm()),
            palette::ink(text.pen, stress).hex(),
            escaped(&text.words)
        );
    }

    fn rings(&self, polygon: &Polygon) -> String {
        polygon.rings().map(|ring| self.path(ring, true)).collect()
    }

    fn path(&self, points: &[DVec2], closed: bool) -> String {
        let mut path = String::with_capacity(points.len() * 14);
        for (index, &point) in points.iter().enumerate() {
            let (x, y) = self.place(point);
            let _ = write!(path, "{}{x} {y}", if index == 0 { 'M' } else { 'L' });
        }
        if closed {
            path.push('Z');
        }
        path
    }
}

fn stroke(pen: gantline_drawing::Pen, stress: Stress) -> String {
    let color = palette::ink(pen, stress).hex();
    let width = short(palette::width_mm(pen, stress));
    let dash: Vec<String> = pen.dash_mm().iter().map(|&mm| short(mm)).collect();
    let dashes = if dash.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{}\"", dash.join(" ")) };
    format!(" stroke=\"{color}\" stroke-width=\"{width}\" stroke-linejoin=\"round\"{dashes}")
}

const fn family(face: Face) -> &'static str {
    match face {
        Face::Regular => "font-family=\"IBM Plex Sans, sans-serif\"",
        Face::SemiBold => "font-family=\"IBM Plex Sans, sans-serif\" font-weight=\"600\"",
        Face::Condensed => {
            "font-family=\"IBM Plex Sans Condensed, IBM Plex Sans, sans-serif\" font-stretch=\"condensed\""
        }
    }
}

const fn layer_name(layer: Layer) -> &'static str {
    match layer {
        Layer::Ground => "ground",
        Layer::Background => "background",
        Layer::Standing => "standing",
        Layer::ClearZone => "clear-zone",
        Layer::Reach => "reach",
        Layer::Outline => "outline",
        Layer::Obstacle => "obstacle",
        Layer::Unit => "unit",
        Layer::Load => "load",
        Layer::Lettering => "lettering",
        Layer::Dimension => "dimension",
        Layer::Reading => "reading",
        Layer::Tag => "tag",
        Layer::Conflict => "conflict",
        Layer::Sheet => "sheet",
    }
}

/// A number with at most three decimals: a thousandth of a millimeter on paper.
fn short(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

/// Text that XML can hold: signs of markup are written out, characters that XML forbids are left out.
fn escaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    for letter in words.chars() {
        match letter {
            '&' => text.push_str("&amp;"),
            '<' => text.push_str("&lt;"),
            '>' => text.push_str("&gt;"),
            '"' => text.push_str("&quot;"),
            other if other.is_control() || matches!(other, '\u{fffe}' | '\u{ffff}') => {}
            other => text.push(other),
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_drawing::{Anchor, Pen, TextStyle};

    fn drawing_of(marks: Vec<Mark>) -> Drawing {
        Drawing::of(Scale::one_to(100.0), marks)
    }

    /// Witness: at 1 to 100 a line of 10 m is 100 mm long, and the rim is added on both sides.
    #[test]
    fn a_drawing_prints_at_its_scale() {
        let line = Mark::line(Layer::Outline, Pen::Outline, vec![DVec2::new(2.0, 3.0), DVec2::new(12.0, 3.0)]);
        let text = svg(&drawing_of(vec![line]));
        assert!(text.contains("width=\"112mm\" height=\"12mm\" viewBox=\"0 0 112 12\""), "{text}");
        assert!(text.contains("d=\"M6 6L106 6\""), "{text}");
    }

    #[test]
    fn words_that_look_like_markup_stay_words() {
        let words = "plant <&> \"shed\"\u{7}";
        let at = DVec2::ZERO;
        let text = Text::new(words, at, Anchor::START, TextStyle::Note, Pen::Lettering);
        let text = svg(&drawing_of(vec![Mark::text(Layer::Lettering, text)]));
        assert!(text.contains(">plant &lt;&amp;&gt; &quot;shed&quot;</text>"), "{text}");
    }
}
