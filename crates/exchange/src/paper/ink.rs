//! How letters and lines look on paper: sizes and inks of an engineer's report.

use gantline_drawing::letter_width::Face;
use gantline_drawing::{Pen, Stress};

use crate::palette::{Color, ink};

/// Millimeters of a typographic point.
const MM_PER_PT: f64 = 25.4 / 72.0;
/// From line to line, in ems.
const LINE_EM: f64 = 1.35;
/// How far letters reach over the line on which capitals stand, in ems: brackets, b, d.
pub const ASCENT_EM: f64 = 0.79;
/// How far they reach below it: g, p, brackets.
pub const DESCENT_EM: f64 = 0.23;

/// Letters of one look.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hand {
    /// Cut of the typeface.
    pub face: Face,
    /// The em, mm.
    pub size_mm: f64,
    /// Color.
    pub ink: Color,
}

impl Hand {
    fn of(points: f64, face: Face, pen: Pen) -> Self {
        Self { face, size_mm: points * MM_PER_PT, ink: ink(pen, Stress::Plain) }
    }

    /// The text itself, 9 pt.
    pub fn body() -> Self {
        Self::of(9.0, Face::Regular, Pen::Lettering)
    }

    /// A heading: 14, 11 or 9.5 pt.
    pub fn heading(level: u8) -> Self {
        let points = match level {
            0 | 1 => 14.0,
            2 => 11.0,
            _ => 9.5,
        };
        Self::of(points, Face::SemiBold, Pen::Lettering)
    }

    /// A cell of a table, 8 pt; strong ones stand out.
    pub fn cell(is_strong: bool) -> Self {
        Self::of(8.0, if is_strong { Face::SemiBold } else { Face::Regular }, Pen::Lettering)
    }

    /// Sources and remarks, gray, 7.5 pt: capitals of 1.85 mm.
    pub fn remark() -> Self {
        Self::of(7.5, Face::Regular, Pen::Fine)
    }

    /// The same letters larger or smaller.
    #[must_use]
    pub fn sized(self, factor: f64) -> Self {
        Self { size_mm: self.size_mm * factor, ..self }
    }

    /// From line to line, mm.
    pub fn line_mm(self) -> f64 {
        self.size_mm * LINE_EM
    }

    /// From the top of a line to the one on which capitals stand, mm.
    pub fn baseline_mm(self) -> f64 {
        self.size_mm * ((LINE_EM - ASCENT_EM - DESCENT_EM) / 2.0 + ASCENT_EM)
    }
}

/// Of lines that part rows.
pub fn rule_ink() -> Color {
    ink(Pen::Background, Stress::Plain)
}

/// Of lines under a table's head and in formulas' surroundings.
pub fn strong_rule_ink() -> Color {
    ink(Pen::Fine, Stress::Plain)
}

/// Of what nobody may pass over.
pub fn caution_ink() -> Color {
    ink(Pen::Conflict, Stress::Plain)
}

#[cfg(test)]
mod tests {
    use super::*;
    use gantline_drawing::text::CAP_PER_EM;

    #[test]
    fn the_smallest_text_has_capitals_of_1_8_mm() {
        assert!(Hand::remark().size_mm * CAP_PER_EM >= 1.8);
        assert!((Hand::body().size_mm - 3.175).abs() < 1e-9, "9 pt");
    }
}
