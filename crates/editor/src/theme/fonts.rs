//! The shipped typeface: screen and paper use the same letters, and all figures are equally wide.

use std::sync::Arc;

use egui::{FontData, FontDefinitions, FontFamily, FontId};
use gantline_drawing::letter_width::Face;

use super::type_scale::{SEMIBOLD, semibold};

const REGULAR: &[u8] = include_bytes!("../../../../assets/fonts/IBMPlexSans-Regular.ttf");
const SEMIBOLD_CUT: &[u8] = include_bytes!("../../../../assets/fonts/IBMPlexSans-SemiBold.ttf");
const CONDENSED_CUT: &[u8] = include_bytes!("../../../../assets/fonts/IBMPlexSansCondensed-Regular.ttf");

/// Name of the family of narrow cuts.
const CONDENSED: &str = "condensed";

/// The shipped typeface in its families, with egui's own fonts behind it for letters it lacks.
pub fn definitions() -> FontDefinitions {
    let mut fonts = FontDefinitions::default();
    let behind = fonts.families.get(&FontFamily::Proportional).cloned().unwrap_or_default();
    let cuts = [("regular", REGULAR), (SEMIBOLD, SEMIBOLD_CUT), (CONDENSED, CONDENSED_CUT)];
    for (name, bytes) in cuts {
        fonts.font_data.insert(name.to_owned(), Arc::new(FontData::from_static(bytes)));
    }
    let family = |first: &str| std::iter::once(first.to_owned()).chain(behind.iter().cloned()).collect::<Vec<_>>();
    fonts.families.insert(FontFamily::Proportional, family("regular"));
    fonts.families.insert(FontFamily::Monospace, family("regular"));
    fonts.families.insert(semibold(), family(SEMIBOLD));
    fonts.families.insert(FontFamily::Name(CONDENSED.into()), family(CONDENSED));
    fonts
}

/// The font of a cut at a size in screen points.
pub fn of(face: Face, size: f32) -> FontId {
    let family = match face {
        Face::Regular => FontFamily::Proportional,
        Face::SemiBold => semibold(),
        Face::Condensed => FontFamily::Name(CONDENSED.into()),
    };
    FontId::new(size, family)
}
