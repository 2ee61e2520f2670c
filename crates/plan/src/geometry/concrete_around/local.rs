//! What of a setting can count for its base, in the axes of its plate.

use super::borders::{Border, STRAIGHT, borders};
use super::clip::clipped_to_rectangle;
use super::setting::{ConcreteFault, Setting};
use super::surroundings::{ConcreteAround, box_around};
use super::zones::Zone;
use crate::geometry::polygons::Polygon;
use crate::geometry::rings::{Orientation, oriented};
use glam::DVec2;

/// Corners farther along an edge than this many times the reach cut nothing off: what breaks out before the farthest edge that
/// counts goes 1.5 times its distance both ways.
pub(super) const FAR_ALONG: f64 = 1.5;
/// What lies farther off than this many times the reach is cut away. The borders that the cut makes are then too far to be edges, and
/// farther along any edge than [`FAR_ALONG`], in whatever direction it runs: √(2.5² − 1²) > 1.5.
const CUT_AT: f64 = 2.5;
/// Coordinates lie on a grid of so many lines a meter: every tenth of a micrometer. Nothing is built so exactly; two bases that stand alike are alike to the bit.
const GRID_PER_M: f64 = 1e7;
/// Other bases' anchors count within reach, where squares about them may meet those about the own, and before an edge within twice
/// what breaks out before the own anchor that is farthest from it.
const BESIDE: f64 = 2.0 * FAR_ALONG;

/// What of a [`Setting`] can count for its base, in plate axes: cut to what is within reach, on a fine grid. Two bases of one
/// kind that stand alike have equal ones, wherever they stand, and the concrete bears the same under both.
#[derive(Debug, Clone, PartialEq)]
pub struct LocalSetting {
    pub(super) thickness_m: f64,
    /// The base's own anchors, as they were given.
    pub(super) anchors: Vec<DVec2>,
    /// Rings with the concrete on their left.
    pub(super) rings: Vec<Vec<DVec2>>,
    pub(super) zones: Vec<Zone>,
    pub(super) foreign: Vec<DVec2>,
    pub(super) influence_m: f64,
    pub(super) reach_m: f64,
}

impl Setting<'_> {
    /// What of it can count. Without anchors nothing is cut away.
    pub fn local(&self) -> Result<LocalSetting, ConcreteFault> {
        self.validate()?;
        let anchors: Vec<DVec2> = self.anchors_m.iter().copied().map(DVec2::from).collect();
        let rings = |polygon: &Polygon| self.near_rings(polygon, &anchors);
        let zones = self.zones.iter().map(|zone| (rings(&zone.area), zone.thickness_m));
        let outline = rings(self.outline);
        Ok(LocalSetting {
            thickness_m: self.thickness_m,
            zones: zones.filter(|zone: &Zone| !zone.0.is_empty()).collect(),
            foreign: self.near_foreign(&anchors, &outline),
            rings: outline,
            anchors,
            influence_m: self.influence_m,
            reach_m: self.reach_m,
        })
    }

    /// Rings of a polygon in plate axes, the inside on their left. The outer one is cut to what is near; a hole is kept whole, as
    /// what it shades of a perimeter hangs on all of it, or left out.
    fn near_rings(&self, polygon: &Polygon, anchors: &[DVec2]) -> Vec<Vec<DVec2>> {
        let (low, high) = if anchors.is_empty() {
            (DVec2::NEG_INFINITY, DVec2::INFINITY)
        } else {
            box_around(anchors, CUT_AT * self.reach_m)
        };
        let local = |ring: &[DVec2], way| -> Vec<DVec2> {
            let ring = without_joints(&oriented(ring, way));
            ring.into_iter().map(|corner| self.plate.plate_from_plane(corner)).collect()
        };
        let cut = |ring: Vec<DVec2>| {
            let is_near = ring.iter().all(|corner| corner.cmpge(low).all() && corner.cmple(high).all());
            if is_near { ring } else { clipped_to_rectangle(&ring, low, high) }
        };
        let outer = std::iter::once(cut(local(&polygon.outer, Orientation::CounterClockwise)));
        let holes = polygon.holes.iter().map(|hole| local(hole, Orientation::Clockwise));
        let holes = holes.filter(|hole| clipped_to_rectangle(hole, low, high).len() >= 3);
        let near = outer.chain(holes).map(|ring| ring.into_iter().map(on_grid).collect::<Vec<_>>());
        near.filter(|ring| ring.len() >= 3).collect()
    }

    fn near_foreign(&self, anchors: &[DVec2], rings: &[Vec<DVec2>]) -> Vec<DVec2> {
        if self.foreign_m.is_empty() {
            return Vec::new();
        }
        let (low, high) = box_around(anchors, self.reach_m);
        let edges: Vec<(Border, f64)> = borders(rings)
            .into_iter()
            .filter_map(|border| {
                let distances = anchors.iter().map(|&anchor| border.distance_m(anchor));
                let (nearest, farthest) = distances.fold((f64::INFINITY, 0.0_f64), |(near, far), distance| {
                    (if distance > 0.0 { near.min(distance) } else { near }, far.max(distance))
                });
                (nearest <= self.reach_m).then_some((border, BESIDE * farthest))
            })
            .collect();
        let is_before = |foreign: DVec2| {
            edges.iter().any(|(border, wide_m)| {
                let foot = border.foot_m(foreign);
                let apart = anchors.iter().map(|&anchor| (border.foot_m(anchor) - foot).abs());
                (0.0..=*wide_m).contains(&border.distance_m(foreign)) && apart.fold(f64::INFINITY, f64::min) <= *wide_m
            })
        };
        let counts = |foreign: &DVec2| (foreign.cmpge(low).all() && foreign.cmple(high).all()) || is_before(*foreign);
        let all = self.foreign_m.iter().map(|&foreign| on_grid(self.plate.plate_from_plane(foreign)));
        let mut near: Vec<DVec2> = all.filter(counts).collect();
        near.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
        near
    }
}

