//! A union of squares cut into pieces that don't overlap, and the part of each that other anchors leave.
//!
//! Where another base's anchor stands so near that the squares overlap, each point belongs to the anchor nearest to it.
//! Two alike anchors then have half their joint area each, as a group of both would give them; no point counts twice, so
//! each base may use its part whatever the other carries.

use super::clip::{HalfPlane, area_inside_m2, clipped};
use glam::DVec2;

/// Area of the squares of this half side about `own` inside the outline, without what lies nearer to one of `foreign`, m².
pub(super) fn shared_area_m2(outline: &[Vec<DVec2>], own: &[DVec2], foreign: &[DVec2], half_m: f64) -> f64 {
    let is_near = |f: &&DVec2| own.iter().any(|a| (**f - *a).abs().max_element() < 2.0 * half_m);
    let near: Vec<DVec2> = foreign.iter().filter(is_near).copied().collect();
    let pieces = disjoint_rectangles(own, half_m);
    if near.is_empty() {
        return pieces.iter().map(|piece| whole_or_cut_m2(outline, piece)).sum();
    }
    let cell = |piece: &[DVec2; 4], i: usize| {
        let rivals = own.iter().enumerate().filter(|(j, _)| *j != i).map(|(_, a)| a).chain(&near);
        rivals.fold(piece.to_vec(), |left, rival| clipped(&left, &HalfPlane::nearer_to(own[i], *rival)))
    };
    let area = |piece: &[DVec2; 4]| -> f64 {
        (0..own.len()).map(|i| cell(piece, i)).filter(|c| c.len() >= 3).map(|c| area_inside_m2(outline, &c)).sum()
    };
    pieces.iter().map(area).sum()
}

/// A rectangle that no line of the outline enters is in or out as a whole.
fn whole_or_cut_m2(outline: &[Vec<DVec2>], piece: &[DVec2; 4]) -> f64 {
    use crate::geometry::rings::{ring_contains, segments};
    let [low, high] = [piece[0], piece[2]];
    let enters = |(a, b): (DVec2, DVec2)| a.min(b).cmplt(high).all() && a.max(b).cmpgt(low).all();
    if outline.iter().any(|ring| segments(ring).any(enters)) {
        return area_inside_m2(outline, piece);
    }
    let middle = low.midpoint(high);
    let rings_around = outline.iter().filter(|ring| ring_contains(ring, middle)).count();
    if rings_around % 2 == 1 { (high - low).element_product() } else { 0.0 }
}

/// The union of squares as upright rectangles side by side, each as its corners counter-clockwise from the lower left.
fn disjoint_rectangles(centers: &[DVec2], half_m: f64) -> Vec<[DVec2; 4]> {
    let mut cuts: Vec<f64> = centers.iter().flat_map(|c| [c.x - half_m, c.x + half_m]).collect();
    cuts.sort_by(f64::total_cmp);
    let mut found: Vec<[DVec2; 4]> = Vec::new();
    for pair in cuts.windows(2).filter(|pair| pair[1] > pair[0]) {
        let middle = pair[0].midpoint(pair[1]);
        let mut spans: Vec<(f64, f64)> =
            centers.iter().filter(|c| (c.x - middle).abs() < half_m).map(|c| (c.y - half_m, c.y + half_m)).collect();
        spans.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (from, to) in united(&spans) {
            found.push([(pair[0], from), (pair[1], from), (pair[1], to), (pair[0], to)].map(DVec2::from));
        }
    }
    found
}

/// Sorted intervals without overlaps.
pub(super) fn united(sorted: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = Vec::new();
    for &(from, to) in sorted {
        match found.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => found.push((from, to)),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn field() -> Vec<Vec<DVec2>> {
        vec![[[-9.0, -9.0], [9.0, -9.0], [9.0, 9.0], [-9.0, 9.0]].map(DVec2::from).to_vec()]
    }

    #[test]
    fn two_alike_anchors_of_two_bases_have_half_the_area_of_a_pair() {
        // By hand: 0.4 apart, half side 0.3: as a pair (0.4 + 0.6)·0.6 = 0.6 m²; each base has 0.3.
        let (a, b) = (DVec2::ZERO, DVec2::new(0.4, 0.0));
        assert!((shared_area_m2(&field(), &[a, b], &[], 0.3) - 0.6).abs() < 1e-12);
        assert!((shared_area_m2(&field(), &[a], &[b], 0.3) - 0.3).abs() < 1e-12);
    }

    #[test]
    fn anchors_too_far_to_overlap_share_nothing() {
        let far = DVec2::new(0.6, 0.0);
        assert!((shared_area_m2(&field(), &[DVec2::ZERO], &[far], 0.3) - 0.36).abs() < 1e-12);
    }

    #[test]
    fn bases_never_use_more_than_the_area_of_all_their_anchors_together() {
        let own = [DVec2::ZERO, DVec2::new(0.2, 0.1)];
        let foreign = [DVec2::new(0.35, -0.1), DVec2::new(-0.1, 0.3)];
        let all: Vec<DVec2> = own.iter().chain(&foreign).copied().collect();
        let parts = shared_area_m2(&field(), &own, &foreign, 0.25) + shared_area_m2(&field(), &foreign, &own, 0.25);
        let whole = shared_area_m2(&field(), &all, &[], 0.25);
        assert!(parts <= whole + 1e-12 && parts > 0.95 * whole, "{parts} of {whole}");
    }
}
