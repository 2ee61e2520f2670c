//! Straight edges of an outline as the anchors see them: distances to the edge and along it to the corners.
//!
//! At a corner that sticks out the edge ends: an anchor whose foot lies beyond does not see it, and the corner distance
//! is the lesser of the way to the edge's end and the way to whatever border a line along the edge meets first. A bend of
//! less than 5° outward, as between the chords of a curve, is no corner: only what the line meets counts. At a
//! corner that goes in the concrete goes on in front; the edge then counts as prolonged, for anchors up to 1.5 times
//! their distance beside its end, which is safe.

use super::cells::united;
use crate::geometry::rings::segments;
use glam::DVec2;

/// Sine of the turn below which two segments are one straight edge.
pub(super) const STRAIGHT: f64 = 1e-9;
/// Sine of the bend outward below which an edge goes on, 5°. At the far end of a body, 1.5·c₁ away, the edge is then nearer by up to
/// 1.5·tan 5° = 13 % of c₁, over the whole body by a third of that at most; our choice.
const GENTLE: f64 = 0.087_155_742_747_658_17;
/// Bodies that shear breaks out spread 1.5 times the distance both ways.
const SPREAD: f64 = 1.5;
/// A foot this near to an edge's end counts as on it, m.
const ON_END_M: f64 = 1e-6;

/// A straight edge in plate axes, the concrete on its left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Border {
    pub from: DVec2,
    pub to: DVec2,
    /// What stands at `from`.
    pub before: Corner,
    /// What stands at `to`.
    pub after: Corner,
}

/// How the outline goes on at an end of a border.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Corner {
    /// It turns toward the concrete: the concrete ends.
    Out,
    /// It turns so by little.
    Gentle,
    /// It turns away: the concrete goes on in front.
    In,
}

impl Corner {
    fn of(turn_sine: f64) -> Self {
        match turn_sine {
            turn if turn >= GENTLE => Self::Out,
            turn if turn > 0.0 => Self::Gentle,
            _ => Self::In,
        }
    }
}

/// How one anchor sees a border, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sight {
    /// Square to the border.
    pub distance: f64,
    /// Along the border to the corner before the anchor.
    pub before: f64,
    /// Along the border to the corner after the anchor.
    pub after: f64,
}

impl Border {
    pub(super) fn along(&self) -> DVec2 {
        (self.to - self.from).normalize_or(DVec2::X)
    }

    /// Out of the concrete.
    pub(super) fn outward(&self) -> DVec2 {
        -self.along().perp()
    }

    /// Way along the edge from its start to the foot of a point, m.
    pub(super) fn foot_m(&self, p: DVec2) -> f64 {
        (p - self.from).dot(self.along())
    }

    /// Distance of a point inside the concrete, m; negative beyond the edge's line.
    pub(super) fn distance_m(&self, p: DVec2) -> f64 {
        (self.from - p).dot(self.outward())
    }

    /// How an anchor sees this edge among all; none when it does not.
    pub(super) fn seen_from(&self, anchor: DVec2, all: &[Border]) -> Option<Sight> {
        let distance_m = self.distance_m(anchor);
        if distance_m <= 0.0 {
            return None;
        }
        let foot = self.foot_m(anchor);
        let (before, after) = (foot, self.from.distance(self.to) - foot);
        let allowed = |corner: Corner| if corner == Corner::In { SPREAD * distance_m } else { ON_END_M };
        if before < -allowed(self.before) || after < -allowed(self.after) {
            return None;
        }
        let way = |corner: Corner, to_end: f64, direction: DVec2| {
            let hit = first_hit_m(anchor, direction, all);
            if corner == Corner::Out { hit.min(to_end.max(0.0)) } else { hit }
        };
        Some(Sight {
            distance: distance_m,
            before: way(self.before, before, -self.along()),
            after: way(self.after, after, self.along()),
        })
    }
}

/// The straight edges of an outline whose rings have the concrete on the left, collinear segments joined.
pub(super) fn borders(outline: &[Vec<DVec2>]) -> Vec<Border> {
    outline.iter().flat_map(|ring| borders_of(ring)).collect()
}

