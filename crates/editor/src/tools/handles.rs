//! Where the handles of selected things are. Their distance from the thing is one of the screen, not of the plan.

use gantline_plan::document::{Plan, ThingId};
use gantline_plan::geometry::frame::Frame;
use glam::DVec2;

use super::{Handle, Hit};
use crate::session::Selection;

/// A handle or a corner that can be taken, and where it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// What it is.
    pub hit: Hit,
    /// Where, m.
    pub at: DVec2,
    /// The way it points.
    pub toward: DVec2,
}

/// From the tip to the slew handle, from the mast to the others, screen points.
const BEYOND_TIP_PT: f64 = 18.0;
const BESIDE_MAST_PT: f64 = 34.0;
/// Farther than a tag is wide that stands beside the mast, and beside the base's plate where that is large on the screen.
const COPY_PT: f64 = 60.0;
const COPY_BEYOND_PLATE_PT: f64 = 56.0;

/// All handles of a selection at a scale.
pub fn handles(plan: &Plan, selection: &Selection, m_per_pt: f64) -> Vec<Placed> {
    let mut all = Vec::new();
    match selection.single() {
        Some(ThingId::Placement(id)) => of_unit(&mut all, plan, id, m_per_pt),
        Some(ThingId::Obstacle(id)) => {
            for (index, &at) in plan.obstacles.get(&id).iter().flat_map(|obstacle| obstacle.outline.iter().enumerate())
            {
                all.push(Placed { hit: Hit::Handle(Handle::ObstacleCorner(id, index)), at, toward: DVec2::X });
            }
        }
        Some(ThingId::Roof(id)) => of_roof(&mut all, plan, id, m_per_pt),
        Some(ThingId::Edge(_) | ThingId::Underlay(_) | ThingId::Plan) | None => {}
    }
    all
}

fn of_unit(all: &mut Vec<Placed>, plan: &Plan, id: gantline_plan::document::PlacementId, m_per_pt: f64) {
    let Some(placement) = plan.placements.get(&id).filter(|placement| !placement.locked) else {
        return;
    };
    let Some(frame) = Frame::of(plan, &placement.stands) else {
        return;
    };
    let arm = plan.families.get(&placement.make_up.family).and_then(|family| family.arms.get(&placement.make_up.arm));
    let (outreach_m, tail_m) = arm.map_or((1.0, 0.0), |arm| (arm.outreach_m, arm.tail_m));
    let pointed = frame.direction(placement.make_up.drawn_slew_rad);
    let outward = frame.direction(0.0);
    let tip = frame.at + pointed * (outreach_m + BEYOND_TIP_PT * m_per_pt);
    all.push(Placed { hit: Hit::Handle(Handle::Slew(id)), at: tip, toward: pointed });
    if matches!(placement.stands, gantline_plan::document::Standing::OnEdge { .. }) {
        let behind_m = (tail_m + BEYOND_TIP_PT * m_per_pt).max(BESIDE_MAST_PT * m_per_pt);
        all.push(Placed { hit: Hit::Handle(Handle::Setback(id)), at: frame.at - outward * behind_m, toward: -outward });
        let family = plan.families.get(&placement.make_up.family);
        let base = family.and_then(|family| family.bases.get(&placement.make_up.base));
        let plate_m = base.map_or(0.0, gantline_plan::catalog::Base::plate_half_m);
        let beside = outward.perp() * (COPY_PT * m_per_pt).max(plate_m + COPY_BEYOND_PLATE_PT * m_per_pt);
        all.push(Placed { hit: Hit::Handle(Handle::Copy(id)), at: frame.at + beside, toward: outward.perp() });
    }
}

fn of_roof(all: &mut Vec<Placed>, plan: &Plan, id: gantline_plan::document::RoofId, m_per_pt: f64) {
    const SHORTEST_PT: f64 = 48.0;
    let Some(roof) = plan.roofs.get(&id).filter(|roof| !roof.locked) else {
        return;
    };
    for ring in roof.rings() {
        for index in 0..ring.len() {
            let edge = ring.edge(index).id;
            let (from, to) = ring.ends(index);
            all.push(Placed { hit: Hit::Corner(edge), at: from, toward: DVec2::X });
            if from.distance(to) > SHORTEST_PT * m_per_pt {
                let at = from.midpoint(to);
                all.push(Placed { hit: Hit::Handle(Handle::NewCorner(edge)), at, toward: to - from });
            }
        }
    }
}
