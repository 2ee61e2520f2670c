//! Crushing of a round tube's wall where a collar pushes on it: the pushed length as an elastic ring, a lower bound.
//!
//! A ring of mean radius R carries a radial push W, spread evenly over ±β, which the rest of the tube balances by
//! shear in the wall, q = W·sin φ/(π·R). Derivation: equilibrium of the ring gives M‴ + M′ = −W·R·sin φ/π, closure
//! ∫M = 0 and ∫M·cos φ = 0, and the push at φ = 0 a jump of the shear by W; the only solution is
//! M(φ) = W·R/(2π)·[1 + ½·cos φ − (π − φ)·sin φ], with hoop force of size W/(2π)·[1.5·cos φ + (π − φ)·sin φ]; a spread
//! push is their mean over ±β. For β = 0 the largest moment is 3/(4π)·W·R, as in Roark's Formulas for Stress and
//! Strain (circular rings under a radial load balanced by tangential shear; from memory, to be confirmed).
//!
//! The wall beside the pushed length helps in truth and is not counted, so the figure is on the safe side.

use std::f64::consts::PI;

use thiserror::Error;

/// The ring that a collar presses on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RingPush {
    /// Outside diameter of the tube, m.
    pub diameter_m: f64,
    /// Wall, m.
    pub wall_m: f64,
    /// Length of tube that is pushed, along its axis, m.
    pub length_m: f64,
    /// Half the angle over which the collar touches, rad; 0 for a line, which a loose fit comes near to; at most π/2.
    pub half_angle_rad: f64,
}

/// Why a ring gives no stress.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RingFault {
    /// A value is zero, negative, infinite or not a number.
    #[error("ring {field} must be a positive number, found {value}")]
    NotPositive { field: &'static str, value: f64 },
    /// The wall is half the diameter or more.
    #[error("ring wall_m {wall_m} must stay below half the diameter, {limit_m} m")]
    WallTooThick { wall_m: f64, limit_m: f64 },
    /// The contact angle is outside 0 to π/2.
    #[error("ring half_angle_rad must lie between 0 and π/2, found {value}")]
    Angle { value: f64 },
    /// The push is negative, infinite or not a number.
    #[error("ring push must be zero or positive, found {value} N")]
    Push { value: f64 },
}

impl RingPush {
    /// Largest stress in the wall for a push W in N, Pa: 6·M/(l·t²) + N/(l·t), both at their largest, wherever they are.
    pub fn stress_pa(&self, push_n: f64) -> Result<f64, RingFault> {
        self.validate()?;
        if !(push_n.is_finite() && push_n >= 0.0) {
            return Err(RingFault::Push { value: push_n });
        }
        let radius = 0.5 * (self.diameter_m - self.wall_m);
        let (bending, hoop) = self.largest_coefficients();
        let moment = bending * push_n * radius;
        Ok((6.0 * moment / self.wall_m + hoop * push_n) / (self.length_m * self.wall_m))
    }

    /// Largest |M|/(W·R) and |N|/W around the ring, looked up at every half degree.
    fn largest_coefficients(&self) -> (f64, f64) {
        let beta = self.half_angle_rad;
        let (mut bending, mut hoop) = (0.0_f64, 0.0_f64);
        for step in 0..=360 {
            let phi = PI * f64::from(step) / 360.0;
            bending = bending.max(spread(moment_integral, moment, phi, beta).abs());
            hoop = hoop.max(spread(hoop_integral, hoop_force, phi, beta).abs());
        }
        (bending, hoop)
    }

    fn validate(&self) -> Result<(), RingFault> {
        for (field, value) in [("diameter_m", self.diameter_m), ("wall_m", self.wall_m), ("length_m", self.length_m)] {
            if !(value.is_finite() && value > 0.0) {
                return Err(RingFault::NotPositive { field, value });
            }
        }
        let limit_m = 0.5 * self.diameter_m;
        if self.wall_m >= limit_m {
            return Err(RingFault::WallTooThick { wall_m: self.wall_m, limit_m });
        }
        if !(0.0..=PI / 2.0).contains(&self.half_angle_rad) {
            return Err(RingFault::Angle { value: self.half_angle_rad });
        }
        Ok(())
    }
}

/// Moment at φ ∈ [0, π] from a line push at 0, over W·R.
fn moment(phi: f64) -> f64 {
    (1.0 + 0.5 * phi.cos() - (PI - phi) * phi.sin()) / (2.0 * PI)
}

/// ∫ of `moment` from 0 to φ ∈ [0, π]; 0 again at π, since the ring is closed.
fn moment_integral(phi: f64) -> f64 {
    (phi + 1.5 * phi.sin() + (PI - phi) * phi.cos() - PI) / (2.0 * PI)
}

/// Hoop force at φ ∈ [0, π] from a line push at 0, over W.
fn hoop_force(phi: f64) -> f64 {
    (1.5 * phi.cos() + (PI - phi) * phi.sin()) / (2.0 * PI)
}

/// ∫ of `hoop_force` from 0 to φ ∈ [0, π].
fn hoop_integral(phi: f64) -> f64 {
    (0.5 * phi.sin() - (PI - phi) * phi.cos() + PI) / (2.0 * PI)
}

