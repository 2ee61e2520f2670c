//! Fasteners near enough to each other to break out together, with their area (17.5.1.3).

use super::super::around::Around;
use super::super::group::Group;
use super::super::links::{linked, nearest_edge, shortest_links, sides_nearer_than};

/// Fasteners that act as one group.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cluster {
    /// The fasteners, ascending.
    pub members: Vec<usize>,
    /// h_ef, in a narrow member h'_ef, m.
    pub embedment_m: f64,
    /// A_Nc or A_Na: the squares cut by edges, at most n times the area of one, m².
    pub area_m2: f64,
    /// A_Nco or A_Nao, m².
    pub area_one_m2: f64,
    /// Half the side of one square: 1.5·h_ef or c_Na, m.
    pub half_side_m: f64,
    /// Least edge distance c_a,min, m.
    pub edge_m: f64,
}

impl Cluster {
    /// A/A_o.
    pub(super) fn area_ratio(&self) -> f64 {
        self.area_m2 / self.area_one_m2
    }

    /// ψ_ec = 1/(1 + e'/(half side)) for both axes, (17.6.2.3.1), (17.6.5.3.1).
    pub(super) fn psi_ec(&self, eccentricity_m: [f64; 2]) -> f64 {
        eccentricity_m.iter().map(|e| 1.0 / (1.0 + e / self.half_side_m)).product()
    }

    /// ψ_ed = 0.7 + 0.3·c_a,min/(half side) ≤ 1, (17.6.2.4.1b), (17.6.5.4.1b).
    pub(super) fn psi_ed(&self) -> f64 {
        (0.7 + 0.3 * self.edge_m / self.half_side_m).min(1.0)
    }

    /// ψ_cp = max(c_a,min; half side)/c_ac ≤ 1, (17.6.2.6.1b), (17.6.5.5.1b).
    pub(super) fn psi_cp(&self, critical_edge_m: f64) -> f64 {
        (self.edge_m.max(self.half_side_m) / critical_edge_m).min(1.0)
    }
}

/// The groups of a set for concrete breakout: linked below 3·h_ef, squares of half side 1.5·h_ef.
///
/// With three or more edges nearer than 1.5·h_ef, h'_ef = max(c_a,max/1.5; s/3) ≤ h_ef in place of h_ef (17.6.2.1.2), c_a,max the
/// largest edge distance below 1.5·h_ef, s the longest spacing between neighbors. Edges that look nearly the same way, as the
/// chords of a round hole do, are one edge.
pub(super) fn breakout_clusters(group: &Group, around: &dyn Around, set: &[usize]) -> Vec<Cluster> {
    let embedment = group.fastener.embedment_m;
    let build = |members: Vec<usize>| {
        let sides = sides_nearer_than(around.edges(), &members, 1.5 * embedment);
        let embedment_m = if sides.len() < 3 {
            embedment
        } else {
            let longest = shortest_links(group, &members).into_iter().fold(0.0, f64::max);
            (sides.into_iter().fold(0.0, f64::max) / 1.5).max(longest / 3.0).min(embedment)
        };
        cluster(around, members, embedment_m, 1.5 * embedment_m)
    };
    linked(group, set, |spacing| spacing < 3.0 * embedment).into_iter().map(build).collect()
}

/// The groups of a set for bond: linked below 2·c_Na, squares of half side c_Na.
pub(super) fn bond_clusters(group: &Group, around: &dyn Around, set: &[usize], reach_m: f64) -> Vec<Cluster> {
    let embedment = group.fastener.embedment_m;
    linked(group, set, |spacing| spacing < 2.0 * reach_m)
        .into_iter()
        .map(|m| cluster(around, m, embedment, reach_m))
        .collect()
}

fn cluster(around: &dyn Around, members: Vec<usize>, embedment_m: f64, half_side_m: f64) -> Cluster {
    let area_one_m2 = 4.0 * half_side_m * half_side_m;
    Cluster {
        embedment_m,
        area_m2: around.projected_area_m2(&members, half_side_m).min(members.len() as f64 * area_one_m2),
        area_one_m2,
        half_side_m,
        edge_m: nearest_edge(around, &members),
        members,
    }
}
