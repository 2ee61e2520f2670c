//! Concrete edge in front of fasteners in shear, EN 1992-4 7.2.2.5: one look at every edge, whatever its distance.

use super::super::actions::GroupActions;
use super::super::around::{Around, EdgeSeen};
use super::super::concrete::{Cracking, EdgeBars};
use super::super::edge_shear::{FrontRow, ROW_TOLERANCE_M, TowardEdge};
use super::super::group::Group;
use super::super::line::{Line, Of, Sink, meters, newtons, number, square_meters};
use super::super::record::{Mode, Symbol};
use super::material::ConcreteTerms;

/// What does not depend on actions for one edge.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct EdgeRow {
    /// Which edge.
    pub edge: usize,
    outward: [f64; 2],
    along: [f64; 2],
    /// The front row.
    pub front: Vec<usize>,
    /// Places of the front row along the edge, and their mean, m.
    places_m: Vec<f64>,
    mean_m: f64,
    /// c_1, in a narrow thin member c'_1, m.
    c1_m: f64,
    /// Least c_2, m.
    c2_m: f64,
    thickness_m: f64,
    one: OneFastener,
    area_m2: f64,
    area_one_m2: f64,
    psi_s: f64,
    psi_h: f64,
    psi_re: f64,
    /// Resistance without ψ_ec and ψ_α, N.
    straight_n: f64,
}

/// V⁰_Rk,c of one fastener far from corners.
#[derive(Debug, Clone, Copy, PartialEq)]
struct OneFastener {
    /// l_f, m.
    length_m: f64,
    alpha: f64,
    beta: f64,
    k9: f64,
    /// V⁰_Rk,c, N.
    resistance_n: f64,
}

impl EdgeRow {
    pub(super) fn new(
        group: &Group,
        (around, terms): (&dyn Around, &ConcreteTerms),
        (index, edge): (usize, &EdgeSeen),
        bars: EdgeBars,
    ) -> Self {
        let all: Vec<usize> = (0..group.anchors_m.len()).collect();
        let nearest = edge.nearest_m(&all);
        let front: Vec<usize> = all.into_iter().filter(|&i| edge.distance_m[i] <= nearest + ROW_TOLERANCE_M).collect();
        let places_m = places_along(group, edge, &front);
        let least = |corner: &[f64]| front.iter().map(|&i| corner[i]).fold(f64::INFINITY, f64::min);
        let (before, after) = (least(&edge.corner_before_m), least(&edge.corner_after_m));
        let thickness_m = edge.thickness_m;
        let c1_m = narrow_c1(nearest, before.max(after), thickness_m, longest_gap(&places_m));
        let c2_m = before.min(after);
        let one = OneFastener::new(group, terms, c1_m);
        let area_m2 = around.shear_area_m2(index, &front, 1.5 * c1_m, 1.5 * c1_m);
        let area_one_m2 = 4.5 * c1_m * c1_m;
        let psi_s = (0.7 + 0.3 * c2_m / (1.5 * c1_m)).min(1.0);
        let psi_h = (1.5 * c1_m / thickness_m).sqrt().max(1.0);
        let psi_re = psi_re(terms, bars);
        Self {
            edge: index,
            outward: edge.outward,
            along: edge.along(),
            mean_m: places_m.iter().sum::<f64>() / places_m.len() as f64,
            straight_n: one.resistance_n * area_m2 / area_one_m2 * psi_s * psi_h * psi_re,
            front,
            places_m,
            c1_m,
            c2_m,
            thickness_m,
            one,
            area_m2,
            area_one_m2,
            psi_s,
            psi_h,
            psi_re,
        }
    }

    /// Shear as this edge feels it.
    pub(super) fn toward(&self, actions: &GroupActions) -> TowardEdge {
        let Self { outward, along, mean_m, .. } = *self;
        FrontRow { outward, along, members: &self.front, places_m: &self.places_m, mean_m }.feels(actions)
    }

    /// V_Rk,c = V⁰_Rk,c·A_c,V/A⁰_c,V·ψ_s,V·ψ_h,V·ψ_ec,V·ψ_α,V·ψ_re,V, (7.40).
    ///
    /// ψ_ec = 1/(1 + 2·e_V/(3·c_1)), (7.47); ψ_α = √(1/(cos²α + (0.5·sin α)²)), (7.48).
    pub(super) fn resistance(&self, toward: &TowardEdge) -> (f64, f64, f64) {
        let shear = toward.square_n.hypot(toward.along_n);
        let (cos, sin) = if shear > 0.0 { (toward.square_n / shear, toward.along_n / shear) } else { (1.0, 0.0) };
        let psi_ec = 1.0 / (1.0 + 2.0 * toward.eccentricity_m / (3.0 * self.c1_m));
        let psi_alpha = 1.0 / cos.hypot(0.5 * sin);
        (psi_ec, psi_alpha, self.straight_n * psi_ec * psi_alpha)
    }

