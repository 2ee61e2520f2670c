//! Bolts through a base's plate in structural steel: tension, shear with the threads in the shear plane, both, and bearing of
//! the plate's hole, to EN 1993-1-8 Table 3.4 and AISC 360-22 J3.

use std::f64::consts::FRAC_PI_4;

use thiserror::Error;

/// A bolt and the plate it goes through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SteelBolt {
    /// Diameter d of the shank, m.
    pub diameter_m: f64,
    /// Stress area A_s, m².
    pub stress_area_m2: f64,
    /// Ultimate strength f_ub, Pa.
    pub ultimate_pa: f64,
    /// Yield strength f_yb, Pa.
    pub yield_pa: f64,
    /// The plate, where its bearing is to be looked at.
    pub plate: Option<BoltedPlate>,
}

/// The plate round a bolt's hole.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoltedPlate {
    /// Thickness t of the thinner part, m.
    pub thickness_m: f64,
    /// Ultimate strength f_u of the weaker part, Pa.
    pub ultimate_pa: f64,
    /// Diameter d_0 of the hole, m.
    pub hole_m: f64,
    /// Least distance of any bolt from the plate's rim, m; counted in every direction.
    pub to_rim_m: f64,
    /// Least spacing of any two bolts, m; infinite for one alone.
    pub spacing_m: f64,
}

/// The code with its factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BoltCode {
    /// EN 1993-1-8:2005.
    En1993 {
        /// γ_M2.
        gamma_m2: f64,
    },
    /// AISC 360-22, LRFD.
    Aisc360 {
        /// φ of J3.7 to J3.11.
        phi: f64,
    },
}

/// Resistances of one bolt, N.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoltStrength {
    /// In tension.
    pub tension_n: f64,
    /// In shear of one plane through the threads.
    pub shear_n: f64,
    /// Of the plate's hole in bearing; none where no plate was given.
    pub bearing_n: Option<f64>,
    code: BoltCode,
}

/// Why a bolt has no strength.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("bolt {field} must be a positive number, found {value}")]
pub struct BoltFault {
    /// Name of the field.
    pub field: &'static str,
    /// What was found.
    pub value: f64,
}

impl BoltCode {
    /// φ = 0.75 of AISC 360-22 J3.
    pub const AISC: Self = Self::Aisc360 { phi: 0.75 };

    /// Clauses as printed.
    pub const fn clause(self) -> &'static str {
        match self {
            Self::En1993 { .. } => "EN 1993-1-8 Table 3.4",
            Self::Aisc360 { .. } => "AISC 360-22 J3.7, J3.8, J3.11",
        }
    }

    /// The interaction as printed.
    pub const fn formula(self) -> &'static str {
        match self {
            Self::En1993 { .. } => "F_v/F_v,Rd + F_t/(1.4*F_t,Rd) <= 1, F_t <= F_t,Rd",
            Self::Aisc360 { .. } => "f_t <= phi*F'nt, F'nt = 1.3*Fnt - Fnt/(phi*Fnv)*f_v <= Fnt",
        }
    }
}

