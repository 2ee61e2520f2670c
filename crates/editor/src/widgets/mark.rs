//! Marks of outcomes: a shape and a color for each, so that color is never alone.

use egui::Color32;
use gantline_plan::assess::{Outcome, Severity};

use super::Icon;
use crate::theme::Palette;

/// Icon, color and word of an outcome.
pub fn of(outcome: &Outcome, palette: &Palette) -> (Icon, Color32, &'static str) {
    match outcome {
        Outcome::Fails(Severity::Blocking) => (Icon::Blocking, palette.blocking, "blocking"),
        Outcome::Fails(Severity::Caution) => (Icon::Caution, palette.caution, "caution"),
        Outcome::Fails(Severity::Note) => (Icon::Caution, palette.ink_soft, "note"),
        Outcome::NotChecked(_) => (Icon::Unchecked, palette.unchecked, "not checked"),
        Outcome::Meets => (Icon::Meets, palette.meets, "meets"),
        Outcome::NotApplicable(_) => (Icon::Unchecked, palette.ink_faint, "does not apply"),
    }
}
