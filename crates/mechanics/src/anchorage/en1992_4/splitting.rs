//! Splitting of the concrete under load, EN 1992-4 7.2.1.7.

use super::super::concrete::SplittingBars;
use super::super::fastener::Fastener;
use super::super::line::{Line, Of, Sink, meters, newtons, number, square_meters};
use super::super::product::PullOut;
use super::super::record::{Mode, NotChecked, Symbol};
use super::cluster::{Cluster, Narrow, Sizes};
use super::cone::one_cone_n;
use super::material::ConcreteTerms;

/// Product data against splitting, with the thickness here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Splitting {
    /// c_cr,sp, m.
    pub edge_cr_m: f64,
    /// s_cr,sp, m.
    pub spacing_cr_m: f64,
    /// h_min, m.
    pub least_thickness_m: f64,
    /// h, m.
    pub thickness_m: f64,
    /// N⁰_sp = min(N_Rk,p; N⁰_Rk,c), N.
    pub one_n: f64,
}

impl Splitting {
    /// The data, or what is missing. `one_pull_out` is N_Rk,p of one fastener, or N⁰_Rk,p of a bonded one.
    pub(super) fn new(
        fastener: &Fastener,
        terms: &ConcreteTerms,
        thickness_m: f64,
        one_pull_out: PullOut,
    ) -> Result<Self, NotChecked> {
        let product = &fastener.product;
        let missing = |field| NotChecked::MissingData { field };
        let cone = one_cone_n(terms.k1(fastener), terms, fastener.embedment_m);
        Ok(Self {
            edge_cr_m: product.en.splitting_edge_m.ok_or(missing("splitting_edge_m"))?,
            spacing_cr_m: product.en.splitting_spacing_m.ok_or(missing("splitting_spacing_m"))?,
            least_thickness_m: product.least.thickness_m.ok_or(missing("least thickness_m"))?,
            thickness_m,
            one_n: match one_pull_out {
                PullOut::Characteristic(n) => n.min(cone),
                PullOut::NotDecisive => cone,
            },
        })
    }

    /// The same with N⁰_Rk,p of bonded fasteners.
    pub(super) fn with_bond(self, one_bond_n: f64) -> Self {
        Self { one_n: self.one_n.min(one_bond_n), ..self }
    }

    pub(super) fn sizes(&self, embedment_m: f64) -> Sizes {
        Sizes { embedment_m, spacing_cr_m: self.spacing_cr_m, edge_cr_m: self.edge_cr_m, narrow: Narrow::Stays }
    }

    /// Whether 7.2.1.7(2) lets a cluster go unchecked: c ≥ c_cr,sp (one) or 1.2·c_cr,sp (more) and h ≥ h_min.
    pub(super) fn is_far(&self, cluster: &Cluster) -> bool {
        let times = if cluster.members.len() == 1 { 1.0 } else { 1.2 };
        cluster.edge_m >= times * self.edge_cr_m && self.thickness_m >= self.least_thickness_m
    }

    /// ψ_h,sp = (h/h_min)^(2/3), not above max(1; ((h_ef + 1.5·c_1)/h_min)^(2/3)) nor 2 (EN 1992-4, the middle term from
    /// memory), nor above (2·h_ef/h_min)^(2/3), the limit of its forerunner CEN/TS 1992-4, until the text is confirmed.
    pub(super) fn psi_h(&self, embedment_m: f64, edge_m: f64) -> f64 {
        let ratio = |h: f64| (h / self.least_thickness_m).powf(2.0 / 3.0);
        let cap = ratio(embedment_m + 1.5 * edge_m).clamp(1.0, 2.0).min(ratio(2.0 * embedment_m).max(1.0));
        ratio(self.thickness_m).min(cap)
    }

    /// N_Rk,sp = N⁰_sp·A_c,N/A⁰_c,N·ψ_s·ψ_re·ψ_ec·ψ_h,sp with c_cr,sp and s_cr,sp, 7.2.1.7.
    pub(super) fn tell(
        &self,
        (terms, cluster): (&ConcreteTerms, &Cluster),
        eccentricity_m: [f64; 2],
        (action, gamma): (f64, f64),
        sink: &mut impl Sink,
    ) {
        let psi_s = (0.7 + 0.3 * cluster.edge_m / self.edge_cr_m).min(1.0);
        let (psi_re, psi_ec) = (terms.psi_re(cluster.embedment_m), cluster.psi_ec(eccentricity_m));
        let psi_h = self.psi_h(cluster.embedment_m, cluster.edge_m);
        let resistance = self.one_n * cluster.area_ratio() * psi_s * psi_re * psi_ec * psi_h;
        let symbols: [Symbol; 13] = [
            newtons("N0sp", self.one_n),
            meters("scr,sp", self.spacing_cr_m),
            meters("ccr,sp", self.edge_cr_m),
            square_meters("Ac,N", cluster.area_m2),
            square_meters("A0c,N", cluster.area_one_m2),
            meters("h", self.thickness_m),
            meters("hmin", self.least_thickness_m),
            number("psi_s,N", psi_s),
            number("psi_re,N", psi_re),
            number("psi_ec,N", psi_ec),
            number("psi_h,sp", psi_h),
            newtons("NRk,sp", resistance),
            number("gamma_Msp", gamma),
        ];
        sink.take(&Line::against(
            Mode::Splitting,
            Of::Anchors(&cluster.members),
            (
                "EN 1992-4 7.2.1.7",
                "NRd,sp = min(NRk,p; N0Rk,c)*(Ac,N/A0c,N)*psi_s,N*psi_re,N*psi_ec,N*psi_h,sp/gamma_Msp",
            ),
            &symbols,
            (action, resistance / gamma),
        ));
    }
}

/// Whether reinforcement and cracked design let splitting go unchecked, 7.2.1.7(2)(b).
pub(super) fn held_by_bars(terms: &ConcreteTerms, bars: SplittingBars) -> bool {
    bars == SplittingBars::LimitsCracks && terms.cracking == super::super::concrete::Cracking::Cracked
}
