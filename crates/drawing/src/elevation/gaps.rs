//! Gaps of a facade: what no one reaches, outlined and hatched, each with its area.

use gantline_plan::assess::{FacadeAssessment, GapRegion};
use gantline_plan::document::ThingId;
use gantline_plan::geometry::bounds::Bounds;
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
use crate::taken::{Taken, TakenBox};
use crate::text::{Anchor, Text, TextStyle};

/// Places tried for the words along each side of a gap's box.
const TRIES: u32 = 15;

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
    let Some(place) = roomiest(polygon, half) else { return };
    let text = at(place);
    taken.add(TakenBox::around(place / scale.m_per_mm, half * 2.0 / scale.m_per_mm));
    pencil.text_on_paper(Layer::Reading, text);
}

/// The middle of a box of half this size that lies inside, as far from the border as can be found on a grid.
fn roomiest(polygon: &Polygon, half: DVec2) -> Option<DVec2> {
    let Bounds { min_m, max_m } = polygon.bounds()?;
    let step = (max_m - min_m) / f64::from(TRIES + 1);
    let corners = [half, -half, DVec2::new(half.x, -half.y), DVec2::new(-half.x, half.y)];
    let mut best: Option<(f64, DVec2)> = None;
    for x in 1..=TRIES {
        for y in 1..=TRIES {
            let at = min_m + step * DVec2::new(f64::from(x), f64::from(y));
            if !polygon.contains(at) || !corners.iter().all(|&corner| polygon.contains(at + corner)) {
                continue;
            }
            let crossed =
                |a: DVec2, b: DVec2| !matches!(polygon.clip_segment(a, b)[..], [(from, to)] if to - from > 0.999);
            if crossed(at - half, at + half) || crossed(at + corners[2], at + corners[3]) {
                continue;
            }
            let room = polygon.distance_to_border_m(at);
            if best.is_none_or(|(most, _)| room > most + 1e-9) {
                best = Some((room, at));
            }
        }
    }
    best.map(|(_, at)| at)
}
