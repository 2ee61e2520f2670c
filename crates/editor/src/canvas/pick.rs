//! What lies under the pointer, in order of rank: handle, unit, corner, edge, obstacle, roof. A pure function.

use gantline_plan::document::{Plan, Standing};
use gantline_plan::geometry::frame::Frame;
use gantline_plan::geometry::rings::ring_contains;
use gantline_plan::geometry::segments::distance_to_segment;
use glam::DVec2;

use crate::session::Selection;
use crate::tools::handles::handles;
use crate::tools::{Handle, Hit};

/// Reach of the pointer, screen points.
const HANDLE_PT: f64 = 9.0;
const UNIT_PT: f64 = 8.0;
const CORNER_PT: f64 = 9.0;
const EDGE_PT: f64 = 7.0;
/// A base is at least this large under the pointer, screen points.
const LEAST_BASE_PT: f64 = 10.0;

/// Everything under a point, what a click takes first.
pub fn hits(plan: &Plan, selection: &Selection, at: DVec2, m_per_pt: f64) -> Vec<Hit> {
    let near = |distance_m: f64, points: f64| distance_m <= points * m_per_pt;
    let mut found: Vec<(u8, f64, Hit)> = Vec::new();
    for placed in handles(plan, selection, m_per_pt) {
        let distance = placed.at.distance(at);
        match placed.hit {
            Hit::Corner(_) if near(distance, CORNER_PT) => found.push((2, distance, placed.hit)),
            Hit::Handle(Handle::NewCorner(_)) if near(distance, HANDLE_PT) => found.push((2, distance, placed.hit)),
            Hit::Handle(_) if near(distance, HANDLE_PT) => found.push((0, distance, placed.hit)),
            _ => {}
        }
    }
    for (&id, placement) in &plan.placements {
        if let Some(distance) = unit_distance_m(plan, &placement.stands, &placement.make_up, at, m_per_pt)
            && near(distance, UNIT_PT)
        {
            found.push((1, distance, Hit::Unit(id)));
        }
    }
    for place in plan.edges() {
        let (from, to) = place.ring.ends(place.index);
        let distance = distance_to_segment(at, from, to);
        if near(distance, EDGE_PT) {
            // Of two edges in one place, the one of the higher roof comes first.
            found.push((4, distance - place.roof.level_m * 1e-6, Hit::Edge(place.edge().id)));
        }
    }
    for (&id, obstacle) in plan.obstacles.iter().filter(|(_, obstacle)| ring_contains(&obstacle.outline, at)) {
        found.push((5, -obstacle.to_m, Hit::Obstacle(id)));
    }
    for (&id, roof) in &plan.roofs {
        let inside =
            ring_contains(&roof.outer.points(), at) && !roof.holes.iter().any(|hole| ring_contains(&hole.points(), at));
        if inside {
            found.push((6, -roof.level_m, Hit::Roof(id)));
        }
    }
    found.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    found.into_iter().map(|(_, _, hit)| hit).collect()
}

/// Distance from a point to the arm's line and the base's plate; zero on the base.
fn unit_distance_m(
    plan: &Plan,
    stands: &Standing,
    make_up: &gantline_plan::catalog::MakeUp,
    at: DVec2,
    m_per_pt: f64,
) -> Option<f64> {
    let frame = Frame::of(plan, stands)?;
    let family = plan.families.get(&make_up.family);
    let arm = family.and_then(|family| family.arms.get(&make_up.arm));
    let base = family.and_then(|family| family.bases.get(&make_up.base));
    let pointed = frame.direction(make_up.drawn_slew_rad);
    let (outreach_m, tail_m) = arm.map_or((0.0, 0.0), |arm| (arm.outreach_m, arm.tail_m));
    let half_base_m = base.map_or(0.0, gantline_plan::catalog::Base::plate_half_m).max(LEAST_BASE_PT / 2.0 * m_per_pt);
    let to_arm = distance_to_segment(at, frame.at - pointed * tail_m, frame.at + pointed * outreach_m);
    let to_base = (frame.at.distance(at) - half_base_m).max(0.0);
    Some(to_arm.min(to_base))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::witness;
    use gantline_plan::document::ThingId;

    #[test]
    fn a_unit_comes_before_the_edge_it_reaches_over_and_the_roof_below() {
        let plan = witness::with_units(&[4.0]);
        let unit = *plan.placements.keys().next().unwrap();
        let edge = witness::south_edge(&plan);
        let roof = plan.find_edge(edge).unwrap().roof_id;
        let found = hits(&plan, &Selection::default(), DVec2::new(4.0, 0.05), 0.02);
        assert_eq!(found, vec![Hit::Unit(unit), Hit::Edge(edge), Hit::Roof(roof)]);
    }

    #[test]
    fn corners_can_be_taken_only_while_their_roof_is_selected() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        let roof = plan.find_edge(edge).unwrap().roof_id;
        let at = DVec2::new(0.02, 0.03);
        assert!(!hits(&plan, &Selection::default(), at, 0.02).contains(&Hit::Corner(edge)));
        let selected = Selection::of([ThingId::Roof(roof)]);
        assert_eq!(hits(&plan, &selected, at, 0.02).first(), Some(&Hit::Corner(edge)));
    }

    #[test]
    fn nothing_lies_outside() {
        let plan = witness::rectangle_plan();
        assert!(hits(&plan, &Selection::default(), DVec2::new(-5.0, -5.0), 0.02).is_empty());
    }
}
