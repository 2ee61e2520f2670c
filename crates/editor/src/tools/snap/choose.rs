//! Chooses what a point is caught by: by rank, then by distance; what has caught it holds on a little longer.

use glam::DVec2;

use super::candidates::{Candidate, CatchKind, Locus};
use crate::tools::gesture::in_steps;

/// A point with what has caught it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Caught {
    /// What has caught it.
    pub by: Candidate,
    /// A second line, where two lines have caught it at their crossing.
    pub and: Option<Candidate>,
    /// Where.
    pub at: DVec2,
}

/// A point is caught within this distance, screen points.
pub const CATCH_PT: f64 = 10.0;
/// Once caught it is held up to this distance.
pub const HOLD_PT: f64 = 14.0;

/// The catch for a pointer; none when nothing is near. `last` is the catch before this one.
pub fn choose(pointer: DVec2, candidates: &[Candidate], last: Option<&Caught>, m_per_pt: f64) -> Option<Caught> {
    let mut near: Vec<(Caught, f64)> = Vec::new();
    for candidate in candidates {
        let at = nearest(candidate.locus, pointer);
        let distance_pt = at.distance(pointer) / m_per_pt;
        let reach =
            if last.is_some_and(|last| last.and.is_none() && last.by == *candidate) { HOLD_PT } else { CATCH_PT };
        if distance_pt <= reach {
            near.push((Caught { by: *candidate, and: None, at }, distance_pt));
        }
    }
    let crossings = crossings(&near, pointer, last, m_per_pt);
    near.extend(crossings);
    let rank = |found: &(Caught, f64)| {
        let (caught, distance) = found;
        let held = last.is_some_and(|last| last.by == caught.by && last.and == caught.and);
        // Two lines at once say more than either of them alone.
        (caught.by.kind, caught.and.is_none(), !held, (distance * 1e6) as i64)
    };
    near.into_iter().min_by_key(rank).map(|(caught, _)| caught)
}

/// Where two of the lines near the pointer cross, if that too is near.
fn crossings(near: &[(Caught, f64)], pointer: DVec2, last: Option<&Caught>, m_per_pt: f64) -> Vec<(Caught, f64)> {
    let mut all = Vec::new();
    for (index, (one, _)) in near.iter().enumerate() {
        for (other, _) in &near[index + 1..] {
            let Some(at) = crossing(one.by.locus, other.by.locus) else {
                continue;
            };
            let (first, second) = if one.by.kind <= other.by.kind { (one.by, other.by) } else { (other.by, one.by) };
            let both_edges = first.kind == CatchKind::Edge && second.kind == CatchKind::Edge;
            let by = if both_edges { Candidate { kind: CatchKind::Crossing, ..first } } else { first };
            let caught = Caught { by, and: Some(second), at };
            let held = last.is_some_and(|last| last.by == caught.by && last.and == caught.and);
            let distance_pt = at.distance(pointer) / m_per_pt;
            if distance_pt <= if held { HOLD_PT } else { CATCH_PT } {
                all.push((caught, distance_pt));
            }
        }
    }
    all
}

/// The point of a locus that lies nearest.
fn nearest(locus: Locus, pointer: DVec2) -> DVec2 {
    match locus {
        Locus::Point(at) => at,
        Locus::Line { through, along } => through + along * (pointer - through).dot(along),
        Locus::Segment { from, to } => gantline_plan::geometry::segments::nearest_on_segment(pointer, from, to),
    }
}

/// Where two lines cross; none for points and for lines that are nearly parallel.
fn crossing(one: Locus, other: Locus) -> Option<DVec2> {
    let (a, r) = as_line(one)?;
    let (c, s) = as_line(other)?;
    let across = r.perp_dot(s);
    if across.abs() < 1e-3 {
        return None;
    }
    Some(a + r * ((c - a).perp_dot(s) / across))
}

fn as_line(locus: Locus) -> Option<(DVec2, DVec2)> {
    match locus {
        Locus::Point(_) => None,
        Locus::Line { through, along } => Some((through, along)),
        Locus::Segment { from, to } => Some((from, (to - from).normalize_or_zero())),
    }
}

/// A point on the line that has caught it, at a round distance from where the line is measured.
pub fn stepped_along(caught: &Caught, step_m: f64) -> DVec2 {
    match caught.by.locus {
        _ if caught.and.is_some() => caught.at,
        Locus::Point(at) => at,
        Locus::Line { through, along } => {
            let distance = (caught.at - through).dot(along);
            through + along * in_steps(distance, step_m)
        }
        Locus::Segment { from, to } => {
            let along = (to - from).normalize_or_zero();
            let distance = in_steps((caught.at - from).dot(along), step_m);
            from + along * distance.clamp(0.0, from.distance(to))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn corner(x: f64, y: f64) -> Candidate {
        Candidate { kind: CatchKind::Corner, locus: Locus::Point(DVec2::new(x, y)), name: "corner" }
    }

    fn upright(x: f64) -> Candidate {
        let through = DVec2::new(x, 0.0);
        Candidate { kind: CatchKind::Alignment, locus: Locus::Line { through, along: DVec2::Y }, name: "in line" }
    }

    fn level(y: f64) -> Candidate {
        let through = DVec2::new(0.0, y);
        Candidate { kind: CatchKind::Alignment, locus: Locus::Line { through, along: DVec2::X }, name: "in line" }
    }

    #[test]
    fn a_corner_wins_over_a_nearer_line() {
        let pointer = DVec2::new(0.5, 0.0);
        let caught = choose(pointer, &[upright(0.5), corner(0.0, 0.0)], None, 0.1).unwrap();
        assert_eq!(caught.by.kind, CatchKind::Corner);
        assert_eq!(caught.at, DVec2::ZERO);
    }

    #[test]
    fn a_catch_begins_at_10_points_and_holds_to_14() {
        let candidates = [corner(0.0, 0.0)];
        let at = |x: f64| DVec2::new(x, 0.0);
        assert!(choose(at(10.5), &candidates, None, 1.0).is_none());
        let caught = choose(at(9.5), &candidates, None, 1.0);
        assert!(choose(at(13.5), &candidates, caught.as_ref(), 1.0).is_some());
        assert!(choose(at(14.5), &candidates, caught.as_ref(), 1.0).is_none());
    }

    #[test]
    fn two_lines_catch_at_their_crossing() {
        let caught = choose(DVec2::new(4.03, 2.96), &[upright(4.0), level(3.0)], None, 0.01).unwrap();
        assert_eq!(caught.at, DVec2::new(4.0, 3.0));
        assert!(caught.and.is_some());
    }

    #[test]
    fn on_a_line_the_distance_goes_in_round_steps_from_where_it_is_measured() {
        let through = DVec2::new(1.0, 1.0);
        let line = Candidate {
            kind: CatchKind::AngleStep,
            locus: Locus::Line { through, along: DVec2::X },
            name: "angle step",
        };
        let caught = choose(DVec2::new(4.63, 1.02), &[line], None, 0.01).unwrap();
        assert!(stepped_along(&caught, 0.05).distance(DVec2::new(4.65, 1.0)) < 1e-12);
    }
}
