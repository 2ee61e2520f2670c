//! A sheet: a drawing with heading, north arrow, scale bar, legend and the caution below it.

use gantline_plan::document::{Plan, Title};
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use crate::drawing::Drawing;
use crate::layer::Layer;
use crate::legend::{entries, legend_marks};
use crate::north_arrow::{RADIUS_MM, north_marks};
use crate::pencil::Pencil;
use crate::scale_bar::{length_m, scale_bar_marks};
use crate::text::{Anchor, TextStyle};

/// Between the drawing and what stands below it, paper mm.
const GAP_MM: f64 = 10.0;
/// Rows of a column of the legend.
const LEGEND_ROWS: usize = 3;

/// What every sheet says.
pub const CAUTION: &str = "For planning. To be verified by a licensed structural engineer and a competent person under \
                           the local code. Not a permit to hang from a rope.";

/// Whether a sheet shows where north is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum North {
    /// It is a plan view.
    Shown,
    /// It is not.
    Left,
}

/// Puts the frame's things around a drawing.
pub fn sheet(drawing: Drawing, plan: &Plan, north: North, units: UnitSystem) -> Drawing {
    let Some(bounds) = drawing.bounds() else { return drawing };
    let scale = drawing.scale;
    let mut pencil = Pencil::new(scale);
    if north == North::Shown {
        let words = title_words(&plan.title);
        let above = DVec2::new(bounds.min_m.x, bounds.max_m.y + scale.m(8.0));
        pencil.text(Layer::Sheet, words, above, Anchor::START, TextStyle::Heading);
    }
    let mut at = DVec2::new(bounds.min_m.x, bounds.min_m.y - scale.m(GAP_MM));
    if north == North::Shown {
        let center = at + scale.shift(DVec2::new(RADIUS_MM + 2.0, -RADIUS_MM - 4.0));
        pencil.extend(north_marks(center, plan.datum.north_rad, scale));
        at.x += scale.m(2.0 * RADIUS_MM + 10.0);
    }
    pencil.extend(scale_bar_marks(at - DVec2::Y * scale.m(10.0), scale, units));
    let ratio = format!("1 : {:.0}", scale.m_per_mm * 1000.0);
    pencil.text(Layer::Sheet, ratio, at - DVec2::Y * scale.m(16.0), Anchor::START, TextStyle::Note);
    let beside = at + DVec2::X * (length_m(scale, units) + scale.m(16.0));
    pencil.extend(legend_marks(&entries(&drawing), beside, LEGEND_ROWS, scale));
    let below = DVec2::new(bounds.min_m.x, at.y - scale.m(24.0));
    pencil.text(Layer::Sheet, CAUTION, below, Anchor::START, TextStyle::Note);
    let mut marks = drawing.marks;
    marks.extend(pencil.done());
    Drawing::of(scale, marks)
}

/// Job, revision and remark in one line.
fn title_words(title: &Title) -> String {
    let revision = if title.revision.is_empty() { String::new() } else { format!("revision {}", title.revision) };
    let parts = [&title.job, &revision, &title.remark];
    parts.into_iter().filter(|part| !part.is_empty()).cloned().collect::<Vec<_>>().join(" · ")
}