impl SteelBolt {
    /// Resistances under a code.
    ///
    /// EN: F_t,Rd = 0.9·f_ub·A_s/γ_M2; F_v,Rd = α_v·f_ub·A_s/γ_M2, α_v = 0.6 for classes 4.6, 5.6, 8.8 and 0.5 for others;
    /// F_b,Rd = k_1·α_b·f_u·d·t/γ_M2 with the least distance taken for e_1 and e_2 alike. AISC: φ·0.75·F_u·A_b,
    /// φ·0.45·F_u·A_b (threads in the plane), φ·min(1.2·l_c·t·F_u, 2.4·d·t·F_u).
    pub fn strength(&self, code: BoltCode) -> Result<BoltStrength, BoltFault> {
        positive("diameter_m", self.diameter_m)?;
        positive("stress_area_m2", self.stress_area_m2)?;
        positive("ultimate_pa", self.ultimate_pa)?;
        positive("yield_pa", self.yield_pa)?;
        if let Some(plate) = &self.plate {
            positive("plate thickness_m", plate.thickness_m)?;
            positive("plate ultimate_pa", plate.ultimate_pa)?;
            positive("hole_m", plate.hole_m)?;
            positive("to_rim_m", plate.to_rim_m)?;
            positive_or_none("spacing_m", plate.spacing_m)?;
        }
        Ok(match code {
            BoltCode::En1993 { gamma_m2 } => {
                positive("gamma_m2", gamma_m2)?;
                let whole_n = self.ultimate_pa * self.stress_area_m2 / gamma_m2;
                BoltStrength {
                    tension_n: 0.9 * whole_n,
                    shear_n: self.alpha_v() * whole_n,
                    bearing_n: self.plate.map(|plate| self.en_bearing_n(&plate) / gamma_m2),
                    code,
                }
            }
            BoltCode::Aisc360 { phi } => {
                positive("phi", phi)?;
                let whole_n = phi * self.ultimate_pa * FRAC_PI_4 * self.diameter_m * self.diameter_m;
                BoltStrength {
                    tension_n: 0.75 * whole_n,
                    shear_n: 0.45 * whole_n,
                    bearing_n: self.plate.map(|plate| phi * self.aisc_bearing_n(&plate)),
                    code,
                }
            }
        })
    }

    /// α_v of Table 3.4: 0.6 for classes 4.6, 5.6 and 8.8.
    fn alpha_v(&self) -> f64 {
        let ratio = self.yield_pa / self.ultimate_pa;
        let is_8_8 = self.ultimate_pa <= 840e6 && self.ultimate_pa >= 780e6;
        if ratio <= 0.65 || is_8_8 { 0.6 } else { 0.5 }
    }

    fn en_bearing_n(&self, plate: &BoltedPlate) -> f64 {
        let (e, p, hole) = (plate.to_rim_m, plate.spacing_m, plate.hole_m);
        let alpha_d = (e / (3.0 * hole)).min(p / (3.0 * hole) - 0.25);
        let alpha_b = alpha_d.min(self.ultimate_pa / plate.ultimate_pa).min(1.0);
        let k_1 = (2.8 * e / hole - 1.7).min(1.4 * p / hole - 1.7).min(2.5);
        (k_1 * alpha_b).max(0.0) * plate.ultimate_pa * self.diameter_m * plate.thickness_m
    }

    fn aisc_bearing_n(&self, plate: &BoltedPlate) -> f64 {
        let clear_m = (plate.to_rim_m - 0.5 * plate.hole_m).min(plate.spacing_m - plate.hole_m).max(0.0);
        (1.2 * clear_m).min(2.4 * self.diameter_m) * plate.thickness_m * plate.ultimate_pa
    }
}

impl BoltStrength {
    /// Share of the resistance used by one bolt under tension and shear; not a number where an action is none.
    pub fn used(&self, tension_n: f64, shear_n: f64) -> f64 {
        let pull = tension_n.max(0.0) / self.tension_n;
        let push = shear_n / self.shear_n;
        let both = match self.code {
            BoltCode::En1993 { .. } => pull.max(push + pull / 1.4),
            // F'nt = 1.3·Fnt − Fnt·f_v/(φ·Fnv): f_t/(φ·F'nt) = pull/(1.3 − push) where that is less than Fnt.
            BoltCode::Aisc360 { .. } => {
                let left = (1.3 - push).min(1.0);
                let bent = if left > 0.0 { pull / left } else { f64::INFINITY };
                if pull > 0.0 { bent.max(push) } else { push }
            }
        };
        match self.bearing_n {
            Some(bearing_n) if shear_n > 0.0 => both.max(shear_n / bearing_n),
            _ if (tension_n + shear_n).is_nan() => f64::NAN,
            _ => both,
        }
    }
}

fn positive(field: &'static str, value: f64) -> Result<(), BoltFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(BoltFault { field, value }) }
}

