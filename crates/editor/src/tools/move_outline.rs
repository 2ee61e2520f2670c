//! Moves corners and edges of the selected roof, puts corners in, moves obstacles and their corners.

use gantline_plan::change::Change;
use gantline_plan::document::{EdgeId, ObstacleId, Plan};
use gantline_plan::geometry::frame::EdgeLine;
use glam::DVec2;

use super::gesture::{Spot, in_steps, point_in_steps, step_m};
use super::sketch::{CardLine, LineRole, SketchLine};
use super::snap::candidates::{of_angles, of_plan, of_underlays};
use super::snap::choose::{CATCH_PT, stepped_along};
use super::snap::{Caught, Moving, choose};
use super::{Asked, Scene};

/// A part of an outline being moved.
#[derive(Debug, Clone, PartialEq)]
pub struct MoveOutline {
    part: OutlinePart,
    /// From the pointer at the press to the place that is moved.
    grip: DVec2,
    start: DVec2,
    caught: Option<Caught>,
    to: DVec2,
}

/// Which part of an outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutlinePart {
    /// The corner that an edge leaves.
    Corner(EdgeId),
    /// An edge as a whole.
    Edge(EdgeId),
    /// A new corner on an edge.
    NewCorner(EdgeId),
    /// An obstacle as a whole.
    Obstacle(ObstacleId),
    /// A corner of an obstacle.
    ObstacleCorner(ObstacleId, usize),
}

impl MoveOutline {
    /// Begins; none when the part is not on the plan.
    pub fn begin(part: OutlinePart, from: &Spot, plan: &Plan) -> Option<Self> {
        let start = match part {
            OutlinePart::Corner(edge) => EdgeLine::of(plan, edge)?.start,
            OutlinePart::Edge(edge) | OutlinePart::NewCorner(edge) => {
                let line = EdgeLine::of(plan, edge)?;
                line.start.midpoint(line.end)
            }
            OutlinePart::Obstacle(id) => *plan.obstacles.get(&id)?.outline.first()?,
            OutlinePart::ObstacleCorner(id, corner) => *plan.obstacles.get(&id)?.outline.get(corner)?,
        };
        Some(Self { part, grip: start - from.at, start, caught: None, to: start })
    }

