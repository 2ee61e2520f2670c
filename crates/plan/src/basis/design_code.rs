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
}

impl DesignCode {
    /// Eurocodes with the recommended factors.
    pub fn eurocode() -> Self {
        let recommended = |value: f64, clause: &str| Sourced::default_from(value, clause);
        Self {
            members: MemberCode::Eurocode,
            edition: "EN 1993-1-1:2005+A1:2014, EN 1999-1-1:2007+A2:2013, recommended factors".to_owned(),
            factors: BTreeMap::from([
                (FactorName::SteelGammaM0, recommended(1.0, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::SteelGammaM1, recommended(1.0, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::SteelGammaM2, recommended(1.25, "EN 1993-1-1 6.1(1), recommended value")),
                (FactorName::AluminumGammaM1, recommended(1.1, "EN 1999-1-1 6.1.3, recommended value")),
                (FactorName::AluminumGammaM2, recommended(1.25, "EN 1999-1-1 6.1.3, recommended value")),
            ]),
        }
    }

    /// AISC 360, load and resistance factor design.
    pub fn aisc() -> Self {
        Self {
            members: MemberCode::Aisc360,
            edition: "ANSI/AISC 360-22, LRFD".to_owned(),
            factors: BTreeMap::from([
                (FactorName::AiscPhi, Sourced::default_from(0.9, "AISC 360-22 E1, F1, G1, H3, from memory")),
                (FactorName::AiscPhiRupture, Sourced::default_from(0.75, "AISC 360-22 D2, from memory")),
            ]),
        }
    }
}
