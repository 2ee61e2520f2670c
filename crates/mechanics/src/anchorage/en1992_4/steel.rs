//! Steel of one fastener, EN 1992-4 7.2.1.3 and 7.2.2.3.

use std::f64::consts::PI;

use super::super::fastener::Fastener;
use super::super::group::{Annulus, Group, Restraint, Seating};
use super::super::line::{Line, Of, Sink, meters, newton_meters, newtons, number, pascals, square_meters};
use super::super::record::{Mode, NotChecked, Symbol};
use super::factors::En1992Factors;

/// What the steel bears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Steel {
    grade_pa: f64,
    area_m2: f64,
    /// N_Rk,s, N.
    tension_rk_n: f64,
    gamma_tension: f64,
    gamma_shear: f64,
    /// Shear, or why it can't be checked.
    pub shear: Result<SteelShear, NotChecked>,
}

/// Resistance to shear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum SteelShear {
    /// V_Rk,s = k_7·V⁰_Rk,s.
    Direct { k7: f64, one_n: f64 },
    /// V_Rk,s,M = α_M·M_Rk,s/l_a.
    LeverArm { alpha_m: f64, moment_nm: f64, arm_m: f64 },
}

impl Steel {
    /// The steel's resistances, or that its strength is outside the standard.
    pub(super) fn new(group: &Group, fck_pa: Option<f64>, factors: &En1992Factors) -> Result<Self, NotChecked> {
        let fastener = &group.fastener;
        if fastener.grade.ultimate_pa > 1000e6 * (1.0 + 1e-9) {
            return Err(NotChecked::NotCovered { what: "steel above 1000 MPa" });
        }
        let product = &fastener.product.en;
        Ok(Self {
            grade_pa: fastener.grade.ultimate_pa,
            area_m2: fastener.stress_area_m2,
            tension_rk_n: product.steel_tension_n.unwrap_or(fastener.stress_area_m2 * fastener.grade.ultimate_pa),
            gamma_tension: factors.steel_tension(&fastener.grade),
            gamma_shear: factors.steel_shear(&fastener.grade),
            shear: shear(group, fck_pa),
        })
    }

    /// N_Rd,s of one fastener, N.
    pub(super) fn tension_rd_n(&self) -> f64 {
        self.tension_rk_n / self.gamma_tension
    }

    /// V_Rd,s of one fastener, N, where it has no lever arm.
    pub(super) fn direct_rd_n(&self) -> Option<f64> {
        match self.shear {
            Ok(SteelShear::Direct { k7, one_n }) => Some(k7 * one_n / self.gamma_shear),
            Ok(SteelShear::LeverArm { .. }) | Err(_) => None,
        }
    }

    pub(super) fn tell_tension(&self, anchor: usize, action: f64, sink: &mut impl Sink) {
        let symbols: [Symbol; 4] = [
            square_meters("As", self.area_m2),
            pascals("fuk", self.grade_pa),
            newtons("NRk,s", self.tension_rk_n),
            number("gamma_Ms", self.gamma_tension),
        ];
        sink.take(&Line::against(
            Mode::SteelTension,
            Of::Anchor(anchor),
            ("EN 1992-4 7.2.1.3", "NRd,s = NRk,s/gamma_Ms, NRk,s of the product, else As*fuk"),
            &symbols,
            (action, self.tension_rd_n()),
        ));
    }

    /// V_Rd,s of one fastener: (7.34) to (7.36) without, (7.37) and (7.38) with lever arm, where M_Rk,s = M⁰_Rk,s·(1 −
    /// N_Ed/N_Rd,s) for tension.
    pub(super) fn tell_shear(&self, anchor: usize, (shear, tension): (f64, f64), sink: &mut impl Sink) {
        match self.shear {
            Err(why) => sink.take(&Line::only(
                Mode::SteelShear,
                "EN 1992-4 7.2.2.3",
                super::super::record::Outcome::NotChecked(why),
            )),
            Ok(SteelShear::Direct { k7, one_n }) => {
                let symbols: [Symbol; 4] = [
                    number("k7", k7),
                    newtons("V0Rk,s", one_n),
                    newtons("VRk,s", k7 * one_n),
                    number("gamma_Ms", self.gamma_shear),
                ];
                sink.take(&Line::against(
                    Mode::SteelShear,
                    Of::Anchor(anchor),
                    ("EN 1992-4 7.2.2.3.1 (7.35)", "VRd,s = k7*V0Rk,s/gamma_Ms, V0Rk,s of the product, else k6*As*fuk"),
                    &symbols,
                    (shear, k7 * one_n / self.gamma_shear),
                ));
            }
            Ok(SteelShear::LeverArm { alpha_m, moment_nm, arm_m }) => {
                let left = moment_nm * (1.0 - tension / self.tension_rd_n()).max(0.0);
                let resistance = alpha_m * left / arm_m;
                let symbols: [Symbol; 6] = [
                    number("alpha_M", alpha_m),
                    newton_meters("M0Rk,s", moment_nm),
                    newton_meters("MRk,s", left),
                    meters("la", arm_m),
                    newtons("VRk,s,M", resistance),
                    number("gamma_Ms", self.gamma_shear),
                ];
                sink.take(&Line::against(
                    Mode::SteelShearLeverArm,
                    Of::Anchor(anchor),
                    ("EN 1992-4 7.2.2.3.2 (7.37)", "VRd,s,M = alpha_M*M0Rk,s*(1 - NEd/NRd,s)/la/gamma_Ms"),
                    &symbols,
                    (shear, resistance / self.gamma_shear),
                ));
            }
        }
    }
}

