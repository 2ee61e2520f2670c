//! Blow-out of the side face at the heads of a row near an edge, EN 1992-4 7.2.1.8.

use super::super::around::{Around, EdgeSeen};
use super::super::edge_shear::ROW_TOLERANCE_M;
use super::super::fastener::Fastener;
use super::super::group::Group;
use super::super::line::{Line, Of, Sink, meters, newtons, number, square_meters};
use super::super::record::{Mode, Symbol};
use super::edge::{longest_gap, places_along};
use super::material::ConcreteTerms;

/// The row of fasteners in tension nearest to one edge, near enough for a blow-out.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BlowOutRow {
    /// Which edge.
    pub edge: usize,
    /// The row.
    pub members: Vec<usize>,
    /// c_1, m.
    c1_m: f64,
    /// Least c_2 to a corner, m.
    c2_m: f64,
    /// Longest spacing in the row, m.
    spacing_m: f64,
    /// A_c,Nb, m².
    area_m2: f64,
}

/// The rows of a set that may blow out: c_1 < 0.5·h_ef.
pub(super) fn rows(group: &Group, around: &dyn Around, set: &[usize]) -> Vec<BlowOutRow> {
    let embedment = group.fastener.embedment_m;
    around
        .edges()
        .iter()
        .enumerate()
        .filter(|(_, edge)| edge.nearest_m(set) < 0.5 * embedment)
        .map(|(index, edge)| row(group, around, (index, edge), set))
        .collect()
}

fn row(group: &Group, around: &dyn Around, (index, edge): (usize, &EdgeSeen), set: &[usize]) -> BlowOutRow {
    let c1_m = edge.nearest_m(set);
    let members: Vec<usize> = set.iter().copied().filter(|&i| edge.distance_m[i] <= c1_m + ROW_TOLERANCE_M).collect();
    let c2 = |i: &usize| edge.corner_before_m[*i].min(edge.corner_after_m[*i]);
    BlowOutRow {
        edge: index,
        c1_m,
        c2_m: members.iter().map(c2).fold(f64::INFINITY, f64::min),
        spacing_m: longest_gap(&places_along(group, edge, &members)),
        area_m2: around.side_area_m2(index, &members, group.fastener.embedment_m, 2.0 * c1_m),
        members,
    }
}

impl BlowOutRow {
    /// N_Rk,cb = N⁰_Rk,cb·A_c,Nb/A⁰_c,Nb·ψ_s,Nb·ψ_g,Nb·ψ_ec,Nb, 7.2.1.8, (7.27) to (7.30).
    ///
    /// N⁰_Rk,cb = k_5·c_1·√A_h·√f_ck, k_5 = 8.7 cracked and 12.2 uncracked; A⁰ = (4·c_1)²; ψ_s = 0.7 + 0.3·c_2/(2·c_1) ≤ 1;
    /// ψ_g = √n + (1 − √n)·s_2/(4·c_1) ≥ 1 with the longest spacing of the row; ψ_ec = 1/(1 + 2·e/(4·c_1)).
    pub(super) fn tell(
        &self,
        (terms, fastener): (&ConcreteTerms, &Fastener),
        eccentricity_m: f64,
        (action, gamma): (f64, f64),
        sink: &mut impl Sink,
    ) {
        let head_m2 = fastener.head_area_m2().unwrap_or(0.0);
        let k5 = terms.by_cracking(8.7, 12.2);
        let one = k5 * (self.c1_m * 1e3) * (head_m2 * 1e6).sqrt() * terms.root_fck();
        let area_one = (4.0 * self.c1_m).powi(2);
        let psi_s = (0.7 + 0.3 * self.c2_m / (2.0 * self.c1_m)).min(1.0);
        let root_n = (self.members.len() as f64).sqrt();
        let psi_g = (root_n + (1.0 - root_n) * (self.spacing_m / (4.0 * self.c1_m)).min(1.0)).max(1.0);
        let psi_ec = 1.0 / (1.0 + 2.0 * eccentricity_m / (4.0 * self.c1_m));
        let resistance = one * self.area_m2 / area_one * psi_s * psi_g * psi_ec;
        let symbols: [Symbol; 11] = [
            number("k5", k5),
            meters("c1", self.c1_m),
            square_meters("Ah", head_m2),
            newtons("N0Rk,cb", one),
            square_meters("Ac,Nb", self.area_m2),
            square_meters("A0c,Nb", area_one),
            number("psi_s,Nb", psi_s),
            number("psi_g,Nb", psi_g),
            number("psi_ec,Nb", psi_ec),
            newtons("NRk,cb", resistance),
            number("gamma_Mc", gamma),
        ];
        sink.take(&Line::against(
            Mode::BlowOut,
            Of::Edge(self.edge),
            (
                "EN 1992-4 7.2.1.8 (7.27) to (7.30)",
                "NRd,cb = k5*c1*sqrt(Ah)*sqrt(fck)*(Ac,Nb/A0c,Nb)*psi_s,Nb*psi_g,Nb*psi_ec,Nb/gamma_Mc",
            ),
            &symbols,
            (action, resistance / gamma),
        ));
    }
}
