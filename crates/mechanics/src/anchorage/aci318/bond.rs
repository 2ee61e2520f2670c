//! Bond of adhesive fasteners in tension, ACI 318-19 17.6.5, and under sustained tension, 17.5.2.2.

use super::super::fastener::Fastener;
use super::super::line::{meters, newtons, number, pascals, square_meters};
use super::super::record::{NotChecked, Symbol};
use super::breakout::splitting;
use super::cluster::Cluster;
use super::material::Material;

/// Clause and formula.
pub(super) const RULE: (&str, &str) =
    ("ACI 318-19 17.6.5 (17.6.5.1)", "phi*Nag = phi*(ANa/ANao)*psi_ec,Na*psi_ed,Na*psi_cp,Na*Nba");
/// Clause and formula of sustained tension.
pub(super) const SUSTAINED: (&str, &str) = ("ACI 318-19 17.5.2.2", "0.55*phi*Nba >= Nua,s");

/// What the adhesive bears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bond {
    /// Bond stress in use, τ_cr or τ_uncr, Pa.
    stress_pa: f64,
    /// c_Na, m.
    pub reach_m: f64,
    /// N_ba, N.
    pub one_n: f64,
}

impl Bond {
    /// N_ba = λ_a·τ_cr·π·d_a·h_ef, (17.6.5.2.1), with τ_uncr in uncracked concrete (17.6.5.2.4);
    /// c_Na = 10·d_a·√(τ_uncr/7.6), (17.6.5.1.2b), τ in MPa.
    pub(super) fn new(fastener: &Fastener, material: &Material) -> Result<Self, NotChecked> {
        if let Some(why) = fastener.product.bond_not_covered() {
            return Err(why);
        }
        let product = &fastener.product.aci;
        let uncracked = product.bond_uncracked_pa.ok_or(NotChecked::MissingData { field: "ACI bond_uncracked_pa" })?;
        let cracked = product.bond_cracked_pa.ok_or(NotChecked::MissingData { field: "ACI bond_cracked_pa" });
        let stress_pa = if material.by_cracking(1.0, 0.0) > 0.0 { cracked? } else { uncracked };
        let d = fastener.diameter_m;
        Ok(Self {
            stress_pa,
            reach_m: 10.0 * d * (uncracked * 1e-6 / 7.6).sqrt(),
            one_n: material.lambda_bond * stress_pa * std::f64::consts::PI * d * fastener.embedment_m,
        })
    }

    /// N_ag = (A_Na/A_Nao)·ψ_ec·ψ_ed·ψ_cp·N_ba, (17.6.5.1b), N.
    pub(super) fn strength_n(
        &self,
        (material, fastener): (&Material, &Fastener),
        cluster: &Cluster,
        eccentricity_m: [f64; 2],
    ) -> f64 {
        let psi_cp = splitting(material, fastener, cluster);
        cluster.area_ratio() * cluster.psi_ec(eccentricity_m) * cluster.psi_ed() * psi_cp * self.one_n
    }

    pub(super) fn symbols(
        &self,
        (material, fastener): (&Material, &Fastener),
        cluster: &Cluster,
        eccentricity_m: [f64; 2],
    ) -> [Symbol; 11] {
        [
            number("lambda_a", material.lambda_bond),
            pascals("tau", self.stress_pa),
            meters("cNa", self.reach_m),
            newtons("Nba", self.one_n),
            square_meters("ANa", cluster.area_m2),
            square_meters("ANao", cluster.area_one_m2),
            // What lies farther off cuts nothing off.
            meters("ca,min, up to 10*hef", cluster.edge_m.min(10.0 * cluster.embedment_m)),
            number("psi_ec,Na", cluster.psi_ec(eccentricity_m)),
            number("psi_ed,Na", cluster.psi_ed()),
            number("psi_cp,Na", splitting(material, fastener, cluster)),
            newtons("Nag", self.strength_n((material, fastener), cluster, eccentricity_m)),
        ]
    }
}
