//! What the concrete looks like round a group: areas cut by real edges, and the distances to them.

/// The concrete round one group of fasteners, in the plate axes of that group; fasteners are named by their index.
///
/// Lengths are in m, areas in m². An infinite distance means that there is no end within reach. Foreign fasteners nearer
/// than the squares reach take their part off the areas.
pub trait Around {
    /// Thickness h of the concrete under the group, m; the least where it varies.
    fn thickness_m(&self) -> f64;

    /// Area of the union of squares of this half side, their sides along the plate axes, centered on the fasteners of
    /// the set, as far as there is concrete.
    fn projected_area_m2(&self, set: &[usize], half_side_m: f64) -> f64;

    /// The edges that any fastener can see, near ones and far ones, holes included.
    fn edges(&self) -> &[EdgeSeen];

    /// Area on the side face of an edge of the union of squares of this half side, centered on the heads of the set
    /// `depth_m` below the surface, cut by corners, surface and underside. For blow-out.
    fn side_area_m2(&self, edge: usize, set: &[usize], depth_m: f64, half_side_m: f64) -> f64;

    /// Area on the side face of an edge of the bodies that shear breaks out in front of the fasteners `front`:
    /// `half_width_m` along the edge both ways from each, cut by corners, times the lesser of `depth_m` and thickness.
    fn shear_area_m2(&self, edge: usize, front: &[usize], half_width_m: f64, depth_m: f64) -> f64;

    /// How many foreign fasteners took their part off the areas, for the record.
    fn sharing_neighbors(&self) -> usize {
        0
    }
}

/// An edge as the fasteners see it.
#[derive(Debug, Clone, PartialEq)]
pub struct EdgeSeen {
    /// Unit vector out of the concrete, square to the edge, in plate axes.
    pub outward: [f64; 2],
    /// Distance c_1 of each fastener, m. Negative or zero: it stands outside the concrete.
    pub distance_m: Vec<f64>,
    /// Distance c_2 of each fastener along the edge to the corner on the side of −t, m, where t = outward turned a
    /// quarter counter-clockwise.
    pub corner_before_m: Vec<f64>,
    /// Distance c_2 of each fastener along the edge to the corner on the side of +t, m.
    pub corner_after_m: Vec<f64>,
    /// Thickness of the concrete there, m.
    pub thickness_m: f64,
}

impl EdgeSeen {
    /// Unit vector along the edge: `outward` turned a quarter counter-clockwise.
    pub fn along(&self) -> [f64; 2] {
        [-self.outward[1], self.outward[0]]
    }

    /// Least distance of the fasteners of a set, m; infinite for an empty set.
    pub fn nearest_m(&self, set: &[usize]) -> f64 {
        set.iter().filter_map(|&i| self.distance_m.get(i)).copied().fold(f64::INFINITY, f64::min)
    }
}
