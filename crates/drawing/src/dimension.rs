//! Dimensions in one style: extension lines with a gap, oblique ticks, the figure above the line, never upside down.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

use gantline_plan::geometry::frame::within_half_turn;
use glam::DVec2;

use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Across, Anchor, Text, TextStyle, Up, width_mm};

/// From the measured point to its extension line, paper mm.
const GAP_MM: f64 = 1.0;
/// Extension line past the dimension line, and dimension line past its last tick, paper mm.
const PAST_MM: f64 = 1.2;
/// Length of a tick, paper mm.
const TICK_MM: f64 = 2.2;
/// Dimension line to the foot of its figure, paper mm.
const LIFT_MM: f64 = 0.7;
/// From a figure to what stands beside it, paper mm.
const ROOM_MM: f64 = 0.8;
/// From one dimension line to the next one outside it, paper mm.
pub const ROW_MM: f64 = 6.0;

/// Where a dimension line runs, and how it is measured.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DimensionLine {
    /// A point on it, m.
    pub through: DVec2,
    /// Unit vector along it.
    pub along: DVec2,
}

/// One measured length of a chain, with its figure.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// Where it begins, m; its extension line leaves here.
    pub from: DVec2,
    /// Where it ends, m.
    pub to: DVec2,
    /// The figure as written.
    pub words: String,
    /// What is measured, written before the figure where there is room for it; empty for nothing.
    pub name: &'static str,
}

impl Measured {
    /// A length without a name.
    pub fn new(from: DVec2, to: DVec2, words: impl Into<String>) -> Self {
        Self { from, to, words: words.into(), name: "" }
    }

    /// The same length with a name.
    #[must_use]
    pub fn named(self, name: &'static str) -> Self {
        Self { name, ..self }
    }

    /// Name and figure.
    fn full_words(&self) -> String {
        if self.name.is_empty() { self.words.clone() } else { format!("{} {}", self.name, self.words) }
    }

    /// The figure with its name if both fit in a width, else the figure if it fits alone, paper mm.
    fn words_within(&self, mm: f64) -> Option<String> {
        let fits = |words: &str| width_mm(words, TextStyle::Dimension) + 2.0 * ROOM_MM <= mm;
        let full = self.full_words();
        if fits(&full) { Some(full) } else { fits(&self.words).then(|| self.words.clone()) }
    }
}

/// Draws a single dimension.
pub fn dimension(pencil: &mut Pencil, layer: Layer, line: DimensionLine, from: DVec2, to: DVec2, words: &str) {
    chain(pencil, layer, line, &[Measured::new(from, to, words)]);
}

/// Draws lengths one after another on one line. Figures that find no room between their ticks stand outside at the ends
/// of the chain, else above it, each with a leader.
pub fn chain(pencil: &mut Pencil, layer: Layer, line: DimensionLine, measured: &[Measured]) {
    chain_with_room(pencil, layer, line, measured, 0.0);
}

/// The same with so much free room past both ends, paper mm, that figures there may carry their names if they fit in it.
pub fn chain_with_room(pencil: &mut Pencil, layer: Layer, line: DimensionLine, measured: &[Measured], room_mm: f64) {
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
    let figures = set_figures(scale, &axis, measured, (first, last), room_mm);
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
    let highest = set_figures(scale, &axis, measured, ends, 0.0).iter().map(|figure| figure.row).max().unwrap_or(0);
    let (low, high) = (lift_mm(highest, &axis), lift_mm(highest, &axis) + TextStyle::Dimension.cap_mm());
    let far = if axis.rises_inward { -low } else { high };
    far.max(PAST_MM)
}

/// From the line to the foot of a figure in a row, paper mm, upward as the figure is read. Raised figures go to the far
/// side of the line, away from what is measured.
fn lift_mm(row: u32, axis: &Axis) -> f64 {
    if row == 0 || !axis.rises_inward {
        return LIFT_MM + f64::from(row) * ROW_STEP_MM;
    }
    -PAST_MM - 0.5 - f64::from(row - 1) * ROW_STEP_MM - TextStyle::Dimension.cap_mm()
}

/// The line with its reading direction.
struct Axis {
    through: DVec2,
    along: DVec2,
    angle_rad: f64,
    /// Whether what is measured lies on the side to which figures rise.
    rises_inward: bool,
}

impl Axis {
    /// None when nothing is measured.
    fn of(line: DimensionLine, measured: &[Measured]) -> Option<Self> {
        if measured.is_empty() {
            return None;
        }
        let angle_rad = readable(line.along.to_angle());
        let along = DVec2::from_angle(angle_rad);
        let from_line = |one: &Measured| (one.from + one.to - line.through * 2.0).dot(along.perp());
        let rises_inward = measured.iter().map(from_line).sum::<f64>() > 1e-9;
        Some(Self { through: line.through, along, angle_rad, rises_inward })
    }