    /// Name of the step of undo.
    pub const fn name(&self) -> &'static str {
        match self.part {
            OutlinePart::Corner(_) => "move corner",
            OutlinePart::Edge(_) => "move edge",
            OutlinePart::NewCorner(_) => "put in corner",
            OutlinePart::Obstacle(_) => "move obstacle",
            OutlinePart::ObstacleCorner(..) => "move obstacle's corner",
        }
    }

    /// What can be typed.
    pub fn asks(&self) -> Vec<Asked> {
        match self.part {
            OutlinePart::Edge(_) => vec![Asked::length("outward")],
            _ => vec![Asked::length("moved x"), Asked::length("moved y")],
        }
    }

    /// What has caught it.
    pub const fn caught(&self) -> Option<Caught> {
        self.caught
    }

    /// The change for a pointer.
    pub fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Option<Change> {
        let wanted = Spot { at: spot.at + self.grip, ..spot.clone() };
        if let OutlinePart::Edge(edge) = self.part {
            let line = EdgeLine::of(scene.plan, edge)?;
            let out_m = scene.typed.first().unwrap_or_else(|| outward_m(scene.plan, edge, &line, &wanted));
            self.to = self.start + line.outward * out_m;
            return Some(Change::MoveEdge { edge, by: line.outward * out_m });
        }
        let (to, caught) = self.snapped(&wanted, scene);
        let typed = scene.typed;
        self.caught = if typed.is_empty() { caught } else { None };
        let by =
            DVec2::new(typed.first().unwrap_or(to.x - self.start.x), typed.second().unwrap_or(to.y - self.start.y));
        // A place that was caught is taken as it is: its coordinates must be those of what caught it, to the bit.
        self.to = if typed.is_empty() { to } else { self.start + by };
        match self.part {
            OutlinePart::Corner(edge) => Some(Change::MoveCorner { edge, to: self.to }),
            OutlinePart::NewCorner(edge) => Some(Change::InsertCorner { edge, at: self.to }),
            OutlinePart::Obstacle(id) => {
                let mut obstacle = scene.plan.obstacles.get(&id)?.clone();
                obstacle.outline.iter_mut().for_each(|corner| *corner += by);
                Some(Change::SetObstacle(id, obstacle))
            }
            OutlinePart::ObstacleCorner(id, corner) => {
                let mut obstacle = scene.plan.obstacles.get(&id)?.clone();
                *obstacle.outline.get_mut(corner)? = self.to;
                Some(Change::SetObstacle(id, obstacle))
            }
            OutlinePart::Edge(_) => None,
        }
    }

    fn snapped(&self, wanted: &Spot, scene: &Scene<'_>) -> (DVec2, Option<Caught>) {
        if wanted.held.alt {
            return (wanted.at, None);
        }
        let step = step_m(wanted.m_per_pt);
        let moving = match self.part {
            OutlinePart::Corner(edge) => Moving::Corner(edge),
            OutlinePart::Obstacle(id) | OutlinePart::ObstacleCorner(id, _) => Moving::Obstacle(id),
            OutlinePart::Edge(_) | OutlinePart::NewCorner(_) => Moving::Nothing,
        };
        let mut candidates = of_plan(scene.plan, moving);
        candidates.extend(of_underlays(scene, wanted));
        for neighbor in self.neighbors(scene.plan) {
            candidates.extend(of_angles(neighbor, None));
        }
        match choose(wanted.at, &candidates, self.caught.as_ref(), wanted.m_per_pt) {
            Some(caught) => (stepped_along(&caught, step), Some(caught)),
            None => (point_in_steps(wanted.at, step), None),
        }
    }

    /// The corners before and after what is moved.
    fn neighbors(&self, plan: &Plan) -> Vec<DVec2> {
        match self.part {
            OutlinePart::Corner(edge) => plan.find_edge(edge).map_or_else(Vec::new, |place| {
                let before = place.ring.ends(place.index + place.ring.len() - 1).0;
                vec![before, place.ring.ends(place.index).1]
            }),
            OutlinePart::Edge(edge) => plan.find_edge(edge).map_or_else(Vec::new, |place| {
                let count = place.ring.len();
                vec![place.ring.ends(place.index + count - 1).0, place.ring.ends(place.index + 1).1]
            }),
            OutlinePart::NewCorner(edge) => {
                EdgeLine::of(plan, edge).map_or_else(Vec::new, |line| vec![line.start, line.end])
            }
            OutlinePart::ObstacleCorner(id, corner) => plan.obstacles.get(&id).map_or_else(Vec::new, |obstacle| {
                let count = obstacle.outline.len();
                vec![obstacle.outline[(corner + count - 1) % count], obstacle.outline[(corner + 1) % count]]
            }),
            OutlinePart::Obstacle(_) => Vec::new(),
        }
    }

    /// The card at the pointer: how far it was moved, in the quantities that can be typed, and the lengths of the edges
    /// that it ends.
    pub fn card(&self, plan: &Plan) -> Vec<CardLine> {
        let by = self.to - self.start;
        let mut card = match self.part {
            OutlinePart::Edge(edge) => {
                let outward = EdgeLine::of(plan, edge).map_or(DVec2::ZERO, |line| line.outward);
                vec![CardLine::length("outward", by.dot(outward))]
            }
            _ => vec![CardLine::length("moved x", by.x), CardLine::length("moved y", by.y)],
        };
        let ends = self.neighbors(plan);
        let lengths: Vec<f64> = match (self.part, ends.as_slice()) {
            (OutlinePart::Edge(edge), [before, after]) => {
                let own = EdgeLine::of(plan, edge);
                own.map_or_else(Vec::new, |own| vec![before.distance(own.start + by), after.distance(own.end + by)])
            }
            _ => ends.iter().map(|neighbor| neighbor.distance(self.to)).collect(),
        };
        if let [before, after] = lengths.as_slice() {
            card.push(CardLine::length("edge before", *before));
            card.push(CardLine::length("edge after", *after));
        }
        card
    }

    /// Where what is moved was before.
    pub fn ghost(&self, plan: &Plan) -> Option<SketchLine> {
        let (points, closed) = match self.part {
            OutlinePart::Obstacle(id) | OutlinePart::ObstacleCorner(id, _) => {
                (plan.obstacles.get(&id)?.outline.clone(), true)
            }
            OutlinePart::Edge(edge) | OutlinePart::NewCorner(edge) => {
                let line = EdgeLine::of(plan, edge)?;
                (vec![line.start, line.end], false)
            }
            OutlinePart::Corner(_) => {
                let ends = self.neighbors(plan);
                let [before, after] = ends.as_slice() else { return None };
                (vec![*before, self.start, *after], false)
            }
        };
        Some(SketchLine { points, closed, role: LineRole::Ghost })
    }
}

/// How far an edge is moved outward: to the line of another corner when near it, else in round steps.
fn outward_m(plan: &Plan, edge: EdgeId, line: &EdgeLine, wanted: &Spot) -> f64 {
    let raw = -line.behind_m(wanted.at);
    if wanted.held.alt {
        return raw;
    }
    let own_corner = |at: DVec2| at == line.start || at == line.end;
    let corners = plan.edges().filter(|place| place.edge().id != edge).map(|place| place.ring.ends(place.index).0);
    let levels = corners.filter(|&at| !own_corner(at)).map(|at| -line.behind_m(at));
    let nearest = levels.min_by(|a, b| (a - raw).abs().total_cmp(&(b - raw).abs()));
    match nearest {
        Some(level) if (level - raw).abs() <= CATCH_PT * wanted.m_per_pt && level != 0.0 => level,
        _ => {
            let step = step_m(wanted.m_per_pt);
            in_steps(raw, step)
        }
    }
}
