//! Moves units: along their edges and inward at once. The one under the pointer leads, the others go by the same way.

use gantline_plan::change::Change;
use gantline_plan::document::{EdgeId, PlacementId, Plan, Standing, Station};
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use glam::DVec2;

use super::gesture::{Spot, point_in_steps, step_m};
use super::sketch::CardLine;
use super::snap::Caught;
use super::standing::{Held, OnEdge, on_edge};
use super::{Asked, Scene};

/// Units being moved.
#[derive(Debug, Clone, PartialEq)]
pub struct MoveUnits {
    lead: PlacementId,
    moved: Vec<PlacementId>,
    /// From the pointer at the press to the mast axis: the unit keeps its distance to the pointer.
    grip: DVec2,
    place: Option<Place>,
}

#[derive(Debug, Clone, PartialEq)]
enum Place {
    Edge { found: OnEdge, by_along_m: f64, by_setback_m: f64 },
    Free { at: DVec2, by: DVec2 },
}

/// How far beyond a corner the pointer must be before a unit changes its edge, m.
const BEYOND_CORNER_M: f64 = 0.5;

impl MoveUnits {
    /// Begins with the unit under the pointer in the lead; none when it has no place on the plan.
    pub fn begin(lead: PlacementId, moved: Vec<PlacementId>, from: &Spot, plan: &Plan) -> Option<Self> {
        let frame = Frame::of(plan, &plan.placements.get(&lead)?.stands)?;
        Some(Self { lead, moved, grip: frame.at - from.at, place: None })
    }

    /// The unit under the pointer.
    pub fn lead(&self) -> PlacementId {
        self.lead
    }

    /// All units that go along.
    pub fn moved(&self) -> &[PlacementId] {
        &self.moved
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        vec![Asked::length("along"), Asked::length("setback")]
    }

    /// What has caught it.
    pub fn caught(&self) -> Option<Caught> {
        match &self.place {
            Some(Place::Edge { found, .. }) => found.caught,
            Some(Place::Free { .. }) | None => None,
        }
    }

    /// The change for a pointer.
    pub fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Option<Change> {
        let plan = scene.plan;
        let wanted = Spot { at: spot.at + self.grip, ..spot.clone() };
        let stands = &plan.placements.get(&self.lead)?.stands;
        match stands {
            Standing::OnEdge { edge, station, setback_m, turn_rad } => {
                let line = EdgeLine::of(plan, *edge)?;
                let alone = self.moved.len() == 1;
                let onto = if alone { edge_under(scene, *edge, &line, wanted.at).unwrap_or(*edge) } else { *edge };
                let last = self.caught();
                let held =
                    Held { setback_m: *setback_m, setback_stays: false, without: &self.moved, last: last.as_ref() };
                let found = on_edge(plan, onto, &wanted, &held, scene.typed)?;
                let by_along_m = found.along_m - station.along_m(line.length_m);
                let by_setback_m = found.setback_m - setback_m;
                self.place = Some(Place::Edge { found, by_along_m, by_setback_m });
                if alone {
                    return Some(Change::SetStanding(self.lead, found.standing(plan, *turn_rad)?));
                }
                let by = line.along * by_along_m - line.outward * by_setback_m;
                Some(Change::All(
                    self.moved.iter().filter_map(|&id| moved_by(plan, id, by_along_m, by_setback_m, by)).collect(),
                ))
            }
            Standing::Free { at, .. } => {
                let step = step_m(spot.m_per_pt);
                let raw = if spot.held.alt { wanted.at } else { point_in_steps(wanted.at, step) };
                let to = DVec2::new(scene.typed.first().unwrap_or(raw.x), scene.typed.second().unwrap_or(raw.y));
                let by = to - *at;
                self.place = Some(Place::Free { at: to, by });
                Some(Change::All(self.moved.iter().filter_map(|&id| moved_by(plan, id, 0.0, 0.0, by)).collect()))
            }
        }
    }

    /// The card at the pointer.
    pub fn card(&self, plan: &Plan) -> Vec<CardLine> {
        let tag = plan.placements.get(&self.lead).map(|placement| CardLine::word("tag", placement.tag.0.clone()));
        let figures = match &self.place {
            Some(Place::Edge { found, by_along_m, by_setback_m }) => vec![
                CardLine::length("along", found.along_m),
                CardLine::length("setback", found.setback_m),
                CardLine::length("moved along", *by_along_m),
                CardLine::length("moved inward", *by_setback_m),
            ],
            Some(Place::Free { at, by }) => vec![
                CardLine::length("x", at.x),
                CardLine::length("y", at.y),
                CardLine::length("moved by", by.length()),
            ],
            None => Vec::new(),
        };
        tag.into_iter().chain(figures).collect()
    }
}

/// The edge whose strip the unit is over once it is beyond a corner of its own; none while it is not.
fn edge_under(scene: &Scene<'_>, own: EdgeId, line: &EdgeLine, at: DVec2) -> Option<EdgeId> {
    let along = line.along_m(at);
    let behind = line.behind_m(at);
    let beyond = (-along).max(along - line.length_m);
    // Past the corner, or over the strip of the next edge where the two meet in an inner corner.
    const DEEPEST_STRIP_M: f64 = 4.0;
    if beyond < BEYOND_CORNER_M && behind < DEEPEST_STRIP_M.max(line.length_m) {
        return None;
    }
    let others = scene.plan.edges().filter(|place| place.edge().id != own);
    let over = others.filter_map(|place| {
        let (from, to) = place.ring.ends(place.index);
        let other = EdgeLine::between(from, to);
        let (along, behind) = (other.along_m(at), other.behind_m(at));
        let over = (0.0..=other.length_m).contains(&along) && (-1.0..=DEEPEST_STRIP_M).contains(&behind);
        over.then(|| (place.edge().id, behind.abs()))
    });
    over.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(edge, _)| edge)
}

/// The change that moves one unit: along and inward on its edge, or by a way when it stands free.
pub fn moved_by(plan: &Plan, id: PlacementId, along_m: f64, inward_m: f64, by: DVec2) -> Option<Change> {
    let placement = plan.placements.get(&id)?;
    if placement.locked {
        return None;
    }
    let stands = match &placement.stands {
        Standing::OnEdge { edge, station, setback_m, turn_rad } => {
            let length_m = EdgeLine::of(plan, *edge)?.length_m;
            Standing::OnEdge {
                edge: *edge,
                station: Station::nearest(station.along_m(length_m) + along_m, length_m),
                setback_m: setback_m + inward_m,
                turn_rad: *turn_rad,
            }
        }
        Standing::Free { roof, at, outward_rad, serves } => {
            Standing::Free { roof: *roof, at: *at + by, outward_rad: *outward_rad, serves: serves.clone() }
        }
    };
    Some(Change::SetStanding(id, stands))
}
