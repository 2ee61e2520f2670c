//! A box drawn over the ground: to the right it takes what lies wholly inside, to the left what it touches.

use gantline_plan::document::{Plan, ThingId};
use gantline_plan::geometry::frame::Frame;
use gantline_plan::geometry::segments::segments_meet;
use glam::DVec2;

/// A box between two corners.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Framing {
    /// Where it was begun.
    pub from: DVec2,
    /// Where it ends.
    pub to: DVec2,
}

impl Framing {
    /// Whether it takes what it touches: it was drawn to the left.
    pub fn takes_touched(&self) -> bool {
        self.to.x < self.from.x
    }

    /// Its corners.
    pub fn corners(&self) -> [DVec2; 4] {
        let (low, high) = (self.from.min(self.to), self.from.max(self.to));
        [low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)]
    }

    fn holds(&self, point: DVec2) -> bool {
        let (low, high) = (self.from.min(self.to), self.from.max(self.to));
        point.cmpge(low).all() && point.cmple(high).all()
    }

    /// Whether it takes a thing drawn by these points, joined in order.
    fn takes(&self, points: &[DVec2], closed: bool) -> bool {
        if points.is_empty() {
            return false;
        }
        if !self.takes_touched() {
            return points.iter().all(|&point| self.holds(point));
        }
        let corners = self.corners();
        let sides = |index: usize| (corners[index], corners[(index + 1) % 4]);
        let last = if closed { points.len() } else { points.len() - 1 };
        let crosses = |index: usize| {
            let (a, b) = (points[index], points[(index + 1) % points.len()]);
            (0..4).any(|side| segments_meet(a, b, sides(side).0, sides(side).1).is_some())
        };
        points.iter().any(|&point| self.holds(point)) || (0..last).any(crosses)
    }

    /// What it takes: units and obstacles together; edges only where it takes neither, since a box around units at an
    /// edge is not meant for the edge.
    pub fn taken(&self, plan: &Plan) -> Vec<ThingId> {
        let units = plan.placements.iter().filter(|(_, placement)| {
            let Some(frame) = Frame::of(plan, &placement.stands) else {
                return false;
            };
            let outreach_m =
                plan.families.get(&placement.make_up.family).and_then(|f| f.arms.get(&placement.make_up.arm));
            let reach = frame.direction(placement.make_up.drawn_slew_rad) * outreach_m.map_or(0.0, |a| a.outreach_m);
            self.takes(&[frame.at, frame.at + reach], false)
        });
        let obstacles = plan.obstacles.iter().filter(|(_, obstacle)| self.takes(&obstacle.outline, true));
        let mut taken: Vec<ThingId> = units.map(|(&id, _)| ThingId::Placement(id)).collect();
        taken.extend(obstacles.map(|(&id, _)| ThingId::Obstacle(id)));
        if !taken.is_empty() {
            return taken;
        }
        let edges = plan.edges().filter(|place| {
            let (from, to) = place.ring.ends(place.index);
            self.takes(&[from, to], false)
        });
        edges.map(|place| ThingId::Edge(place.edge().id)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::witness;

    #[test]
    fn to_the_right_it_takes_whole_units_and_to_the_left_what_it_touches() {
        let plan = witness::with_units(&[4.0, 10.0]);
        // The masts stand 1.2 m behind the edge, the arms reach over it.
        let inside = Framing { from: DVec2::new(3.0, -3.0), to: DVec2::new(5.0, 3.0) };
        assert_eq!(inside.taken(&plan).len(), 1);
        let masts_only = Framing { from: DVec2::new(3.0, 1.0), to: DVec2::new(11.0, 2.0) };
        assert!(!masts_only.taken(&plan).iter().any(|thing| matches!(thing, ThingId::Placement(_))));
        let touched = Framing { from: DVec2::new(11.0, 2.0), to: DVec2::new(3.0, 1.0) };
        assert_eq!(touched.taken(&plan).len(), 2);
    }

    #[test]
    fn without_units_it_takes_edges() {
        let plan = witness::rectangle_plan();
        let all = Framing { from: DVec2::new(-1.0, -1.0), to: DVec2::new(31.0, 21.0) };
        assert_eq!(all.taken(&plan).len(), 4);
        let crossed = Framing { from: DVec2::new(12.0, 1.0), to: DVec2::new(10.0, -1.0) };
        assert_eq!(crossed.taken(&plan), vec![ThingId::Edge(witness::south_edge(&plan))]);
    }
}
