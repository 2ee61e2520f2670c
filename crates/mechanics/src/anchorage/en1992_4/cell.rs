//! The square of one fastener cut halfway to its neighbors: the virtual edges of 7.2.2.4 where shears oppose each other.

use super::super::around::Around;
use super::super::group::Group;
use super::super::links::nearest_edge;

/// What one fastener has for itself among others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cell {
    /// The fastener.
    pub anchor: usize,
    /// Area of its square inside edges, virtual edges too, m²; not above the true one.
    pub area_m2: f64,
    /// Least distance to an edge or a virtual edge, m.
    pub edge_m: f64,
}

/// The cells of a set for squares of this half side. Virtual edges stand halfway between fasteners: c = 0.5·s.
///
/// What the virtual edges cut off an uncut square is taken off the square that the real edges left, so that the area is
/// exact without real edges and on the safe side with them.
pub(super) fn cells(group: &Group, around: &dyn Around, set: &[usize], half_side_m: f64) -> Vec<Cell> {
    set.iter()
        .map(|&anchor| {
            let others: Vec<usize> = set.iter().copied().filter(|&i| i != anchor).collect();
            let full = 4.0 * half_side_m * half_side_m;
            let kept = kept_area(group, (anchor, &others), half_side_m);
            let nearest = others.iter().map(|&i| group.spacing_m(anchor, i)).fold(f64::INFINITY, f64::min);
            Cell {
                anchor,
                area_m2: (around.projected_area_m2(&[anchor], half_side_m) - (full - kept)).max(0.0),
                edge_m: nearest_edge(around, &[anchor]).min(0.5 * nearest),
            }
        })
        .collect()
}

/// Area of the square on the near side of all bisectors, m².
fn kept_area(group: &Group, (anchor, others): (usize, &[usize]), half: f64) -> f64 {
    let mut polygon = vec![[-half, -half], [half, -half], [half, half], [-half, half]];
    let here = group.anchors_m[anchor];
    for &other in others {
        let there = group.anchors_m[other];
        polygon = kept_of(&polygon, [there[0] - here[0], there[1] - here[1]]);
    }
    let turned = polygon.iter().skip(1).chain(polygon.first());
    0.5 * polygon.iter().zip(turned).map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum::<f64>()
}

/// The part of a convex polygon about the origin that is nearer to the origin than to `neighbor`.
fn kept_of(polygon: &[[f64; 2]], neighbor: [f64; 2]) -> Vec<[f64; 2]> {
    let limit = 0.5 * (neighbor[0] * neighbor[0] + neighbor[1] * neighbor[1]);
    let past = |p: &[f64; 2]| p[0] * neighbor[0] + p[1] * neighbor[1] - limit;
    let mut kept = Vec::with_capacity(polygon.len() + 1);
    for (a, b) in polygon.iter().zip(polygon.iter().skip(1).chain(polygon.first())) {
        let (from, to) = (past(a), past(b));
        if from <= 0.0 {
            kept.push(*a);
        }
        if (from < 0.0 && to > 0.0) || (from > 0.0 && to < 0.0) {
            let share = from / (from - to);
            kept.push([a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])]);
        }
    }
    kept
}
