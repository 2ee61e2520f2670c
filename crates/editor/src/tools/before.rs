//! Where units stood when a gesture began: plate and arm in thin dashes.

use gantline_plan::document::{PlacementId, Plan};
use gantline_plan::geometry::frame::Frame;

use super::sketch::{LineRole, SketchLine};

/// The lines of these units as they stand on the plan.
pub fn lines(plan: &Plan, units: &[PlacementId]) -> Vec<SketchLine> {
    units.iter().filter_map(|&unit| of_unit(plan, unit)).flatten().collect()
}

fn of_unit(plan: &Plan, unit: PlacementId) -> Option<[SketchLine; 2]> {
    let placement = plan.placements.get(&unit)?;
    let frame = Frame::of(plan, &placement.stands)?;
    let family = plan.families.get(&placement.make_up.family)?;
    let arm = family.arms.get(&placement.make_up.arm)?;
    let base = family.bases.get(&placement.make_up.base)?;
    let pointed = frame.direction(placement.make_up.drawn_slew_rad);
    let plate = base.footprint_m().into_iter().map(|corner| frame.plan_from_local(corner)).collect();
    let along = vec![frame.at - pointed * arm.tail_m, frame.at + pointed * arm.outreach_m];
    Some([
        SketchLine { points: plate, closed: true, role: LineRole::Ghost },
        SketchLine { points: along, closed: false, role: LineRole::Ghost },
    ])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::witness;
    use glam::DVec2;

    #[test]
    fn a_unit_is_shown_where_it_stood_with_its_arm_over_the_edge() {
        let plan = witness::with_units(&[4.0]);
        let unit = *plan.placements.keys().next().unwrap();
        let [plate, arm] = lines(&plan, &[unit]).try_into().unwrap();
        // 1.2 m behind the south edge, floor socket of 460 mm; the family's first arm is 1.15 m long and has no tail.
        assert!(plate.points.iter().all(|at| (at.x - 4.0).abs() < 0.231 && (at.y - 1.2).abs() < 0.231));
        assert!(arm.points[0].distance(DVec2::new(4.0, 1.2)) < 1e-12);
        assert!(arm.points[1].distance(DVec2::new(4.0, 0.05)) < 1e-12);
        assert_eq!((plate.role, arm.role), (LineRole::Ghost, LineRole::Ghost));
    }
}