/// Mean effect at φ of a push spread over ±β: radial pressure W/(2·R·sin β) gives [I(φ + β) − I(φ − β)]/(2·sin β).
fn spread(integral: fn(f64) -> f64, line: fn(f64) -> f64, phi: f64, beta: f64) -> f64 {
    // Below this angle the quotient loses digits and the push is as good as a line.
    if beta < 1e-6 {
        return line(phi);
    }
    let around = |x: f64| {
        // The effect is even about 0 and about π, so its integral is odd about 0 and continues mirrored beyond π.
        if x < 0.0 {
            -integral(-x)
        } else if x > PI {
            2.0 * integral(PI) - integral(2.0 * PI - x)
        } else {
            integral(x)
        }
    };
    (around(phi + beta) - around(phi - beta)) / (2.0 * beta.sin())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Composite Simpson's rule over [0, π].
    fn over_half_ring(f: impl Fn(f64) -> f64) -> f64 {
        let n = 2000;
        let h = PI / f64::from(n);
        (0..=n)
            .map(|i| {
                let weight = if i == 0 || i == n { 1.0 } else { 2.0 + 2.0 * f64::from(i % 2) };
                weight * f(f64::from(i) * h)
            })
            .sum::<f64>()
            * h
            / 3.0
    }

    #[test]
    fn the_ring_closes_and_stands_in_equilibrium() {
        // Closure, and the balance of the upper half: its two cut forces carry the part of W that shear below balances.
        assert!(over_half_ring(moment).abs() < 1e-10);
        assert!(over_half_ring(|phi| moment(phi) * phi.cos()).abs() < 1e-10);
        // Jump of shear: M′(0+) = −½; M‴ + M′ = −sin φ/π by central differences of the formula.
        let h = 1e-3;
        assert!(((moment(h) - moment(0.0)) / h + 0.5).abs() < 1e-3);
        for phi in [0.3, 1.0, 1.7, 2.5] {
            let first = (moment(phi + h) - moment(phi - h)) / (2.0 * h);
            let third = (moment(phi + 2.0 * h) - 2.0 * moment(phi + h) + 2.0 * moment(phi - h) - moment(phi - 2.0 * h))
                / (2.0 * h.powi(3));
            assert!((third + first + phi.sin() / PI).abs() < 1e-5);
            // Radial balance: the hoop force is the second derivative of the moment.
            let second = (moment(phi + h) - 2.0 * moment(phi) + moment(phi - h)) / (h * h);
            assert!((second - hoop_force(phi)).abs() < 1e-5);
        }
    }

    #[test]
    fn a_line_push_has_three_quarters_over_pi() {
        let ring = RingPush { diameter_m: 0.106, wall_m: 0.006, length_m: 0.05, half_angle_rad: 0.0 };
        let (bending, hoop) = ring.largest_coefficients();
        assert!((bending - 0.75 / PI).abs() < 1e-12);
        // By hand: W = 1 kN, R = 50 mm, M = 11.9366 N·m; 6·M/(l·t²) = 39.789 MPa; hoop force, largest 0.43417 W
        // (where (π − φ)·cos φ = 2.5·sin φ, φ = 0.7609), 434.2/(50·6) = 1.447 MPa.
        assert!((hoop - 0.43417).abs() < 1e-4, "{hoop}");
        assert!((ring.stress_pa(1000.0).unwrap() - 41.236e6).abs() < 5e3);
    }

    #[test]
    fn a_spread_push_is_the_mean_of_line_pushes() {
        // Another way to the same number: 20001 line pushes over ±β, each with its share of the radial pressure.
        let beta = 0.6_f64;
        let parts = 20001;
        for phi in [0.0, 0.4, 1.2, 2.8, PI] {
            let mut sum = 0.0;
            for i in 0..parts {
                let at = -beta + 2.0 * beta * (f64::from(i) + 0.5) / f64::from(parts);
                let apart = (phi - at).abs();
                sum += moment(if apart > PI { 2.0 * PI - apart } else { apart });
            }
            let expected = sum * 2.0 * beta / f64::from(parts) / (2.0 * beta.sin());
            assert!((spread(moment_integral, moment, phi, beta) - expected).abs() < 1e-7);
        }
    }

    #[test]
    fn a_broader_contact_never_bends_the_wall_more_and_a_tiny_one_is_a_line() {
        let at = |half_angle_rad| RingPush { diameter_m: 0.1, wall_m: 0.005, length_m: 0.05, half_angle_rad };
        let mut last = at(0.0).largest_coefficients().0;
        assert!((at(1e-4).largest_coefficients().0 - last).abs() < 1e-4);
        for step in 1..=15 {
            let now = at(0.1 * f64::from(step)).largest_coefficients().0;
            assert!(now <= last + 1e-12);
            last = now;
        }
    }

    #[test]
    fn faults_name_the_field() {
        let ring = RingPush { diameter_m: 0.1, wall_m: 0.05, length_m: 0.05, half_angle_rad: 0.0 };
        assert!(matches!(ring.stress_pa(1.0), Err(RingFault::WallTooThick { .. })));
        let ring = RingPush { wall_m: 0.005, half_angle_rad: 2.0, ..ring };
        assert_eq!(ring.stress_pa(1.0), Err(RingFault::Angle { value: 2.0 }));
        let ring = RingPush { half_angle_rad: 0.0, ..ring };
        assert!(matches!(ring.stress_pa(f64::NAN), Err(RingFault::Push { .. })));
    }
}
