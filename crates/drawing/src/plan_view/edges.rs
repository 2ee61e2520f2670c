//! Lines of the outline in a plan view: where higher roofs cover them they are drawn as hidden ones.

use gantline_plan::document::{Plan, Ring, Roof, RoofId};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;

/// Area of a roof, holes cut out.
pub(super) fn area_of(roof: &Roof) -> Polygon {
    Polygon { outer: roof.outer.points(), holes: roof.holes.iter().map(Ring::points).collect() }
}

/// Roofs that stand over this one.
pub(super) fn higher_roofs(plan: &Plan, id: RoofId) -> Vec<Polygon> {
    let Some(roof) = plan.roofs.get(&id) else { return Vec::new() };
    plan.roofs.values().filter(|other| other.level_m > roof.level_m).map(area_of).collect()
}

/// Draws a closed ring in a pen, and what of it lies under other areas as hidden.
pub(super) fn ring_under(pencil: &mut Pencil, layer: Layer, pen: Pen, points: &[DVec2], covers: &[Polygon]) {
    let segments: Vec<(DVec2, DVec2)> = gantline_plan::geometry::rings::segments(points).collect();
    let covered: Vec<Vec<(f64, f64)>> =
        segments.iter().map(|&(a, b)| covers.iter().flat_map(|cover| cover.clip_segment(a, b)).collect()).collect();
    if covered.iter().all(Vec::is_empty) {
        pencil.ring(layer, pen, points);
        return;
    }
    for (&(a, b), mut hidden) in segments.iter().zip(covered) {
        hidden.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut from = 0.0;
        for (begin, end) in hidden {
            if begin > from {
                pencil.line(layer, pen, [a.lerp(b, from), a.lerp(b, begin)]);
            }
            if end > from {
                pencil.line(Layer::Background, Pen::Hidden, [a.lerp(b, begin.max(from)), a.lerp(b, end)]);
                from = end;
            }
        }
        if from < 1.0 {
            pencil.line(layer, pen, [a.lerp(b, from), b]);
        }
    }
}
