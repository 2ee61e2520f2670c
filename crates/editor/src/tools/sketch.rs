//! What a tool wants to have drawn over the sheet: lines, guides, a box, a cross, and a card at the pointer.

use gantline_plan::quantity::Kind;
use glam::DVec2;

use super::snap::Caught;

/// What a tool wants to have drawn.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Sketch {
    /// Lines.
    pub lines: Vec<SketchLine>,
    /// What the pointer is caught by.
    pub caught: Option<Caught>,
    /// A place that can't be taken.
    pub cross: Option<DVec2>,
    /// The card at the pointer.
    pub card: Vec<CardLine>,
    /// A word at the pointer.
    pub word: Option<String>,
    /// A distance written beside a line.
    pub dimension: Option<(DVec2, DVec2)>,
}

/// A line of a sketch.
#[derive(Debug, Clone, PartialEq)]
pub struct SketchLine {
    /// Its points, m.
    pub points: Vec<DVec2>,
    /// Whether the last is joined to the first.
    pub closed: bool,
    /// What it means.
    pub role: LineRole,
}

/// What a line of a sketch means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LineRole {
    /// Drawn and kept.
    Drawn,
    /// Would be drawn by a click here.
    Pending,
    /// Can't be drawn.
    Refused,
    /// Where a thing stood before.
    Ghost,
    /// A box that takes what lies wholly inside.
    BoxInside,
    /// A box that takes what it touches.
    BoxTouched,
}

/// A figure of the card at the pointer.
#[derive(Debug, Clone, PartialEq)]
pub struct CardLine {
    /// Its name.
    pub name: &'static str,
    /// The figure.
    pub figure: CardFigure,
}

/// A figure or a word.
#[derive(Debug, Clone, PartialEq)]
pub enum CardFigure {
    /// A figure with its kind, SI.
    Of(Kind, f64),
    /// A word.
    Word(String),
}

impl CardLine {
    /// A length.
    pub const fn length(name: &'static str, value_m: f64) -> Self {
        Self { name, figure: CardFigure::Of(Kind::Length, value_m) }
    }

    /// An angle.
    pub const fn angle(name: &'static str, value_rad: f64) -> Self {
        Self { name, figure: CardFigure::Of(Kind::Angle, value_rad) }
    }

    /// A word.
    pub fn word(name: &'static str, word: impl Into<String>) -> Self {
        Self { name, figure: CardFigure::Word(word.into()) }
    }
}
