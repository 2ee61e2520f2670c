//! Free edges and openings round a loaded area, as the punching check asks for them.

use super::borders::{Border, borders};
use super::clip::area_inside_m2;
use super::local::LocalSetting;
use super::setting::ConcreteFault;
use crate::geometry::rings::{Orientation, oriented, signed_area_m2};
use gantline_mechanics::slab::FreeEdge;
use glam::DVec2;

/// What stands round a loaded area, in plate axes.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadedAround {
    /// Edges of the outline that the loaded area sees, each as a line without end.
    pub edges: Vec<FreeEdge>,
    /// Holes of the outline, m.
    pub openings_m: Vec<Vec<[f64; 2]>>,
}

impl LocalSetting {
    /// Free edges and openings round a convex loaded area given in plate axes.
    ///
    /// Edges farther than `reach_m` from the area are left out. An edge counts as a line without end, past a corner that goes in as
    /// well, up to 1.5 times its distance; where that line runs through the area, the edge counts as touching it. Both are safe.
    pub fn around_loaded(&self, loaded_m: &[[f64; 2]]) -> Result<LoadedAround, ConcreteFault> {
        let outline = &self.rings;
        let corners: Vec<DVec2> = loaded_m.iter().copied().map(DVec2::from).collect();
        if let Some(lost) = corners.iter().find(|c| !c.is_finite()) {
            return Err(ConcreteFault::NotFinite { field: "loaded_m", x_m: lost.x, y_m: lost.y });
        }
        let loaded = oriented(&corners, Orientation::CounterClockwise);
        let whole = signed_area_m2(&loaded);
        let outside_m2 = whole - area_inside_m2(outline, &loaded);
        if !(whole > 0.0 && outside_m2 <= ROUNDING * whole) {
            return Err(ConcreteFault::LoadedOutside { outside_m2 });
        }
        let all = borders(outline);
        let outer = outline.get(..1).map(borders).unwrap_or_default();
        Ok(LoadedAround {
            edges: outer.iter().filter_map(|border| self.free_edge(border, &corners, &all)).collect(),
            openings_m: outline.iter().skip(1).map(|ring| ring.iter().map(DVec2::to_array).collect()).collect(),
        })
    }

    fn free_edge(&self, border: &Border, corners: &[DVec2], all: &[Border]) -> Option<FreeEdge> {
        // A corner on the edge sees it from a hair inside.
        let inward = border.outward() * -2.0 * ON_EDGE_M;
        let is_seen = corners.iter().any(|c| border.seen_from(*c + inward, all).is_some());
        let clear = corners.iter().map(|c| border.distance_m(*c)).fold(f64::INFINITY, f64::min);
        if !is_seen || clear > self.reach_m {
            return None;
        }
        let outward = border.outward();
        let reach = corners.iter().map(|c| c.dot(outward)).fold(f64::NEG_INFINITY, f64::max);
        Some(FreeEdge { outward_rad: outward.to_angle(), distance_m: border.from.dot(outward).max(reach) })
    }
}

/// A loaded area may end on an edge; so little beyond it is rounding, m: corners lie on a grid.
const ON_EDGE_M: f64 = 1e-7;
/// So little of it outside is rounding.
const ROUNDING: f64 = 2e-6;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::concrete_around::{PlateFrame, Setting};
    use crate::geometry::polygons::Polygon;

    const PLATE: [[f64; 2]; 4] = [[-0.2, -0.2], [0.2, -0.2], [0.2, 0.2], [-0.2, 0.2]];

    fn around(outline: &Polygon, x: f64, y: f64) -> Result<LoadedAround, ConcreteFault> {
        let plate = PlateFrame { origin_m: DVec2::new(x, y), turn_rad: 0.0 };
        let (zones, foreign_m, anchors_m) = (&[], &[], &[]);
        let (thickness_m, influence_m, reach_m) = (0.2, 0.2, 1.0);
        Setting { outline, thickness_m, zones, foreign_m, plate, anchors_m, influence_m, reach_m }
            .local()?
            .around_loaded(&PLATE)
    }

    /// An L of legs 2 m wide: its corner at (2, 2) goes in. A hole of 0.4 m.
    fn l() -> Polygon {
        let corners = [[0.0, 0.0], [6.0, 0.0], [6.0, 2.0], [2.0, 2.0], [2.0, 6.0], [0.0, 6.0]];
        let hole = Polygon::rectangle(DVec2::new(4.0, 1.0), DVec2::new(4.4, 1.4));
        Polygon { outer: corners.map(DVec2::from).to_vec(), holes: vec![hole.outer] }
    }

    /// Degrees and micrometers.
    fn distances(found: &LoadedAround) -> Vec<(i64, i64)> {
        let degrees = |e: &FreeEdge| (e.outward_rad.to_degrees().round() as i64, (e.distance_m * 1e6).round() as i64);
        let mut all: Vec<_> = found.edges.iter().map(degrees).collect();
        all.sort_by_key(|edge| edge.0);
        all
    }

    #[test]
    fn edges_are_those_within_reach_of_the_area() {
        // 0.5 m behind the lower edge; the upper edge at 1.5 m is farther than 1 m from the plate.
        let found = around(&l(), 5.0, 0.5).unwrap();
        assert_eq!(distances(&found), [(-90, 500_000), (0, 1_000_000)]);
        assert_eq!(found.openings_m.len(), 1);
    }

    #[test]
    fn an_area_may_end_on_an_edge_but_not_beyond_it() {
        assert_eq!(distances(&around(&l(), 5.0, 0.2).unwrap()), [(-90, 200_000), (0, 1_000_000)]);
        assert!(matches!(around(&l(), 5.0, 0.19), Err(ConcreteFault::LoadedOutside { .. })));
        // Over the hole, and with the hole just under a corner.
        assert!(matches!(around(&l(), 4.2, 1.2), Err(ConcreteFault::LoadedOutside { .. })));
        assert!(matches!(around(&l(), 4.5, 1.5), Err(ConcreteFault::LoadedOutside { .. })));
    }

    #[test]
    fn a_corner_that_goes_in_beside_the_area_counts_as_touching_it() {
        // The corner at (2, 2) lies beside the plate's corner at (1.95, 1.95): both its edges, prolonged, run past the plate
        // 0.05 m away; from a plate farther right the upright edge's line runs through it.
        let found = around(&l(), 1.75, 1.75).unwrap();
        assert!(distances(&found).contains(&(0, 250_000)) && distances(&found).contains(&(90, 250_000)));
        let found = around(&l(), 1.9, 1.75).unwrap();
        assert!(distances(&found).contains(&(0, 200_000)), "{found:?}");
    }
}
