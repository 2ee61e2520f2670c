//! A tube cast into a slab: the bearing couple by which it hands shear and moment to the concrete round it.
//!
//! Rigid tube, pressure straight from top to foot over the projected width, as between a rigid post and an even bedding:
//! σ(z) runs from V/(d·L) + 6·(M + V·L/2)/(d·L²) at the top to V/(d·L) − 6·(M + V·L/2)/(d·L²) at the foot. Statics, derived
//! here. What breaks out near an edge lies outside EN 1992-4 and ACI 318 chapter 17 and is for the structural engineer.

use thiserror::Error;

/// A tube in concrete.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sleeve {
    /// Outside diameter d, m.
    pub diameter_m: f64,
    /// Depth L in the concrete, m.
    pub depth_m: f64,
}

/// The bearing couple of a sleeve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SleeveForces {
    /// Largest pressure, at the top, Pa; on the side toward which the shear pushes.
    pub top_pa: f64,
    /// Pressure at the foot, Pa; negative where it presses on the other side.
    pub foot_pa: f64,
    /// Push on the concrete near the top, N.
    pub upper_n: f64,
    /// Its depth below the top, m.
    pub upper_at_m: f64,
    /// Push near the foot on the other side, N; zero where all presses on one side. Upper less lower is the shear.
    pub lower_n: f64,
    /// Its depth below the top, m.
    pub lower_at_m: f64,
}

/// Why a sleeve gives no answer.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error("sleeve {field} must be {asked}, found {value}")]
pub struct SleeveFault {
    /// Name of the field.
    pub field: &'static str,
    /// What it must be.
    pub asked: &'static str,
    /// What was found.
    pub value: f64,
}

impl Sleeve {
    /// The couple under a shear V ≥ 0 and a moment M ≥ 0 at the top face, both in one plane and one sense: the worst.
    pub fn forces(&self, shear_n: f64, moment_nm: f64) -> Result<SleeveForces, SleeveFault> {
        for (field, value) in [("diameter_m", self.diameter_m), ("depth_m", self.depth_m)] {
            if !(value.is_finite() && value > 0.0) {
                return Err(SleeveFault { field, asked: "a positive number", value });
            }
        }
        for (field, value) in [("shear_n", shear_n), ("moment_nm", moment_nm)] {
            if !(value.is_finite() && value >= 0.0) {
                return Err(SleeveFault { field, asked: "zero or a positive number", value });
            }
        }
        let (d, l) = (self.diameter_m, self.depth_m);
        let even = shear_n / (d * l);
        let turning = 6.0 * (moment_nm + shear_n * l / 2.0) / (d * l * l);
        let (top_pa, foot_pa) = (even + turning, even - turning);
        if foot_pa >= 0.0 {
            // Nothing acts, as with V the turning part is three times the even one.
            return Ok(SleeveForces { top_pa, foot_pa, upper_n: 0.0, upper_at_m: 0.0, lower_n: 0.0, lower_at_m: l });
        }
        let turns_at = l * top_pa / (top_pa - foot_pa);
        let below = l - turns_at;
        Ok(SleeveForces {
            top_pa,
            foot_pa,
            upper_n: 0.5 * d * top_pa * turns_at,
            upper_at_m: turns_at / 3.0,
            lower_n: -0.5 * d * foot_pa * below,
            lower_at_m: l - below / 3.0,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: d 0.2 m, L 0.25 m, V 10 kN, M 30 kN·m: even 0.2 MPa, turning 6·(30 + 1.25)/(0.2·0.0625) = 15 MPa:
    /// 15.2 MPa at the top, −14.8 MPa at the foot.
    #[test]
    fn a_sleeve_presses_by_hand() {
        let found = Sleeve { diameter_m: 0.2, depth_m: 0.25 }.forces(10e3, 30e3).unwrap();
        assert!((found.top_pa - 15.2e6).abs() < 1.0 && (found.foot_pa + 14.8e6).abs() < 1.0);
    }

    #[test]
    fn the_couple_is_in_equilibrium() {
        for (shear, moment) in [(10e3, 30e3), (5e3, 0.0), (0.0, 12e3), (20e3, 1e3)] {
            let found = Sleeve { diameter_m: 0.19, depth_m: 0.3 }.forces(shear, moment).unwrap();
            assert!((found.upper_n - found.lower_n - shear).abs() < 1e-6 * shear.max(1.0));
            // About the top face: what pushes below on the other side turns against the moment.
            let about_top = found.lower_n * found.lower_at_m - found.upper_n * found.upper_at_m;
            assert!((about_top - moment).abs() < 1e-6 * moment.max(1.0), "{about_top} {moment}");
        }
        let nothing = Sleeve { diameter_m: 0.19, depth_m: 0.3 }.forces(0.0, 0.0).unwrap();
        assert_eq!((nothing.upper_n, nothing.top_pa), (0.0, 0.0));
    }

    #[test]
    fn a_deeper_or_wider_sleeve_presses_less() {
        let at = |d: f64, l: f64| Sleeve { diameter_m: d, depth_m: l }.forces(8e3, 20e3).unwrap().top_pa;
        assert!(at(0.2, 0.3) < at(0.2, 0.25) && at(0.25, 0.25) < at(0.2, 0.25));
    }

    #[test]
    fn what_is_no_sleeve_is_named() {
        let fault = Sleeve { diameter_m: 0.2, depth_m: 0.0 }.forces(1.0, 1.0).unwrap_err();
        assert_eq!(fault.to_string(), "sleeve depth_m must be a positive number, found 0");
        assert!(Sleeve { diameter_m: 0.2, depth_m: 0.3 }.forces(f64::NAN, 1.0).is_err());
    }
}
