//! Concrete breakout in shear toward and along every edge, ACI 318-19 17.7.2.

use super::super::actions::GroupActions;
use super::super::around::{Around, EdgeSeen};
use super::super::concrete::{Concrete, Cracking, EdgeBars};
use super::super::edge_shear::{FrontRow, ROW_TOLERANCE_M, TowardEdge};
use super::super::group::Group;
use super::super::line::{meters, newtons, number, square_meters};
use super::super::record::Symbol;
use super::factors::Aci318Factors;
use super::material::Material;

/// Clause and formula.
pub(super) const RULE: (&str, &str) = (
    "ACI 318-19 17.7.2 (17.7.2.1)",
    "sqrt((Vua,toward/(phi*Vcbg))^2 + (Vua,along/(phi*Vcbg,along))^2), Vcbg = (AVc/AVco)*psi_ec,V*psi_ed,V*psi_c,V*psi_h,V*Vb",
);

/// What does not depend on actions for one edge.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct EdgeRow {
    /// Which edge.
    pub edge: usize,
    outward: [f64; 2],
    along: [f64; 2],
    front: Vec<usize>,
    places_m: Vec<f64>,
    mean_m: f64,
    c1_m: f64,
    c2_m: f64,
    thickness_m: f64,
    length_m: f64,
    one_n: f64,
    area_m2: f64,
    area_one_m2: f64,
    psi_ed: f64,
    psi_c: f64,
    psi_h: f64,
    phi: f64,
}

/// Strengths against both, N, with ψ_ec.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Strengths {
    psi_ec: f64,
    square_n: f64,
    along_n: f64,
}

impl EdgeRow {
    pub(super) fn new(
        (group, concrete, around): (&Group, &Concrete, &dyn Around),
        (material, factors): (&Material, &Aci318Factors),
        (index, edge): (usize, &EdgeSeen),
    ) -> Self {
        let all: Vec<usize> = (0..group.anchors_m.len()).collect();
        let nearest = edge.nearest_m(&all);
        let front: Vec<usize> = all.into_iter().filter(|&i| edge.distance_m[i] <= nearest + ROW_TOLERANCE_M).collect();
        let along = edge.along();
        let place = |&i: &usize| group.anchors_m[i][0] * along[0] + group.anchors_m[i][1] * along[1];
        let places_m: Vec<f64> = front.iter().map(place).collect();
        let least = |corner: &[f64]| front.iter().map(|&i| corner[i]).fold(f64::INFINITY, f64::min);
        let (before, after) = (least(&edge.corner_before_m), least(&edge.corner_after_m));
        let thickness_m = edge.thickness_m;
        let c1_m = narrow_c1(nearest, before.max(after), thickness_m, longest_gap(&places_m));
        let length_m = bearing_length_m(group);
        let half = 1.5 * c1_m;
        let area_one_m2 = 4.5 * c1_m * c1_m;
        let supplemented = concrete.shear_bars.is_some_and(|bars| bars.edge == index);
        Self {
            edge: index,
            outward: edge.outward,
            along,
            mean_m: places_m.iter().sum::<f64>() / places_m.len() as f64,
            one_n: basic_n(material, group.fastener.outside_diameter_m, length_m, c1_m),
            area_m2: around.shear_area_m2(index, &front, half, half).min(front.len() as f64 * area_one_m2),
            area_one_m2,
            psi_ed: (0.7 + 0.3 * before.min(after) / half).min(1.0),
            psi_c: psi_c(material.cracking, concrete.edge_bars),
            psi_h: (half / thickness_m).sqrt().max(1.0),
            phi: if supplemented { factors.shear_supplemented } else { factors.shear_plain },
            c2_m: before.min(after),
            front,
            places_m,
            c1_m,
            thickness_m,
            length_m,
        }
    }

    /// Shear as this edge feels it.
    pub(super) fn toward(&self, actions: &GroupActions) -> TowardEdge {
        let Self { outward, along, mean_m, .. } = *self;
        FrontRow { outward, along, members: &self.front, places_m: &self.places_m, mean_m }.feels(actions)
    }

    /// V_cbg = (A_Vc/A_Vco)·ψ_ec·ψ_ed·ψ_c·ψ_h·V_b toward the edge, (17.7.2.1b); along it twice that with ψ_ed = 1 (17.7.2.1(c)).
    fn strengths(&self, toward: &TowardEdge) -> Strengths {
        let psi_ec = 1.0 / (1.0 + toward.eccentricity_m / (1.5 * self.c1_m));
        let without_edge = self.area_m2 / self.area_one_m2 * psi_ec * self.psi_c * self.psi_h * self.one_n;
        Strengths { psi_ec, square_n: self.psi_ed * without_edge, along_n: 2.0 * without_edge }
    }

