//! The design code: how resistances are found, with its factors and edition.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;

/// The resistance side of a plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DesignCode {
    /// Which family of codes judges masts, arms and braces.
    pub members: MemberCode,
    /// Which code judges anchors in concrete.
    pub anchorage: AnchorageCode,
    /// Bond strength of adhesives whose product states none.
    #[serde(default = "BondDefaults::outdoor")]
    pub bond_defaults: BondDefaults,
    /// Edition as printed on documents.
    pub edition: String,
    /// Partial or resistance factors by name.
    pub factors: BTreeMap<FactorName, Sourced<f64>>,
}

/// Which family of codes judges members.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MemberCode {
    /// EN 1993-1-1 for steel, EN 1999-1-1 for aluminum.
    Eurocode,
    /// AISC 360 for steel; aluminum is not checked.
    Aisc360,
}

/// Which code judges anchors in concrete.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum AnchorageCode {
    /// EN 1992-4:2018.
    #[serde(rename = "en1992_4")]
    En1992Part4,
    /// ACI 318-19 chapter 17.
    #[serde(rename = "aci318")]
    Aci318,
}

impl AnchorageCode {
    /// Its name.
    pub const fn words(self) -> &'static str {
        match self {
            Self::En1992Part4 => "EN 1992-4:2018",
            Self::Aci318 => "ACI 318-19 chapter 17",
        }
    }
}

/// Bond strengths for adhesives whose product states none: low ones, to plan with until a product is chosen.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BondDefaults {
    /// In cracked concrete.
    pub cracked_pa: Sourced<f64>,
    /// In uncracked concrete.
    pub uncracked_pa: Sourced<f64>,
}

impl BondDefaults {
    /// Least values for outdoor use, already reduced for sustained tension: 0.4 × 200 psi and 0.4 × 650 psi.
    pub fn outdoor() -> Self {
        let note = "ACI 318-19 Table 17.6.5.2.5, outdoor, times 0.4 for sustained tension; from memory, to be confirmed; \
                    to plan with only, the chosen product's approval replaces it";
        Self { cracked_pa: Sourced::default_from(0.55e6, note), uncracked_pa: Sourced::default_from(1.79e6, note) }
    }
}

/// A factor's name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum FactorName {
    /// γ_M0, steel cross-sections.
    SteelGammaM0,
    /// γ_M1, steel members.
    SteelGammaM1,
    /// γ_M2, steel net sections and pins.
    SteelGammaM2,
    /// γ_M1, aluminum.
    AluminumGammaM1,
    /// γ_M2, aluminum.
    AluminumGammaM2,
    /// φ of AISC 360 for yielding and buckling.
    AiscPhi,
    /// φ of AISC 360 for rupture in tension.
    AiscPhiRupture,
    /// γ_Mc of EN 1992-4, concrete modes; without the installation factor, which is the product's.
    AnchorGammaConcrete,
    /// γ_Ms,re of EN 1992-4, supplementary reinforcement.
    AnchorGammaBars,
    /// Elastic modulus of anchors by that of concrete, short-term.
    ModularRatioShort,
    /// The same, long-term.
    ModularRatioLong,
}

/// 210 GPa of steel by 31 GPa of concrete C25/30 (EN 1992-1-1 Table 3.1), rounded.
const SHORT_TERM: f64 = 6.8;
/// The same with concrete creeping to φ = 2.
const LONG_TERM: f64 = 20.4;

fn modular(ratio: f64) -> Sourced<f64> {
    Sourced::default_from(
        ratio,
        "210 GPa by the modulus of C25/30, EN 1992-1-1 Table 3.1; long-term times 1 + φ with φ = 2",
    )
}

impl DesignCode {
    /// Eurocodes with the recommended factors.
    pub fn eurocode() -> Self {
        let recommended = |value: f64, clause: &str| Sourced::default_from(value, clause);
        Self {
            members: MemberCode::Eurocode,
            anchorage: AnchorageCode::En1992Part4,
            bond_defaults: BondDefaults::outdoor(),
            edition: "EN 1993-1-1:2005+A1:2014, EN 1999-1-1:2007+A2:2013, recommended factors".to_owned(),
            factors: BTreeMap::from([
                (FactorName::SteelGammaM0, recommended(1.0, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::SteelGammaM1, recommended(1.0, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::SteelGammaM2, recommended(1.25, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::AluminumGammaM1, recommended(1.1, "EN 1999-1-1 6.1.3, recommended value")),
                (FactorName::AluminumGammaM2, recommended(1.25, "EN 1999-1-1 6.1.3, recommended value")),
                (
                    FactorName::AnchorGammaConcrete,
                    recommended(1.5, "EN 1992-4 Table 4.1, recommended value, from memory"),
                ),
                (FactorName::AnchorGammaBars, recommended(1.15, "EN 1992-4 Table 4.1, recommended value, from memory")),
                (FactorName::ModularRatioShort, modular(SHORT_TERM)),
                (FactorName::ModularRatioLong, modular(LONG_TERM)),
            ]),
        }
    }

    /// AISC 360, load and resistance factor design.
    pub fn aisc() -> Self {
        Self {
            members: MemberCode::Aisc360,
            anchorage: AnchorageCode::Aci318,
            bond_defaults: BondDefaults::outdoor(),
            edition: "ANSI/AISC 360-22, LRFD".to_owned(),
            factors: BTreeMap::from([
                (FactorName::AiscPhi, Sourced::default_from(0.9, "AISC 360-22 E1, F1, G1, H3, from memory")),
                (FactorName::AiscPhiRupture, Sourced::default_from(0.75, "AISC 360-22 D2, from memory")),
                (FactorName::ModularRatioShort, modular(SHORT_TERM)),
                (FactorName::ModularRatioLong, modular(LONG_TERM)),
            ]),
        }
    }
}
