//! Comparison with a stated tolerance; the message names what was compared.

#[track_caller]
pub fn near(what: &str, got: f64, expected: f64, tolerance: f64) {
    assert!((got - expected).abs() <= tolerance, "{what}: got {got}, expected {expected} within {tolerance}");
}

/// Half a unit of the last of `digits` significant digits of a printed number.
pub fn rounding(printed: f64, digits: i32) -> f64 {
    0.5 * 10f64.powi(printed.abs().log10().floor() as i32 + 1 - digits)
}
