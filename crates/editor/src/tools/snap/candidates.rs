//! What a point can be caught by: corners, middles, edges, lines through corners, steps of angle, neighbors.

use std::f64::consts::PI;

use gantline_plan::document::{EdgeId, ObstacleId, PlacementId, Plan, Standing};
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use glam::DVec2;

use super::choose::HOLD_PT;
use crate::tools::Scene;
use crate::tools::gesture::Spot;

/// Kinds of candidates in order of rank: a lower one wins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CatchKind {
    /// A corner.
    Corner,
    /// Where two lines cross.
    Crossing,
    /// The middle of an edge.
    Middle,
    /// A neighbor's line, or the pitch of neighbors.
    Neighbor,
    /// On an edge.
    Edge,
    /// In line with a corner.
    Alignment,
    /// A step of angle.
    AngleStep,
}

/// Where a candidate is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Locus {
    /// A point.
    Point(DVec2),
    /// A line without ends.
    Line {
        /// A point from which distances along it are measured.
        through: DVec2,
        /// Unit vector.
        along: DVec2,
    },
    /// A stretch of a line.
    Segment {
        /// Its start, from which distances are measured.
        from: DVec2,
        /// Its end.
        to: DVec2,
    },
}

/// Something that a point can be caught by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// Its rank.
    pub kind: CatchKind,
    /// Its place.
    pub locus: Locus,
    /// What is said at the pointer.
    pub name: &'static str,
}

/// What is being moved and therefore catches nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moving {
    /// Nothing.
    Nothing,
    /// The corner that this edge leaves.
    Corner(EdgeId),
    /// An edge.
    Edge(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
}

/// Step of angle that lines catch at, rad.
pub const ANGLE_STEP_RAD: f64 = PI / 12.0;

fn point(kind: CatchKind, at: DVec2, name: &'static str) -> Candidate {
    Candidate { kind, locus: Locus::Point(at), name }
}

fn line(kind: CatchKind, through: DVec2, along: DVec2, name: &'static str) -> Candidate {
    Candidate { kind, locus: Locus::Line { through, along }, name }
}

/// Candidates of a plan for a corner that is drawn or moved.
pub fn of_plan(plan: &Plan, moving: Moving) -> Vec<Candidate> {
    let mut all = Vec::new();
    for place in plan.edges() {
        let edge = place.edge().id;
        let before = place.ring.edge(place.index + place.ring.len() - 1).id;
        let (from, to) = place.ring.ends(place.index);
        let corner_moves =
            moving == Moving::Corner(edge) || moving == Moving::Edge(edge) || moving == Moving::Edge(before);
        let next = place.ring.edge(place.index + 1).id;
        let end_moves = moving == Moving::Corner(next) || moving == Moving::Edge(next);
        if !corner_moves {
            of_corner(&mut all, from);
        }
        if !corner_moves && !end_moves {
            all.push(point(CatchKind::Middle, from.midpoint(to), "middle of edge"));
            all.push(Candidate { kind: CatchKind::Edge, locus: Locus::Segment { from, to }, name: "on edge" });
        }
    }
    for (&id, obstacle) in &plan.obstacles {
        if moving != Moving::Obstacle(id) {
            obstacle.outline.iter().for_each(|&corner| of_corner(&mut all, corner));
        }
    }
    all
}

/// Candidates of the drawings under the plan near a pointer: their points and lines. Where two lines cross is found as where
/// edges cross.
pub fn of_underlays(scene: &Scene<'_>, spot: &Spot) -> Vec<Candidate> {
    /// A place with more lines than this is a hatch: the nearest are enough.
    const MOST: usize = 60;
    let mut all = Vec::new();
    for underlay in scene.plan.underlays.values().filter(|one| one.is_seen(scene.level)) {
        let Some(lines) = scene.lines.get(&underlay.attachment) else { continue };
        let radius = HOLD_PT * spot.m_per_pt / underlay.m_per_unit;
        for segment in lines.near(underlay.in_source(spot.at), radius, MOST) {
            let (from, to) = (underlay.in_plan(segment.from), underlay.in_plan(segment.to));
            for (at, _) in [(from, segment.is_point.0), (to, segment.is_point.1)].into_iter().filter(|(_, is)| *is) {
                all.push(point(CatchKind::Corner, at, "point of the drawing"));
            }
            all.push(Candidate {
                kind: CatchKind::Edge,
                locus: Locus::Segment { from, to },
                name: "line of the drawing",
            });
        }
    }
    all
}

/// A corner, and the lines through it along the plan's axes.
fn of_corner(all: &mut Vec<Candidate>, corner: DVec2) {
    all.push(point(CatchKind::Corner, corner, "corner"));
    all.push(line(CatchKind::Alignment, corner, DVec2::X, "in line with a corner"));
    all.push(line(CatchKind::Alignment, corner, DVec2::Y, "in line with a corner"));
}

/// Candidates of the corners drawn so far: the first corner closes, each gives its lines.
pub fn of_drawn(corners: &[DVec2]) -> Vec<Candidate> {
    let mut all = Vec::new();
    for (index, &corner) in corners.iter().enumerate() {
        let name = if index == 0 { "first corner" } else { "corner" };
        all.push(point(CatchKind::Corner, corner, name));
        all.push(line(CatchKind::Alignment, corner, DVec2::X, "in line with a corner"));
        all.push(line(CatchKind::Alignment, corner, DVec2::Y, "in line with a corner"));
    }
    all
}

