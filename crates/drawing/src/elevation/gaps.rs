//! Gaps of a facade: what no one reaches, outlined and hatched, each with its area.

use gantline_plan::assess::{FacadeAssessment, GapRegion};
use gantline_plan::document::ThingId;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity;
use glam::DVec2;

use super::options::ElevationOptions;
use super::reach::at_depth;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::roomiest::roomiest;
use crate::taken::{Taken, TakenBox};
use crate::text::{Anchor, Text, TextStyle};

/// Draws all gaps with their areas.
pub(super) fn draw_gaps(pencil: &mut Pencil, found: &FacadeAssessment, options: &ElevationOptions, taken: &mut Taken) {
    pencil.about = Some(ThingId::Edge(found.facade.key));
    for gap in &found.gaps {
        let polygon =
            Polygon { outer: ring(found, &gap.outline), holes: gap.holes.iter().map(|h| ring(found, h)).collect() };
        pencil.polygon(Layer::Reach, Fill::Hatch(Hatch::Gap), Some(Pen::Gap), polygon.clone());
        write_area(pencil, gap, &polygon, options, taken);
    }
}

fn ring(found: &FacadeAssessment, corners: &[DVec2]) -> Vec<DVec2> {
    corners.iter().map(|corner| at_depth(found, *corner)).collect()
}

/// Writes the area where it fits wholly inside the gap; a gap too small for that is only hatched.
fn write_area(pencil: &mut Pencil, gap: &GapRegion, polygon: &Polygon, options: &ElevationOptions, taken: &mut Taken) {
    let words = format!("gap {}", quantity::area(gap.area_m2, options.units));
    let at = |at: DVec2| Text::new(words.clone(), at, Anchor::CENTER, TextStyle::Dimension, Pen::Gap);
    let scale = pencil.scale;
    let half = DVec2::new(scale.m(at(DVec2::ZERO).width_mm() + 2.0), scale.m(4.0)) / 2.0;
    let Some(place) = roomiest(polygon, half, &[]) else { return };
    let text = at(place);
    taken.add(TakenBox::around(place / scale.m_per_mm, half * 2.0 / scale.m_per_mm));
    pencil.text_on_paper(Layer::Reading, text);
}
