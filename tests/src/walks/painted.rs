//! What was painted: texts on a sheet, and which of them stand on each other.

use egui::epaint::TextShape;
use egui::{FullOutput, Pos2, Rect, Shape, Vec2};

/// A text as painted, by the corners of its ink.
#[derive(Debug, Clone)]
pub struct PaintedText {
    pub words: String,
    corners: [Pos2; 4],
}

impl PaintedText {
    /// The middle of its ink.
    pub fn middle(&self) -> Pos2 {
        self.corners[0] + (self.corners[2] - self.corners[0]) * 0.5
    }
}

/// Texts painted on a part of the screen, but for those that something opaque was laid over, such as the legend.
pub fn texts_on(output: &FullOutput, sheet: Rect) -> Vec<PaintedText> {
    let mut texts: Vec<PaintedText> = Vec::new();
    for clipped in &output.shapes {
        if sheet.expand(1.0).contains_rect(clipped.clip_rect) {
            collect(&clipped.shape, clipped.clip_rect.intersect(sheet), &mut texts);
        }
    }
    texts
}

fn collect(shape: &Shape, clip: Rect, texts: &mut Vec<PaintedText>) {
    match shape {
        Shape::Vec(all) => all.iter().for_each(|shape| collect(shape, clip, texts)),
        Shape::Rect(rect) if rect.fill.is_opaque() => {
            texts.retain(|text| !rect.rect.intersects(Rect::from_points(&text.corners)));
        }
        Shape::Text(text) => {
            let painted = PaintedText { words: text.galley.text().to_owned(), corners: corners(text) };
            if clip.contains_rect(Rect::from_points(&painted.corners)) && !painted.words.trim().is_empty() {
                texts.push(painted);
            }
        }
        _ => {}
    }
}

/// Corners of the letters, turned as the text is; a hair inside, since a box holds room that no letter fills.
fn corners(text: &TextShape) -> [Pos2; 4] {
    let ink = text.galley.mesh_bounds.shrink(0.5);
    let turn = egui::emath::Rot2::from_angle(text.angle);
    [ink.left_top(), ink.right_top(), ink.right_bottom(), ink.left_bottom()].map(|at| text.pos + turn * at.to_vec2())
}

/// Pairs that share area.
pub fn overlapping(texts: &[PaintedText]) -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    for (index, one) in texts.iter().enumerate() {
        for other in &texts[index + 1..] {
            if overlap(&one.corners, &other.corners) {
                pairs.push((one.words.clone(), other.words.clone()));
            }
        }
    }
    pairs
}

/// Whether two turned boxes share area: no side of either keeps them apart.
fn overlap(one: &[Pos2; 4], other: &[Pos2; 4]) -> bool {
    let span = |corners: &[Pos2; 4], axis: Vec2| {
        let along = corners.map(|corner| corner.to_vec2().dot(axis));
        (along.into_iter().fold(f32::INFINITY, f32::min), along.into_iter().fold(f32::NEG_INFINITY, f32::max))
    };
    let apart = |a: &[Pos2; 4]| {
        [a[1] - a[0], a[3] - a[0]].into_iter().any(|axis| {
            let ((low_a, high_a), (low_b, high_b)) = (span(one, axis), span(other, axis));
            high_a <= low_b || high_b <= low_a
        })
    };
    !apart(one) && !apart(other)
}