/// Steps of angle from a point: every 15° from the plan's axes, and along and square to the segment before it.
pub fn of_angles(from: DVec2, before: Option<DVec2>) -> Vec<Candidate> {
    let mut all: Vec<Candidate> = (0..12)
        .map(|step| {
            let along = exact_direction(f64::from(step) * ANGLE_STEP_RAD);
            line(CatchKind::AngleStep, from, along, "angle step")
        })
        .collect();
    if let Some(along) = before.map(|before| (from - before).normalize_or_zero()).filter(|along| *along != DVec2::ZERO)
    {
        all.push(line(CatchKind::AngleStep, from, along, "along the last segment"));
        all.push(line(CatchKind::AngleStep, from, along.perp(), "square to the last segment"));
    }
    all
}

/// A direction whose multiples of a right angle are exact, so that a square drawn is a square.
pub fn exact_direction(angle_rad: f64) -> DVec2 {
    let quarter = angle_rad / (PI / 2.0);
    if (quarter - quarter.round()).abs() < 1e-9 {
        return match (quarter.round() as i64).rem_euclid(4) {
            0 => DVec2::X,
            1 => DVec2::Y,
            2 => -DVec2::X,
            _ => -DVec2::Y,
        };
    }
    DVec2::from_angle(angle_rad)
}

/// Candidates for a base on an edge: its middle, neighbors' pitch, neighbors' setback and the lines of units elsewhere.
pub fn of_stations(plan: &Plan, edge: EdgeId, without: &[PlacementId]) -> Vec<Candidate> {
    let Some(edge_line) = EdgeLine::of(plan, edge) else {
        return Vec::new();
    };
    let across = |along_m: f64| edge_line.point(along_m, 0.0);
    let mut all = vec![line(CatchKind::Middle, across(edge_line.length_m / 2.0), edge_line.outward, "middle of edge")];
    let mut stations = Vec::new();
    for (_, placement) in plan.placements.iter().filter(|(id, _)| !without.contains(id)) {
        let Some(frame) = Frame::of(plan, &placement.stands) else {
            continue;
        };
        match &placement.stands {
            Standing::OnEdge { edge: stands_on, setback_m, .. } if *stands_on == edge => {
                stations.push(edge_line.along_m(frame.at));
                let through = edge_line.point(0.0, *setback_m);
                all.push(line(CatchKind::Neighbor, through, edge_line.along, "setback of a neighbor"));
            }
            Standing::OnEdge { .. } | Standing::Free { .. } => {
                let through = across(edge_line.along_m(frame.at));
                all.push(line(CatchKind::Alignment, through, edge_line.outward, "in line with a unit"));
            }
        }
    }
    stations.sort_by(f64::total_cmp);
    for pair in stations.windows(2) {
        let pitch = pair[1] - pair[0];
        all.push(line(CatchKind::Neighbor, across(pair[0] - pitch), edge_line.outward, "same pitch"));
        all.push(line(
            CatchKind::Neighbor,
            across(f64::midpoint(pair[0], pair[1])),
            edge_line.outward,
            "middle of two",
        ));
        all.push(line(CatchKind::Neighbor, across(pair[1] + pitch), edge_line.outward, "same pitch"));
    }
    all
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;
    use std::sync::Arc;

    use gantline_exchange::underlay::attach;
    use gantline_plan::change::{Change, apply};
    use gantline_plan::document::Underlay;

    use super::*;
    use crate::session::Selection;
    use crate::tools::gesture::Held;
    use crate::tools::snap::choose;
    use crate::tools::{Typed, witness};

    /// Two lines in millimeters that cross at (5, 4) m.
    const CROSS: &[u8] = b"0\nSECTION\n2\nENTITIES\n0\nLINE\n8\nA\n10\n0\n20\n4000\n11\n9000\n21\n4000\n\
        0\nLINE\n8\nA\n10\n5000\n20\n0\n11\n5000\n21\n7000\n0\nENDSEC\n0\nEOF\n";

    #[test]
    fn points_lines_and_crossings_of_a_drawing_catch_where_it_lies() {
        let (attachment, source) = attach(CROSS.to_vec()).unwrap();
        let underlay = Underlay {
            attachment: attachment.hash(),
            m_per_unit: 0.001,
            origin_m: DVec2::new(100.0, 50.0),
            turn_rad: PI / 2.0,
            ..witness::underlay()
        };
        let plan = witness::rectangle_plan();
        let plan = apply(&plan, &Change::AddUnderlay { underlay, attachment: attachment.clone() }).unwrap().plan;
        let lines = BTreeMap::from([(attachment.hash(), Arc::clone(source.lines().unwrap()))]);
        let selection = Selection::default();
        let typed = Typed::default();
        let scene = Scene {
            plan: &plan,
            selection: &selection,
            hand: None,
            hand_setback_m: 1.2,
            level: None,
            lines: &lines,
            typed,
        };
        let caught = |x: f64, y: f64| {
            let at = DVec2::new(x, y);
            let spot = Spot { at, m_per_pt: 0.01, held: Held::default(), hits: Vec::new() };
            choose(at, &of_underlays(&scene, &spot), None, 0.01).map(|caught| (caught.by.kind, caught.at))
        };
        // Turned by a quarter to the left, (x, y) lies at (100 − y, 50 + x).
        let near = |found: Option<(CatchKind, DVec2)>, kind: CatchKind, x: f64, y: f64| {
            let (found_kind, at) = found.unwrap();
            assert!(found_kind == kind && at.distance(DVec2::new(x, y)) < 1e-9, "{found_kind:?} at {at}");
        };
        near(caught(96.05, 50.04), CatchKind::Corner, 96.0, 50.0);
        near(caught(96.05, 55.04), CatchKind::Crossing, 96.0, 55.0);
        near(caught(96.05, 52.0), CatchKind::Edge, 96.0, 52.0);
        assert_eq!(caught(98.5, 52.0), None);
    }
}
