//! Combined pull-out and concrete failure of bonded fasteners, EN 1992-4 7.2.1.6.

use std::f64::consts::PI;

use super::super::concrete::Cracking;
use super::super::fastener::Fastener;
use super::super::line::{Line, Of, Sink, meters, newtons, number, pascals, square_meters};
use super::super::record::{Mode, NotChecked, Symbol};
use super::cluster::{Cluster, Narrow, Sizes};
use super::material::ConcreteTerms;

/// Bond data that hold here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bond {
    /// τ_Rk, Pa.
    pub tau_pa: f64,
    /// τ_Rk in uncracked C20/25, Pa.
    pub tau_c20_pa: f64,
    /// ψ⁰_sus.
    pub sustained_ratio: f64,
    /// d, m.
    pub diameter_m: f64,
    /// h_ef, m.
    pub embedment_m: f64,
}

/// Factors of a bonded cluster.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BondGroup {
    pub one_n: f64,
    pub psi_g0: f64,
    pub psi_g: f64,
    pub psi_s: f64,
    pub psi_re: f64,
    pub psi_ec: f64,
    /// N_Rk,p, N.
    pub resistance_n: f64,
}

impl Bond {
    /// The data, or what is missing or not covered.
    pub(super) fn new(fastener: &Fastener, terms: &ConcreteTerms) -> Result<Self, NotChecked> {
        let product = &fastener.product;
        if let Some(why) = product.bond_not_covered() {
            return Err(why);
        }
        let tau = match terms.cracking {
            Cracking::Cracked => product.en.bond_cracked_pa,
            Cracking::Uncracked => product.en.bond_uncracked_pa,
        };
        Ok(Self {
            tau_pa: tau.ok_or(NotChecked::MissingData { field: "bond strength" })?,
            tau_c20_pa: product
                .en
                .bond_uncracked_c20_pa
                .ok_or(NotChecked::MissingData { field: "bond_uncracked_c20_pa" })?,
            sustained_ratio: product.en.sustained_ratio.unwrap_or(0.6),
            diameter_m: fastener.diameter_m,
            embedment_m: fastener.embedment_m,
        })
    }

    /// ψ_sus = 1 for α_sus ≤ ψ⁰_sus, else ψ⁰_sus + 1 − α_sus, (7.14a), (7.14b).
    pub(super) fn psi_sus(&self, sustained_share: f64) -> f64 {
        if sustained_share <= self.sustained_ratio { 1.0 } else { self.sustained_ratio + 1.0 - sustained_share }
    }

    /// s_cr,Np = 7.3·d·√(ψ_sus·τ_Rk) ≤ 3·h_ef, (7.15), τ_Rk of uncracked C20/25 (from memory, to be confirmed).
    pub(super) fn sizes(&self, psi_sus: f64) -> Sizes {
        let free = 7.3 * self.diameter_m * (psi_sus * self.tau_c20_pa / 1e6).sqrt();
        let spacing_cr_m = free.min(3.0 * self.embedment_m);
        Sizes { embedment_m: self.embedment_m, spacing_cr_m, edge_cr_m: 0.5 * spacing_cr_m, narrow: Narrow::Stays }
    }

    /// N⁰_Rk,p = ψ_sus·τ_Rk·π·d·h_ef, (7.14).
    pub(super) fn one_n(&self, psi_sus: f64) -> f64 {
        psi_sus * self.tau_pa * PI * self.diameter_m * self.embedment_m
    }

    /// ψ⁰_g,Np = √n − (√n − 1)·(τ_Rk/τ_Rk,c)^1.5 ≥ 1, (7.18), τ_Rk,c = k_3/(π·d)·√(h_ef·f_ck), (7.19), k_3 = 7.7 cracked,
    /// 11.0 uncracked (the latter from memory, to be confirmed).
    fn psi_g0(&self, terms: &ConcreteTerms, count: usize) -> f64 {
        let k3 = terms.by_cracking(7.7, 11.0);
        let tau_c_mpa = k3 / (PI * self.diameter_m * 1e3) * (self.embedment_m * 1e3).sqrt() * terms.root_fck();
        let root_n = (count as f64).sqrt();
        (root_n - (root_n - 1.0) * (self.tau_pa / 1e6 / tau_c_mpa).powf(1.5)).max(1.0)
    }
}

impl BondGroup {
    /// N_Rk,p = N⁰_Rk,p·A_p,N/A⁰_p,N·ψ_g,Np·ψ_s,Np·ψ_re,N·ψ_ec,Np, (7.13), with
    /// ψ_g,Np = ψ⁰_g,Np − √(s/s_cr,Np)·(ψ⁰_g,Np − 1) ≥ 1, (7.17), s the mean spacing.
    pub(super) fn new(
        bond: &Bond,
        terms: &ConcreteTerms,
        cluster: &Cluster,
        psi_sus: f64,
        eccentricity_m: [f64; 2],
    ) -> Self {
        let one_n = bond.one_n(psi_sus);
        let psi_g0 = bond.psi_g0(terms, cluster.members.len().max(1));
        let psi_g = (psi_g0 - (cluster.mean_spacing_m / cluster.spacing_cr_m).sqrt() * (psi_g0 - 1.0)).max(1.0);
        let (psi_s, psi_re) = (cluster.psi_s(), terms.psi_re(bond.embedment_m));
        let psi_ec = cluster.psi_ec(eccentricity_m);
        let resistance_n = one_n * cluster.area_ratio() * psi_g * psi_s * psi_re * psi_ec;
        Self { one_n, psi_g0, psi_g, psi_s, psi_re, psi_ec, resistance_n }
    }

    fn symbols(&self, bond: &Bond, cluster: &Cluster, psi_sus: f64, gamma: f64) -> [Symbol; 16] {
        [
            number("psi_sus", psi_sus),
            pascals("tau_Rk", bond.tau_pa),
            meters("d", bond.diameter_m),
            meters("hef", bond.embedment_m),
            newtons("N0Rk,p", self.one_n),
            meters("scr,Np", cluster.spacing_cr_m),
            square_meters("Ap,N", cluster.area_m2),
            square_meters("A0p,N", cluster.area_one_m2),
            meters("c, up to 0.5*scr,Np", cluster.edge_m.min(0.5 * cluster.spacing_cr_m)),
            number("psi0_g,Np", self.psi_g0),
            number("psi_g,Np", self.psi_g),
            number("psi_s,Np", self.psi_s),
            number("psi_re,N", self.psi_re),
            number("psi_ec,Np", self.psi_ec),
            newtons("NRk,p", self.resistance_n),
            number("gamma_Mp", gamma),
        ]
    }

    pub(super) fn tell(
        &self,
        (bond, cluster): (&Bond, &Cluster),
        psi_sus: f64,
        (action, gamma): (f64, f64),
        sink: &mut impl Sink,
    ) {
        sink.take(&Line::against(
            Mode::Bond,
            Of::Anchors(&cluster.members),
            (
                "EN 1992-4 7.2.1.6 (7.13)",
                "NRd,p = psi_sus*tau_Rk*pi*d*hef*(Ap,N/A0p,N)*psi_g,Np*psi_s,Np*psi_re,N*psi_ec,Np/gamma_Mp",
            ),
            &self.symbols(bond, cluster, psi_sus, gamma),
            (action, self.resistance_n / gamma),
        ));
    }
}