fn positive_or_none(field: &'static str, value: f64) -> Result<(), BoltFault> {
    if value > 0.0 { Ok(()) } else { Err(BoltFault { field, value }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn m20() -> SteelBolt {
        SteelBolt { diameter_m: 0.02, stress_area_m2: 245e-6, ultimate_pa: 800e6, yield_pa: 640e6, plate: None }
    }

    /// Tables of steel design give 141 kN in tension and 94.1 kN in shear for M20 8.8 (SCI/BCSA P363, from memory); by hand
    /// 0.9·800·245/1.25 = 141.1 kN and 0.6·800·245/1.25 = 94.08 kN.
    #[test]
    fn a_bolt_m20_bears_what_the_tables_say() {
        let strength = m20().strength(BoltCode::En1993 { gamma_m2: 1.25 }).unwrap();
        assert!((strength.tension_n - 141.1e3).abs() < 50.0 && (strength.shear_n - 94.08e3).abs() < 10.0);
    }

    /// AISC Manual Tables 7-1 and 7-2, 3/4 in. Group 120 (A325) with threads in the plane: 17.9 kip and 29.8 kip (from memory).
    #[test]
    fn a_bolt_of_three_quarters_of_an_inch_bears_what_the_manual_says() {
        let (inch, kip, ksi) = (0.0254, 4448.2216, 6.894_757e6);
        let bolt = SteelBolt {
            diameter_m: 0.75 * inch,
            stress_area_m2: 215e-6,
            ultimate_pa: 120.0 * ksi,
            yield_pa: 92.0 * ksi,
            plate: None,
        };
        let strength = bolt.strength(BoltCode::AISC).unwrap();
        assert!((strength.tension_n / kip - 29.8).abs() < 0.05 && (strength.shear_n / kip - 17.9).abs() < 0.05);
    }

    /// By hand, EN: 60 kN tension and 40 kN shear: 40/94.08 + 60/(1.4·141.12) = 0.4252 + 0.3037 = 0.7289.
    /// AISC: the same shares 0.4252 of both: F'nt = (1.3 − 0.4252)·Fnt, so 0.4252/0.8748 = 0.4860.
    #[test]
    fn tension_and_shear_together_use_more() {
        let en = m20().strength(BoltCode::En1993 { gamma_m2: 1.25 }).unwrap();
        assert!((en.used(60e3, 40e3) - 0.7289).abs() < 1e-4);
        let us = m20().strength(BoltCode::AISC).unwrap();
        let used = us.used(0.4252 * us.tension_n, 0.4252 * us.shear_n);
        assert!((used - 0.4252 / 0.8748).abs() < 1e-9, "{used}");
        assert!(us.used(1.0, 1.31 * us.shear_n).is_infinite() && us.used(f64::NAN, 1.0).is_nan());
    }

    /// By hand, EN: e 40, p 60, d_0 22: α_d = min(40/66, 60/66 − 0.25) = 0.6061; k_1 = min(3.391, 2.118, 2.5) = 2.118;
    /// 2.118·0.6061·510·20·10/1.25 = 104.8 kN. AISC: l_c = min(40 − 11, 60 − 22) = 29 mm: 0.75·1.2·29·10·510 = 133.1 kN.
    #[test]
    fn a_hole_near_the_rim_bears_less() {
        let plate =
            BoltedPlate { thickness_m: 0.01, ultimate_pa: 510e6, hole_m: 0.022, to_rim_m: 0.04, spacing_m: 0.06 };
        let bolt = SteelBolt { plate: Some(plate), ..m20() };
        let en = bolt.strength(BoltCode::En1993 { gamma_m2: 1.25 }).unwrap().bearing_n.unwrap();
        let us = bolt.strength(BoltCode::AISC).unwrap().bearing_n.unwrap();
        assert!((en - 104.8e3).abs() < 100.0 && (us - 133.1e3).abs() < 100.0, "{en} {us}");
    }

    #[test]
    fn lengths_of_nothing_are_named() {
        let fault = SteelBolt { diameter_m: 0.0, ..m20() }.strength(BoltCode::AISC).unwrap_err();
        assert_eq!(fault.field, "diameter_m");
    }
}
