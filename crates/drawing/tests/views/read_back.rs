//! Reading a drawing back: its figures, its text boxes, what of them overlaps.

use gantline_drawing::{Drawing, Layer, Pen, Shape, Text};
use glam::DVec2;

/// All texts of a drawing.
pub fn texts(drawing: &Drawing) -> Vec<&Text> {
    drawing
        .marks
        .iter()
        .filter_map(|mark| match &mark.shape {
            Shape::Text(text) => Some(text),
            Shape::Line(_) | Shape::Area(_) => None,
        })
        .collect()
}

/// Lengths in meters as dimensions say them, sorted, in millimeters; the names before them are left off.
pub fn dimensions_mm(drawing: &Drawing) -> Vec<i64> {
    let mut all: Vec<i64> = drawing
        .marks
        .iter()
        .filter(|mark| mark.layer == Layer::Dimension)
        .filter_map(|mark| match &mark.shape {
            Shape::Text(text) => {
                let figure = text.words.strip_suffix(" m")?.rsplit(' ').next()?;
                Some((figure.parse::<f64>().ok()? * 1000.0).round() as i64)
            }
            Shape::Line(_) | Shape::Area(_) => None,
        })
        .collect();
    all.sort_unstable();
    all
}

/// Whether two turned boxes share area: no side of either keeps them apart.
pub fn overlap(one: &[DVec2; 4], other: &[DVec2; 4]) -> bool {
    let keeps_apart = |a: &[DVec2; 4], b: &[DVec2; 4]| {
        [a[1] - a[0], a[3] - a[0]].into_iter().any(|axis| {
            let span = |corners: &[DVec2; 4]| {
                let along = corners.map(|corner| corner.dot(axis));
                (along.into_iter().fold(f64::INFINITY, f64::min), along.into_iter().fold(f64::NEG_INFINITY, f64::max))
            };
            let ((low_a, high_a), (low_b, high_b)) = (span(a), span(b));
            high_a <= low_b || high_b <= low_a
        })
    };
    !keeps_apart(one, other) && !keeps_apart(other, one)
}

/// Pairs of texts that overlap, as words.
pub fn overlapping_texts(drawing: &Drawing) -> Vec<(String, String)> {
    let texts = texts(drawing);
    let mut pairs = Vec::new();
    for (index, one) in texts.iter().enumerate() {
        for other in &texts[index + 1..] {
            if overlap(&one.corners(drawing.scale), &other.corners(drawing.scale)) {
                pairs.push((one.words.clone(), other.words.clone()));
            }
        }
    }
    pairs
}

/// Points of all lines in a pen.
pub fn lines(drawing: &Drawing, pen: Pen) -> Vec<&[DVec2]> {
    drawing
        .marks
        .iter()
        .filter_map(|mark| match &mark.shape {
            Shape::Line(line) if line.pen == pen => Some(line.points.as_slice()),
            Shape::Line(_) | Shape::Area(_) | Shape::Text(_) => None,
        })
        .collect()
}
