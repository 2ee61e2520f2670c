//! A pin in double shear through two outer plates and what they hold between them: shear, bearing, bending, lugs.
//!
//! EN 1993-1-8 3.13 (Tables 3.9 type A and 3.10). EN 1999-1-1 8.5 has the same formulas with one factor γ_Mp (from
//! memory, to be confirmed). Pins that must come out again have serviceability limits of their own (3.13.2(3)); they
//! are checked when a service force is given.

use std::f64::consts::PI;

use thiserror::Error;

/// A solid round pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pin {
    /// Diameter d, m.
    pub diameter_m: f64,
    /// Yield strength f_yp, Pa.
    pub yield_pa: f64,
    /// Ultimate strength f_up, Pa.
    pub ultimate_pa: f64,
}

/// One plate, or one wall of a tube, with a hole for the pin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lug {
    /// Thickness t, m.
    pub thickness_m: f64,
    /// Diameter of the hole d_0, m.
    pub hole_m: f64,
    /// Metal between the hole's edge and the part's end toward which the pin pulls, m (a of Table 3.9).
    pub end_m: f64,
    /// Metal between the hole's edge and the part's side, m (c of Table 3.9).
    pub side_m: f64,
    /// Yield strength f_y (f_o, reduced near a weld), Pa.
    pub yield_pa: f64,
}

/// What the two outer plates hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Middle {
    /// One plate in the middle.
    Plate(Lug),
    /// A tube: the pin passes both its walls, each as described.
    TubeWalls(Lug),
}

/// A pin joint; both outer plates are alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinJoint {
    /// The pin.
    pub pin: Pin,
    /// Each of the outer plates.
    pub outer: Lug,
    /// What they hold.
    pub middle: Middle,
    /// Gap between an outer plate and what it holds, m.
    pub gap_m: f64,
}

/// Factors of the code that judges the joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PinCode {
    /// EN 1993-1-8.
    En1993 { gamma_m0: f64, gamma_m2: f64, gamma_m6_ser: f64 },
    /// EN 1999-1-1, one factor γ_Mp for all.
    En1999 { gamma_mp: f64, gamma_m6_ser: f64 },
}

/// A way in which a pin joint can fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PinMode {
    /// Shear of the pin.
    Shear,
    /// Bearing of the pin on the outer plates.
    BearingOuter,
    /// Bearing of the pin on the part in the middle.
    BearingMiddle,
    /// Bending of the pin.
    Bending,
    /// Bending and shear of the pin together.
    BendingWithShear,
    /// The outer plates tear beyond or beside the hole.
    LugOuter,
    /// The part in the middle tears beyond or beside the hole.
    LugMiddle,
    /// Bearing in service, of a pin that must come out again.
    ServiceBearing,
    /// Bending in service, of a pin that must come out again.
    ServiceBending,
}

/// Utilization of one mode, with its clause. For the lugs it is needed over present metal, so it does not fall to 0
/// with the force: an end or side shorter than the rule's own least length is above 1 at once.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinCheck {
    /// Mode.
    pub mode: PinMode,
    /// 1 is the limit.
    pub utilization: f64,
    /// Clause.
    pub clause: &'static str,
}

/// What the joint carries. Pulling is positive: lugs are torn; pressing does not tear them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PinForces {
    /// Largest design force across the pin, N; negative when it presses.
    pub design_n: f64,
    /// Force in service, N, for a pin that must come out again.
    pub service_n: Option<f64>,
}