fn borders_of(ring: &[DVec2]) -> Vec<Border> {
    let sides: Vec<(DVec2, DVec2)> = segments(ring).filter(|(a, b)| a != b).collect();
    let count = sides.len();
    let turn = |i: usize| {
        let [(a, b), (c, d)] = [sides[(i + count - 1) % count], sides[i]];
        (b - a).normalize_or_zero().perp_dot((d - c).normalize_or_zero())
    };
    let corners: Vec<usize> = (0..count).filter(|&i| turn(i).abs() > STRAIGHT).collect();
    let border = |k: usize| {
        let (start, end) = (corners[k], corners[(k + 1) % corners.len()]);
        Border { from: sides[start].0, to: sides[end].0, before: Corner::of(turn(start)), after: Corner::of(turn(end)) }
    };
    (0..corners.len()).map(border).collect()
}

/// Way from a point to the first border in a direction, m; infinite when there is none.
fn first_hit_m(from: DVec2, direction: DVec2, all: &[Border]) -> f64 {
    all.iter().filter_map(|border| hit_m(from, direction, border)).fold(f64::INFINITY, f64::min)
}

fn hit_m(from: DVec2, direction: DVec2, border: &Border) -> Option<f64> {
    let edge = border.to - border.from;
    let turn = direction.perp_dot(edge);
    if turn.abs() <= STRAIGHT * edge.length() {
        return None;
    }
    let apart = border.from - from;
    let (way, share) = (apart.perp_dot(edge) / turn, apart.perp_dot(direction) / turn);
    (way > 0.0 && (0.0..=1.0).contains(&share)).then_some(way)
}

/// United length of intervals, m.
pub(super) fn united_length_m(mut spans: Vec<(f64, f64)>) -> f64 {
    spans.retain(|(from, to)| to > from);
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    united(&spans).into_iter().map(|(from, to)| to - from).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ring(corners: &[[f64; 2]]) -> Vec<Vec<DVec2>> {
        vec![corners.iter().copied().map(DVec2::from).collect()]
    }

    #[test]
    fn a_joint_in_a_straight_edge_is_no_corner() {
        let found = borders(&ring(&[[0.0, 0.0], [1.0, 0.0], [4.0, 0.0], [4.0, 3.0], [0.0, 3.0]]));
        assert_eq!(found.len(), 4);
        let lower = found.iter().find(|b| b.outward() == DVec2::NEG_Y).unwrap();
        let sight = lower.seen_from(DVec2::new(1.5, 0.2), &found).unwrap();
        assert!((sight.distance - 0.2).abs() < 1e-12);
        assert!((sight.before - 1.5).abs() < 1e-12 && (sight.after - 2.5).abs() < 1e-12);
    }

    #[test]
    fn chords_of_a_curve_are_no_corners() {
        // A disc of radius 5 m in 90 chords: an anchor 0.3 m inside sees one chord, and by the closed form of the circle the line along
        // it meets the border √(5² − 4.7²) = 1.706 m away; the chords lie up to 3 mm further in, which shortens it by 5 mm at most.
        let disc: Vec<DVec2> = (0..90).map(|i| DVec2::from_angle(f64::from(i).to_radians() * 4.0) * 5.0).collect();
        let found = borders(&[disc]);
        let anchor = DVec2::from_angle(2.0_f64.to_radians()) * 4.7;
        let sights: Vec<Sight> = found.iter().filter_map(|b| b.seen_from(anchor, &found)).collect();
        assert!(sights.iter().all(|s| s.distance > 0.29), "{sights:?}");
        let near: Vec<&Sight> = sights.iter().filter(|s| s.distance < 0.31).collect();
        assert_eq!(near.len(), 1);
        let whole = (5.0_f64.powi(2) - 4.7_f64.powi(2)).sqrt();
        assert!([near[0].before, near[0].after].iter().all(|way| (whole - 0.012..whole).contains(way)), "{near:?}");
    }

    #[test]
    fn past_a_corner_that_goes_in_the_edge_counts_for_a_while() {
        // An L with the corner at (1, 1) going in; the edge up from there looks toward +x.
        let found = borders(&ring(&[[0.0, 0.0], [2.0, 0.0], [2.0, 1.0], [1.0, 1.0], [1.0, 2.0], [0.0, 2.0]]));
        let upright = found.iter().find(|b| b.outward() == DVec2::X && b.from.x == 1.0).unwrap();
        let at = |x: f64, y: f64| upright.seen_from(DVec2::new(x, y), &found).map(|s| (s.distance, s.before));
        // Beside the edge; below its end within 1.5 · 0.2; and too far below.
        assert_eq!(at(0.8, 1.5).map(|s| (s.1 * 1e9).round()), Some(1.5e9));
        assert!(at(0.8, 0.75).is_some());
        assert!(at(0.8, 0.65).is_none());
    }
}