    /// Share used. Toward and along are squared and added; the code holds each alone against its strength, which this is never
    /// below.
    pub(super) fn share(&self, toward: &TowardEdge) -> f64 {
        let strengths = self.strengths(toward);
        let share = |action: f64, strength: f64| if action > 0.0 { action / (self.phi * strength) } else { 0.0 };
        share(toward.square_n, strengths.square_n).hypot(share(toward.along_n, strengths.along_n))
    }

    /// Design strength in the direction of the shear, N: what acts over the share used.
    pub(super) fn against(&self, toward: &TowardEdge) -> (f64, f64) {
        let action = toward.square_n.hypot(toward.along_n);
        let share = self.share(toward);
        (action, if share > 0.0 { action / share } else { self.phi * self.strengths(toward).square_n })
    }

    pub(super) fn symbols(&self, toward: &TowardEdge) -> [Symbol; 18] {
        let strengths = self.strengths(toward);
        [
            meters("le", self.length_m),
            meters("ca1", self.c1_m),
            meters("ca2, up to 1.5*ca1", self.c2_m.min(1.5 * self.c1_m)),
            meters("ha", self.thickness_m),
            newtons("Vb", self.one_n),
            square_meters("AVc", self.area_m2),
            square_meters("AVco", self.area_one_m2),
            meters("e'V", toward.eccentricity_m),
            number("psi_ec,V", strengths.psi_ec),
            number("psi_ed,V", self.psi_ed),
            number("psi_c,V", self.psi_c),
            number("psi_h,V", self.psi_h),
            newtons("Vcbg", strengths.square_n),
            newtons("Vcbg,along", strengths.along_n),
            number("anchors in the front row", self.front.len() as f64),
            number("phi", self.phi),
            newtons("Vua,toward", toward.square_n),
            newtons("Vua,along", toward.along_n),
        ]
    }
}

/// V_b = min(0.6·(ℓ_e/d_a)^0.2·√d_a; 3.7)·λ_a·√f'_c·c_a1^1.5, (17.7.2.2.1), N with mm and MPa.
fn basic_n(material: &Material, diameter_m: f64, length_m: f64, c1_m: f64) -> f64 {
    let by_anchor = 0.6 * (length_m / diameter_m).powf(0.2) * (diameter_m * 1e3).sqrt();
    by_anchor.min(3.7) * material.lambda_a * material.root() * (c1_m * 1e3).powf(1.5)
}

/// ℓ_e = h_ef ≤ 8·d_a (17.7.2.2.1), or the product's, m.
fn bearing_length_m(group: &Group) -> f64 {
    let fastener = &group.fastener;
    let length = fastener.product.aci.bearing_length_m.unwrap_or(fastener.embedment_m);
    length.min(fastener.embedment_m).min(8.0 * fastener.outside_diameter_m)
}

/// ψ_c,V (table 17.7.2.5.1): 1.4 uncracked; cracked 1.0, with an edge bar of No. 4 (13 mm) 1.2, with stirrups at 100 mm as well 1.4.
fn psi_c(cracking: Cracking, bars: EdgeBars) -> f64 {
    match (cracking, bars) {
        (Cracking::Uncracked, _) | (Cracking::Cracked, EdgeBars::WithStirrups) => 1.4,
        (Cracking::Cracked, EdgeBars::Straight) => 1.2,
        (Cracking::Cracked, EdgeBars::None) => 1.0,
    }
}

/// c'_a1 = max(c_a2,max/1.5; h_a/1.5; s/3) where c_a2,max < 1.5·c_a1 and h_a < 1.5·c_a1, else c_a1 (17.7.2.1.2).
fn narrow_c1(c1_m: f64, c2_max_m: f64, thickness_m: f64, spacing_m: f64) -> f64 {
    if c2_max_m < 1.5 * c1_m && thickness_m < 1.5 * c1_m {
        (c2_max_m / 1.5).max(thickness_m / 1.5).max(spacing_m / 3.0).min(c1_m)
    } else {
        c1_m
    }
}

fn longest_gap(places: &[f64]) -> f64 {
    let mut sorted = places.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max)
}
