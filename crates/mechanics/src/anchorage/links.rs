//! Which fasteners act together, and which edges are near them: the same questions under every code.

use super::around::{Around, EdgeSeen};
use super::fault::{AnchorageFault, positive};
use super::group::Group;

/// Edges whose directions differ by less, cosine of 60°, are one side.
const SAME_SIDE: f64 = 0.5;

/// Parts of a set that links short enough hold together, in the order of their first fasteners.
pub(super) fn linked(group: &Group, set: &[usize], is_link: impl Fn(f64) -> bool) -> Vec<Vec<usize>> {
    let mut parts: Vec<Vec<usize>> = Vec::new();
    for &i in set {
        let touches = |part: &Vec<usize>| part.iter().any(|&j| is_link(group.spacing_m(i, j)));
        let (joined, mut rest): (Vec<_>, Vec<_>) = parts.into_iter().partition(touches);
        let mut merged: Vec<usize> = joined.into_iter().flatten().chain([i]).collect();
        merged.sort_unstable();
        rest.push(merged);
        parts = rest;
    }
    parts.sort();
    parts
}

/// Lengths of the shortest tree of links between the fasteners: the spacings between neighbors.
pub(super) fn shortest_links(group: &Group, members: &[usize]) -> Vec<f64> {
    let Some((&first, others)) = members.split_first() else { return Vec::new() };
    let mut outside: Vec<(usize, f64)> = others.iter().map(|&i| (i, group.spacing_m(first, i))).collect();
    let mut links = Vec::with_capacity(others.len());
    while let Some(at) = (0..outside.len()).min_by(|&a, &b| outside[a].1.total_cmp(&outside[b].1)) {
        let (next, length) = outside.swap_remove(at);
        links.push(length);
        for (i, reach) in &mut outside {
            *reach = reach.min(group.spacing_m(next, *i));
        }
    }
    links
}

/// Least distance of any of these fasteners to any edge, m.
pub(super) fn nearest_edge(around: &dyn Around, set: &[usize]) -> f64 {
    around.edges().iter().map(|edge| edge.nearest_m(set)).fold(f64::INFINITY, f64::min)
}

/// Distance to each side on which there is an edge nearer than a limit, m, nearest first. Edges that look nearly the same
/// way, as the chords of a round hole do, are one side.
pub(super) fn sides_nearer_than(edges: &[EdgeSeen], members: &[usize], limit_m: f64) -> Vec<f64> {
    let edges = edges.iter().map(|edge| (edge.nearest_m(members), edge.outward));
    let mut near: Vec<(f64, [f64; 2])> = edges.filter(|(distance, _)| *distance < limit_m).collect();
    near.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut sides: Vec<(f64, [f64; 2])> = Vec::new();
    for (distance, out) in near {
        if sides.iter().all(|(_, side)| side[0] * out[0] + side[1] * out[1] <= SAME_SIDE) {
            sides.push((distance, out));
        }
    }
    sides.into_iter().map(|(distance, _)| distance).collect()
}

/// The set of the fasteners for which something holds, a bit each.
pub(super) fn mask(count: usize, is_in: impl Fn(usize) -> bool) -> u64 {
    (0..count).filter(|&i| is_in(i)).fold(0, |mask, i| mask | (1 << i))
}

/// The fasteners of a set of bits.
pub(super) fn indices(mask: u64) -> Vec<usize> {
    (0..u64::BITS as usize).filter(|i| mask & (1 << i) != 0).collect()
}

/// Nothing, or the first thing about what stands around a group that can't be.
pub(super) fn check_around(group: &Group, around: &dyn Around) -> Result<(), AnchorageFault> {
    let anchors = group.anchors_m.len();
    positive("thickness_m", around.thickness_m())?;
    for edge in around.edges() {
        positive("edge thickness_m", edge.thickness_m)?;
        for (field, list) in [
            ("edge distance_m", &edge.distance_m),
            ("corner_before_m", &edge.corner_before_m),
            ("corner_after_m", &edge.corner_after_m),
        ] {
            if list.len() != anchors {
                return Err(AnchorageFault::Length { field, found: list.len(), anchors });
            }
            // Infinite distances are meant; zero, negative ones and no numbers are faults.
            if let Some(&value) = list.iter().find(|value| value.is_nan() || **value <= 0.0) {
                return Err(AnchorageFault::NotPositive { field, value });
            }
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn edge(degrees: f64, distance_m: f64) -> EdgeSeen {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let far = vec![f64::INFINITY];
        let (corner_before_m, corner_after_m) = (far.clone(), far);
        EdgeSeen {
            outward: [cos, sin],
            distance_m: vec![distance_m],
            corner_before_m,
            corner_after_m,
            thickness_m: 0.2,
        }
    }

    #[test]
    fn the_chords_of_a_round_hole_are_one_side_and_the_sides_of_a_column_four() {
        let hole = [-20.0, -10.0, 0.0, 10.0, 20.0].map(|degrees| edge(degrees, 0.1 + degrees.abs() / 1000.0));
        assert_eq!(sides_nearer_than(&hole, &[0], 0.3), [0.1]);
        let column =
            [(0.0, 0.25), (90.0, 0.1), (180.0, 0.2), (270.0, 0.4)].map(|(degrees, distance)| edge(degrees, distance));
        assert_eq!(sides_nearer_than(&column, &[0], 0.3), [0.1, 0.2, 0.25]);
    }

    #[test]
    fn a_set_of_bits_is_the_fasteners_it_was_made_of() {
        let set = [0, 3, 31];
        assert_eq!(indices(mask(32, |i| set.contains(&i))), set);
    }
}
