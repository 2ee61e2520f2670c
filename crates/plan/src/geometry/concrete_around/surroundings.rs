//! Areas and edges of the concrete round one base, as the anchorage formulas ask for them.

use super::borders::{Border, borders, united_length_m};
use super::cells::shared_area_m2;
use super::clip::clipped_to_rectangle;
use super::local::{FAR_ALONG, LocalSetting};
use super::setting::ConcreteFault;
use super::zones::{Zone, least_thickness_m};
use crate::geometry::rings::{distance_to_ring, ring_contains};
use gantline_mechanics::anchorage::{Around, EdgeSeen, union_area_m2};
use glam::DVec2;

/// An anchor nearer to an edge than this stands on it, m.
const LEAST_EDGE_M: f64 = 1e-6;

/// The concrete round the anchors of one base, in plate axes.
#[derive(Debug, Clone, PartialEq)]
pub struct ConcreteAround {
    anchors: Vec<DVec2>,
    foreign: Vec<DVec2>,
    /// Rings with the concrete on their left.
    outline: Vec<Vec<DVec2>>,
    /// The same, cut to what lies within reach.
    near: Vec<Vec<DVec2>>,
    reach_m: f64,
    edges: Vec<EdgeSeen>,
    /// The border behind each edge.
    lines: Vec<Border>,
    thickness_m: f64,
    sharing: usize,
}

impl ConcreteAround {
    pub(super) fn new(setting: &LocalSetting) -> Result<Self, ConcreteFault> {
        let (anchors, outline) = (setting.anchors.clone(), setting.rings.clone());
        if let Some(anchor) = anchors.iter().position(|a| !is_inside(&outline, *a, LEAST_EDGE_M)) {
            return Err(ConcreteFault::AnchorOutside { anchor });
        }
        let (low, high) = box_around(&anchors, setting.reach_m);
        let near = outline.iter().map(|ring| clipped_to_rectangle(ring, low, high)).filter(|r| r.len() >= 3).collect();
        let (foreign, zones) = (setting.foreign.clone(), &setting.zones);
        let (low, high) = box_around(&anchors, setting.influence_m);
        let under = [low, DVec2::new(high.x, low.y), high, DVec2::new(low.x, high.y)];
        let thickness_m = least_thickness_m(zones, setting.thickness_m, &under);
        let shares = |f: &&DVec2| anchors.iter().any(|a| (**f - *a).abs().max_element() < 2.0 * setting.influence_m);
        let sharing = foreign.iter().filter(shares).count();
        let reach_m = setting.reach_m;
        let (edges, lines) = (Vec::new(), Vec::new());
        let mut around = Self { anchors, foreign, outline, near, reach_m, edges, lines, thickness_m, sharing };
        around.look_round(zones, setting.thickness_m);
        Ok(around)
    }

    /// Finds the edges within reach.
    fn look_round(&mut self, zones: &[Zone], elsewhere_m: f64) {
        let all = borders(&self.outline);
        for border in &all {
            let sights: Vec<_> = self.anchors.iter().map(|a| border.seen_from(*a, &all)).collect();
            let nearest = sights.iter().flatten().map(|s| s.distance).fold(f64::INFINITY, f64::min);
            if nearest > self.reach_m {
                continue;
            }
            let list = |of: fn(&super::borders::Sight) -> f64| -> Vec<f64> {
                sights.iter().map(|s| s.as_ref().map_or(f64::INFINITY, of)).collect()
            };
            let distance_m = list(|s| s.distance);
            // A corner farther along than what breaks out before the farthest edge that counts is none within reach.
            let within = |way: f64| if way > FAR_ALONG * self.reach_m { f64::INFINITY } else { way };
            let corners = |of| list(of).into_iter().map(within).collect();
            let outward = border.outward();
            let thickness_m = least_thickness_m(zones, elsewhere_m, &self.strip_before(border, &distance_m));
            self.edges.push(EdgeSeen {
                outward: outward.to_array(),
                distance_m,
                corner_before_m: corners(|s| s.before),
                corner_after_m: corners(|s| s.after),
                thickness_m,
            });
            self.lines.push(*border);
        }
    }

