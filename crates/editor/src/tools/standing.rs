//! Where a unit would stand for a pointer: on the nearest edge, else free; with snapping and what is typed.

use gantline_plan::document::{EdgeId, PlacementId, Plan, Standing, Station};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::geometry::segments::distance_to_segment;
use glam::DVec2;

use super::gesture::{Spot, in_steps, point_in_steps, step_m};
use super::snap::candidates::of_stations;
use super::snap::{Caught, choose};
use super::{Scene, Typed};

/// An edge takes a unit from this far, m or screen points, whichever is more.
const STRIP_M: f64 = 1.5;
const STRIP_PT: f64 = 40.0;

/// The nearest edge whose strip holds a point; none away from any edge. The roof worked on is preferred.
pub fn edge_near(scene: &Scene<'_>, spot: &Spot) -> Option<EdgeId> {
    let reach_m = STRIP_M.max(STRIP_PT * spot.m_per_pt);
    let near = scene.plan.edges().filter_map(|place| {
        let (from, to) = place.ring.ends(place.index);
        let distance = distance_to_segment(spot.at, from, to);
        let elsewhere = scene.level.is_some_and(|level| level != place.roof_id);
        (distance <= reach_m).then(|| (place.edge().id, distance, elsewhere))
    });
    near.min_by(|a, b| a.2.cmp(&b.2).then(a.1.total_cmp(&b.1))).map(|(edge, _, _)| edge)
}

/// A place on an edge: along from its start and behind it, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OnEdge {
    /// The edge.
    pub edge: EdgeId,
    /// Distance from its start.
    pub along_m: f64,
    /// Distance behind it.
    pub setback_m: f64,
    /// What has caught it.
    pub caught: Option<Caught>,
}

/// What holds while a place is looked for.
#[derive(Debug, Clone, Copy)]
pub struct Held<'a> {
    /// Setback to keep while the pointer is near it; none: the setback follows the pointer only.
    pub setback_m: f64,
    /// Whether the setback stays as it is wherever the pointer is.
    pub setback_stays: bool,
    /// Units that catch nothing, as they are being moved.
    pub without: &'a [PlacementId],
    /// The catch before this one.
    pub last: Option<&'a Caught>,
}

/// Near the old line the setback stays, screen points.
const KEEP_SETBACK_PT: f64 = 8.0;

/// The place on an edge for a pointer, snapped and rounded; what is typed holds.
pub fn on_edge(plan: &Plan, edge: EdgeId, spot: &Spot, held: &Held<'_>, typed: Typed) -> Option<OnEdge> {
    let line = EdgeLine::of(plan, edge)?;
    let step = step_m(spot.m_per_pt);
    let behind = line.behind_m(spot.at);
    let stays = held.setback_stays || (behind - held.setback_m).abs() <= KEEP_SETBACK_PT * spot.m_per_pt;
    let pointer = if stays { line.point(line.along_m(spot.at), held.setback_m) } else { spot.at };
    let mut found = OnEdge {
        edge,
        along_m: rounded_station(line.along_m(pointer), line.length_m, step),
        setback_m: if stays { held.setback_m } else { in_steps(behind, step) },
        caught: None,
    };
    if spot.held.alt {
        found.along_m = line.along_m(pointer);
        found.setback_m = if held.setback_stays { held.setback_m } else { behind };
    } else if let Some(caught) = caught_on(plan, edge, pointer, spot, held) {
        take_catch(&mut found, &line, &caught, stays);
    }
    found.along_m = typed.first().unwrap_or(found.along_m);
    found.setback_m = typed.second().unwrap_or(found.setback_m);
    Some(found)
}

fn caught_on(plan: &Plan, edge: EdgeId, pointer: DVec2, spot: &Spot, held: &Held<'_>) -> Option<Caught> {
    let candidates = of_stations(plan, edge, held.without);
    choose(pointer, &candidates, held.last, spot.m_per_pt)
}

