//! The plan view that leaves as a drawing: a usual scale at which it fits a sheet, and the imprint below it.

use gantline_drawing::sheet::{North, sheet};
use gantline_drawing::{
    Anchor, Drawing, Layer, Mark, Overlay, OverlaySet, Pen, PlanViewOptions, Scale, Text, TextStyle, plan_view,
};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, Ring, Roof};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use crate::documents::Imprint;

/// Room for the building on a sheet of A0, paper mm.
const ROOM_MM: DVec2 = DVec2::new(1050.0, 650.0);
/// Usual scales, the largest first; beyond the last one units could not be drawn in their parts.
const USUAL: [f64; 6] = [50.0, 100.0, 200.0, 250.0, 400.0, 500.0];
/// 1/4", 1/8", 3/32" and 1/16" to a foot, 40 feet to an inch.
const USUAL_US: [f64; 5] = [48.0, 96.0, 128.0, 192.0, 480.0];
/// Words of the imprint in one line.
const LETTERS_A_LINE: usize = 150;

/// The plan view on its sheet, with everything on it but blocks of reactions: beside each of many bases they would hide
/// the plan, and schedule and model tell them.
pub fn plan_sheet(plan: &Plan, assessment: &Assessment, imprint: &Imprint, units: UnitSystem) -> Drawing {
    let shown = OverlaySet::All.shown().without(Overlay::Reactions);
    let options = PlanViewOptions { units, shown, ..PlanViewOptions::at(usual_scale(plan, units)) };
    with_imprint(sheet(plan_view(plan, assessment, &options), plan, North::Shown, units), imprint)
}

/// The largest usual scale at which the roofs fit the sheet, or the smallest.
fn usual_scale(plan: &Plan, units: UnitSystem) -> Scale {
    let corners = plan.roofs.values().flat_map(Roof::rings).flat_map(Ring::points);
    let size_m = Bounds::of(corners).map_or(DVec2::ZERO, |bounds| bounds.size_m());
    let usual: &[f64] = match units {
        UnitSystem::Si => &USUAL,
        UnitSystem::UsCustomary => &USUAL_US,
    };
    let fits = |scale: &Scale| (size_m / scale.m_per_mm).cmple(ROOM_MM).all();
    let mut scales = usual.iter().map(|&n| Scale::one_to(n));
    let last = usual.last().map_or(Scale::one_to(500.0), |&n| Scale::one_to(n));
    scales.find(fits).unwrap_or(last)
}

/// The drawing with the imprint below it, line by line.
pub fn with_imprint(drawing: Drawing, imprint: &Imprint) -> Drawing {
    let bounds = drawing.bounds().unwrap_or(Bounds { min_m: DVec2::ZERO, max_m: DVec2::ZERO });
    let scale = drawing.scale;
    let line_m = scale.m(TextStyle::Note.line_mm());
    let entered = imprint.rows().into_iter().filter(|(_, text)| !text.is_empty());
    let lines = entered.flat_map(|(label, text)| in_lines(&format!("{label}: {text}")));
    let marks = lines.enumerate().map(|(index, words)| {
        let at = DVec2::new(bounds.min_m.x, bounds.min_m.y - line_m * (index + 2) as f64);
        Mark::text(Layer::Sheet, Text::new(words, at, Anchor::START, TextStyle::Note, Pen::Lettering))
    });
    let mut all = drawing.marks;
    all.extend(marks);
    Drawing::of(scale, all)
}

/// Words in lines that are not too long.
fn in_lines(words: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in words.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.is_empty() => line.push_str(word),
            Some(line) if line.chars().count() + word.chars().count() < LETTERS_A_LINE => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(format!("    {word}")),
        }
    }
    lines
}