/// Without lever arm on the concrete itself, or on a bed no thicker than d/2 and no weaker than 30 MPa and the concrete,
/// 6.2.2.3(1). The fastener is taken to bear on at least half the plate's thickness.
fn shear(group: &Group, fck_pa: Option<f64>) -> Result<SteelShear, NotChecked> {
    let fixture = &group.fixture;
    if fixture.annulus == Annulus::Open {
        let hole = fixture.hole_diameter_m.ok_or(NotChecked::MissingData { field: "hole_diameter_m" })?;
        // A hair of tolerance for the last bit of a difference.
        if hole - group.fastener.diameter_m > clearance_m(group.fastener.diameter_m) + 1e-9 {
            return Err(NotChecked::NotCovered { what: "clearance of the holes" });
        }
    }
    let d = group.fastener.diameter_m;
    match fixture.seating {
        Seating::OnConcrete => Ok(direct(group, fck_pa)),
        Seating::OnGrout { thickness_m, strength_pa }
            if thickness_m <= 0.5 * d && strength_pa >= 30e6 && fck_pa.is_some_and(|fck| strength_pa >= fck) =>
        {
            Ok(direct(group, fck_pa))
        }
        Seating::OnGrout { thickness_m, .. } => Ok(lever_arm(group, thickness_m, 0.5 * d)),
        Seating::StoodOff { gap_m, clamped: false } => Ok(lever_arm(group, gap_m, 0.5 * d)),
        Seating::StoodOff { gap_m, clamped: true } => Ok(lever_arm(group, gap_m, 0.0)),
    }
}

/// V⁰_Rk,s = k_6·A_s·f_uk, k_6 = 0.6 up to 500 MPa, else 0.5; 0.8 of it for h_ef/d < 5 in concrete below C20/25. k_7 = 1 for
/// one fastener or ductile steel (A_5 > 8 %), else 0.8.
fn direct(group: &Group, fck_pa: Option<f64>) -> SteelShear {
    let fastener = &group.fastener;
    let k6 = if fastener.grade.ultimate_pa <= 500e6 * (1.0 + 1e-9) { 0.6 } else { 0.5 };
    let full = fastener.product.en.steel_shear_n.unwrap_or(k6 * fastener.stress_area_m2 * fastener.grade.ultimate_pa);
    let weak = fck_pa.is_none_or(|fck| fck < 20e6) && fastener.embedment_m < 5.0 * fastener.outside_diameter_m;
    let is_ductile = fastener.grade.rupture_elongation.is_some_and(|a5| a5 > 0.08);
    SteelShear::Direct {
        k7: if group.anchors_m.len() == 1 || is_ductile { 1.0 } else { 0.8 },
        one_n: if weak { 0.8 * full } else { full },
    }
}

/// l_a = a_3 + e_1, e_1 = gap + t_fix/2; M⁰_Rk,s = 1.2·W_el·f_uk, W_el = π·d_s³/32 with the diameter of the stress area.
fn lever_arm(group: &Group, gap_m: f64, a3_m: f64) -> SteelShear {
    let fastener = &group.fastener;
    SteelShear::LeverArm {
        alpha_m: match group.fixture.restraint {
            Restraint::Free => 1.0,
            Restraint::Full => 2.0,
        },
        moment_nm: fastener.product.en.steel_moment_nm.unwrap_or_else(|| bending_moment_nm(fastener)),
        arm_m: a3_m + gap_m + 0.5 * group.fixture.thickness_m,
    }
}

fn bending_moment_nm(fastener: &Fastener) -> f64 {
    let stressed = (4.0 * fastener.stress_area_m2 / PI).sqrt();
    1.2 * PI * stressed.powi(3) / 32.0 * fastener.grade.ultimate_pa
}

/// Largest clearance of the hole, m: Table 6.1: 1 mm up to M8, 2 mm up to M24, 3 mm beyond.
fn clearance_m(diameter_m: f64) -> f64 {
    if diameter_m <= 0.008 {
        0.001
    } else if diameter_m <= 0.024 {
        0.002
    } else {
        0.003
    }
}