/// A line across the edge fixes the station, a line along it the setback.
fn take_catch(found: &mut OnEdge, line: &EdgeLine, caught: &Caught, stays: bool) {
    let lines = [Some(caught.by), caught.and];
    for by in lines.into_iter().flatten() {
        let super::snap::Locus::Line { through, along } = by.locus else {
            continue;
        };
        if along.dot(line.along).abs() < 0.5 {
            found.along_m = line.along_m(through);
        } else if !stays {
            found.setback_m = line.behind_m(through);
        }
    }
    found.caught = Some(*caught);
}

/// A station rounded to a step from the nearer corner.
fn rounded_station(along_m: f64, length_m: f64, step: f64) -> f64 {
    if along_m <= length_m / 2.0 { in_steps(along_m, step) } else { length_m - in_steps(length_m - along_m, step) }
}

impl OnEdge {
    /// The standing there, turned from square to the edge by this angle.
    pub fn standing(&self, plan: &Plan, turn_rad: f64) -> Option<Standing> {
        let line = EdgeLine::of(plan, self.edge)?;
        Some(Standing::OnEdge {
            edge: self.edge,
            station: Station::nearest(self.along_m, line.length_m),
            setback_m: self.setback_m,
            turn_rad,
        })
    }
}

/// A free standing on the roof under the pointer, looking the way of the nearest edge; none where there is no roof.
pub fn free(scene: &Scene<'_>, spot: &Spot) -> Option<Standing> {
    let roof = scene.roof_at(spot.at)?;
    let step = step_m(spot.m_per_pt);
    let at = if spot.held.alt { spot.at } else { point_in_steps(spot.at, step) };
    let edges = scene.plan.edges().filter(|place| place.roof_id == roof);
    let nearest = edges
        .map(|place| {
            let (from, to) = place.ring.ends(place.index);
            (EdgeLine::between(from, to), distance_to_segment(spot.at, from, to))
        })
        .min_by(|a, b| a.1.total_cmp(&b.1));
    let outward_rad = nearest.map_or(0.0, |(line, _)| line.outward_rad());
    Some(Standing::Free { roof, at, outward_rad, serves: Vec::new() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tools::gesture;
    use crate::tools::witness;

    fn spot(x: f64, y: f64) -> Spot {
        Spot { at: DVec2::new(x, y), m_per_pt: 0.02, held: gesture::Held::default(), hits: Vec::new() }
    }

    const HELD: Held<'static> = Held { setback_m: 1.2, setback_stays: false, without: &[], last: None };

    #[test]
    fn near_the_old_line_the_setback_stays_to_the_bit() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        // Eight points of 2 cm are 16 cm.
        let near = on_edge(&plan, edge, &spot(7.31, 1.35), &HELD, Typed::default()).unwrap();
        assert_eq!(near.setback_m, 1.2);
        assert!((near.along_m - 7.3).abs() < 1e-12);
        let away = on_edge(&plan, edge, &spot(7.31, 1.38), &HELD, Typed::default()).unwrap();
        assert!((away.setback_m - 1.4).abs() < 1e-12);
    }

    #[test]
    fn the_middle_of_the_edge_catches_within_ten_points() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        // The edge is 30 m long; ten points of 2 cm are 20 cm.
        let caught = on_edge(&plan, edge, &spot(15.17, 1.2), &HELD, Typed::default()).unwrap();
        assert_eq!(caught.along_m, 15.0);
        let missed = on_edge(&plan, edge, &spot(15.23, 1.2), &HELD, Typed::default()).unwrap();
        assert!((missed.along_m - 15.2).abs() < 1e-9);
    }

    #[test]
    fn what_is_typed_holds_whatever_the_pointer_does() {
        let plan = witness::rectangle_plan();
        let edge = witness::south_edge(&plan);
        let found = on_edge(&plan, edge, &spot(15.1, 9.0), &HELD, Typed::of(Some(12.345), Some(0.987))).unwrap();
        assert_eq!((found.along_m, found.setback_m), (12.345, 0.987));
    }

    #[test]
    fn on_the_far_half_the_round_figure_is_measured_from_the_far_corner() {
        // An edge of 10.03 m: a station 2.97 m from its end rounds to 3.0 m from it.
        let along = rounded_station(10.03 - 2.97, 10.03, 0.1);
        assert!((10.03 - along - 3.0).abs() < 1e-12);
    }
}
