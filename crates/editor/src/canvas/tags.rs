//! A unit's tag is a part of it: pointing at the tag points at the unit.

use gantline_drawing::{Drawing, Shape, TextStyle};
use gantline_plan::document::{PlacementId, ThingId};
use gantline_plan::geometry::rings::ring_contains;
use gantline_plan::geometry::segments::distance_to_segment;
use glam::DVec2;

use crate::tools::Hit;

/// From a tag's letters to its frame, screen points.
const FRAME_PT: f64 = 4.0;

/// Adds the unit whose tag lies at a point, behind handles and units that lie there themselves.
pub fn with_tag(mut hits: Vec<Hit>, drawing: Option<&Drawing>, at: DVec2, m_per_pt: f64) -> Vec<Hit> {
    if let Some(unit) = drawing.and_then(|drawing| unit_at(drawing, at, FRAME_PT * m_per_pt)).map(Hit::Unit)
        && !hits.contains(&unit)
    {
        let before = hits.iter().take_while(|hit| matches!(hit, Hit::Handle(_) | Hit::Unit(_))).count();
        hits.insert(before, unit);
    }
    hits
}

fn unit_at(drawing: &Drawing, at: DVec2, reach_m: f64) -> Option<PlacementId> {
    drawing.marks.iter().rev().find_map(|mark| {
        let (Some(ThingId::Placement(unit)), Shape::Text(text)) = (mark.about, &mark.shape) else {
            return None;
        };
        let corners = text.corners(drawing.scale);
        let near = |index: usize| distance_to_segment(at, corners[index], corners[(index + 1) % 4]) <= reach_m;
        (text.style == TextStyle::Tag && (ring_contains(&corners, at) || (0..4).any(near))).then_some(unit)
    })
}
