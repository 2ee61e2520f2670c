//! A rectangular piece of concrete with up to four edges: the simplest surroundings, for examples and hand cases.

use super::around::{Around, EdgeSeen};
use super::fault::{AnchorageFault, positive};
use super::square_union::union_area_m2;

/// Concrete between four straight sides, any of which may be infinitely far.
#[derive(Debug, Clone, PartialEq)]
pub struct RectangularMember {
    anchors_m: Vec<[f64; 2]>,
    lower_m: [f64; 2],
    upper_m: [f64; 2],
    thickness_m: f64,
    edges: Vec<EdgeSeen>,
}

impl RectangularMember {
    /// Concrete from `lower_m` to `upper_m` in plate axes, infinite where there is no edge, round fasteners at
    /// `anchors_m`. A fastener outside is a fault. Edges come in the order +x, −x, +y, −y, infinite ones left out.
    pub fn new(
        anchors_m: &[[f64; 2]],
        lower_m: [f64; 2],
        upper_m: [f64; 2],
        thickness_m: f64,
    ) -> Result<Self, AnchorageFault> {
        positive("member thickness_m", thickness_m)?;
        for anchor in anchors_m {
            for axis in 0..2 {
                for value in [anchor[axis] - lower_m[axis], upper_m[axis] - anchor[axis]] {
                    if value.is_nan() || value <= 0.0 {
                        return Err(AnchorageFault::NotPositive { field: "edge distance_m", value });
                    }
                }
            }
        }
        let mut member = Self { anchors_m: anchors_m.to_vec(), lower_m, upper_m, thickness_m, edges: Vec::new() };
        for (axis, sign) in [(0, 1.0), (0, -1.0), (1, 1.0), (1, -1.0)] {
            member.edges.extend(member.edge(axis, sign));
        }
        Ok(member)
    }

    /// Concrete without edges.
    pub fn unbounded(anchors_m: &[[f64; 2]], thickness_m: f64) -> Result<Self, AnchorageFault> {
        Self::new(anchors_m, [f64::NEG_INFINITY; 2], [f64::INFINITY; 2], thickness_m)
    }

    fn edge(&self, axis: usize, sign: f64) -> Option<EdgeSeen> {
        let at = if sign > 0.0 { self.upper_m[axis] } else { self.lower_m[axis] };
        if at.is_infinite() {
            return None;
        }
        let other = 1 - axis;
        let mut outward = [0.0; 2];
        outward[axis] = sign;
        // The direction along the edge is (−outward y, outward x): +y at the +x edge, −x at the +y edge.
        let along = if axis == 0 { sign } else { -sign };
        let to_upper: Vec<f64> = self.anchors_m.iter().map(|a| self.upper_m[other] - a[other]).collect();
        let to_lower: Vec<f64> = self.anchors_m.iter().map(|a| a[other] - self.lower_m[other]).collect();
        let (before, after) = if along > 0.0 { (to_lower, to_upper) } else { (to_upper, to_lower) };
        Some(EdgeSeen {
            outward,
            distance_m: self.anchors_m.iter().map(|a| sign * (at - a[axis])).collect(),
            corner_before_m: before,
            corner_after_m: after,
            thickness_m: self.thickness_m,
        })
    }

    /// Places of a set along an edge, on the axis that the edge follows, and that axis's limits.
    fn along(&self, edge: usize, set: &[usize]) -> (Vec<f64>, f64, f64) {
        let axis = usize::from(self.edges.get(edge).is_some_and(|e| e.outward[0] != 0.0));
        let places = set.iter().filter_map(|&i| self.anchors_m.get(i)).map(|a| a[axis]).collect();
        (places, self.lower_m[axis], self.upper_m[axis])
    }
}

impl Around for RectangularMember {
    fn thickness_m(&self) -> f64 {
        self.thickness_m
    }

    fn projected_area_m2(&self, set: &[usize], half_side_m: f64) -> f64 {
        let centers: Vec<_> = set.iter().filter_map(|&i| self.anchors_m.get(i)).copied().collect();
        union_area_m2(&centers, half_side_m, self.lower_m, self.upper_m)
    }

    fn edges(&self) -> &[EdgeSeen] {
        &self.edges
    }

    fn side_area_m2(&self, edge: usize, set: &[usize], depth_m: f64, half_side_m: f64) -> f64 {
        let (places, from, to) = self.along(edge, set);
        let heads: Vec<_> = places.into_iter().map(|t| [t, depth_m]).collect();
        union_area_m2(&heads, half_side_m, [from, 0.0], [to, self.thickness_m])
    }

    fn shear_area_m2(&self, edge: usize, front: &[usize], half_width_m: f64, depth_m: f64) -> f64 {
        let (places, from, to) = self.along(edge, front);
        let depth = depth_m.min(self.thickness_m);
        // The upper halves of squares about points on a line have the united length times the half side.
        let bodies: Vec<_> = places.into_iter().map(|t| [t, 0.0]).collect();
        union_area_m2(&bodies, half_width_m, [from, 0.0], [to, f64::INFINITY]) / half_width_m * depth
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_edge_has_its_distances_and_corners() {
        let member =
            RectangularMember::new(&[[0.0, 0.0], [0.1, 0.0]], [-0.3, -0.4], [0.5, f64::INFINITY], 0.2).unwrap();
        let [right, left, bottom] = member.edges() else { panic!("three edges") };
        assert_eq!((right.outward, right.distance_m.as_slice()), ([1.0, 0.0], [0.5, 0.4].as_slice()));
        // Along the +x edge t = +y: before is toward −y, after toward +y.
        assert_eq!((right.corner_before_m[0], right.corner_after_m[0]), (0.4, f64::INFINITY));
        // Along the −x edge t = −y.
        assert_eq!((left.distance_m[1], left.corner_before_m[0], left.corner_after_m[0]), (0.4, f64::INFINITY, 0.4));
        // Along the −y edge t = +x.
        assert_eq!((bottom.distance_m[0], bottom.corner_before_m[1], bottom.corner_after_m[1]), (0.4, 0.4, 0.4));
    }

    #[test]
    fn the_body_toward_an_edge_is_cut_by_corner_and_thickness() {
        // By hand: c1 0.1, two fasteners 0.15 apart, corner 0.05 off, h 0.12: (0.05 + 0.15 + 0.15)·0.12.
        let member = RectangularMember::new(&[[0.0, 0.0], [0.0, 0.15]], [-9.0, -0.05], [0.1, 9.0], 0.12).unwrap();
        assert!((member.shear_area_m2(0, &[0, 1], 0.15, 0.15) - 0.35 * 0.12).abs() < 1e-12);
    }

    #[test]
    fn a_side_face_is_cut_by_the_underside() {
        // By hand: half side 0.12 about depth 0.2 in h 0.25: height 0.17, width 0.24.
        let member = RectangularMember::new(&[[0.0, 0.0]], [-9.0, -9.0], [0.06, 9.0], 0.25).unwrap();
        assert!((member.side_area_m2(0, &[0], 0.2, 0.12) - 0.17 * 0.24).abs() < 1e-12);
    }

    #[test]
    fn a_fastener_outside_is_named() {
        let fault = RectangularMember::new(&[[0.0, 0.0]], [-1.0, -1.0], [-0.02, 1.0], 0.2).unwrap_err();
        assert_eq!(fault, AnchorageFault::NotPositive { field: "edge distance_m", value: -0.02 });
        assert!(RectangularMember::unbounded(&[[0.0, 0.0]], f64::NAN).is_err());
    }
}
