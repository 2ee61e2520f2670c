//! A placed label as marks: leader, box, words.

use glam::DVec2;

use super::boxed::{Label, LabelKind, PAD_MM, PlacedLabel};
use super::placing::leader_is_long;
use crate::layer::Layer;
use crate::mark::{Fill, Mark};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Across, Anchor, Text, Up};

/// Draws a placed label: leader, box, words.
pub fn label_marks(placed: &PlacedLabel, scale: Scale) -> Vec<Mark> {
    let PlacedLabel { label, offset_mm } = placed;
    let mut pencil = Pencil::about(scale, label.key.0, label.stress);
    let layer = match label.key.1 {
        LabelKind::Tag => Layer::Tag,
        LabelKind::Clearance(_) => Layer::Conflict,
        LabelKind::Reactions => Layer::Reading,
        LabelKind::Name => Layer::Lettering,
    };
    let size = label.size_mm();
    let center = label.point + scale.shift(*offset_mm);
    if leader_is_long(label, *offset_mm, size) {
        pencil.line(layer, label.pen, [label.point, center]);
        pencil.disc(layer, Fill::Ink(label.pen), None, label.point, scale.m(0.45));
    }
    let half = scale.shift(size / 2.0);
    let corner = |x: f64, y: f64| center + DVec2::new(x * half.x, y * half.y);
    let frame = [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)];
    pencil.area(layer, Fill::Paper, Some(label.pen), frame);
    write_rows(&mut pencil, label, layer, center);
    pencil.done()
}

/// Writes words at the left and figures at the right of each row.
fn write_rows(pencil: &mut Pencil, label: &Label, layer: Layer, center: DVec2) {
    let scale = pencil.scale;
    let half = scale.shift(label.size_mm() / 2.0);
    let ink = if label.pen == Pen::TagFrame { Pen::Lettering } else { label.pen };
    let mut top = half.y - scale.m(PAD_MM);
    for row in &label.rows {
        let mut write = |words: &str, x: f64, across: Across| {
            let anchor = Anchor { across, up: Up::CapTop };
            let at = center + DVec2::new(x, top);
            pencil.lettering(layer, Text::new(words, at, anchor, row.style, ink));
        };
        write(&row.words, -half.x + scale.m(PAD_MM), Across::Start);
        if !row.figure.is_empty() {
            write(&row.figure, half.x - scale.m(PAD_MM), Across::End);
        }
        top -= scale.m(row.style.line_mm());
    }
}
