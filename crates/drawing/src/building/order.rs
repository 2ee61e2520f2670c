//! The order in which roofs are painted: those behind first, those that stand on others last.

use gantline_plan::document::{Plan, Ring, Roof, RoofId};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use super::slant::Slant;

/// How far a look through the building goes, m.
const FAR_M: f64 = 1.0e5;

/// Roofs from back to front.
pub(super) fn back_to_front(plan: &Plan, slant: Slant) -> Vec<RoofId> {
    let mut left: Vec<(RoofId, &Roof, Polygon)> = plan.roofs.iter().map(|(&id, roof)| (id, roof, area(roof))).collect();
    // Equal claims are settled by depth, so that the order never depends on chance.
    left.sort_by(|a, b| depth(&b.2, slant).total_cmp(&depth(&a.2, slant)).then(a.0.cmp(&b.0)));
    let mut order = Vec::new();
    while !left.is_empty() {
        let is_free =
            |one: &(RoofId, &Roof, Polygon)| left.iter().all(|other| other.0 == one.0 || !covers(one, other, slant));
        // In a ring of mutual claims the farthest goes first.
        let index = left.iter().position(is_free).unwrap_or(0);
        order.push(left.remove(index).0);
    }
    order
}

fn area(roof: &Roof) -> Polygon {
    Polygon { outer: roof.outer.points(), holes: roof.holes.iter().map(Ring::points).collect() }
}

/// Depth of the middle of the box around it.
fn depth(area: &Polygon, slant: Slant) -> f64 {
    area.bounds().map_or(0.0, |bounds| ((bounds.min_m + bounds.max_m) / 2.0).dot(slant.away()))
}

/// Whether the first must be painted after the second: it stands on it, or in front of it.
fn covers(one: &(RoofId, &Roof, Polygon), other: &(RoofId, &Roof, Polygon), slant: Slant) -> bool {
    let within = |inner: &Polygon, outer: &Polygon| {
        let middle = inner.outer.iter().copied().sum::<DVec2>() / inner.outer.len() as f64;
        outer.contains(middle)
    };
    if within(&one.2, &other.2) || within(&other.2, &one.2) {
        return one.1.level_m > other.1.level_m;
    }
    sees_behind(&one.2, &other.2, slant) > sees_behind(&other.2, &one.2, slant)
}

/// From how many corners of the one the other is seen when looking on.
fn sees_behind(one: &Polygon, other: &Polygon, slant: Slant) -> usize {
    let look = slant.away() * FAR_M;
    // A start a little away from the corner keeps shared corners from counting.
    let start = slant.away() * 1e-3;
    one.outer.iter().filter(|&&corner| !other.clip_segment(corner + start, corner + look).is_empty()).count()
}