    /// The strip between the anchors that see a border and the border, as wide as what breaks out, counter-clockwise.
    fn strip_before(&self, border: &Border, distance_m: &[f64]) -> [DVec2; 4] {
        let (mut from, mut to, mut deep) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
        for (anchor, distance) in self.anchors.iter().zip(distance_m).filter(|(_, d)| d.is_finite()) {
            let foot = border.foot_m(*anchor);
            (from, to) = (from.min(foot - 1.5 * distance), to.max(foot + 1.5 * distance));
            deep = deep.max(*distance);
        }
        let at = |foot: f64, depth: f64| border.from + border.along() * foot - border.outward() * depth;
        [at(from, 0.0), at(to, 0.0), at(to, deep), at(from, deep)]
    }

    fn chosen(&self, set: &[usize]) -> Vec<DVec2> {
        set.iter().filter_map(|&i| self.anchors.get(i)).copied().collect()
    }

    /// Feet along a border of other bases' anchors that stand before it no deeper than `deep_m`.
    fn foreign_feet(&self, border: &Border, deep_m: f64) -> impl Iterator<Item = f64> + '_ {
        let border = *border;
        let stands_before = move |f: &&DVec2| (0.0..=deep_m).contains(&border.distance_m(**f));
        self.foreign.iter().filter(stands_before).map(move |f| border.foot_m(*f))
    }

    /// From where to where along a border the body before one anchor goes: to the corners, and halfway to other bases' anchors.
    fn stretch(&self, edge: usize, anchor: usize, half_width_m: f64) -> Option<(f64, f64)> {
        let (seen, border) = (self.edges.get(edge)?, self.lines.get(edge)?);
        let foot = border.foot_m(*self.anchors.get(anchor)?);
        let mut from = foot - half_width_m.min(*seen.corner_before_m.get(anchor)?);
        let mut to = foot + half_width_m.min(*seen.corner_after_m.get(anchor)?);
        for other in self.foreign_feet(border, 2.0 * half_width_m) {
            if (other - foot).abs() >= 2.0 * half_width_m {
                continue;
            }
            let halfway = foot.midpoint(other);
            if other > foot { to = to.min(halfway) } else { from = from.max(halfway) }
        }
        Some((from, to.max(from)))
    }
}

impl Around for ConcreteAround {
    fn thickness_m(&self) -> f64 {
        self.thickness_m
    }

    fn projected_area_m2(&self, set: &[usize], half_side_m: f64) -> f64 {
        let outline = if half_side_m <= self.reach_m { &self.near } else { &self.outline };
        shared_area_m2(outline, &self.chosen(set), &self.foreign, half_side_m)
    }

    fn edges(&self) -> &[EdgeSeen] {
        &self.edges
    }

    fn side_area_m2(&self, edge: usize, set: &[usize], depth_m: f64, half_side_m: f64) -> f64 {
        let (Some(border), Some(seen)) = (self.lines.get(edge), self.edges.get(edge)) else { return 0.0 };
        let heads: Vec<[f64; 2]> = self.chosen(set).into_iter().map(|a| [border.foot_m(a), depth_m]).collect();
        let stretches = || set.iter().filter_map(|&i| self.stretch(edge, i, half_side_m));
        let from = stretches().map(|s| s.0).fold(f64::INFINITY, f64::min);
        let to = stretches().map(|s| s.1).fold(f64::NEG_INFINITY, f64::max);
        if to <= from {
            return 0.0;
        }
        union_area_m2(&heads, half_side_m, [from, 0.0], [to, seen.thickness_m])
    }

    fn shear_area_m2(&self, edge: usize, front: &[usize], half_width_m: f64, depth_m: f64) -> f64 {
        let Some(seen) = self.edges.get(edge) else { return 0.0 };
        let stretches = front.iter().filter_map(|&i| self.stretch(edge, i, half_width_m)).collect();
        united_length_m(stretches) * depth_m.min(seen.thickness_m)
    }

    fn sharing_neighbors(&self) -> usize {
        self.sharing
    }
}

/// Whether a point lies inside an outline, farther than `by_m` from its border.
fn is_inside(outline: &[Vec<DVec2>], p: DVec2, by_m: f64) -> bool {
    let rings_around = outline.iter().filter(|ring| ring_contains(ring, p)).count();
    rings_around % 2 == 1 && outline.iter().all(|ring| distance_to_ring(ring, p) > by_m)
}

