//! Fasteners that act together: linked by spacings up to the characteristic one, with their common area and edges.

use super::super::around::Around;
use super::super::group::Group;
use super::super::links::{linked, nearest_edge, shortest_links, sides_nearer_than};

/// Fasteners whose bodies of concrete meet, and what the concrete leaves them. Action comes later.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cluster {
    /// The fasteners.
    pub members: Vec<usize>,
    /// Embedment, reduced in a narrow member.
    pub embedment_m: f64,
    /// s_cr, reduced in a narrow member.
    pub spacing_cr_m: f64,
    /// A_c: the bodies cut by edges.
    pub area_m2: f64,
    /// A⁰_c = s_cr².
    pub area_one_m2: f64,
    /// Least edge distance c.
    pub edge_m: f64,
    /// Mean spacing of linked fasteners.
    pub mean_spacing_m: f64,
    /// Foreign fasteners that took their part off the area.
    pub neighbors: usize,
}

/// Characteristic sizes before any reduction.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sizes {
    /// h_ef, m.
    pub embedment_m: f64,
    /// s_cr, m.
    pub spacing_cr_m: f64,
    /// c_cr, m.
    pub edge_cr_m: f64,
    /// Whether a narrow member shrinks them.
    pub narrow: Narrow,
}

/// What three or more near edges do to the sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Narrow {
    /// They shrink: the cone.
    Shrinks,
    /// They stay, which is on the safe side: bond and splitting.
    Stays,
}

impl Sizes {
    /// The concrete cone: s_cr,N = 3·h_ef, c_cr,N = 1.5·h_ef (EN 1992-4 7.2.1.4).
    pub(super) fn cone(embedment_m: f64) -> Self {
        Self { embedment_m, spacing_cr_m: 3.0 * embedment_m, edge_cr_m: 1.5 * embedment_m, narrow: Narrow::Shrinks }
    }
}

impl Cluster {
    /// ψ_s = 0.7 + 0.3·c/c_cr ≤ 1, (7.4), (7.20).
    pub(super) fn psi_s(&self) -> f64 {
        (0.7 + 0.3 * self.edge_m / (0.5 * self.spacing_cr_m)).min(1.0)
    }

    /// A_c/A⁰_c.
    pub(super) fn area_ratio(&self) -> f64 {
        self.area_m2 / self.area_one_m2
    }

    /// ψ_ec = 1/(1 + 2·e_x/s_cr)·1/(1 + 2·e_y/s_cr), (7.6), (7.21).
    pub(super) fn psi_ec(&self, eccentricity_m: [f64; 2]) -> f64 {
        eccentricity_m.iter().map(|e| 1.0 / (1.0 + 2.0 * e / self.spacing_cr_m)).product()
    }
}

/// The clusters of a set, in the order of their first fasteners.
///
/// Where edges on three or more sides are nearer than c_cr the sizes shrink to h'_ef/h_ef, h'_ef = max(c_max/c_cr, s_max/s_cr)·h_ef
/// (7.2.1.4(8); clause number from memory): c_max the largest of the edge distances below c_cr, s_max the longest link
/// between neighbors, not above s_cr.
pub(super) fn clusters(group: &Group, around: &dyn Around, set: &[usize], sizes: Sizes) -> Vec<Cluster> {
    linked(group, set, |spacing| spacing <= sizes.spacing_cr_m)
        .into_iter()
        .map(|members| cluster(group, around, members, sizes))
        .collect()
}

fn cluster(group: &Group, around: &dyn Around, members: Vec<usize>, sizes: Sizes) -> Cluster {
    let tree = shortest_links(group, &members);
    let scale = narrow_scale(around, &members, sizes, tree.iter().copied().fold(0.0, f64::max));
    let spacing_cr_m = sizes.spacing_cr_m * scale;
    Cluster {
        area_m2: around.projected_area_m2(&members, 0.5 * spacing_cr_m),
        area_one_m2: spacing_cr_m * spacing_cr_m,
        embedment_m: sizes.embedment_m * scale,
        spacing_cr_m,
        edge_m: nearest_edge(around, &members),
        mean_spacing_m: if tree.is_empty() { 0.0 } else { tree.iter().sum::<f64>() / tree.len() as f64 },
        neighbors: around.sharing_neighbors(),
        members,
    }
}

fn narrow_scale(around: &dyn Around, members: &[usize], sizes: Sizes, longest_link_m: f64) -> f64 {
    if sizes.narrow == Narrow::Stays {
        return 1.0;
    }
    let sides = sides_nearer_than(around.edges(), members, sizes.edge_cr_m);
    if sides.len() < 3 {
        return 1.0;
    }
    let c_max = sides.into_iter().fold(0.0, f64::max);
    (c_max / sizes.edge_cr_m).max(longest_link_m.min(sizes.spacing_cr_m) / sizes.spacing_cr_m).min(1.0)
}
