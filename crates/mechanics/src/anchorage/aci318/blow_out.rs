//! Blow-out of the side face at heads near an edge, ACI 318-19 17.6.4.

use super::super::around::{Around, EdgeSeen};
use super::super::edge_shear::ROW_TOLERANCE_M;
use super::super::group::Group;
use super::super::line::{meters, newtons, number, pascals, square_meters};
use super::super::record::Symbol;
use super::material::Material;

/// Clause and formula.
pub(super) const RULE: (&str, &str) =
    ("ACI 318-19 17.6.4 (17.6.4.1), (17.6.4.2)", "phi*Nsbg = phi*(1 + s/(6*ca1))*13*ca1*sqrt(Abrg)*lambda_a*sqrt(f'c)");

/// Heads in a row along one edge that blow out together.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BlowOutRow {
    /// Which edge.
    pub edge: usize,
    /// The fasteners.
    pub members: Vec<usize>,
    /// c_a1, m.
    c1_m: f64,
    /// Least c_a2, m.
    c2_m: f64,
    /// Distance of the outermost heads along the edge, m.
    outer_m: f64,
}

/// The rows of a set that may blow out: c_a1 < 0.4·h_ef, heads along an edge linked below 6·c_a1.
pub(super) fn rows(group: &Group, around: &dyn Around, set: &[usize]) -> Vec<BlowOutRow> {
    let mut found = Vec::new();
    for (index, edge) in around.edges().iter().enumerate() {
        let mut left: Vec<usize> = set.iter().copied().filter(|&i| is_near(group, edge, i)).collect();
        while !left.is_empty() {
            let c1 = edge.nearest_m(&left);
            let (row, rest): (Vec<_>, Vec<_>) =
                left.into_iter().partition(|&i| edge.distance_m[i] <= c1 + ROW_TOLERANCE_M);
            left = rest;
            found.extend(parts_of_row(group, (index, edge), c1, row));
        }
    }
    found
}

/// h_ef > 2.5·c_a1 (17.6.4.1).
fn is_near(group: &Group, edge: &EdgeSeen, anchor: usize) -> bool {
    group.fastener.embedment_m > 2.5 * edge.distance_m[anchor]
}

fn parts_of_row(group: &Group, (index, edge): (usize, &EdgeSeen), c1_m: f64, mut row: Vec<usize>) -> Vec<BlowOutRow> {
    let along = edge.along();
    let place = |i: usize| group.anchors_m[i][0] * along[0] + group.anchors_m[i][1] * along[1];
    row.sort_by(|&a, &b| place(a).total_cmp(&place(b)));
    let parts = row.chunk_by(|&a, &b| place(b) - place(a) < 6.0 * c1_m);
    parts
        .map(|part| BlowOutRow {
            edge: index,
            c1_m,
            c2_m: part
                .iter()
                .map(|&i| edge.corner_before_m[i].min(edge.corner_after_m[i]))
                .fold(f64::INFINITY, f64::min),
            outer_m: place(part[part.len() - 1]) - place(part[0]),
            members: part.to_vec(),
        })
        .collect()
}

impl BlowOutRow {
    /// N_sb = 13·c_a1·√A_brg·λ_a·√f'_c, (17.6.4.1), times (1 + c_a2/c_a1)/4, 1 ≤ c_a2/c_a1 ≤ 3, for one head with c_a2 < 3·c_a1
    /// (17.6.4.1.1); several: N_sbg = (1 + s/(6·c_a1))·N_sb, s between the outermost, without a factor for the corner, (17.6.4.2).
    /// N with mm and MPa. Not taken above the number of heads times N_sb, which the linear rule exceeds in long rows.
    pub(super) fn strength_n(&self, material: &Material, head_m2: f64) -> f64 {
        self.corner() * self.group() * self.basic_n(material, head_m2)
    }

    fn basic_n(&self, material: &Material, head_m2: f64) -> f64 {
        13.0 * self.c1_m * 1e3 * (head_m2 * 1e6).sqrt() * material.lambda_a * material.root()
    }

    fn corner(&self) -> f64 {
        if self.members.len() > 1 { 1.0 } else { 0.25 * (1.0 + (self.c2_m / self.c1_m).clamp(1.0, 3.0)) }
    }

    fn group(&self) -> f64 {
        (1.0 + self.outer_m / (6.0 * self.c1_m)).min(self.members.len() as f64)
    }

    pub(super) fn symbols(&self, material: &Material, head_m2: f64) -> [Symbol; 10] {
        [
            meters("ca1", self.c1_m),
            meters("ca2, up to 3*ca1", self.c2_m.min(3.0 * self.c1_m)),
            meters("s", self.outer_m),
            square_meters("Abrg", head_m2),
            number("lambda_a", material.lambda_a),
            pascals("f'c", material.strength_pa),
            newtons("Nsb", self.basic_n(material, head_m2)),
            number("factor of the corner", self.corner()),
            number("factor of the group", self.group()),
            newtons("Nsbg", self.strength_n(material, head_m2)),
        ]
    }
}
