//! Concrete cone of fasteners in tension, EN 1992-4 7.2.1.4.

use super::super::fastener::Fastener;
use super::super::line::{Line, Of, Sink, meters, newtons, number, pascals, square_meters};
use super::super::record::{Mode, Symbol};
use super::cluster::Cluster;
use super::material::ConcreteTerms;

/// Factors of a cone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cone {
    pub k1: f64,
    pub one_n: f64,
    pub psi_s: f64,
    pub psi_re: f64,
    pub psi_ec: f64,
    pub psi_m: f64,
    /// N_Rk,c, N.
    pub resistance_n: f64,
}

/// N⁰_Rk,c = k_1·√f_ck·h_ef^1.5, N with mm and N/mm², (7.2); SI in and out.
pub(super) fn one_cone_n(k1: f64, terms: &ConcreteTerms, embedment_m: f64) -> f64 {
    k1 * terms.root_fck() * (embedment_m * 1e3).powf(1.5)
}

impl Cone {
    /// N_Rk,c = N⁰_Rk,c·A_c,N/A⁰_c,N·ψ_s,N·ψ_re,N·ψ_ec,N·ψ_M,N, (7.1).
    pub(super) fn new(
        terms: &ConcreteTerms,
        fastener: &Fastener,
        cluster: &Cluster,
        eccentricity_m: [f64; 2],
        psi_m: f64,
    ) -> Self {
        let k1 = terms.k1(fastener);
        let one_n = one_cone_n(k1, terms, cluster.embedment_m);
        let (psi_s, psi_re) = (cluster.psi_s(), terms.psi_re(cluster.embedment_m));
        let psi_ec = cluster.psi_ec(eccentricity_m);
        let resistance_n = one_n * cluster.area_ratio() * psi_s * psi_re * psi_ec * psi_m;
        Self { k1, one_n, psi_s, psi_re, psi_ec, psi_m, resistance_n }
    }

    pub(super) fn symbols(&self, terms: &ConcreteTerms, cluster: &Cluster, gamma: f64) -> [Symbol; 15] {
        [
            number("k1", self.k1),
            pascals("fck", terms.fck_pa),
            meters("hef", cluster.embedment_m),
            newtons("N0Rk,c", self.one_n),
            square_meters("Ac,N", cluster.area_m2),
            square_meters("A0c,N", cluster.area_one_m2),
            number("neighbors that share Ac,N", cluster.neighbors as f64),
            // What lies farther off cuts nothing off.
            meters("c, up to 1.5*hef", cluster.edge_m.min(0.5 * cluster.spacing_cr_m)),
            meters("scr,N", cluster.spacing_cr_m),
            number("psi_s,N", self.psi_s),
            number("psi_re,N", self.psi_re),
            number("psi_ec,N", self.psi_ec),
            number("psi_M,N", self.psi_m),
            newtons("NRk,c", self.resistance_n),
            number("gamma_Mc", gamma),
        ]
    }

    pub(super) fn tell(
        &self,
        (terms, cluster): (&ConcreteTerms, &Cluster),
        action: f64,
        gamma: f64,
        sink: &mut impl Sink,
    ) {
        sink.take(&Line::against(
            Mode::ConcreteCone,
            Of::Anchors(&cluster.members),
            (
                "EN 1992-4 7.2.1.4 (7.1)",
                "NRd,c = k1*sqrt(fck)*hef^1.5*(Ac,N/A0c,N)*psi_s,N*psi_re,N*psi_ec,N*psi_M,N/gamma_Mc",
            ),
            &self.symbols(terms, cluster, gamma),
            (action, self.resistance_n / gamma),
        ));
    }
}

/// ψ_M,N = 2 − z/(1.5·h_ef) ≥ 1, (7.7): the pressure beside the cone holds it down.
///
/// 1 near an edge (c < 1.5·h_ef), with less pressure than 0.8 of the tension, with z ≥ 1.5·h_ef, and where the tension is
/// in several clusters, to which z does not belong.
pub(super) fn psi_m(
    embedment_m: f64,
    edge_m: f64,
    tension_n: f64,
    compression: Option<super::super::actions::Compression>,
) -> f64 {
    let Some(compression) = compression else { return 1.0 };
    let z_ratio = compression.lever_arm_m / embedment_m;
    if edge_m < 1.5 * embedment_m || compression.resultant_n < 0.8 * tension_n || z_ratio >= 1.5 {
        return 1.0;
    }
    (2.0 - z_ratio / 1.5).max(1.0)
}
