//! The section through a unit with the pull of its rope and what comes to its base, true to scale.

use std::sync::Arc;

use gantline_drawing::section::{SectionDetail, SectionLoads};
use gantline_drawing::text::Heading;
use gantline_drawing::{Drawing, Overlay, Scale, SectionOptions, Shown, section};
use gantline_plan::document::PlacementId;
use glam::DVec2;

use super::blocks::{paragraph, picture};
use super::given::Given;
use crate::paper::Block;

/// Scales in use, the largest first.
const SCALES: [f64; 6] = [10.0, 20.0, 25.0, 50.0, 100.0, 200.0];
/// Room for a picture between the margins of either size of paper, mm.
const ROOM_MM: DVec2 = DVec2::new(164.0, 170.0);

/// The picture; words that say so where there is none.
pub fn block(given: &Given<'_>, id: PlacementId, index: usize) -> Vec<Block> {
    let tag = given.tag(id);
    let Some((drawing, one_to)) = drawn(given, id) else {
        return vec![paragraph(&format!("No section can be drawn: {tag} has no place on a roof."))];
    };
    let caption = format!(
        "Unit {}, section through {tag} at the slew it is drawn with, 1:{one_to}. Loads and reactions: {}.",
        index + 1,
        loads(given, id).words
    );
    vec![picture(&Arc::new(drawing), &caption)]
}

fn loads(given: &Given<'_>, id: PlacementId) -> SectionLoads {
    given.unit(id).map(SectionLoads::governing).unwrap_or_default()
}

/// At the largest scale that there is room for; at the smallest where there is none.
fn drawn(given: &Given<'_>, id: PlacementId) -> Option<(Drawing, f64)> {
    let mut last = None;
    for one_to in SCALES {
        let options = SectionOptions {
            units: given.units,
            shown: Shown::of([Overlay::Reactions]),
            loads: loads(given, id),
            heading: Heading::LeftOut,
            detail: SectionDetail::Whole,
            ..SectionOptions::at(Scale::one_to(one_to))
        };
        let drawing = section(given.plan, given.assessment, id, &options)?;
        let size_mm = drawing.bounds()?.size_m() / drawing.scale.m_per_mm;
        last = Some((drawing, one_to));
        if size_mm.cmple(ROOM_MM).all() {
            break;
        }
    }
    last
}