    pub(super) fn tell(&self, toward: &TowardEdge, gamma: f64, sink: &mut impl Sink) {
        let (psi_ec, psi_alpha, resistance) = self.resistance(toward);
        let action = toward.square_n.hypot(toward.along_n);
        let symbols: [Symbol; 17] = [
            number("k9", self.one.k9),
            meters("lf", self.one.length_m),
            number("alpha", self.one.alpha),
            number("beta", self.one.beta),
            meters("c1", self.c1_m),
            // What lies farther along cuts nothing off.
            meters("c2, up to 1.5*c1", self.c2_m.min(1.5 * self.c1_m)),
            meters("h", self.thickness_m),
            newtons("V0Rk,c", self.one.resistance_n),
            square_meters("Ac,V", self.area_m2),
            square_meters("A0c,V", self.area_one_m2),
            number("psi_s,V", self.psi_s),
            number("psi_h,V", self.psi_h),
            number("psi_ec,V", psi_ec),
            number("psi_alpha,V", psi_alpha),
            number("psi_re,V", self.psi_re),
            newtons("VRk,c", resistance),
            number("gamma_Mc", gamma),
        ];
        sink.take(&Line::against(
            Mode::ConcreteEdge,
            Of::Edge(self.edge),
            (
                "EN 1992-4 7.2.2.5 (7.40)",
                "VRd,c = k9*d^alpha*lf^beta*sqrt(fck)*c1^1.5*(Ac,V/A0c,V)*psi_s,V*psi_h,V*psi_ec,V*psi_alpha,V*psi_re,V/gamma_Mc",
            ),
            &symbols,
            (action, resistance / gamma),
        ));
    }
}

impl OneFastener {
    /// V⁰_Rk,c = k_9·d_nom^α·l_f^β·√f_ck·c_1^1.5, (7.41); α = 0.1·√(l_f/c_1), (7.42); β = 0.1·(d_nom/c_1)^0.2, (7.43); k_9 =
    /// 1.7 cracked, 2.4 uncracked. N with mm and N/mm²; SI in and out.
    fn new(group: &Group, terms: &ConcreteTerms, c1_m: f64) -> Self {
        let (length_m, d) = (shear_length(group), group.fastener.outside_diameter_m);
        let (alpha, beta) = (0.1 * (length_m / c1_m).sqrt(), 0.1 * (d / c1_m).powf(0.2));
        let k9 = terms.by_cracking(1.7, 2.4);
        let lengths = (d * 1e3).powf(alpha) * (length_m * 1e3).powf(beta) * (c1_m * 1e3).powf(1.5);
        Self { length_m, alpha, beta, k9, resistance_n: k9 * terms.root_fck() * lengths }
    }
}

/// ψ_re,V = 1.4 in cracked concrete with a bar along the edge and close stirrups or mesh, else 1.
const fn psi_re(terms: &ConcreteTerms, bars: EdgeBars) -> f64 {
    match (terms.cracking, bars) {
        (Cracking::Cracked, EdgeBars::WithStirrups) => 1.4,
        (Cracking::Cracked, EdgeBars::None | EdgeBars::Straight) | (Cracking::Uncracked, _) => 1.0,
    }
}

/// c'_1 = max(c_2,max/1.5; h/1.5; s_2,max/3) where c_2,max < 1.5·c_1 and h < 1.5·c_1, else c_1 (7.2.2.5(8)).
fn narrow_c1(c1_m: f64, c2_max_m: f64, thickness_m: f64, spacing_max_m: f64) -> f64 {
    if c2_max_m < 1.5 * c1_m && thickness_m < 1.5 * c1_m {
        (c2_max_m / 1.5).max(thickness_m / 1.5).max(spacing_max_m / 3.0).min(c1_m)
    } else {
        c1_m
    }
}

/// l_f = h_ef, at most 12·d_nom for d_nom ≤ 24 mm and max(8·d_nom; 300 mm) beyond.
fn shear_length(group: &Group) -> f64 {
    let d = group.fastener.outside_diameter_m;
    let most = if d <= 0.024 { 12.0 * d } else { (8.0 * d).max(0.3) };
    group.fastener.embedment_m.min(most)
}

/// Places of fasteners along an edge, m.
pub(super) fn places_along(group: &Group, edge: &EdgeSeen, set: &[usize]) -> Vec<f64> {
    let along = edge.along();
    set.iter().map(|&i| group.anchors_m[i][0] * along[0] + group.anchors_m[i][1] * along[1]).collect()
}

/// Longest gap between neighbors on a line, m.
pub(super) fn longest_gap(places: &[f64]) -> f64 {
    let mut sorted = places.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max)
}