impl LocalSetting {
    /// Measures the concrete round the base once.
    pub fn measure(&self) -> Result<ConcreteAround, ConcreteFault> {
        ConcreteAround::new(self)
    }
}

/// A ring without corners at which it goes straight on: on the grid they would turn by a hair.
fn without_joints(ring: &[DVec2]) -> Vec<DVec2> {
    let count = ring.len();
    let turns = |i: usize| {
        let [before, here, after] = [ring[(i + count - 1) % count], ring[i], ring[(i + 1) % count]];
        (here - before).normalize_or_zero().perp_dot((after - here).normalize_or_zero()).abs() > STRAIGHT
    };
    (0..count).filter(|&i| turns(i)).map(|i| ring[i]).collect()
}

/// The nearest place on the grid; a zero has no sign.
fn on_grid(at: DVec2) -> DVec2 {
    (at * GRID_PER_M).round() / GRID_PER_M + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::concrete_around::PlateFrame;
    use std::f64::consts::FRAC_PI_2;

    const ANCHORS: [[f64; 2]; 2] = [[0.1, 0.1], [-0.1, -0.1]];

    fn local(outline: &Polygon, foreign_m: &[DVec2], plate: PlateFrame) -> LocalSetting {
        let (thickness_m, zones, influence_m, reach_m) = (0.3, &[][..], 0.2, 2.0);
        let setting =
            Setting { outline, thickness_m, zones, foreign_m, plate, anchors_m: &ANCHORS, influence_m, reach_m };
        setting.local().unwrap()
    }

    /// Along 60 m of edge and round its corner: everywhere 0.4 m behind the edge and far from its ends.
    #[test]
    fn bases_that_stand_alike_have_equal_settings_wherever_they_stand() {
        let outline = Polygon::rectangle(DVec2::new(0.3, 0.1), DVec2::new(60.3, 40.1));
        let foot = |x: f64| PlateFrame { origin_m: DVec2::new(x, 0.5), turn_rad: -FRAC_PI_2 };
        let first = local(&outline, &[DVec2::new(13.7, 0.5), DVec2::new(20.0, 0.5)], foot(11.3));
        let second = local(&outline, &[DVec2::new(36.2, 0.5), DVec2::new(50.0, 0.5)], foot(33.8));
        assert_eq!(first, second);
        let beside = PlateFrame { origin_m: DVec2::new(59.9, 17.3), turn_rad: 0.0 };
        assert_eq!(first, local(&outline, &[DVec2::new(59.9, 19.7)], beside));
        // What breaks out before the anchor 0.5 m from the edge goes 0.75 m both ways, and squares reach 1 m: an anchor farther off
        // than 2 m shares nothing.
        let far = [DVec2::new(13.7, 0.5), DVec2::new(9.1, 0.5)];
        assert_eq!(local(&outline, &far, foot(11.3)).foreign.len(), 0);
        assert_eq!(local(&outline, &[DVec2::new(13.3, 0.5)], foot(11.3)).foreign.len(), 1);
        // A millimeter nearer is another place.
        let nearer = PlateFrame { origin_m: DVec2::new(11.3, 0.499), ..foot(11.3) };
        assert_ne!(first, local(&outline, &[DVec2::new(13.7, 0.5)], nearer));
    }

    /// Witness: a small slab that is not cut at all, whose other edges lie beyond reach.
    #[test]
    fn what_is_cut_away_counts_for_nothing() {
        use gantline_mechanics::anchorage::Around;

        let outline = Polygon::rectangle(DVec2::ZERO, DVec2::new(60.0, 40.0));
        let plate = PlateFrame { origin_m: DVec2::new(0.9, 0.5), turn_rad: -FRAC_PI_2 };
        let near = local(&outline, &[], plate).measure().unwrap();
        let small = Polygon::rectangle(DVec2::ZERO, DVec2::splat(5.0));
        let found = local(&small, &[], plate).measure().unwrap();
        assert_eq!((near.edges().len(), found.edges().len()), (2, 2));
        let is_near = |a: &[f64], b: &[f64]| a.iter().zip(b).all(|(a, b)| a == b || (a - b).abs() < 1e-9);
        for (a, b) in near.edges().iter().zip(found.edges()) {
            assert!(is_near(&a.outward, &b.outward) && is_near(&a.distance_m, &b.distance_m), "{a:?} {b:?}");
            assert!(is_near(&a.corner_before_m, &b.corner_before_m), "{a:?} {b:?}");
            assert!(is_near(&a.corner_after_m, &b.corner_after_m), "{a:?} {b:?}");
        }
        let corners: Vec<f64> = near.edges().iter().flat_map(|edge| edge.corner_after_m.clone()).collect();
        assert!(corners.iter().any(|way| way.is_infinite()) && corners.iter().any(|way| *way < 1.1), "{corners:?}");
        let areas = [&near, &found].map(|around| around.projected_area_m2(&[0, 1], 0.6));
        assert!((areas[0] - areas[1]).abs() < 1e-9, "{areas:?}");
    }

    /// Joints 5 mm apart in a straight edge, seen from a plate that stands askew, are no corners.
    #[test]
    fn joints_in_a_straight_edge_stay_no_corners_on_the_grid() {
        let corners = [[0.0, 0.0], [1.0, 0.0], [1.005, 0.0], [5.0, 0.0], [5.0, 5.0], [0.0, 5.0]];
        let outline = Polygon::simple(corners.map(DVec2::from).to_vec());
        let plate = PlateFrame { origin_m: DVec2::new(1.0, 0.7), turn_rad: 0.3 };
        assert_eq!(borders(&local(&outline, &[], plate).rings).len(), 4);
    }

    /// A light well 30 m long is kept as it is, one that is out of reach is not.
    #[test]
    fn holes_are_kept_whole_or_left_out() {
        let well = |y: f64| Polygon::rectangle(DVec2::new(10.0, y), DVec2::new(40.0, y + 1.0)).outer;
        let outline = Polygon {
            outer: Polygon::rectangle(DVec2::ZERO, DVec2::new(60.0, 40.0)).outer,
            holes: vec![well(12.0), well(30.0)],
        };
        let plate = PlateFrame { origin_m: DVec2::new(25.0, 11.0), turn_rad: 0.0 };
        let rings = local(&outline, &[], plate).rings;
        assert_eq!(rings.len(), 2);
        let wide = |ring: &[DVec2]| {
            let (low, high) = box_around(ring, 0.0);
            high.x - low.x
        };
        assert!(wide(&rings[0]) < 11.0 && (wide(&rings[1]) - 30.0).abs() < 1e-9, "{rings:?}");
    }
}
