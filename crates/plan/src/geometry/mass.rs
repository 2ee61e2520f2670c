//! The building's own volumes as prisms: parapets, obstacles, and higher roofs that are walls to lower ones.

use glam::DVec2;

use super::frame::EdgeLine;
use super::polygons::Polygon;
use crate::document::{EdgeId, ObstacleId, Plan, Ring, RoofId};

/// How far down a roof's volume is taken to go: below anything that stands on a roof, m.
const FAR_BELOW_M: f64 = -1.0e4;

/// What a volume is part of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum VolumeOf {
    /// The parapet of an edge.
    Parapet(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
    /// A roof with everything below it.
    Roof(RoofId),
}

/// A prism with levels over level zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Volume {
    /// What it is part of.
    pub of: VolumeOf,
    /// The roof it stands on, or is.
    pub roof: RoofId,
    /// Its outline in plan.
    pub polygon: Polygon,
    /// Level of its underside.
    pub from_level_m: f64,
    /// Level of its top.
    pub to_level_m: f64,
}

/// All volumes of a plan, in order of roofs, edges and obstacles.
pub fn volumes(plan: &Plan) -> Vec<Volume> {
    let mut all = Vec::new();
    for (&id, roof) in &plan.roofs {
        let polygon = Polygon { outer: roof.outer.points(), holes: roof.holes.iter().map(Ring::points).collect() };
        let whole =
            Volume { of: VolumeOf::Roof(id), roof: id, polygon, from_level_m: FAR_BELOW_M, to_level_m: roof.level_m };
        all.push(whole);
        for ring in roof.rings() {
            for index in 0..ring.len() {
                let edge = ring.edge(index);
                if edge.parapet.height_m > 0.0 && edge.parapet.thickness_m > 0.0 {
                    all.push(Volume {
                        of: VolumeOf::Parapet(edge.id),
                        roof: id,
                        polygon: Polygon::simple(parapet_strip(ring, index)),
                        from_level_m: roof.level_m,
                        to_level_m: roof.level_m + edge.parapet.height_m,
                    });
                }
            }
        }
    }
    for (&id, obstacle) in &plan.obstacles {
        let Some(roof) = plan.roofs.get(&obstacle.roof) else { continue };
        all.push(Volume {
            of: VolumeOf::Obstacle(id),
            roof: obstacle.roof,
            polygon: Polygon::simple(obstacle.outline.clone()),
            from_level_m: roof.level_m + obstacle.from_m,
            to_level_m: roof.level_m + obstacle.to_m,
        });
    }
    all
}

/// The strip that the parapet of an edge covers in plan: outer face first, along the edge, then the inner face back.
/// At corners it is mitered with the parapets of the edges beside it.
pub fn parapet_strip(ring: &Ring, index: usize) -> Vec<DVec2> {
    let count = ring.len();
    let line_of = |at: usize| {
        let (start, end) = ring.ends(at);
        EdgeLine::between(start, end)
    };
    let before = (index + count - 1) % count;
    let after = (index + 1) % count;
    let (line, line_before, line_after) = (line_of(index), line_of(before), line_of(after));
    let faces = |at: usize| {
        let parapet = ring.edge(at).parapet;
        (parapet.inset_m, parapet.inset_m + parapet.thickness_m)
    };
    let ((outer, inner), (outer_before, inner_before), (outer_after, inner_after)) =
        (faces(index), faces(before), faces(after));
    let at_start = |behind: f64, other: f64| miter(line, behind, line_before, other, line.start);
    let at_end = |behind: f64, other: f64| miter(line, behind, line_after, other, line.end);
    vec![
        at_start(outer, outer_before),
        at_end(outer, outer_after),
        at_end(inner, inner_after),
        at_start(inner, inner_before),
    ]
}

/// Where two lines, each shifted behind itself, meet; square to the first one where they run nearly alike or meet far away.
fn miter(line: EdgeLine, behind_m: f64, other: EdgeLine, other_behind_m: f64, corner: DVec2) -> DVec2 {
    let square = corner - line.outward * behind_m;
    let across = line.along.perp_dot(other.along);
    if across.abs() < 1e-3 {
        return square;
    }
    let other_point = corner - other.outward * other_behind_m;
    let t = (other_point - square).perp_dot(other.along) / across;
    let met = square + line.along * t;
    let farthest_m = 4.0 * behind_m.abs().max(other_behind_m.abs());
    if met.distance(corner) > farthest_m { square } else { met }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Corner, Edge};

    #[test]
    fn parapets_are_mitered_at_corners_so_that_nothing_overlaps_or_gapes() {
        let corners = [(0.0, 0.0), (10.0, 0.0), (10.0, 8.0), (0.0, 8.0)];
        let ring = Ring::new(
            (1..)
                .zip(corners)
                .map(|(n, (x, y))| Corner { at: DVec2::new(x, y), edge: Edge::sketched(EdgeId::from_number(n)) })
                .collect(),
        )
        .unwrap();
        let strips: Vec<f64> = (0..4).map(|i| Polygon::simple(parapet_strip(&ring, i)).area_m2()).collect();
        // Outer 10 × 8 less inner 9.6 × 7.6 (0.2 m parapets, hand value): 80 − 72.96 = 7.04 m².
        assert!((strips.iter().sum::<f64>() - 7.04).abs() < 1e-9, "{strips:?}");
    }
}
