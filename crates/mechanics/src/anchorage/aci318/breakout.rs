//! Concrete breakout of fasteners in tension, ACI 318-19 17.6.2.

use super::super::fastener::{Fastener, FastenerKind};
use super::super::line::{meters, newtons, number, pascals, square_meters};
use super::super::record::Symbol;
use super::cluster::Cluster;
use super::material::Material;

/// From and to where headed cast-in anchors count as deep, m (17.6.2.2.3).
const DEEP_M: [f64; 2] = [0.28, 0.635];

/// Clause and formula.
pub(super) const RULE: (&str, &str) =
    ("ACI 318-19 17.6.2 (17.6.2.1)", "phi*Ncbg = phi*(ANc/ANco)*psi_ec,N*psi_ed,N*psi_c,N*psi_cp,N*Nb");

/// Factors of a breakout.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Breakout {
    kc: f64,
    one_n: f64,
    psi_ec: f64,
    psi_ed: f64,
    psi_c: f64,
    psi_cp: f64,
    /// N_cb or N_cbg, N.
    pub strength_n: f64,
}

impl Breakout {
    /// N_cbg = (A_Nc/A_Nco)·ψ_ec·ψ_ed·ψ_c·ψ_cp·N_b, (17.6.2.1b); a single fastener is a group of one without eccentricity.
    ///
    /// ψ_c = 1.25 cast-in, 1.4 post-installed in uncracked concrete, 1 in cracked (17.6.2.5); ψ_cp only for post-installed
    /// in uncracked concrete without reinforcement against splitting (17.6.2.6).
    pub(super) fn new(material: &Material, fastener: &Fastener, cluster: &Cluster, eccentricity_m: [f64; 2]) -> Self {
        let post = fastener.is_post_installed();
        let kc = if post { 7.0 } else { 10.0 };
        let one_n = basic_n(material, fastener, kc, cluster.embedment_m);
        let (psi_ec, psi_ed) = (cluster.psi_ec(eccentricity_m), cluster.psi_ed());
        let psi_c = material.by_cracking(1.0, if post { 1.4 } else { 1.25 });
        let psi_cp = splitting(material, fastener, cluster);
        let strength_n = cluster.area_ratio() * psi_ec * psi_ed * psi_c * psi_cp * one_n;
        Self { kc, one_n, psi_ec, psi_ed, psi_c, psi_cp, strength_n }
    }

    pub(super) fn symbols(&self, material: &Material, cluster: &Cluster) -> [Symbol; 13] {
        [
            number("kc", self.kc),
            number("lambda_a", material.lambda_a),
            pascals("f'c", material.strength_pa),
            meters("hef", cluster.embedment_m),
            newtons("Nb", self.one_n),
            square_meters("ANc", cluster.area_m2),
            square_meters("ANco", cluster.area_one_m2),
            // What lies farther off cuts nothing off.
            meters("ca,min, up to 10*hef", cluster.edge_m.min(10.0 * cluster.embedment_m)),
            number("psi_ec,N", self.psi_ec),
            number("psi_ed,N", self.psi_ed),
            number("psi_c,N", self.psi_c),
            number("psi_cp,N", self.psi_cp),
            newtons("Ncbg", self.strength_n),
        ]
    }
}

/// N_b = k_c·λ_a·√f'_c·h_ef^1.5, (17.6.2.2.1), N with mm and MPa: k_c = 10 cast-in, 7 post-installed; cast-in headed from
/// 280 to 635 mm 3.9·λ_a·√f'_c·h_ef^(5/3), (17.6.2.2.3).
fn basic_n(material: &Material, fastener: &Fastener, kc: f64, embedment_m: f64) -> f64 {
    let (scale, h) = (material.lambda_a * material.root(), embedment_m * 1e3);
    let headed = matches!(fastener.kind, FastenerKind::CastIn(_));
    // A hair of tolerance, so that 280 mm from inches or differences is not below 280 mm.
    let is_deep = (DEEP_M[0] - 1e-9..=DEEP_M[1] + 1e-9).contains(&embedment_m);
    if headed && is_deep { 3.9 * scale * h.powf(5.0 / 3.0) } else { kc * scale * h.powf(1.5) }
}

/// ψ_cp of breakout or bond.
pub(super) fn splitting(material: &Material, fastener: &Fastener, cluster: &Cluster) -> f64 {
    if !fastener.is_post_installed() || material.splitting_held || material.by_cracking(0.0, 1.0) == 0.0 {
        return 1.0;
    }
    cluster.psi_cp(critical_edge_m(fastener))
}

/// c_ac of the product's tests, else of table 17.9.5: 2.5·h_ef undercut, 2·h_ef adhesive, m.
fn critical_edge_m(fastener: &Fastener) -> f64 {
    let times = if matches!(fastener.kind, FastenerKind::Bonded) { 2.0 } else { 2.5 };
    fastener.product.aci.critical_edge_m.unwrap_or(times * fastener.embedment_m)
}
