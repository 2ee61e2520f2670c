//! Chains of dimensions: lengths one after another on one line.

use std::f64::consts::FRAC_PI_4;

use glam::DVec2;

use super::axis::{Axis, DimensionLine};
use super::figure::{PAST_MM, Room, TICK_MM, lift_mm, set_figures};
use super::measured::Measured;
use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::TextStyle;

/// From the measured point to its extension line, paper mm.
const GAP_MM: f64 = 1.0;
/// From one dimension line to the next one outside it, paper mm.
pub const ROW_MM: f64 = 6.0;

/// Draws a single dimension.
pub fn dimension(pencil: &mut Pencil, layer: Layer, line: DimensionLine, from: DVec2, to: DVec2, words: &str) {
    chain(pencil, layer, line, &[Measured::new(from, to, words)]);
}

/// Draws lengths one after another on one line. Figures that find no room between their ticks stand outside at the ends
/// of the chain, else above it, each with a leader.
pub fn chain(pencil: &mut Pencil, layer: Layer, line: DimensionLine, measured: &[Measured]) {
    chain_with_room(pencil, layer, line, measured, 0.0);
}

/// The same where a chain is one of many: when its figures would need more than one raised row, only those that fit
/// between their ticks are written, and the ticks tell of the others.
pub fn chain_or_ticks(pencil: &mut Pencil, layer: Layer, line: DimensionLine, measured: &[Measured]) {
    draw_chain(pencil, layer, line, measured, 0.0, true);
}

/// The same with so much free room past both ends, paper mm, that figures there may carry their names if they fit in it.
pub fn chain_with_room(pencil: &mut Pencil, layer: Layer, line: DimensionLine, measured: &[Measured], room_mm: f64) {
    draw_chain(pencil, layer, line, measured, room_mm, false);
}

fn draw_chain(
    pencil: &mut Pencil,
    layer: Layer,
    line: DimensionLine,
    measured: &[Measured],
    room_mm: f64,
    may_leave_out: bool,
) {
    let Some(axis) = Axis::of(line, measured) else { return };
    let scale = pencil.scale;
    let mut ends: Vec<(f64, DVec2)> =
        measured.iter().flat_map(|one| [one.from, one.to]).map(|point| (axis.place(point), point)).collect();
    ends.sort_by(|a, b| a.0.total_cmp(&b.0));
    ends.dedup_by(|later, kept| (later.0 - kept.0).abs() < scale.m(0.05));
    for &(at, point) in &ends {
        extension(pencil, layer, &axis, at, point);
        tick(pencil, layer, axis.point(at));
    }
    let (first, last) = (ends[0].0, ends[ends.len() - 1].0);
    let mut figures = set_figures(&Room { scale, axis: &axis, ends: (first, last), past_ends_mm: room_mm }, measured);
    if may_leave_out && figures.iter().any(|figure| figure.row > 1) {
        figures.retain(|figure| figure.row == 0);
    }
    let past = scale.m(PAST_MM);
    let begin = figures.iter().map(|figure| figure.from).fold(first - past, f64::min);
    let end = figures.iter().map(|figure| figure.to).fold(last + past, f64::max);
    let (begin, end) = (begin.min(first - past), end.max(last + past));
    pencil.line(layer, Pen::Dimension, [axis.point(begin), axis.point(end)]);
    for figure in figures {
        figure.draw(pencil, layer, &axis);
    }
}

/// How far a chain reaches past its line, away from what is measured, paper mm.
pub fn depth_mm(scale: Scale, line: DimensionLine, measured: &[Measured]) -> f64 {
    let Some(axis) = Axis::of(line, measured) else { return 0.0 };
    let places = || measured.iter().flat_map(|one| [axis.place(one.from), axis.place(one.to)]);
    let ends = (places().fold(f64::INFINITY, f64::min), places().fold(f64::NEG_INFINITY, f64::max));
    let figures = set_figures(&Room { scale, axis: &axis, ends, past_ends_mm: 0.0 }, measured);
    let highest = figures.iter().map(|figure| figure.row).max().unwrap_or(0);
    let (low, high) = (lift_mm(highest, &axis), lift_mm(highest, &axis) + TextStyle::Dimension.cap_mm());
    let far = if axis.rises_inward { -low } else { high };
    far.max(PAST_MM)
}

