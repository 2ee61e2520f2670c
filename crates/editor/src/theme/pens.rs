//! Which color each pen and each hatch of a drawing has on the screen.

use egui::Color32;
use gantline_drawing::{Hatch, Pen};

use super::Palette;

/// Ink of a pen.
pub fn ink(pen: Pen, palette: &Palette) -> Color32 {
    match pen {
        Pen::CutEdge | Pen::SlabEdge | Pen::Outline | Pen::TagFrame | Pen::Lettering => palette.ink,
        Pen::Edge | Pen::Hidden | Pen::Dimension | Pen::Break => palette.ink_soft,
        Pen::Fine | Pen::Axis | Pen::Background | Pen::Ghost => palette.ink_faint,
        Pen::Reach => palette.reach,
        Pen::Gap => palette.gap,
        Pen::ClearZone => palette.clear,
        Pen::Standing => palette.standing,
        Pen::Conflict => palette.blocking,
        Pen::Rope => palette.accent,
        Pen::LoadArrow => palette.load,
    }
}

/// The tint under a hatch, and the ink of its lines.
pub fn hatch(hatch: Hatch, palette: &Palette) -> (Option<Color32>, Color32) {
    let wash = |color: Color32, share: f32| Some(color.gamma_multiply(share));
    match hatch {
        Hatch::Roof => (Some(palette.roof), palette.ink_faint),
        Hatch::OtherRoof => (wash(palette.roof, 0.55), palette.ink_faint),
        Hatch::Concrete => (wash(palette.cut, 0.08), palette.cut),
        Hatch::BuildUp => (wash(palette.standing, 0.08), palette.ink_faint),
        Hatch::Parapet => (wash(palette.cut, 0.10), palette.cut),
        Hatch::Obstacle => (wash(palette.cut, 0.14), palette.ink_soft),
        Hatch::Part => (Some(palette.field), palette.ink),
        Hatch::Reach => (wash(palette.reach, 0.10), palette.reach),
        Hatch::ReachInPart => (wash(palette.reach, 0.05), palette.reach),
        Hatch::Gap => (wash(palette.gap, 0.10), palette.gap),
        Hatch::ClearZoneArm | Hatch::ClearZoneBrace => (wash(palette.clear, 0.06), palette.clear.gamma_multiply(0.7)),
        Hatch::Standing | Hatch::Erection => (wash(palette.standing, 0.07), palette.standing.gamma_multiply(0.8)),
        Hatch::Conflict => (wash(palette.blocking, 0.16), palette.blocking),
        Hatch::NoAccess => (None, palette.ink_faint),
        Hatch::SlabZone => (wash(palette.cut, 0.05), palette.ink_soft),
        Hatch::NoDrill => (wash(palette.caution, 0.06), palette.caution),
        Hatch::BaseOver => (Some(over(palette.blocking, palette.field)), palette.blocking),
        Hatch::BaseUnchecked => (Some(over(palette.unchecked, palette.field)), palette.unchecked),
        Hatch::Pressed => (wash(palette.load, 0.12), palette.load),
        Hatch::Steel => (Some(palette.field), palette.cut),
    }
}

/// A wash over a ground, as one color that covers.
fn over(color: Color32, ground: Color32) -> Color32 {
    const SHARE: f32 = 0.16;
    let mix = |part: u8, below: u8| (f32::from(part) * SHARE + f32::from(below) * (1.0 - SHARE)).round() as u8;
    Color32::from_rgb(mix(color.r(), ground.r()), mix(color.g(), ground.g()), mix(color.b(), ground.b()))
}
