//! Figures of a chain: each over its length where it fits, else past the end, else raised with a leader.

use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::text::{Anchor, Text, TextStyle, width_mm};

use super::axis::Axis;
use super::measured::{Measured, ROOM_MM};

/// Dimension line past its last tick, and extension line past the dimension line, paper mm.
pub(super) const PAST_MM: f64 = 1.2;
/// Length of a tick, paper mm.
pub(super) const TICK_MM: f64 = 2.2;
/// Dimension line to the foot of its figure, paper mm.
const LIFT_MM: f64 = 0.7;
/// From one row of raised figures to the next, paper mm.
const ROW_STEP_MM: f64 = 3.6;
/// Most rows of raised figures.
const MOST_ROWS: u32 = 8;

/// From the line to the foot of a figure in a row, paper mm, upward as the figure is read. Raised figures go to the far
/// side of the line, away from what is measured.
pub(super) fn lift_mm(row: u32, axis: &Axis) -> f64 {
    if row == 0 || !axis.rises_inward {
        return LIFT_MM + f64::from(row) * ROW_STEP_MM;
    }
    -PAST_MM - 0.5 - f64::from(row - 1) * ROW_STEP_MM - TextStyle::Dimension.cap_mm()
}

/// A figure with its place along the line.
pub(super) struct Figure {
    pub words: String,
    pub from: f64,
    pub to: f64,
    /// Rows above the line.
    pub row: u32,
    /// Where it belongs, when it does not stand there.
    leader: Option<f64>,
}

impl Figure {
    pub fn draw(self, pencil: &mut Pencil, layer: Layer, axis: &Axis) {
        let scale = pencil.scale;
        let up = axis.along.perp();
        let foot_mm = lift_mm(self.row, axis);
        let near_mm = if foot_mm < 0.0 { foot_mm + TextStyle::Dimension.cap_mm() + 0.4 } else { foot_mm - 0.4 };
        let lift = scale.m(foot_mm);
        let at = axis.point(self.from.midpoint(self.to));
        if let Some(home) = self.leader {
            pencil.line(layer, Pen::Dimension, [axis.point(home), axis.point(home) + up * scale.m(near_mm)]);
        }
        let mut text = Text::new(self.words, at + up * lift, Anchor::OVER, TextStyle::Dimension, Pen::Dimension);
        text.rotation_rad = axis.angle_rad;
        pencil.text_on_paper(layer, text);
    }
}

/// Where figures of a chain may stand.
pub(super) struct Room<'a> {
    /// The drawing's scale.
    pub scale: Scale,
    /// The line.
    pub axis: &'a Axis,
    /// Where the chain begins and ends along it, m.
    pub ends: (f64, f64),
    /// Free room past both ends for names, paper mm.
    pub past_ends_mm: f64,
}

/// Places the figures of a chain.
pub(super) fn set_figures(room: &Room, measured: &[Measured]) -> Vec<Figure> {
    let mut set: Vec<Figure> = Vec::new();
    let mut wide: Vec<&Measured> = Vec::new();
    for one in measured {
        let (low, high) = room.span(one);
        match one.words_within(room.scale.mm(high - low)) {
            Some(words) => set.push(room.centered(words, low.midpoint(high))),
            None => wide.push(one),
        }
    }
    wide.sort_by(|a, b| room.span(a).0.total_cmp(&room.span(b).0));
    let at_start = wide.first().is_some_and(|one| room.begins_at(one, room.ends.0)) && wide.len() > 1;
    let at_end = wide.last().is_some_and(|one| room.ends_at(one, room.ends.1));
    let alone_at_start = wide.len() == 1 && !at_end && room.begins_at(wide[0], room.ends.0);
    if at_start || alone_at_start {
        set.push(room.before_start(wide.remove(0)));
    }
    if at_end && let Some(last) = wide.pop() {
        set.push(room.past_end(last));
    }
    for one in wide {
        let raised = room.raised(one, &set);
        set.push(raised);
    }
    set
}

impl Room<'_> {
    fn span(&self, one: &Measured) -> (f64, f64) {
        let (a, b) = (self.axis.place(one.from), self.axis.place(one.to));
        (a.min(b), a.max(b))
    }

    fn begins_at(&self, one: &Measured, place: f64) -> bool {
        (self.span(one).0 - place).abs() < self.scale.m(0.05)
    }

    fn ends_at(&self, one: &Measured, place: f64) -> bool {
        (self.span(one).1 - place).abs() < self.scale.m(0.05)
    }

    fn width(&self, words: &str) -> f64 {
        self.scale.m(width_mm(words, TextStyle::Dimension))
    }

    fn centered(&self, words: String, middle: f64) -> Figure {
        let half = self.width(&words) / 2.0;
        Figure { words, from: middle - half, to: middle + half, row: 0, leader: None }
    }

    /// The figure past an end, with its name if there is room for it.
    fn outside_words(&self, one: &Measured) -> String {
        one.words_within(self.past_ends_mm - TICK_MM / 2.0).unwrap_or_else(|| one.words.clone())
    }

    fn before_start(&self, one: &Measured) -> Figure {
        let words = self.outside_words(one);
        let to = self.ends.0 - self.scale.m(TICK_MM / 2.0 + ROOM_MM);
        Figure { from: to - self.width(&words), to, words, row: 0, leader: None }
    }

    fn past_end(&self, one: &Measured) -> Figure {
        let words = self.outside_words(one);
        let from = self.ends.1 + self.scale.m(TICK_MM / 2.0 + ROOM_MM);
        Figure { to: from + self.width(&words), from, words, row: 0, leader: None }
    }

    /// The figure in the lowest raised row that is free over its length.
    fn raised(&self, one: &Measured, set: &[Figure]) -> Figure {
        let (low, high) = self.span(one);
        let middle = low.midpoint(high);
        let mut figure = self.centered(one.full_words(), middle);
        let beside = self.scale.m(ROOM_MM);
        let taken = |row: u32| {
            set.iter()
                .any(|other| other.row == row && figure.from < other.to + beside && figure.to > other.from - beside)
        };
        figure.row = (1..MOST_ROWS).find(|&row| !taken(row)).unwrap_or(MOST_ROWS);
        figure.leader = Some(middle);
        figure
    }
}
