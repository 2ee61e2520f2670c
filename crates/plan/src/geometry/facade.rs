//! Facades, derived: a facade is a run of collinear edges with equal facade data, so that a joint in a parapet is no gap.

use serde::{Deserialize, Serialize};

use super::frame::EdgeLine;
use crate::document::{EdgeId, FacadeData, FacadeFoot, Plan, Ring, RoofId};

/// Edges whose directions differ by less are collinear, rad (0.05°).
const SAME_DIRECTION_RAD: f64 = 0.05 * std::f64::consts::PI / 180.0;
/// A corner off the line by less does not break it, m.
const SAME_LINE_M: f64 = 0.001;

/// Name of a facade: its first edge along the ring.
pub type FacadeKey = EdgeId;

/// A facade: a vertical rectangle below a run of edges.
#[derive(Debug, Clone, PartialEq)]
pub struct Facade {
    /// Its first edge.
    pub key: FacadeKey,
    /// The roof whose edges it hangs below.
    pub roof: RoofId,
    /// Its edges in order along it.
    pub edges: Vec<FacadeEdge>,
    /// The line of the outline.
    pub line: EdgeLine,
    /// Access, offsets, foot.
    pub data: FacadeData,
    /// Level of its top: the highest coping along it.
    pub top_level_m: f64,
    /// Level of its foot.
    pub foot_level_m: f64,
}

/// One edge of a facade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct FacadeEdge {
    /// The edge.
    pub edge: EdgeId,
    /// Where it begins along the facade.
    pub from_m: f64,
    /// Where it ends along the facade.
    pub to_m: f64,
}

impl Facade {
    /// Its height; zero when its foot is not below its top.
    pub fn height_m(&self) -> f64 {
        (self.top_level_m - self.foot_level_m).max(0.0)
    }
}

/// All facades of a plan, in order of roof and ring.
pub fn facades(plan: &Plan) -> Vec<Facade> {
    let mut all = Vec::new();
    for (&roof_id, roof) in &plan.roofs {
        for ring in roof.rings() {
            for run in runs(ring) {
                all.push(facade(plan, roof_id, ring, &run));
            }
        }
    }
    all
}

/// The facade that an edge belongs to.
pub fn facade_of(all: &[Facade], edge: EdgeId) -> Option<&Facade> {
    all.iter().find(|facade| facade.edges.iter().any(|part| part.edge == edge))
}

/// Runs of corner indices; a run that passes the ring's first corner is kept whole.
fn runs(ring: &Ring) -> Vec<Vec<usize>> {
    let count = ring.len();
    let breaks: Vec<usize> = (0..count).filter(|&index| !continues(ring, index)).collect();
    let Some(&first) = breaks.first() else {
        return vec![(0..count).collect()];
    };
    let mut runs = Vec::new();
    let mut run = Vec::new();
    for step in 0..count {
        let index = (first + step) % count;
        if breaks.contains(&index) && !run.is_empty() {
            runs.push(std::mem::take(&mut run));
        }
        run.push(index);
    }
    runs.push(run);
    runs.sort_by_key(|run| run[0]);
    runs
}

/// Whether the edge at this corner goes on in the line of the edge before it with equal data.
fn continues(ring: &Ring, index: usize) -> bool {
    let count = ring.len();
    let before = (index + count - 1) % count;
    if ring.edge(before).facade != ring.edge(index).facade {
        return false;
    }
    let (a, b) = ring.ends(before);
    let (_, c) = ring.ends(index);
    let first = EdgeLine::between(a, b);
    let second = EdgeLine::between(b, c);
    let turn = first.along.perp_dot(second.along).atan2(first.along.dot(second.along));
    let off_line = EdgeLine::between(a, c).behind_m(b).abs();
    turn.abs() < SAME_DIRECTION_RAD && off_line < SAME_LINE_M
}

fn facade(plan: &Plan, roof_id: RoofId, ring: &Ring, run: &[usize]) -> Facade {
    let roof = &plan.roofs[&roof_id];
    let (start, _) = ring.ends(run[0]);
    let (_, end) = ring.ends(run[run.len() - 1]);
    let line = EdgeLine::between(start, end);
    let mut top_m = 0.0_f64;
    let edges = run
        .iter()
        .map(|&index| {
            let edge = ring.edge(index);
            top_m = top_m.max(edge.parapet.height_m);
            let (a, b) = ring.ends(index);
            FacadeEdge { edge: edge.id, from_m: line.along_m(a), to_m: line.along_m(b) }
        })
        .collect();
    let data = ring.edge(run[0]).facade.clone();
    let foot_level_m = match data.ends_at {
        FacadeFoot::Ground => 0.0,
        FacadeFoot::LevelM(level_m) => level_m,
        FacadeFoot::Roof(other) => plan.roofs.get(&other).map_or(0.0, |roof| roof.level_m + roof.build_up_m),
    };
    Facade {
        key: ring.edge(run[0]).id,
        roof: roof_id,
        edges,
        line,
        data,
        top_level_m: roof.level_m + top_m,
        foot_level_m,
    }
}