fn extension(pencil: &mut Pencil, layer: Layer, axis: &Axis, place: f64, point: DVec2) {
    let foot = axis.point(place);
    let (gap, past) = (pencil.scale.m(GAP_MM), pencil.scale.m(PAST_MM));
    let distance = point.distance(foot);
    if distance > gap {
        let toward = (foot - point) / distance;
        pencil.line(layer, Pen::Dimension, [point + toward * gap, foot + toward * past]);
    }
}

fn tick(pencil: &mut Pencil, layer: Layer, at: DVec2) {
    let half = pencil.scale.m(TICK_MM / 2.0);
    let across = DVec2::from_angle(FRAC_PI_4) * half;
    pencil.line(layer, Pen::Outline, [at - across, at + across]);
}

#[cfg(test)]
mod tests {
    use std::f64::consts::FRAC_PI_2;

    use super::*;
    use crate::mark::{Mark, Shape};
    use crate::text::Text;
    use proptest::prelude::*;

    fn texts(marks: &[Mark]) -> Vec<&Text> {
        marks
            .iter()
            .filter_map(|mark| match &mark.shape {
                Shape::Text(text) => Some(text),
                Shape::Line(_) | Shape::Area(_) => None,
            })
            .collect()
    }

    proptest! {
        /// A drafting rule is the witness: figures are read from below or from the right.
        #[test]
        fn no_figure_stands_on_its_head(angle in -7.0..7.0_f64, length in 0.01..50.0_f64) {
            let mut pencil = Pencil::new(Scale::one_to(100.0));
            let along = DVec2::from_angle(angle);
            let line = DimensionLine { through: along.perp(), along };
            dimension(&mut pencil, Layer::Dimension, line, DVec2::ZERO, along * length, "12.345 m");
            let marks = pencil.done();
            let turn = texts(&marks)[0].rotation_rad;
            prop_assert!(turn > -FRAC_PI_2 && turn <= FRAC_PI_2 + 1e-5);
        }

        /// Boxes of letters are held against each other along the line, row by row.
        #[test]
        fn figures_of_a_chain_never_overlap(steps in proptest::collection::vec(0.05..6.0_f64, 1..9)) {
            let scale = Scale::one_to(100.0);
            let mut pencil = Pencil::new(scale);
            let mut at = 0.0;
            let measured: Vec<Measured> = steps.iter().map(|step| {
                let from = DVec2::new(at, 0.0);
                at += step;
                Measured::new(from, DVec2::new(at, 0.0), format!("{step:.3} m")).named("name")
            }).collect();
            let line = DimensionLine { through: DVec2::new(0.0, -1.0), along: DVec2::X };
            chain(&mut pencil, Layer::Dimension, line, &measured);
            let marks = pencil.done();
            let boxes: Vec<[DVec2; 4]> = texts(&marks).iter().map(|text| text.corners(scale)).collect();
            prop_assert_eq!(boxes.len(), steps.len());
            for (i, one) in boxes.iter().enumerate() {
                for other in &boxes[i + 1..] {
                    let apart = one[1].x < other[0].x || other[1].x < one[0].x || one[2].y < other[0].y || other[2].y < one[0].y;
                    prop_assert!(apart, "{one:?} on {other:?}");
                }
            }
        }
    }

    #[test]
    fn every_length_of_a_chain_shares_its_ticks_with_its_neighbors() {
        let mut pencil = Pencil::new(Scale::one_to(100.0));
        let point = |x: f64| DVec2::new(x, 0.0);
        let one = |a: f64, b: f64| Measured::new(point(a), point(b), format!("{:.3} m", b - a));
        let line = DimensionLine { through: DVec2::new(0.0, 2.0), along: DVec2::X };
        chain(&mut pencil, Layer::Dimension, line, &[one(0.0, 5.0), one(5.0, 9.0), one(9.0, 20.0)]);
        let ticks =
            pencil.done().iter().filter(|m| matches!(&m.shape, Shape::Line(l) if l.pen == Pen::Outline)).count();
        assert_eq!(ticks, 4);
    }
}