/// Why a joint was not judged.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum PinFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("pin joint {field} must be a positive number, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// The gap is negative, infinite or not a number.
    #[error("pin joint gap_m must be zero or positive, found {value}")]
    Gap { value: f64 },
    /// The pin is larger than its hole.
    #[error("pin of {pin_m} m does not enter the hole of {hole_m} m ({part})")]
    HoleTooSmall { part: &'static str, pin_m: f64, hole_m: f64 },
    /// A force is infinite or not a number.
    #[error("pin joint {field} is not a finite number")]
    NotFinite { field: &'static str },
}

impl PinJoint {
    /// All modes of the joint under the given force, in the order of `PinMode`.
    ///
    /// With F the force, b the middle plate, a the outer plate, c the gap: shear F/2 per plane against 0.6·A·f_up/γ_M2;
    /// bearing against 1.5·t·d·f_y/γ_M0 with the lower f_y of pin and part; bending M = F/8·(b + 4c + 2a), or
    /// F/4·(a + 2c + t) when the middle is a tube whose walls t press the pin, against 1.5·W_el·f_yp/γ_M0;
    /// (M/M_Rd)² + (F_v/F_v,Rd)² ≤ 1. Lugs: a ≥ F·γ_M0/(2·t·f_y) + 2·d_0/3, c ≥ F·γ_M0/(2·t·f_y) + d_0/3.
    /// In service: bearing 0.6·t·d·f_y/γ_M6, bending 0.8·W_el·f_yp/γ_M6.
    pub fn checks(&self, code: &PinCode, forces: &PinForces) -> Result<Vec<PinCheck>, PinFault> {
        self.validate()?;
        let factors = Factors::of(code)?;
        if !forces.design_n.is_finite() {
            return Err(PinFault::NotFinite { field: "design_n" });
        }
        let mut checks = self.design_checks(&factors, forces.design_n);
        if let Some(service_n) = forces.service_n {
            if !service_n.is_finite() {
                return Err(PinFault::NotFinite { field: "service_n" });
            }
            checks.extend(self.service_checks(&factors, service_n.abs()));
        }
        Ok(checks)
    }

    /// Largest design force in N that every mode still bears, pulling.
    pub fn resistance_n(&self, code: &PinCode) -> Result<f64, PinFault> {
        self.validate()?;
        let factors = Factors::of(code)?;
        let unit = self.strength_uses(&factors, 1.0);
        let by_strength = 1.0 / unit.into_iter().fold(0.0, f64::max);
        let lug = |lug: &Lug, share: f64| {
            let strength = 2.0 * lug.thickness_m * lug.yield_pa / factors.yielding;
            let metal = (lug.end_m - 2.0 / 3.0 * lug.hole_m).min(lug.side_m - lug.hole_m / 3.0);
            strength * metal.max(0.0) / share
        };
        let (middle, share) = self.middle();
        Ok(by_strength.min(lug(&self.outer, 0.5)).min(lug(middle, share)))
    }

    /// The middle part and its share of the force.
    const fn middle(&self) -> (&Lug, f64) {
        match &self.middle {
            Middle::Plate(lug) => (lug, 1.0),
            Middle::TubeWalls(lug) => (lug, 0.5),
        }
    }

    fn moment_nm(&self, force_n: f64) -> f64 {
        let (a, c) = (self.outer.thickness_m, self.gap_m);
        match &self.middle {
            Middle::Plate(lug) => force_n / 8.0 * (lug.thickness_m + 4.0 * c + 2.0 * a),
            Middle::TubeWalls(lug) => force_n / 4.0 * (a + 2.0 * c + lug.thickness_m),
        }
    }

    fn bearing_use(&self, lug: &Lug, force_n: f64, coefficient: f64, factor: f64) -> f64 {
        let yield_pa = lug.yield_pa.min(self.pin.yield_pa);
        force_n * factor / (coefficient * lug.thickness_m * self.pin.diameter_m * yield_pa)
    }

    fn section_modulus_m3(&self) -> f64 {
        PI * self.pin.diameter_m.powi(3) / 32.0
    }

    /// Shear, bearing outside, bearing in the middle, bending, bending with shear (as the root of the sum of squares,
    /// so that it is proportional to the force like the others).
    fn strength_uses(&self, factors: &Factors, force_n: f64) -> [f64; 5] {
        let area = PI / 4.0 * self.pin.diameter_m.powi(2);
        let shear = 0.5 * force_n * factors.fracture / (0.6 * area * self.pin.ultimate_pa);
        let (middle, share) = self.middle();
        let bending =
            self.moment_nm(force_n) * factors.yielding / (1.5 * self.section_modulus_m3() * self.pin.yield_pa);
        [
            shear,
            self.bearing_use(&self.outer, 0.5 * force_n, 1.5, factors.yielding),
            self.bearing_use(middle, share * force_n, 1.5, factors.yielding),
            bending,
            bending.hypot(shear),
        ]
    }

    fn design_checks(&self, factors: &Factors, design_n: f64) -> Vec<PinCheck> {
        const MODES: [PinMode; 5] = [
            PinMode::Shear,
            PinMode::BearingOuter,
            PinMode::BearingMiddle,
            PinMode::Bending,
            PinMode::BendingWithShear,
        ];
        let uses = self.strength_uses(factors, design_n.abs());
        let mut checks: Vec<PinCheck> = MODES
            .into_iter()
            .zip(uses)
            .map(|(mode, utilization)| PinCheck { mode, utilization, clause: factors.clause })
            .collect();
        if design_n > 0.0 {
            let (middle, share) = self.middle();
            for (mode, lug, force_n) in
                [(PinMode::LugOuter, &self.outer, 0.5 * design_n), (PinMode::LugMiddle, middle, share * design_n)]
            {
                checks.push(PinCheck { mode, utilization: lug.use_of(force_n, factors), clause: factors.lug_clause });
            }
        }
        checks
    }

    fn service_checks(&self, factors: &Factors, force_n: f64) -> [PinCheck; 2] {
        let (middle, share) = self.middle();
        let bearing = self.bearing_use(&self.outer, 0.5 * force_n, 0.6, factors.service).max(self.bearing_use(
            middle,
            share * force_n,
            0.6,
            factors.service,
        ));
        let bending = self.moment_nm(force_n) * factors.service / (0.8 * self.section_modulus_m3() * self.pin.yield_pa);
        [
            PinCheck { mode: PinMode::ServiceBearing, utilization: bearing, clause: factors.clause },
            PinCheck { mode: PinMode::ServiceBending, utilization: bending, clause: factors.clause },
        ]
    }

    fn validate(&self) -> Result<(), PinFault> {
        let (middle, _) = self.middle();
        for (field, value) in [
            ("pin.diameter_m", self.pin.diameter_m),
            ("pin.yield_pa", self.pin.yield_pa),
            ("pin.ultimate_pa", self.pin.ultimate_pa),
            ("outer.thickness_m", self.outer.thickness_m),
            ("outer.end_m", self.outer.end_m),
            ("outer.side_m", self.outer.side_m),
            ("outer.yield_pa", self.outer.yield_pa),
            ("middle.thickness_m", middle.thickness_m),
            ("middle.end_m", middle.end_m),
            ("middle.side_m", middle.side_m),
            ("middle.yield_pa", middle.yield_pa),
        ] {
            positive(field, value)?;
        }
        if !(self.gap_m.is_finite() && self.gap_m >= 0.0) {
            return Err(PinFault::Gap { value: self.gap_m });
        }
        for (part, hole_m) in [("outer", self.outer.hole_m), ("middle", middle.hole_m)] {
            if !(hole_m.is_finite() && hole_m >= self.pin.diameter_m) {
                return Err(PinFault::HoleTooSmall { part, pin_m: self.pin.diameter_m, hole_m });
            }
        }
        Ok(())
    }
}

impl Lug {
    /// Needed over present metal, the worse of end and side (Table 3.9 type A).
    fn use_of(&self, force_n: f64, factors: &Factors) -> f64 {
        let for_force = force_n * factors.yielding / (2.0 * self.thickness_m * self.yield_pa);
        let end = (for_force + 2.0 / 3.0 * self.hole_m) / self.end_m;
        let side = (for_force + self.hole_m / 3.0) / self.side_m;
        end.max(side)
    }
}

/// The factors by what they divide.
struct Factors {
    yielding: f64,
    fracture: f64,
    service: f64,
    clause: &'static str,
    lug_clause: &'static str,
}

impl Factors {
    fn of(code: &PinCode) -> Result<Self, PinFault> {
        match *code {
            PinCode::En1993 { gamma_m0, gamma_m2, gamma_m6_ser } => {
                positive("gamma_m0", gamma_m0)?;
                positive("gamma_m2", gamma_m2)?;
                positive("gamma_m6_ser", gamma_m6_ser)?;
                Ok(Self {
                    yielding: gamma_m0,
                    fracture: gamma_m2,
                    service: gamma_m6_ser,
                    clause: "EN 1993-1-8 3.13.2, Table 3.10",
                    lug_clause: "EN 1993-1-8 3.13.1, Table 3.9 type A",
                })
            }
            PinCode::En1999 { gamma_mp, gamma_m6_ser } => {
                positive("gamma_mp", gamma_mp)?;
                positive("gamma_m6_ser", gamma_m6_ser)?;
                Ok(Self {
                    yielding: gamma_mp,
                    fracture: gamma_mp,
                    service: gamma_m6_ser,
                    clause: "EN 1999-1-1 8.5, pin connections",
                    lug_clause: "EN 1999-1-1 8.5, pin connections, geometry",
                })
            }
        }
    }
}

fn positive(field: &'static str, value: f64) -> Result<(), PinFault> {
    if value.is_finite() && value > 0.0 { Ok(()) } else { Err(PinFault::NotPositive { field, value }) }
}

#[cfg(test)]
mod tests {
    use super::*;

    const CODE: PinCode = PinCode::En1993 { gamma_m0: 1.0, gamma_m2: 1.25, gamma_m6_ser: 1.0 };

    fn joint() -> PinJoint {
        let lug = |thickness_m| Lug { thickness_m, hole_m: 0.021, end_m: 0.030, side_m: 0.023, yield_pa: 235e6 };
        PinJoint {
            pin: Pin { diameter_m: 0.02, yield_pa: 355e6, ultimate_pa: 510e6 },
            outer: lug(0.008),
            middle: Middle::Plate(lug(0.012)),
            gap_m: 0.001,
        }
    }

    fn value(checks: &[PinCheck], mode: PinMode) -> f64 {
        checks.iter().find(|check| check.mode == mode).unwrap().utilization
    }

    #[test]
    fn every_mode_is_the_hand_calculation() {
        // F = 40 kN. A = 314.159 mm²: shear 20/(0.6·314.159·510/1.25 = 76.906 kN) = 0.26006.
        // Bearing outside 20/(1.5·8·20·235 = 56.4) = 0.35461; in the middle 40/(1.5·12·20·235 = 84.6) = 0.47281.
        // M = 40/8·(12 + 4 + 16) = 160 kN·mm; M_Rd = 1.5·785.398·355 = 418.225 kN·mm: 0.38257; together 0.46259.
        // Lug outside: 20000/(2·8·235) = 5.3191; end (5.3191 + 14)/30 = 0.64397; side (5.3191 + 7)/23 = 0.53561.
        // Lug in the middle: 40000/(2·12·235) = 7.0922: end 21.0922/30 = 0.70307; side 14.0922/23 = 0.61270.
        let checks = joint().checks(&CODE, &PinForces { design_n: 40e3, service_n: Some(25e3) }).unwrap();
        for (mode, expected) in [
            (PinMode::Shear, 0.26006),
            (PinMode::BearingOuter, 0.35461),
            (PinMode::BearingMiddle, 0.47281),
            (PinMode::Bending, 0.38257),
            (PinMode::BendingWithShear, 0.46259),
            (PinMode::LugOuter, 0.64397),
            (PinMode::LugMiddle, 0.70307),
            // Service, 25 kN: bearing 25/(0.6·12·20·235 = 33.84) = 0.73877; M = 100/(0.8·785.398·355 = 223.053).
            (PinMode::ServiceBearing, 0.73877),
            (PinMode::ServiceBending, 0.44832),
        ] {
            // Five digits were carried.
            assert!((value(&checks, mode) - expected).abs() < 2e-5, "{mode:?}: {}", value(&checks, mode));
        }
    }

    #[test]
    fn the_resistance_is_where_the_worst_mode_reaches_one() {
        for joint in [joint(), PinJoint { gap_m: 0.01, ..joint() }] {
            let resistance = joint.resistance_n(&CODE).unwrap();
            let checks = joint.checks(&CODE, &PinForces { design_n: resistance, service_n: None }).unwrap();
            let worst = checks.iter().map(|check| check.utilization).fold(0.0, f64::max);
            assert!((worst - 1.0).abs() < 1e-12, "{worst}");
        }
    }

    #[test]
    fn a_tube_in_the_middle_bends_the_pin_by_its_walls_only() {
        // Two walls of 6 mm, each 3 mm from an outer plate of 8 mm: arm 4 + 3 + 3 = 10 mm, M = F/2·10 mm.
        let Middle::Plate(lug) = joint().middle else { unreachable!() };
        let tube = PinJoint { middle: Middle::TubeWalls(Lug { thickness_m: 0.006, ..lug }), gap_m: 0.003, ..joint() };
        assert!((tube.moment_nm(40e3) - 200.0).abs() < 1e-9);
    }

    #[test]
    fn pressing_does_not_tear_lugs_and_a_short_end_fails_without_force() {
        let pressed = joint().checks(&CODE, &PinForces { design_n: -40e3, service_n: None }).unwrap();
        assert!(pressed.iter().all(|check| !matches!(check.mode, PinMode::LugOuter | PinMode::LugMiddle)));
        let short = PinJoint { outer: Lug { end_m: 0.013, ..joint().outer }, ..joint() };
        let checks = short.checks(&CODE, &PinForces { design_n: 1.0, service_n: None }).unwrap();
        assert!(value(&checks, PinMode::LugOuter) > 1.0);
        assert_eq!(short.resistance_n(&CODE), Ok(0.0));
    }

    #[test]
    fn faults_name_the_field() {
        let tight = PinJoint { outer: Lug { hole_m: 0.019, ..joint().outer }, ..joint() };
        assert!(matches!(tight.resistance_n(&CODE), Err(PinFault::HoleTooSmall { part: "outer", .. })));
        let forces = PinForces { design_n: f64::NAN, service_n: None };
        assert_eq!(joint().checks(&CODE, &forces), Err(PinFault::NotFinite { field: "design_n" }));
        let code = PinCode::En1999 { gamma_mp: 0.0, gamma_m6_ser: 1.0 };
        assert_eq!(joint().resistance_n(&code), Err(PinFault::NotPositive { field: "gamma_mp", value: 0.0 }));
    }
}
