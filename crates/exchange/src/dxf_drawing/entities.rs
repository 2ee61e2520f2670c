//! What is drawn: polylines, hatches with their lines, words.

use gantline_drawing::letter_width::Face;
use gantline_drawing::text::{Across, Up};
use gantline_drawing::{Area, Fill, Hatch, Line, Mark, Polygon, Scale, Shape, Text};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::layers::{self, Layers, hatch_word};
use super::pairs::{Handle, Pairs};

/// Name of the text style for wide and for narrow letters.
pub const TEXT_STYLE: &str = "GL-TEXT";
pub const NARROW_TEXT_STYLE: &str = "GL-NARROW";
/// How much narrower narrow letters are.
pub const NARROW: f64 = 0.85;

/// Where marks of a drawing go in the file.
#[derive(Debug, Clone, Copy)]
pub struct Placing {
    /// The scale that the drawing was made for.
    pub scale: Scale,
    /// Units of the file in a meter.
    pub per_m: f64,
    /// This point of the drawing is the origin.
    pub origin: DVec2,
    /// Turn of the drawing about it, counter-clockwise.
    pub turn_rad: f64,
    /// The block, or the model, that owns what is drawn.
    pub owner: Handle,
}

impl Placing {
    /// A point of the drawing in the file.
    pub fn point(&self, at: DVec2) -> DVec2 {
        DVec2::from_angle(self.turn_rad).rotate(at - self.origin) * self.per_m
    }

    fn length(&self, paper_mm: f64) -> f64 {
        self.scale.m(paper_mm) * self.per_m
    }
}

/// Writes a mark. Tints are of the sheet and not of the model: they are left out.
pub fn mark(pairs: &mut Pairs, layers: &mut Layers, placing: &Placing, mark: &Mark) {
    match &mark.shape {
        Shape::Line(line) => line_entity(pairs, layers, placing, mark, line),
        Shape::Area(area) => area_entities(pairs, layers, placing, mark, area),
        Shape::Text(text) => {
            let (layer, look) = layers::of_text(mark.layer, text.pen);
            layers.insert(layer.clone(), look);
            text_entity(pairs, placing, &layer, text);
        }
    }
}

fn line_entity(pairs: &mut Pairs, layers: &mut Layers, placing: &Placing, mark: &Mark, line: &Line) {
    let (layer, look) = layers::of_pen(mark.layer, line.pen);
    layers.insert(layer.clone(), look);
    polyline(pairs, placing, &layer, &line.points, line.closed);
}

fn area_entities(pairs: &mut Pairs, layers: &mut Layers, placing: &Placing, mark: &Mark, area: &Area) {
    let pattern = match area.fill {
        Fill::Hatch(hatch) if !hatch.lines().is_empty() => Some(Some(hatch)),
        Fill::Ink(_) => Some(None),
        Fill::Hatch(_) | Fill::Paper => None,
    };
    if let Some(pattern) = pattern {
        let (layer, look) = layers::of_fill(mark.layer, area.fill);
        layers.insert(layer.clone(), look);
        hatch_entity(pairs, placing, &layer, &area.polygon, pattern);
    }
    if matches!(area.fill, Fill::Paper | Fill::Hatch(Hatch::Part)) {
        let (layer, look) = layers::of_fill(mark.layer, Fill::Paper);
        layers.insert(layer.clone(), look);
        cover(pairs, placing, &layer, &area.polygon.outer);
    }
    if let Some(pen) = area.edge {
        let (layer, look) = layers::of_pen(mark.layer, pen);
        layers.insert(layer.clone(), look);
        for ring in area.polygon.rings() {
            polyline(pairs, placing, &layer, ring, true);
        }
    }
}

/// Begins an entity.
pub fn begin(pairs: &mut Pairs, kind: &str, owner: Handle, layer: &str) -> Handle {
    let handle = pairs.mint();
    pairs.word(0, kind);
    pairs.handle(5, handle);
    pairs.handle(330, owner);
    pairs.word(100, "AcDbEntity");
    pairs.word(8, layer);
    handle
}

fn polyline(pairs: &mut Pairs, placing: &Placing, layer: &str, points: &[DVec2], closed: bool) {
    if points.len() < 2 {
        return;
    }
    begin(pairs, "LWPOLYLINE", placing.owner, layer);
    pairs.word(100, "AcDbPolyline");
    pairs.count(90, points.len());
    pairs.whole(70, i64::from(closed));
    pairs.number(43, 0.0);
    for &point in points {
        pairs.flat_point(10, placing.point(point));
    }
}

/// A piece of paper that covers what lies below it (a wipe-out: an image without picture, cut along a line).
fn cover(pairs: &mut Pairs, placing: &Placing, layer: &str, ring: &[DVec2]) {
    let corners: Vec<DVec2> = ring.iter().map(|&point| placing.point(point)).collect();
    let Some(bounds) = Bounds::of(corners.iter().copied()).filter(|bounds| bounds.size_m().min_element() > 0.0) else {
        return;
    };
    let size = bounds.size_m();
    begin(pairs, "WIPEOUT", placing.owner, layer);
    pairs.word(100, "AcDbWipeout");
    pairs.whole(90, 0);
    pairs.point(10, bounds.min_m);
    pairs.point(11, DVec2::new(size.x, 0.0));
    pairs.point(12, DVec2::new(0.0, size.y));
    pairs.flat_point(13, DVec2::ONE);
    pairs.handle(340, Handle(0));
    for (code, value) in [(70, 7), (280, 1), (281, 50), (282, 50), (283, 0)] {
        pairs.whole(code, value);
    }
    pairs.handle(360, Handle(0));
    pairs.whole(71, 2);
    pairs.count(91, corners.len() + 1);
    // The line runs in the image's own square, from its middle and down, and ends where it begins.
    for corner in corners.iter().chain(corners.first()) {
        let share = (*corner - bounds.min_m) / size - 0.5;
        pairs.flat_point(14, DVec2::new(share.x, -share.y));
    }
}

