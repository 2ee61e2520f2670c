//! Figures of a record, precise enough to be followed with a pocket calculator: four significant digits at least.

use super::format::share;
use super::unit_system::{M_PER_FT, M_PER_IN, N_PER_LBF, UnitSystem};

/// A value of a record from its SI value and unit (`N`, `m`, `m2`, `m3`, `Pa`, `N*m`, `rad`, empty for a plain number), in
/// the unit in which an engineer writes it: `245 mm²`, `0.5213 MPa`. A unit that is not known stays as it is.
pub fn traced(value: f64, si_unit: &str, units: UnitSystem) -> String {
    let us = units == UnitSystem::UsCustomary;
    let pa_per_ksi = N_PER_LBF / (M_PER_IN * M_PER_IN) * 1e3;
    let (si_per_unit, unit) = match (si_unit, us) {
        ("N", false) => (1e3, "kN"),
        ("N", true) => (N_PER_LBF, "lbf"),
        ("N*m" | "N·m" | "Nm", false) => (1e3, "kNm"),
        ("N*m" | "N·m" | "Nm", true) => (N_PER_LBF * M_PER_FT, "lbf ft"),
        ("m", false) => (1e-3, "mm"),
        ("m", true) => (M_PER_IN, "in"),
        ("m2" | "m²", false) => (1e-6, "mm²"),
        ("m2" | "m²", true) => (M_PER_IN.powi(2), "sq in"),
        ("m3" | "m³", false) => (1e-6, "cm³"),
        ("m3" | "m³", true) => (M_PER_IN.powi(3), "cu in"),
        ("Pa", false) => (1e6, "MPa"),
        ("Pa", true) => (pa_per_ksi, "ksi"),
        ("rad", _) => return super::format::angle(value),
        (other, _) => (1.0, other),
    };
    let digits = significant(value / si_per_unit);
    if unit.is_empty() || !value.is_finite() { digits } else { format!("{digits} {unit}") }
}

/// What is said in place of a share of a resistance that is none.
pub const NOTHING_RESISTS: &str = "nothing resists";

/// Demand over resistance in percent; where nothing resists, it is said in words.
pub fn utilization(value: f64) -> String {
    if value.is_finite() { share(value) } else { NOTHING_RESISTS.to_owned() }
}

/// Four significant digits, all digits before the point, no zeros at the end.
fn significant(value: f64) -> String {
    if !value.is_finite() {
        return if value.is_nan() { "no number".to_owned() } else { "unlimited".to_owned() };
    }
    let magnitude = if value == 0.0 { 0.0 } else { value.abs().log10().floor() };
    let decimals = (3.0 - magnitude).clamp(0.0, 9.0) as usize;
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_areas_and_stresses_keep_four_digits() {
        // Stress area of M20: 245 mm², which is 0.3798 sq in; 0.5213 MPa is 0.07561 ksi (NIST SP 811, by hand).
        assert_eq!(traced(245e-6, "m2", UnitSystem::Si), "245 mm²");
        assert_eq!(traced(245e-6, "m²", UnitSystem::UsCustomary), "0.3798 sq in");
        assert_eq!(traced(521_300.0, "Pa", UnitSystem::Si), "0.5213 MPa");
        assert_eq!(traced(521_300.0, "Pa", UnitSystem::UsCustomary), "0.07561 ksi");
        assert_eq!(traced(160_000e-6, "m2", UnitSystem::Si), "160000 mm²");
    }

    #[test]
    fn plain_numbers_have_no_unit_and_unknown_units_stay() {
        assert_eq!(traced(7.7, "", UnitSystem::Si), "7.7");
        assert_eq!(traced(-0.0, "", UnitSystem::Si), "0");
        assert_eq!(traced(1.25, "N/m", UnitSystem::Si), "1.25 N/m");
        assert_eq!(traced(f64::INFINITY, "m", UnitSystem::Si), "unlimited");
    }

    #[test]
    fn nothing_that_resists_is_no_percentage() {
        assert_eq!(utilization(0.86), "86 %");
        assert_eq!(utilization(f64::INFINITY), "nothing resists");
    }
}
