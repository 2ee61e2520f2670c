//! Local axes of a placement in the plan: x away from the building, y along the edge, z up.

use std::f64::consts::{PI, TAU};

use glam::DVec2;

use crate::catalog::ResolvedUnit;
use crate::document::{EdgeId, Plan, RoofId, Standing};

/// The line of an edge: from its corner to the next, outside on the right.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeLine {
    /// Its first corner.
    pub start: DVec2,
    /// Its second corner.
    pub end: DVec2,
    /// Unit vector from the first to the second.
    pub along: DVec2,
    /// Unit vector square to it, away from the building.
    pub outward: DVec2,
    /// Its length.
    pub length_m: f64,
}

impl EdgeLine {
    /// The line between two corners that lie apart.
    pub fn between(start: DVec2, end: DVec2) -> Self {
        let length_m = start.distance(end);
        let along = (end - start) / length_m;
        Self { start, end, along, outward: DVec2::new(along.y, -along.x), length_m }
    }

    /// The line of an edge of the plan.
    pub fn of(plan: &Plan, edge: EdgeId) -> Option<Self> {
        let place = plan.find_edge(edge)?;
        let (start, end) = place.ring.ends(place.index);
        Some(Self::between(start, end))
    }

    /// Distance of a point along the line from its start, m.
    pub fn along_m(&self, point: DVec2) -> f64 {
        (point - self.start).dot(self.along)
    }

    /// Distance of a point behind the line, toward the building, m.
    pub fn behind_m(&self, point: DVec2) -> f64 {
        -(point - self.start).dot(self.outward)
    }

    /// The point at this distance along and behind the line.
    pub fn point(&self, along_m: f64, behind_m: f64) -> DVec2 {
        self.start + self.along * along_m - self.outward * behind_m
    }

    /// Direction away from the building, counter-clockwise from the plan's x axis, rad.
    pub fn outward_rad(&self) -> f64 {
        self.outward.y.atan2(self.outward.x)
    }
}

/// The local axes of a placed base.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// The mast axis in the plan.
    pub at: DVec2,
    /// Direction of the x axis, counter-clockwise from the plan's x axis.
    pub outward_rad: f64,
    /// The roof it stands on.
    pub roof: RoofId,
    /// Level of the underside of the base's plate: that roof's structural slab, or the top of a plinth on it.
    pub level_m: f64,
}

impl Frame {
    /// The frame of a standing; none when its edge or roof is not on the plan.
    pub fn of(plan: &Plan, standing: &Standing) -> Option<Self> {
        match standing {
            Standing::OnEdge { edge, station, setback_m, turn_rad } => {
                let place = plan.find_edge(*edge)?;
                let (start, end) = place.ring.ends(place.index);
                let line = EdgeLine::between(start, end);
                Some(Self {
                    at: line.point(station.along_m(line.length_m), *setback_m),
                    outward_rad: line.outward_rad() + turn_rad,
                    roof: place.roof_id,
                    level_m: place.roof.level_m,
                })
            }
            Standing::Free { roof, at, outward_rad, .. } => {
                let level_m = plan.roofs.get(roof)?.level_m;
                Some(Self { at: *at, outward_rad: *outward_rad, roof: *roof, level_m })
            }
        }
    }

    /// The same with the underside of the base's plate where it lies: on the slab, or on a plinth.
    #[must_use]
    pub fn over_slab(self, unit: &ResolvedUnit) -> Self {
        Self { level_m: self.level_m + unit.over_slab_m(), ..self }
    }

    /// Unit vector of the x axis turned by a slew.
    pub fn direction(&self, slew_rad: f64) -> DVec2 {
        DVec2::from_angle(self.outward_rad + slew_rad)
    }

    /// A point of the local axes in the plan.
    pub fn plan_from_local(&self, local: DVec2) -> DVec2 {
        self.at + DVec2::from_angle(self.outward_rad).rotate(local)
    }

    /// Turn of this frame from square to a line, within half a turn.
    pub fn turn_from(&self, line: EdgeLine) -> f64 {
        let turn = within_half_turn(self.outward_rad - line.outward_rad());
        // A turn of a few units in the last place comes from the angle arithmetic, not from anyone's wish.
        if turn.abs() < 1e-12 { 0.0 } else { turn }
    }
}

/// The same angle between −π and π.
pub fn within_half_turn(angle_rad: f64) -> f64 {
    let wrapped = angle_rad.rem_euclid(TAU);
    if wrapped > PI { wrapped - TAU } else { wrapped }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_is_on_the_right_and_y_points_along_the_edge() {
        let line = EdgeLine::between(DVec2::new(0.0, 0.0), DVec2::new(10.0, 0.0));
        assert_eq!(line.outward, DVec2::new(0.0, -1.0));
        let at = line.point(4.0, 1.5);
        let frame = Frame { at, outward_rad: line.outward_rad(), roof: RoofId::from_number(1), level_m: 0.0 };
        assert_eq!(frame.at, DVec2::new(4.0, 1.5));
        let one_along = frame.plan_from_local(DVec2::new(0.0, 1.0)) - frame.at;
        assert!((one_along - line.along).length() < 1e-15);
    }
}
