//! The paper palette: black on white with few colors that color-blind people tell apart, each with its own hatch or dash.
//!
//! Blue for reach, vermilion for gaps and conflicts, green and purple for clear zones are the colors that M. Okabe and
//! K. Ito (2008, "Color Universal Design") chose to be told apart by all; dark enough here to read as lines on white.

use gantline_drawing::{Fill, Hatch, Pen, Stress};

/// How much heavier a selected line is.
const SELECTED_FACTOR: f64 = 1.8;

/// A color, red, green and blue from 0 to 255.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Color(pub [u8; 3]);

/// The ink of lines and lettering.
pub const BLACK: Color = Color([0, 0, 0]);
const SOFT_BLACK: Color = Color([45, 45, 45]);
/// The ink of what stands back: remarks, rules between rows.
pub const GRAY: Color = Color([110, 110, 110]);
const LIGHT_GRAY: Color = Color([165, 165, 165]);
const BLUE: Color = Color([0, 96, 160]);
const VERMILION: Color = Color([196, 70, 0]);
const GREEN: Color = Color([0, 120, 88]);
const PURPLE: Color = Color([150, 70, 120]);
const WHITE: Color = Color([255, 255, 255]);

impl Color {
    /// As written in SVG.
    pub fn hex(self) -> String {
        let [r, g, b] = self.0;
        format!("#{r:02x}{g:02x}{b:02x}")
    }

    /// Mixed with white: 0 is this color, 1 is white.
    #[must_use]
    pub fn paler(self, share: f64) -> Self {
        let mix = |part: u8| (f64::from(part) + (255.0 - f64::from(part)) * share).round() as u8;
        Self(self.0.map(mix))
    }
}

/// The ink of a pen.
pub fn ink(pen: Pen, stress: Stress) -> Color {
    let color = match pen {
        Pen::CutEdge | Pen::SlabEdge | Pen::Outline | Pen::Rope | Pen::LoadArrow | Pen::Lettering => BLACK,
        Pen::Edge | Pen::TagFrame | Pen::Dimension | Pen::Break => SOFT_BLACK,
        Pen::Hidden | Pen::Axis | Pen::Fine | Pen::Standing => GRAY,
        Pen::Background | Pen::Ghost => LIGHT_GRAY,
        Pen::Reach => BLUE,
        Pen::Gap | Pen::Conflict => VERMILION,
        Pen::ClearZone => GREEN,
    };
    if stress == Stress::Faint { color.paler(0.5) } else { color }
}

/// The width of a pen's line, paper mm.
pub fn width_mm(pen: Pen, stress: Stress) -> f64 {
    pen.width_mm() * if stress == Stress::Selected { SELECTED_FACTOR } else { 1.0 }
}

/// The ink of a hatch's lines.
pub fn hatch_ink(hatch: Hatch, stress: Stress) -> Color {
    let color = match hatch {
        Hatch::Concrete | Hatch::Steel | Hatch::Pressed => SOFT_BLACK,
        Hatch::BuildUp | Hatch::Parapet | Hatch::Standing | Hatch::Erection | Hatch::SlabZone => GRAY,
        Hatch::Roof | Hatch::OtherRoof | Hatch::Obstacle | Hatch::Part | Hatch::NoAccess => LIGHT_GRAY,
        Hatch::Reach | Hatch::ReachInPart => BLUE,
        Hatch::Gap | Hatch::Conflict | Hatch::NoDrill | Hatch::BaseOver => VERMILION,
        Hatch::ClearZoneArm => GREEN,
        Hatch::ClearZoneBrace | Hatch::BaseUnchecked => PURPLE,
    };
    if stress == Stress::Faint { color.paler(0.5) } else { color }
}

/// The color that covers an area under its hatch; none where what lies below shows through.
pub fn tint(fill: Fill, stress: Stress) -> Option<Color> {
    match fill {
        Fill::Paper => Some(WHITE),
        Fill::Ink(pen) => Some(ink(pen, stress)),
        Fill::Hatch(hatch) => hatch_tint(hatch),
    }
}

fn hatch_tint(hatch: Hatch) -> Option<Color> {
    match hatch {
        Hatch::Roof => Some(Color([248, 248, 246])),
        Hatch::OtherRoof => Some(Color([252, 252, 251])),
        Hatch::Obstacle => Some(Color([238, 238, 236])),
        Hatch::Part | Hatch::Steel | Hatch::BaseUnchecked => Some(WHITE),
        Hatch::Concrete => Some(Color([232, 232, 230])),
        Hatch::BuildUp => Some(Color([250, 248, 242])),
        Hatch::Parapet => Some(Color([238, 238, 236])),
        Hatch::Reach => Some(BLUE.paler(0.86)),
        Hatch::Gap => Some(VERMILION.paler(0.86)),
        Hatch::Conflict | Hatch::BaseOver => Some(VERMILION.paler(0.8)),
        Hatch::Pressed => Some(Color([238, 238, 236])),
        Hatch::ReachInPart
        | Hatch::ClearZoneArm
        | Hatch::ClearZoneBrace
        | Hatch::Standing
        | Hatch::Erection
        | Hatch::NoAccess
        | Hatch::SlabZone
        | Hatch::NoDrill => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn relative_luminance(color: Color) -> f64 {
        let linear = |part: u8| {
            let c = f64::from(part) / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        let [r, g, b] = color.0;
        0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)
    }

    /// Witness: WCAG 2.2, 1.4.11 asks for a contrast of 3 to 1 of graphics and 1.4.3 for 4.5 to 1 of text, on their ground.
    #[test]
    fn inks_stand_out_from_white_paper() {
        let contrast = |color: Color| 1.05 / (relative_luminance(color) + 0.05);
        for pen in [Pen::Lettering, Pen::Dimension, Pen::TagFrame, Pen::Conflict, Pen::Gap, Pen::Reach] {
            assert!(contrast(ink(pen, Stress::Plain)) >= 4.5, "{pen:?}");
        }
        for hatch in [Hatch::Reach, Hatch::Gap, Hatch::ClearZoneArm, Hatch::ClearZoneBrace, Hatch::Standing] {
            assert!(contrast(hatch_ink(hatch, Stress::Plain)) >= 3.0, "{hatch:?}");
        }
    }

    #[test]
    fn a_color_is_written_as_six_digits() {
        assert_eq!(VERMILION.hex(), "#c44600");
        assert_eq!(BLACK.paler(1.0), WHITE);
    }
}
