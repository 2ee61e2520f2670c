//! The handles of one unit: slew at the tip, setback behind the mast.

use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{PlacementId, Plan, Standing};
use gantline_plan::geometry::frame::{EdgeLine, Frame, within_half_turn};

use super::gesture::{Spot, in_steps, step_m};
use super::sketch::CardLine;
use super::{Asked, Scene};

/// A unit being slewed.
#[derive(Debug, Clone, PartialEq)]
pub struct SlewUnit {
    unit: PlacementId,
    /// From the pointer's direction at the press to the drawn slew.
    grip_rad: f64,
    slew_rad: f64,
}

/// Steps of the drawn slew.
const STEP_RAD: f64 = std::f64::consts::PI / 180.0;
const COARSE_STEP_RAD: f64 = 15.0 * STEP_RAD;
const FINE_STEP_RAD: f64 = 0.1 * STEP_RAD;

impl SlewUnit {
    /// Begins; none when the unit has no place on the plan.
    pub fn begin(unit: PlacementId, from: &Spot, plan: &Plan) -> Option<Self> {
        let placement = plan.placements.get(&unit)?;
        let frame = Frame::of(plan, &placement.stands)?;
        let slew_rad = placement.make_up.drawn_slew_rad;
        Some(Self { unit, grip_rad: slew_rad - pointed(&frame, from), slew_rad })
    }

    /// The unit.
    pub const fn unit(&self) -> PlacementId {
        self.unit
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::angle("slew")]
    }

    /// The change for a pointer.
    pub fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Option<Change> {
        let frame = Frame::of(scene.plan, &scene.plan.placements.get(&self.unit)?.stands)?;
        let step = match (spot.held.shift, spot.held.alt) {
            (true, _) => COARSE_STEP_RAD,
            (false, true) => FINE_STEP_RAD,
            (false, false) => STEP_RAD,
        };
        let raw = within_half_turn(pointed(&frame, spot) + self.grip_rad);
        let rounded = (raw / step).round() * step;
        self.slew_rad = scene.typed.first().unwrap_or(rounded);
        let patch = PlacementPatch { drawn_slew_rad: Some(self.slew_rad), ..PlacementPatch::default() };
        Some(Change::SetPlacements(vec![self.unit], patch))
    }

    /// The card at the pointer.
    pub fn card(&self) -> Vec<CardLine> {
        vec![CardLine::angle("slew", self.slew_rad)]
    }
}

/// Direction from the mast to the pointer in the base's axes.
fn pointed(frame: &Frame, spot: &Spot) -> f64 {
    let way = spot.at - frame.at;
    way.y.atan2(way.x) - frame.outward_rad
}

/// A unit being moved inward only.
#[derive(Debug, Clone, PartialEq)]
pub struct SetUnitBack {
    unit: PlacementId,
    grip_m: f64,
    setback_m: f64,
}

impl SetUnitBack {
    /// Begins; none when the unit does not stand on an edge.
    pub fn begin(unit: PlacementId, from: &Spot, plan: &Plan) -> Option<Self> {
        let Standing::OnEdge { edge, setback_m, .. } = &plan.placements.get(&unit)?.stands else {
            return None;
        };
        let line = EdgeLine::of(plan, *edge)?;
        Some(Self { unit, grip_m: setback_m - line.behind_m(from.at), setback_m: *setback_m })
    }

    /// The unit.
    pub const fn unit(&self) -> PlacementId {
        self.unit
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::length("setback")]
    }

    /// The change for a pointer.
    pub fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Option<Change> {
        let Standing::OnEdge { edge, .. } = &scene.plan.placements.get(&self.unit)?.stands else {
            return None;
        };
        let raw = EdgeLine::of(scene.plan, *edge)?.behind_m(spot.at) + self.grip_m;
        let step = step_m(spot.m_per_pt);
        let rounded = if spot.held.alt { raw } else { in_steps(raw, step) };
        self.setback_m = scene.typed.first().unwrap_or(rounded);
        let patch = PlacementPatch { setback_m: Some(self.setback_m), ..PlacementPatch::default() };
        Some(Change::SetPlacements(vec![self.unit], patch))
    }

    /// The card at the pointer.
    pub fn card(&self) -> Vec<CardLine> {
        vec![CardLine::length("setback", self.setback_m)]
    }
}
