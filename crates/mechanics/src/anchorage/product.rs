//! What the approval or evaluation report of a fastener says, field by field; a missing field leaves its mode unchecked.

use std::collections::BTreeSet;

use super::fault::{AnchorageFault, positive_if_given, ratio_if_given};

/// Data of a product. All are optional: none may be guessed.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Product {
    /// Least distances, for either code.
    pub least: LeastDistances,
    /// Data to EN 1992-4.
    pub en: EnProduct,
    /// Data to ACI 318.
    pub aci: AciProduct,
    /// What the bond strengths stand for.
    pub bond_cover: Option<BondCover>,
    /// How a bonded fastener is going to be set and used here.
    pub bond_use: BondUse,
}

/// Least distances below which the product may not be set.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct LeastDistances {
    /// Least spacing s_min, m.
    pub spacing_m: Option<f64>,
    /// Least edge distance c_min, m.
    pub edge_m: Option<f64>,
    /// Least thickness of the concrete h_min, m.
    pub thickness_m: Option<f64>,
}

/// Pull-out resistance of one fastener.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PullOut {
    /// Characteristic resistance, N.
    Characteristic(f64),
    /// The approval says that pull-out does not decide.
    NotDecisive,
}

/// Product data to EN 1992-4, for the concrete strength of the plan.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct EnProduct {
    /// N_Rk,s, N. Missing: A_s·f_uk.
    pub steel_tension_n: Option<f64>,
    /// V⁰_Rk,s, N. Missing: k_6·A_s·f_uk.
    pub steel_shear_n: Option<f64>,
    /// M⁰_Rk,s, N·m. Missing: 1.2·W_el·f_uk.
    pub steel_moment_nm: Option<f64>,
    /// γ_inst.
    pub gamma_inst: Option<f64>,
    /// N_Rk,p in cracked concrete, not for bonded or headed ones.
    pub pull_out_cracked: Option<PullOut>,
    /// N_Rk,p in uncracked concrete.
    pub pull_out_uncracked: Option<PullOut>,
    /// τ_Rk in cracked concrete of the plan's strength, Pa.
    pub bond_cracked_pa: Option<f64>,
    /// τ_Rk in uncracked concrete of the plan's strength, Pa.
    pub bond_uncracked_pa: Option<f64>,
    /// τ_Rk in uncracked concrete C20/25, Pa, for s_cr,Np.
    pub bond_uncracked_c20_pa: Option<f64>,
    /// ψ⁰_sus. Missing: 0.6.
    pub sustained_ratio: Option<f64>,
    /// Characteristic spacing against splitting s_cr,sp, m.
    pub splitting_spacing_m: Option<f64>,
    /// Characteristic edge distance against splitting c_cr,sp, m.
    pub splitting_edge_m: Option<f64>,
    /// k_8 of pry-out.
    pub k8: Option<f64>,
}

/// Anchor category of ACI 355.2 and 355.4.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AciCategory {
    /// Low sensitivity to installation, high reliability.
    One,
    /// Medium.
    Two,
    /// High sensitivity, low reliability.
    Three,
}

/// Product data to ACI 318-19 chapter 17.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct AciProduct {
    /// Category from the tests.
    pub category: Option<AciCategory>,
    /// Characteristic bond stress in cracked concrete τ_cr, Pa.
    pub bond_cracked_pa: Option<f64>,
    /// Characteristic bond stress in uncracked concrete τ_uncr, Pa.
    pub bond_uncracked_pa: Option<f64>,
    /// Nominal pull-out strength in cracked concrete, not for bonded or headed ones.
    pub pull_out_cracked: Option<PullOut>,
    /// Nominal pull-out strength in uncracked concrete.
    pub pull_out_uncracked: Option<PullOut>,
    /// Critical edge distance c_ac, m.
    pub critical_edge_m: Option<f64>,
    /// Load-bearing length in shear ℓ_e, m. Missing: h_ef.
    pub bearing_length_m: Option<f64>,
}

/// How a hole was drilled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Drilling {
    /// Hammer drill.
    Hammer,
    /// Hammer drill with a hollow bit that draws the dust off.
    HollowBit,
    /// Diamond core.
    Diamond,
    /// Diamond core, roughened.
    DiamondRoughened,
}

/// What stands in the hole while the adhesive is filled in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum HoleCondition {
    /// Dry concrete.
    Dry,
    /// Wet concrete.
    Wet,
    /// Hole full of water.
    Flooded,
}

/// Which way a fastener is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Orientation {
    /// Downward, into a floor.
    Down,
    /// Horizontally, into a wall.
    Horizontal,
    /// Upward, into a soffit.
    Overhead,
}

