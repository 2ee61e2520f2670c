//! The anchorage code of the plan, ready to judge one group of anchors in its concrete.

use gantline_mechanics::anchorage::{
    AnchorageFault, Around, Concrete, Group, GroupActions, ModeShares, Record, aci318, en1992_4,
};
use gantline_mechanics::bearing::BearingCode;
use gantline_mechanics::slab::{AciPunching, EnPunching, PunchingCode};
use gantline_mechanics::steel_bolt::BoltCode;

use crate::basis::{AnchorageCode, DesignCode, FactorName, MemberCode};

/// A group of anchors in its concrete under one code.
pub(super) enum Prepared<'a> {
    En(Box<en1992_4::Prepared<'a>>),
    Aci(Box<aci318::Prepared<'a>>),
}

impl<'a> Prepared<'a> {
    /// Works out what depends on place, product and concrete.
    pub fn new(
        code: &DesignCode,
        group: &'a Group,
        concrete: &'a Concrete,
        around: &'a dyn Around,
    ) -> Result<Self, AnchorageFault> {
        Ok(match code.anchorage {
            AnchorageCode::En1992Part4 => {
                Self::En(Box::new(en1992_4::Prepared::new(group, concrete, &en_factors(code), around)?))
            }
            AnchorageCode::Aci318 => {
                let factors = aci318::Aci318Factors::STANDARD;
                Self::Aci(Box::new(aci318::Prepared::new(group, concrete, &factors, around)?))
            }
        })
    }

    /// Each mode's own worst.
    pub fn shares(&mut self, actions: &GroupActions) -> Result<ModeShares, AnchorageFault> {
        match self {
            Self::En(prepared) => prepared.shares(actions),
            Self::Aci(prepared) => prepared.shares(actions),
        }
    }

    /// Every mode in full.
    pub fn records(&mut self, actions: &GroupActions) -> Result<Vec<Record>, AnchorageFault> {
        match self {
            Self::En(prepared) => prepared.records(actions),
            Self::Aci(prepared) => prepared.records(actions),
        }
    }
}

fn factor(code: &DesignCode, name: FactorName, otherwise: f64) -> f64 {
    code.factors.get(&name).map_or(otherwise, |factor| factor.value)
}

fn en_factors(code: &DesignCode) -> en1992_4::En1992Factors {
    let recommended = en1992_4::En1992Factors::RECOMMENDED;
    en1992_4::En1992Factors {
        gamma_c: factor(code, FactorName::AnchorGammaConcrete, recommended.gamma_c),
        gamma_ms_re: factor(code, FactorName::AnchorGammaBars, recommended.gamma_ms_re),
        ..recommended
    }
}

/// The punching code that goes with it.
pub(super) fn punching(code: &DesignCode) -> PunchingCode {
    match code.anchorage {
        AnchorageCode::En1992Part4 => PunchingCode::En1992(EnPunching {
            gamma_c: factor(code, FactorName::AnchorGammaConcrete, EnPunching::RECOMMENDED.gamma_c),
            ..EnPunching::RECOMMENDED
        }),
        AnchorageCode::Aci318 => PunchingCode::Aci318(AciPunching::STANDARD),
    }
}

/// What concrete bears under pressure.
pub(super) fn bearing(code: &DesignCode) -> BearingCode {
    match code.anchorage {
        AnchorageCode::En1992Part4 => {
            BearingCode::En1992 { gamma_c: factor(code, FactorName::AnchorGammaConcrete, 1.5), alpha_cc: 1.0 }
        }
        AnchorageCode::Aci318 => BearingCode::ACI_STANDARD,
    }
}

/// The strength of concrete that the code goes by; or what is missing.
pub(super) fn strength_pa(code: &DesignCode, concrete: &Concrete) -> Result<f64, String> {
    match code.anchorage {
        AnchorageCode::En1992Part4 => concrete.fck_pa.ok_or("characteristic strength f_ck of the concrete"),
        AnchorageCode::Aci318 => concrete.specified_pa.ok_or("specified strength f'c of the concrete"),
    }
    .map_err(str::to_owned)
}

/// The code for bolts in steel; or what is missing.
pub(super) fn bolts(code: &DesignCode) -> Result<BoltCode, String> {
    match code.members {
        MemberCode::Eurocode => Ok(BoltCode::En1993 { gamma_m2: named(code, FactorName::SteelGammaM2, "γ_M2")? }),
        MemberCode::Aisc360 => Ok(BoltCode::AISC),
    }
}

/// The factor on the yield strength of steel; or what is missing.
pub(super) fn yield_factor(code: &DesignCode) -> Result<f64, String> {
    match code.members {
        MemberCode::Eurocode => named(code, FactorName::SteelGammaM0, "γ_M0"),
        MemberCode::Aisc360 => Ok(1.0 / named(code, FactorName::AiscPhi, "φ")?),
    }
}

/// A factor of the code by name; or that it is missing.
pub(super) fn named(code: &DesignCode, name: FactorName, what: &str) -> Result<f64, String> {
    code.factors.get(&name).map(|factor| factor.value).ok_or_else(|| format!("{what} in the design code"))
}

/// Modular ratios of anchors and concrete, short and long term; both are looked at and the worse one counts.
pub(super) fn modular_ratios(code: &DesignCode) -> Result<[f64; 2], String> {
    Ok([
        named(code, FactorName::ModularRatioShort, "short-term modular ratio")?,
        named(code, FactorName::ModularRatioLong, "long-term modular ratio")?,
    ])
}