    fn place(&self, point: DVec2) -> f64 {
        (point - self.through).dot(self.along)
    }

    fn point(&self, place: f64) -> DVec2 {
        self.through + self.along * place
    }
}

/// The same line of writing, turned by half a turn if it would stand on its head.
pub fn readable(angle_rad: f64) -> f64 {
    let angle = within_half_turn(angle_rad);
    // A line straight up is read from the right, also when rounding has tipped it a little to the left.
    if angle > FRAC_PI_2 + 1e-6 {
        angle - std::f64::consts::PI
    } else if angle <= -FRAC_PI_2 + 1e-6 {
        angle + std::f64::consts::PI
    } else {
        angle
    }
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

/// A figure with its place along the line.
struct Figure {
    words: String,
    from: f64,
    to: f64,
    /// Rows above the line.
    row: u32,
    /// Where it belongs, when it does not stand there.
    leader: Option<f64>,
}

impl Figure {
    fn draw(self, pencil: &mut Pencil, layer: Layer, axis: &Axis) {
        let scale = pencil.scale;
        let up = axis.along.perp();
        let foot_mm = lift_mm(self.row, axis);
        let near_mm = if foot_mm < 0.0 { foot_mm + TextStyle::Dimension.cap_mm() + 0.4 } else { foot_mm - 0.4 };
        let lift = scale.m(foot_mm);
        let at = axis.point(self.from.midpoint(self.to));
        if let Some(home) = self.leader {
            pencil.line(layer, Pen::Dimension, [axis.point(home), axis.point(home) + up * scale.m(near_mm)]);
        }
        let anchor = Anchor { across: Across::Middle, up: Up::Baseline };
        let mut text = Text::new(self.words, at + up * lift, anchor, TextStyle::Dimension, Pen::Dimension);
        text.rotation_rad = axis.angle_rad;
        pencil.text_on_paper(layer, text);
    }
}

/// From one row of raised figures to the next, paper mm.
const ROW_STEP_MM: f64 = 3.6;

/// Places the figures of a chain.
fn set_figures(scale: Scale, axis: &Axis, measured: &[Measured], ends: (f64, f64), room_mm: f64) -> Vec<Figure> {
    let room = scale.m(ROOM_MM);
    let mut set: Vec<Figure> = Vec::new();
    let mut wide: Vec<(f64, &Measured)> = Vec::new();
    for one in measured {
        let (a, b) = (axis.place(one.from), axis.place(one.to));
        let (low, high) = (a.min(b), a.max(b));
        let width = |words: &str| scale.m(width_mm(words, TextStyle::Dimension));
        let middle = low.midpoint(high);
        if let Some(words) = one.words_within(scale.mm(high - low)) {
            let half = width(&words) / 2.0;
            set.push(Figure { words, from: middle - half, to: middle + half, row: 0, leader: None });
        } else {
            wide.push((middle, one));
        }
    }
    wide.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut first_free, mut last_free) = (true, true);
    let count = wide.len();
    for (index, (middle, one)) in wide.into_iter().enumerate() {
        let low = axis.place(one.from).min(axis.place(one.to));
        let high = axis.place(one.from).max(axis.place(one.to));
        let tick = scale.m(TICK_MM / 2.0) + room;
        let at_end = last_free && (high - ends.1).abs() < scale.m(0.05);
        let at_start = first_free && (low - ends.0).abs() < scale.m(0.05) && (index + 1 < count || !at_end);
        let width = |words: &str| scale.m(width_mm(words, TextStyle::Dimension));
        let past_end = || one.words_within(room_mm - TICK_MM / 2.0).unwrap_or_else(|| one.words.clone());
        if at_start {
            first_free = false;
            let words = past_end();
            let width = width(&words);
            set.push(Figure { words, from: ends.0 - tick - width, to: ends.0 - tick, row: 0, leader: None });
        } else if at_end {
            last_free = false;
            let words = past_end();
            let width = width(&words);
            set.push(Figure { words, from: ends.1 + tick, to: ends.1 + tick + width, row: 0, leader: None });
        } else {
            let words = one.full_words();
            let half = width(&words) / 2.0;
            let (from, to) = (middle - half, middle + half);
            let taken = |row: u32| set.iter().any(|f| f.row == row && from < f.to + room && to > f.from - room);
            let row = (1..8).find(|&row| !taken(row)).unwrap_or(8);
            set.push(Figure { words, from, to, row, leader: Some(middle) });
        }
    }
    set
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mark::{Mark, Shape};
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