/// What the bond strengths of a product stand for.
#[derive(Debug, Clone, PartialEq)]
pub struct BondCover {
    /// Largest long-term temperature, °C.
    pub long_term_c: f64,
    /// Largest short-term temperature, °C.
    pub short_term_c: f64,
    /// Ways of drilling.
    pub drilling: BTreeSet<Drilling>,
    /// Conditions of the hole.
    pub holes: BTreeSet<HoleCondition>,
    /// Directions of setting.
    pub orientations: BTreeSet<Orientation>,
}

/// How a bonded fastener is going to be set and used.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BondUse {
    /// Largest long-term temperature of the concrete, °C.
    pub long_term_c: Option<f64>,
    /// Largest short-term temperature of the concrete, °C.
    pub short_term_c: Option<f64>,
    /// Way of drilling.
    pub drilling: Option<Drilling>,
    /// Condition of the hole.
    pub hole: Option<HoleCondition>,
    /// Direction of setting.
    pub orientation: Option<Orientation>,
}

impl Product {
    /// Why the bond strengths can't be used here, if they can't: something was not stated, or they don't stand for it.
    pub fn bond_not_covered(&self) -> Option<super::NotChecked> {
        use super::NotChecked::{MissingData, NotCovered};
        let Some(cover) = &self.bond_cover else { return Some(MissingData { field: "bond_cover" }) };
        let here = &self.bond_use;
        let (Some(long), Some(short)) = (here.long_term_c, here.short_term_c) else {
            return Some(MissingData { field: "temperature" });
        };
        let Some(drilling) = here.drilling else { return Some(MissingData { field: "drilling" }) };
        let Some(hole) = here.hole else { return Some(MissingData { field: "hole condition" }) };
        let Some(orientation) = here.orientation else { return Some(MissingData { field: "orientation" }) };
        if !(long <= cover.long_term_c && short <= cover.short_term_c) {
            return Some(NotCovered { what: "temperature" });
        }
        if !cover.drilling.contains(&drilling) {
            return Some(NotCovered { what: "way of drilling" });
        }
        if !cover.holes.contains(&hole) {
            return Some(NotCovered { what: "condition of the hole" });
        }
        if !cover.orientations.contains(&orientation) {
            return Some(NotCovered { what: "direction of setting" });
        }
        None
    }

    pub(super) fn check(&self) -> Result<(), AnchorageFault> {
        self.least.check()?;
        self.en.check()?;
        self.aci.check()
    }
}

impl LeastDistances {
    fn check(&self) -> Result<(), AnchorageFault> {
        positive_if_given("least spacing_m", self.spacing_m)?;
        positive_if_given("least edge_m", self.edge_m)?;
        positive_if_given("least thickness_m", self.thickness_m)
    }
}

impl EnProduct {
    fn check(&self) -> Result<(), AnchorageFault> {
        for (field, value) in [
            ("steel_tension_n", self.steel_tension_n),
            ("steel_shear_n", self.steel_shear_n),
            ("steel_moment_nm", self.steel_moment_nm),
            ("gamma_inst", self.gamma_inst),
            ("bond_cracked_pa", self.bond_cracked_pa),
            ("bond_uncracked_pa", self.bond_uncracked_pa),
            ("bond_uncracked_c20_pa", self.bond_uncracked_c20_pa),
            ("splitting_spacing_m", self.splitting_spacing_m),
            ("splitting_edge_m", self.splitting_edge_m),
            ("k8", self.k8),
        ] {
            positive_if_given(field, value)?;
        }
        if let Some(gamma) = self.gamma_inst {
            super::fault::least("gamma_inst", gamma, 1.0)?;
        }
        ratio_if_given("sustained_ratio", self.sustained_ratio)?;
        pull_out("pull_out_cracked", self.pull_out_cracked)?;
        pull_out("pull_out_uncracked", self.pull_out_uncracked)
    }
}

impl AciProduct {
    fn check(&self) -> Result<(), AnchorageFault> {
        for (field, value) in [
            ("ACI bond_cracked_pa", self.bond_cracked_pa),
            ("ACI bond_uncracked_pa", self.bond_uncracked_pa),
            ("critical_edge_m", self.critical_edge_m),
            ("bearing_length_m", self.bearing_length_m),
        ] {
            positive_if_given(field, value)?;
        }
        pull_out("ACI pull_out_cracked", self.pull_out_cracked)?;
        pull_out("ACI pull_out_uncracked", self.pull_out_uncracked)
    }
}

fn pull_out(field: &'static str, value: Option<PullOut>) -> Result<(), AnchorageFault> {
    match value {
        Some(PullOut::Characteristic(n)) => positive_if_given(field, Some(n)),
        Some(PullOut::NotDecisive) | None => Ok(()),
    }
}
