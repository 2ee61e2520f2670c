//! The mark of a level: a triangle that stands on its point, and the level beside it.

use glam::DVec2;

use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle};

/// Half the width of the triangle, paper mm.
const HALF_MM: f64 = 1.3;

/// Draws a level mark whose triangle has its point half its width right of the place; the words follow.
pub fn level_mark(pencil: &mut Pencil, layer: Layer, at: DVec2, words: &str) {
    let scale = pencil.scale;
    let (half, height) = (scale.m(HALF_MM), scale.m(HALF_MM * 1.6));
    let point = at + DVec2::X * half;
    let triangle = [point, point + DVec2::new(half, height), point + DVec2::new(-half, height)];
    pencil.area(layer, Fill::Paper, Some(Pen::Edge), triangle);
    let beside = point + DVec2::new(half + scale.m(0.9), scale.m(0.1));
    pencil.text_on_paper(layer, Text::new(words, beside, Anchor::START, TextStyle::Note, Pen::Lettering));
}