/// A hatch with its own lines, or solid.
fn hatch_entity(pairs: &mut Pairs, placing: &Placing, layer: &str, area: &Polygon, pattern: Option<Hatch>) {
    let rings: Vec<&[DVec2]> = area.rings().filter(|ring| ring.len() >= 3).collect();
    if rings.is_empty() {
        return;
    }
    begin(pairs, "HATCH", placing.owner, layer);
    pairs.word(100, "AcDbHatch");
    pairs.point(10, DVec2::ZERO);
    pairs.flat_point(210, DVec2::ZERO);
    pairs.number(230, 1.0);
    pairs.word(2, &pattern.map_or_else(|| "SOLID".to_owned(), |hatch| format!("GL-{}", hatch_word(hatch))));
    pairs.whole(70, i64::from(pattern.is_none()));
    pairs.whole(71, 0);
    pairs.count(91, rings.len());
    for (index, ring) in rings.iter().enumerate() {
        // A polyline; the first is the outer one.
        pairs.whole(92, if index == 0 { 3 } else { 2 });
        pairs.whole(72, 0);
        pairs.whole(73, 1);
        pairs.count(93, ring.len());
        for &point in *ring {
            pairs.flat_point(10, placing.point(point));
        }
        pairs.whole(97, 0);
    }
    pairs.whole(75, 0);
    // A pattern of the file's own, or the one of the format that is solid.
    pairs.whole(76, if pattern.is_some() { 2 } else { 1 });
    if let Some(hatch) = pattern {
        pattern_lines(pairs, placing, hatch);
    }
    pairs.whole(98, 0);
}

fn pattern_lines(pairs: &mut Pairs, placing: &Placing, hatch: Hatch) {
    pairs.number(52, 0.0);
    pairs.number(41, 1.0);
    pairs.whole(77, 0);
    pairs.count(78, hatch.lines().len());
    for lines in hatch.lines() {
        let angle = lines.angle_deg.to_radians() + placing.turn_rad;
        pairs.number(53, angle.to_degrees());
        // Lines are counted from the drawing's origin, so that neighbors fit together.
        let base = placing.point(DVec2::ZERO);
        pairs.number(43, base.x);
        pairs.number(44, base.y);
        let offset = DVec2::from_angle(angle).perp() * placing.length(lines.spacing_mm);
        pairs.number(45, offset.x);
        pairs.number(46, offset.y);
        pairs.count(79, lines.dash_mm.len());
        for (index, &dash) in lines.dash_mm.iter().enumerate() {
            let length = placing.length(dash);
            pairs.number(49, if index % 2 == 0 { length } else { -length });
        }
    }
}

fn text_entity(pairs: &mut Pairs, placing: &Placing, layer: &str, text: &Text) {
    if text.words.trim().is_empty() {
        return;
    }
    begin(pairs, "TEXT", placing.owner, layer);
    let height = placing.length(text.style.cap_mm());
    let [lower_left, ..] = text.corners(placing.scale);
    let style = if text.style.face() == Face::Condensed { NARROW_TEXT_STYLE } else { TEXT_STYLE };
    let across = match text.anchor.across {
        Across::Start => 0,
        Across::Middle => 1,
        Across::End => 2,
    };
    let up = match text.anchor.up {
        Up::Baseline => 0,
        Up::Middle => 2,
        Up::CapTop => 3,
    };
    let is_plain = across == 0 && up == 0;
    let words = Words {
        text: &text.words,
        first: placing.point(if is_plain { text.at } else { lower_left }),
        height,
        turn_deg: (text.rotation_rad + placing.turn_rad).to_degrees(),
        style,
    };
    words.write(pairs);
    pairs.whole(72, across);
    if !is_plain {
        pairs.point(11, placing.point(text.at));
    }
    pairs.word(100, "AcDbText");
    pairs.whole(73, up);
}

/// What texts and attributes have in common.
pub struct Words<'a> {
    /// The words.
    pub text: &'a str,
    /// Where they begin.
    pub first: DVec2,
    /// Height of capitals.
    pub height: f64,
    /// Turn, counter-clockwise.
    pub turn_deg: f64,
    /// Style.
    pub style: &'a str,
}

impl Words<'_> {
    /// Writes the part of text.
    pub fn write(&self, pairs: &mut Pairs) {
        pairs.word(100, "AcDbText");
        pairs.point(10, self.first);
        pairs.number(40, self.height);
        pairs.words(1, self.text);
        pairs.number(50, self.turn_deg);
        pairs.number(41, if self.style == NARROW_TEXT_STYLE { NARROW } else { 1.0 });
        pairs.word(7, self.style);
    }
}