pub(super) fn box_around(points: &[DVec2], by_m: f64) -> (DVec2, DVec2) {
    let low = points.iter().copied().fold(DVec2::INFINITY, DVec2::min);
    let high = points.iter().copied().fold(DVec2::NEG_INFINITY, DVec2::max);
    (low - by_m, high + by_m)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::concrete_around::{PlateFrame, Setting};
    use crate::geometry::polygons::Polygon;
    use gantline_mechanics::anchorage::RectangularMember;
    use proptest::prelude::*;

    fn setting<'a>(outline: &'a Polygon, anchors_m: &'a [[f64; 2]], plate: PlateFrame) -> Setting<'a> {
        Setting {
            outline,
            thickness_m: 0.2,
            zones: &[],
            foreign_m: &[],
            plate,
            anchors_m,
            influence_m: 0.2,
            reach_m: 100.0,
        }
    }

    const HOME: PlateFrame = PlateFrame { origin_m: DVec2::ZERO, turn_rad: 0.0 };

    #[test]
    fn an_anchor_beyond_an_edge_in_a_hole_or_on_an_edge_is_named() {
        let square = |a: f64, b: f64| Polygon::rectangle(DVec2::splat(a), DVec2::splat(b));
        let outline = Polygon { holes: vec![square(-0.1, 0.1).outer], ..square(-1.0, 1.0) };
        for [x, y] in [[2.0, 0.0], [0.0, 0.0], [1.0, 0.5], [0.1, 0.05]] {
            let anchors = [[-0.5, 0.5], [x, y]];
            let fault = setting(&outline, &anchors, HOME).measure().unwrap_err();
            assert_eq!(fault, ConcreteFault::AnchorOutside { anchor: 1 }, "({x}, {y})");
        }
    }

    #[test]
    fn lengths_of_nothing_and_lost_corners_are_named() {
        let outline = Polygon::rectangle(DVec2::ZERO, DVec2::ONE);
        let anchors = [[0.5, 0.5]];
        let thin = Setting { thickness_m: 0.0, ..setting(&outline, &anchors, HOME) };
        assert!(matches!(thin.measure(), Err(ConcreteFault::NotPositive { field: "thickness_m", .. })));
        let lost = Polygon::simple(vec![DVec2::ZERO, DVec2::X, DVec2::NAN]);
        let found = setting(&lost, &anchors, HOME).measure();
        assert!(matches!(found, Err(ConcreteFault::NotFinite { field: "outline", .. })));
    }

    /// Corners lie on a grid of a tenth of a micrometer; lengths and areas of a meter differ by no more.
    const ON_GRID: f64 = 1e-6;

    proptest! {
        #[test]
        fn a_rectangle_is_what_mechanics_makes_of_it(
            low in [-1.0..-0.2, -1.0..-0.2],
            high in [0.2..1.0, 0.2..1.0],
            half in 0.05..0.6,
            quarter in 0..4_u8,
        ) {
            // The plate stands turned by a quarter in its plane; the slab is turned with it.
            let anchors = [[-0.1, -0.05], [0.1, -0.05], [0.1, 0.05]];
            let plate = PlateFrame { origin_m: DVec2::new(3.0, -2.0), turn_rad: f64::from(quarter) * std::f64::consts::FRAC_PI_2 };
            let upright = Polygon::rectangle(DVec2::from(low), DVec2::from(high));
            let turned = upright.outer.iter().map(|p| DVec2::from_angle(plate.turn_rad).rotate(*p) + plate.origin_m);
            let outline = Polygon::simple(turned.collect());
            let around = setting(&outline, &anchors, plate).measure().unwrap();
            let member = RectangularMember::new(&anchors, low, high, 0.2).unwrap();
            let set = [0, 1, 2];
            prop_assert!((around.projected_area_m2(&set, half) - member.projected_area_m2(&set, half)).abs() < ON_GRID);
            for (i, edge) in member.edges().iter().enumerate() {
                let same = |e: &EdgeSeen| (DVec2::from(e.outward) - DVec2::from(edge.outward)).length() < 1e-9;
                let j = around.edges().iter().position(same).unwrap();
                for anchor in set {
                    let found = &around.edges()[j];
                    prop_assert!((found.distance_m[anchor] - edge.distance_m[anchor]).abs() < ON_GRID);
                    prop_assert!((found.corner_before_m[anchor] - edge.corner_before_m[anchor]).abs() < ON_GRID);
                    prop_assert!((found.corner_after_m[anchor] - edge.corner_after_m[anchor]).abs() < ON_GRID);
                }
                let [here, there] = [around.shear_area_m2(j, &set, half, half), member.shear_area_m2(i, &set, half, half)];
                prop_assert!((here - there).abs() < ON_GRID);
                let [here, there] =
                    [around.side_area_m2(j, &set, 0.1, half), member.side_area_m2(i, &set, 0.1, half)];
                prop_assert!((here - there).abs() < ON_GRID);
            }
        }
    }
}
