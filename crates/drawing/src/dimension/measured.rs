//! A measured length with its figure and its name.

use glam::DVec2;

use crate::text::{TextStyle, width_mm};

/// From a figure to what stands beside it, paper mm.
pub(super) const ROOM_MM: f64 = 0.8;

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
    pub(super) fn full_words(&self) -> String {
        if self.name.is_empty() { self.words.clone() } else { format!("{} {}", self.name, self.words) }
    }

    /// The figure with its name if both fit in a width, else the figure if it fits alone, paper mm.
    pub(super) fn words_within(&self, mm: f64) -> Option<String> {
        let fits = |words: &str| width_mm(words, TextStyle::Dimension) + 2.0 * ROOM_MM <= mm;
        let full = self.full_words();
        if fits(&full) { Some(full) } else { fits(&self.words).then(|| self.words.clone()) }
    }
}
