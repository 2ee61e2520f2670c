//! Copies of a unit along its edge at a pitch: drawn out by the handle, or set by typed pitch and count.

use gantline_plan::change::Change;
use gantline_plan::document::{PlacementId, Plan, Standing, Station};
use gantline_plan::geometry::frame::{EdgeLine, Frame};

use super::gesture::{Spot, in_steps, step_m};
use super::sketch::CardLine;
use super::{Asked, Scene};

/// Copies being set.
#[derive(Debug, Clone, PartialEq)]
pub struct Copies {
    unit: PlacementId,
    grip_m: f64,
    pitch_m: f64,
    count: usize,
}

/// Most copies of one gesture.
const MOST_COPIES: usize = 200;

impl Copies {
    /// Begins; none when the unit does not stand on an edge.
    pub fn begin(unit: PlacementId, from: Option<&Spot>, plan: &Plan) -> Option<Self> {
        let (line, along_m) = place_of(unit, plan)?;
        let grip_m = from.map_or(0.0, |spot| along_m - line.along_m(spot.at));
        Some(Self { unit, grip_m, pitch_m: usual_pitch_m(unit, plan, 1.0), count: 1 })
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::length("pitch"), Asked::number("copies")]
    }

    /// The change for a pointer, or for what is typed alone.
    pub fn change(&mut self, spot: Option<&Spot>, scene: &Scene<'_>) -> Option<Change> {
        let (line, along_m) = place_of(self.unit, scene.plan)?;
        let drawn_m = spot.map(|spot| line.along_m(spot.at) + self.grip_m - along_m);
        let sense = if drawn_m.is_some_and(|drawn| drawn < 0.0) { -1.0 } else { 1.0 };
        let typed_count = scene.typed.second().map(|count| (count.round().max(1.0) as usize).min(MOST_COPIES));
        let step = spot.map_or(0.001, |spot| step_m(spot.m_per_pt));
        let rounded = |value: f64| in_steps(value, step).max(step);
        let drawn = drawn_m.map(f64::abs);
        self.pitch_m = match (scene.typed.first(), typed_count, drawn) {
            (Some(pitch), ..) => pitch,
            (None, Some(count), Some(drawn)) => sense * rounded(drawn / count as f64),
            (None, None, Some(drawn)) if !has_neighbor(self.unit, scene.plan) => sense * rounded(drawn),
            (None, ..) => sense * usual_pitch_m(self.unit, scene.plan, sense),
        };
        if self.pitch_m == 0.0 {
            return None;
        }
        if scene.typed.first().is_some() && sense < 0.0 {
            self.pitch_m = -self.pitch_m.abs();
        }
        let reached = drawn.map_or(1, |drawn| (drawn / self.pitch_m.abs() + 0.5).floor().max(1.0) as usize);
        self.count = typed_count.unwrap_or(reached).min(MOST_COPIES);
        self.placed(scene.plan, &line, along_m)
    }

    fn placed(&self, plan: &Plan, line: &EdgeLine, along_m: f64) -> Option<Change> {
        let placement = plan.placements.get(&self.unit)?;
        let Standing::OnEdge { edge, setback_m, turn_rad, .. } = &placement.stands else {
            return None;
        };
        let places = (1..=self.count).map(|index| Change::Place {
            make_up: placement.make_up.clone(),
            stands: Standing::OnEdge {
                edge: *edge,
                station: Station::nearest(along_m + self.pitch_m * index as f64, line.length_m),
                setback_m: *setback_m,
                turn_rad: *turn_rad,
            },
            tag: None,
        });
        Some(Change::All(places.collect()))
    }

    /// The card at the pointer.
    pub fn card(&self) -> Vec<CardLine> {
        vec![CardLine::length("pitch", self.pitch_m.abs()), CardLine::word("copies", self.count.to_string())]
    }
}

fn place_of(unit: PlacementId, plan: &Plan) -> Option<(EdgeLine, f64)> {
    let placement = plan.placements.get(&unit)?;
    let Standing::OnEdge { edge, .. } = &placement.stands else {
        return None;
    };
    let line = EdgeLine::of(plan, *edge)?;
    Some((line, line.along_m(Frame::of(plan, &placement.stands)?.at)))
}

/// Distances along the edge from a unit to the others on it.
fn neighbors_m(unit: PlacementId, plan: &Plan) -> Vec<f64> {
    let Some((line, along_m)) = place_of(unit, plan) else {
        return Vec::new();
    };
    let own_edge = plan.placements.get(&unit).and_then(|placement| edge_of(&placement.stands));
    let others =
        plan.placements.iter().filter(|(id, placement)| **id != unit && edge_of(&placement.stands) == own_edge);
    others
        .filter_map(|(_, placement)| Frame::of(plan, &placement.stands))
        .map(|f| line.along_m(f.at) - along_m)
        .collect()
}

fn edge_of(stands: &Standing) -> Option<gantline_plan::document::EdgeId> {
    match stands {
        Standing::OnEdge { edge, .. } => Some(*edge),
        Standing::Free { .. } => None,
    }
}

fn has_neighbor(unit: PlacementId, plan: &Plan) -> bool {
    neighbors_m(unit, plan).iter().any(|distance| *distance != 0.0)
}

/// The pitch to the neighbor on the other side, else to the nearest one, else a start of its own.
pub fn usual_pitch_m(unit: PlacementId, plan: &Plan, sense: f64) -> f64 {
    const WITHOUT_NEIGHBOR_M: f64 = 3.0;
    let distances = neighbors_m(unit, plan);
    let behind = distances.iter().filter(|distance| **distance * sense < 0.0).map(|distance| distance.abs());
    let any = distances.iter().filter(|distance| **distance != 0.0).map(|distance| distance.abs());
    behind.min_by(f64::total_cmp).or_else(|| any.min_by(f64::total_cmp)).unwrap_or(WITHOUT_NEIGHBOR_M)
}
