//! Strength and stiffness, held against closed forms of a weightless unit whose rope hangs straight down.

use std::f64::consts::PI;

use gantline_plan::assess::{Code, Severity};
use gantline_plan::basis::load_case::GRAVITY_M_S2;
use gantline_plan::basis::{LoadLevel, Tension};
use gantline_plan::catalog::SectionShape;
use gantline_plan::document::Plan;

use crate::case::{Case, Wanted};
use crate::site::{Site, pulling, rigid_arm, set};

const STEEL_PA: f64 = 210e9;
const YIELD_PA: f64 = 355e6;

/// Cases.
pub fn cases() -> Vec<Case> {
    let mut all = members();
    all.extend(second_order());
    all.extend(deflection());
    all.extend(socket());
    all
}

/// The pull at which the arm of [`rigid_arm`] is used up: its root bends with T·1 m, shear is below half of what it holds,
/// nothing else acts. EN 1993-1-1 6.2.5: M_pl,Rd = W_pl·f_y/γ_M0, γ_M0 = 1; W_pl = (D³ − d³)/6 = 45.167 cm³: 16.034 kN.
pub fn arm_limit_n() -> f64 {
    (0.1_f64.powi(3) - 0.09_f64.powi(3)) / 6.0 * YIELD_PA
}

fn members() -> Vec<Case> {
    let pulled = |share: f64| Site::weightless(rigid_arm(), arm_limit_n() * share).plan();
    let code = Code::MemberUtilization;
    vec![
        Case::new(code, "a thousandth too hard", pulled(1.001), Wanted::Fails(Severity::Blocking)).measures(1.001),
        Case::new(code, "a thousandth less", pulled(0.999), Wanted::Meets).measures(0.999),
    ]
}

/// A mast of 50 × 4 mm, 1.90 m tall, under a rigid arm: only the mast is pressed, so it buckles as Euler's cantilever,
/// N_cr = π²·EI/(2H)², I = π·(D⁴ − d⁴)/64. Two pieces of the mast meet it within 0.1 %
/// (their cubic shapes bend a little stiffer than a cosine).
fn second_order() -> Vec<Case> {
    let inertia = PI / 64.0 * (0.05_f64.powi(4) - 0.042_f64.powi(4));
    let critical_n = PI * PI * STEEL_PA * inertia / (2.0_f64 * 1.9).powi(2);
    let factor = |alpha_cr: f64| -> Plan {
        let mut family = rigid_arm();
        let mast = family.masts.values_mut().next().unwrap();
        mast.tube.section = SectionShape::RoundTube { diameter_m: 0.05, wall_m: 0.004 };
        family.bases.values_mut().next().unwrap().socket_diameter_m = 0.1;
        Site::weightless(family, critical_n / alpha_cr).plan()
    };
    let (code, note) = (Code::SecondOrder, Wanted::Fails(Severity::Note));
    let case = |says, alpha_cr: f64, wanted| {
        Case::new(code, says, factor(alpha_cr), wanted).measures_within(alpha_cr, 1e-3 * alpha_cr)
    };
    vec![
        case("just below 10", 9.99, note),
        case("just above 10", 10.01, Wanted::Meets),
        case("just below 3", 2.997, Wanted::Fails(Severity::Blocking)),
        case("just above 3", 3.003, note),
    ]
}

/// The tip of [`rigid_arm`] goes down by T·(a³/(3·EI_arm) + a²·H/EI_mast + H/EA_mast); a hundredth of the outreach is allowed.
fn deflection() -> Vec<Case> {
    let inertia = |outer: f64, inner: f64| PI / 64.0 * (outer.powi(4) - inner.powi(4));
    let area = PI / 4.0 * (0.3_f64.powi(2) - 0.26_f64.powi(2));
    let arm = 1.0 / (3.0 * STEEL_PA * inertia(0.1, 0.09));
    let mast = 1.9 / (STEEL_PA * inertia(0.3, 0.26)) + 1.9 / (STEEL_PA * area);
    let limit_n = 0.01 / (arm + mast);
    let hanging = |share: f64| {
        let tension =
            Tension::Service { mass_kg: set(limit_n * share / GRAVITY_M_S2), dynamic: set(1.0), load_factor: set(1.0) };
        Site { basis: pulling(tension, LoadLevel::Service), ..Site::weightless(rigid_arm(), 0.0) }.plan()
    };
    let (code, note) = (Code::TipDeflection, Wanted::Fails(Severity::Note));
    vec![
        Case::new(code, "a thousandth too heavy", hanging(1.001), note).measures_within(0.01001, 1e-9),
        Case::new(code, "a thousandth lighter", hanging(0.999), Wanted::Meets).measures_within(0.00999, 1e-9),
    ]
}

/// The couple of a moment alone over the engaged depth h presses with 6·M/h² per meter at mouth and foot; the wall of the mast
/// is a ring of radius R under that push, spread over ±β = ±60° as a radial pressure, whose parts square to the push cancel:
/// the pressures add up to W·β/sin β.
fn socket() -> Vec<Case> {
    let (engaged, wall, radius) = (0.38_f64, 0.02, 0.14);
    let half_angle = PI / 3.0;
    let (bending, hoop) = ring_coefficients(half_angle);
    // σ = W·β/sin β·(6·m·R/t + n)/t with W = 6·T·1 m/h² per meter.
    let push_n_per_m = YIELD_PA * wall / (6.0 * bending * radius / wall + hoop) * half_angle.sin() / half_angle;
    let limit_n = push_n_per_m * engaged.powi(2) / 6.0;
    let pulled = |share: f64| Site::weightless(rigid_arm(), limit_n * share).plan();
    let code = Code::MastInSocket;
    vec![
        Case::new(code, "a thousandth over the bound", pulled(1.001), Wanted::NotChecked),
        Case::new(code, "a thousandth below it", pulled(0.999), Wanted::Meets).measures_within(0.999, 1e-4),
    ]
}

/// Largest bending m·W·R and hoop force n·W of a ring pushed over ±β and held by shear in its wall, by quadrature over
/// the push of the closed form for a push at a point: m = [1 + ½·cos φ − (π − φ)·sin φ]/(2π), n = [1.5·cos φ + (π − φ)·sin φ]/(2π)
/// (Roark, circular rings under a radial load balanced by tangential shear; from memory, to be confirmed).
fn ring_coefficients(half_angle: f64) -> (f64, f64) {
    let at_point = |phi: f64| {
        // Alike to both sides of the push.
        let phi = phi.abs();
        let phi = if phi > PI { 2.0 * PI - phi } else { phi };
        let shear = (PI - phi) * phi.sin();
        ((1.0 + 0.5 * phi.cos() - shear) / (2.0 * PI), (1.5 * phi.cos() + shear) / (2.0 * PI))
    };
    let steps = 2000;
    let mean = |phi: f64| {
        let sum = (0..steps).fold((0.0, 0.0), |sum, i| {
            let (m, n) = at_point(phi + half_angle * (2.0 * (f64::from(i) + 0.5) / f64::from(steps) - 1.0));
            (sum.0 + m, sum.1 + n)
        });
        (sum.0 / f64::from(steps), sum.1 / f64::from(steps))
    };
    (0..=720)
        .map(|i| mean(PI * f64::from(i) / 720.0))
        .fold((0.0_f64, 0.0_f64), |most, (m, n)| (most.0.max(m.abs()), most.1.max(n.abs())))
}
