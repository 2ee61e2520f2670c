//! A label: lines in a box that speaks of a point.

use std::collections::BTreeMap;

use gantline_plan::document::ThingId;
use glam::DVec2;

use crate::mark::Stress;
use crate::pen::Pen;
use crate::scale::Scale;
use crate::taken::TakenBox;
use crate::text::{TextStyle, width_mm};

/// Between the words and the frame, paper mm.
pub(super) const PAD_MM: f64 = 0.9;
/// Between the two columns of a block, paper mm.
const COLUMN_MM: f64 = 2.0;

/// What a label is for; a thing has at most one of a kind and number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LabelKind {
    /// The tag of a unit.
    Tag,
    /// A clearance, counted from the tightest.
    Clearance(u8),
    /// Reactions.
    Reactions,
    /// The name of a thing.
    Name,
}

/// Which label of which thing.
pub type LabelKey = (ThingId, LabelKind);

/// Places of labels: center of the box from the labeled point, paper mm.
pub type LabelPlaces = BTreeMap<LabelKey, DVec2>;

/// A line of a label: words at the left, and a figure that ends at the right or nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// At the left.
    pub words: String,
    /// At the right; empty for none.
    pub figure: String,
    /// Style of both.
    pub style: TextStyle,
}

impl Row {
    /// A row of words only.
    pub fn words(words: impl Into<String>, style: TextStyle) -> Self {
        Self { words: words.into(), figure: String::new(), style }
    }

    /// Words with a figure.
    pub fn figure(words: impl Into<String>, figure: impl Into<String>) -> Self {
        Self { words: words.into(), figure: figure.into(), style: TextStyle::Reading }
    }
}

/// A label to be placed.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Which label of which thing.
    pub key: LabelKey,
    /// The point it speaks of, m.
    pub point: DVec2,
    /// Direction in which it likes to stand, a unit vector.
    pub prefers: DVec2,
    /// From the point to the nearest side of the box, paper mm, if there is room.
    pub away_mm: f64,
    /// Its lines.
    pub rows: Vec<Row>,
    /// Pen of frame, leader and words.
    pub pen: Pen,
    /// How loudly it is drawn.
    pub stress: Stress,
    /// Whether it may be left out when there is no room; others are then set where they overlap least far out.
    pub optional: bool,
}

/// A label at its place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedLabel {
    /// The label.
    pub label: Label,
    /// Center of its box from the point, paper mm.
    pub offset_mm: DVec2,
}

impl PlacedLabel {
    /// The place its box takes.
    pub fn taken(&self, scale: Scale) -> TakenBox {
        TakenBox::around(self.label.point / scale.m_per_mm + self.offset_mm, self.label.size_mm())
    }
}

impl Label {
    /// Width and height of its box, paper mm.
    pub fn size_mm(&self) -> DVec2 {
        let left = self.rows.iter().map(|row| width_mm(&row.words, row.style)).fold(0.0, f64::max);
        let right = self.rows.iter().map(|row| width_mm(&row.figure, row.style)).fold(0.0, f64::max);
        let column = if right > 0.0 { COLUMN_MM + right } else { 0.0 };
        // A row of words alone may be wider than both columns together.
        let alone = self.rows.iter().filter(|row| row.figure.is_empty()).map(|row| width_mm(&row.words, row.style));
        let paired = self.rows.iter().filter(|row| !row.figure.is_empty()).map(|row| width_mm(&row.words, row.style));
        let width =
            if right > 0.0 { (paired.fold(0.0, f64::max) + column).max(alone.fold(0.0, f64::max)) } else { left };
        let last = self.rows.last().map_or(0.0, |row| row.style.cap_mm());
        let above: f64 = self.rows.iter().rev().skip(1).map(|row| row.style.line_mm()).sum();
        DVec2::new(width + 2.0 * PAD_MM, above + last + 2.0 * PAD_MM)
    }
}
