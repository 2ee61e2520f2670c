//! Text to figures: any unit, sums, feet and inches; a bare number is in the unit shown.

use super::unit_system::{KG_PER_LB, Kind, M_PER_FT, M_PER_IN, N_PER_LBF, UnitSystem};

/// Why text is no figure.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ParseFault {
    /// Nothing was typed.
    #[error("type a number with or without a unit, such as {example}")]
    Empty {
        /// Something that would be understood.
        example: &'static str,
    },
    /// A part that is no number.
    #[error("\"{found}\" is not understood; type for example {example}")]
    NotUnderstood {
        /// The part.
        found: String,
        /// Something that would be understood.
        example: &'static str,
    },
}

const LENGTH_EXAMPLE: &str = "1.5, 1500 mm, 4' 11\" or 3.2+0.45";
const ANGLE_EXAMPLE: &str = "30 or 0.5 rad";
const MASS_EXAMPLE: &str = "21.4, 47 lb";
const AREA_EXAMPLE: &str = "12.5 or 130 sq ft";
const FORCE_EXAMPLE: &str = "15, 15 kN, 2500 N or 5000 lbf";
const MOMENT_EXAMPLE: &str = "1.2, 1.2 kNm or 900 lbf ft";
const STRESS_EXAMPLE: &str = "30, 30 MPa or 4.3 ksi";
const SHARE_EXAMPLE: &str = "5 or 5 %";
const NUMBER_EXAMPLE: &str = "1.25";

/// A figure of any kind as SI. A bare number is in the unit shown.
pub fn parse(kind: Kind, text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    match kind {
        Kind::Length => parse_length(text, units),
        Kind::Area => parse_area(text, units),
        Kind::Force => parse_force(text, units),
        Kind::Moment => parse_moment(text, units),
        Kind::Stress => parse_stress(text, units),
        Kind::Mass => parse_mass(text, units),
        Kind::Angle => parse_angle(text),
        Kind::Share => parse_share(text),
        Kind::Number => parse_number(text),
    }
}

/// A length in meters. A bare number is meters, or feet in US customary units.
pub fn parse_length(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let bare = match units {
        UnitSystem::Si => 1.0,
        UnitSystem::UsCustomary => M_PER_FT,
    };
    let known = [
        ("mm", 0.001),
        ("cm", 0.01),
        ("m", 1.0),
        ("ft", M_PER_FT),
        ("in", M_PER_IN),
        ("'", M_PER_FT),
        ("′", M_PER_FT),
        ("\"", M_PER_IN),
        ("″", M_PER_IN),
    ];
    sum(text, bare, &known, LENGTH_EXAMPLE)
}

/// An angle in radians. A bare number is degrees.
pub fn parse_angle(text: &str) -> Result<f64, ParseFault> {
    let degree = std::f64::consts::PI / 180.0;
    sum(text, degree, &[("deg", degree), ("°", degree), ("rad", 1.0)], ANGLE_EXAMPLE)
}

/// A mass in kilograms. A bare number is kilograms, or pounds in US customary units.
pub fn parse_mass(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let bare = match units {
        UnitSystem::Si => 1.0,
        UnitSystem::UsCustomary => KG_PER_LB,
    };
    sum(text, bare, &[("kg", 1.0), ("lb", KG_PER_LB)], MASS_EXAMPLE)
}

/// An area in square meters. A bare number is square meters, or square feet in US customary units.
pub fn parse_area(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let square_foot = M_PER_FT * M_PER_FT;
    let bare = pick(units, 1.0, square_foot);
    sum(text, bare, &[("m²", 1.0), ("m2", 1.0), ("sq ft", square_foot), ("ft²", square_foot)], AREA_EXAMPLE)
}

/// A force in newtons. A bare number is kilonewtons, or pounds-force in US customary units.
pub fn parse_force(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let bare = pick(units, 1e3, N_PER_LBF);
    let known = [("kN", 1e3), ("N", 1.0), ("lbf", N_PER_LBF), ("lb", N_PER_LBF), ("kip", 1e3 * N_PER_LBF)];
    sum(text, bare, &known, FORCE_EXAMPLE)
}

/// A moment in newton meters. A bare number is kilonewton meters, or pound-feet in US customary units.
pub fn parse_moment(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let pound_foot = N_PER_LBF * M_PER_FT;
    let bare = pick(units, 1e3, pound_foot);
    let known = [("kNm", 1e3), ("kN m", 1e3), ("Nm", 1.0), ("N m", 1.0), ("lbf ft", pound_foot), ("lb ft", pound_foot)];
    sum(text, bare, &known, MOMENT_EXAMPLE)
}

/// A stress in pascals. A bare number is megapascals, or thousands of pounds per square inch in US customary units.
pub fn parse_stress(text: &str, units: UnitSystem) -> Result<f64, ParseFault> {
    let psi = N_PER_LBF / (M_PER_IN * M_PER_IN);
    let bare = pick(units, 1e6, 1e3 * psi);
    let known = [("MPa", 1e6), ("kPa", 1e3), ("Pa", 1.0), ("N/mm²", 1e6), ("ksi", 1e3 * psi), ("psi", psi)];
    sum(text, bare, &known, STRESS_EXAMPLE)
}

/// A ratio. A bare number is percent.
pub fn parse_share(text: &str) -> Result<f64, ParseFault> {
    sum(text, 0.01, &[("%", 0.01)], SHARE_EXAMPLE)
}

const fn pick(units: UnitSystem, si: f64, us: f64) -> f64 {
    match units {
        UnitSystem::Si => si,
        UnitSystem::UsCustomary => us,
    }
}

/// A bare number.
pub fn parse_number(text: &str) -> Result<f64, ParseFault> {
    sum(text, 1.0, &[], NUMBER_EXAMPLE)
}

/// A sum of terms `[+-] number [/ number] [unit]`; terms that follow without a sign are added, as in 4' 11".
fn sum(text: &str, bare: f64, known: &[(&str, f64)], example: &'static str) -> Result<f64, ParseFault> {
    let mut rest = text.trim();
    if rest.is_empty() {
        return Err(ParseFault::Empty { example });
    }
    let fault = |found: &str| ParseFault::NotUnderstood { found: found.to_owned(), example };
    let mut total = 0.0;
    let mut run_sign = 1.0;
    let mut pending: Option<f64> = None;
    while !rest.is_empty() {
        let mut signed = false;
        if let Some(stripped) = rest.strip_prefix(['+', '-', '−']) {
            run_sign = if rest.starts_with('+') { 1.0 } else { -1.0 };
            rest = stripped.trim_start();
            signed = true;
        }
        if signed && let Some(whole) = pending.take() {
            total += whole * bare;
        }
        let (value, after) = take_number(rest).ok_or_else(|| fault(rest))?;
        let unit = known.iter().filter(|(name, _)| after.starts_with(name)).max_by_key(|(name, _)| name.len());
        // "6 1/2 in": a number directly before a fraction waits for the fraction's unit.
        let whole = pending.take().unwrap_or(0.0);
        let term = run_sign * value + whole;
        if let Some((name, factor)) = unit {
            total += term * factor;
            rest = after[name.len()..].trim_start();
            if rest.starts_with(char::is_alphabetic) {
                return Err(fault(rest));
            }
        } else {
            if whole != 0.0 || after.starts_with(char::is_alphabetic) {
                return Err(fault(after));
            }
            pending = Some(term);
            rest = after;
        }
    }
    total += pending.map_or(0.0, |term| term * bare);
    if total.is_finite() { Ok(total) } else { Err(fault(text)) }
}

/// A number at the head of the text, with decimal point or comma, or a fraction.
fn take_number(text: &str) -> Option<(f64, &str)> {
    let (value, rest) = take_decimal(text)?;
    if let Some(below) = rest.strip_prefix('/') {
        let (divisor, rest) = take_decimal(below.trim_start())?;
        return (divisor != 0.0).then(|| (value / divisor, rest));
    }
    Some((value, rest))
}

fn take_decimal(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ',')).unwrap_or(text.len());
    let value = text[..end].replace(',', ".").parse().ok()?;
    Some((value, text[end..].trim_start()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(text: &str, units: UnitSystem, expected_m: f64) {
        let found = parse_length(text, units).unwrap();
        assert!((found - expected_m).abs() < 1e-12, "{text}: {found} instead of {expected_m}");
    }

    #[test]
    fn any_unit_and_sums_are_understood() {
        near("1500mm", UnitSystem::Si, 1.5);
        near("1.5", UnitSystem::Si, 1.5);
        near("1,5 m", UnitSystem::Si, 1.5);
        near("3.2+0.45", UnitSystem::Si, 3.65);
        near("3.2 - 45 cm", UnitSystem::Si, 2.75);
        near("-0.25", UnitSystem::Si, -0.25);
        near("10", UnitSystem::UsCustomary, 3.048);
        near("4' 11\"", UnitSystem::Si, 59.0 * 0.0254);
        near("4' 6 1/2\"", UnitSystem::UsCustomary, 54.5 * 0.0254);
        near("1/2 in", UnitSystem::Si, 0.0127);
    }

    #[test]
    fn what_is_shown_can_be_typed_again() {
        for sixteenths in [0, 1, 17, 191, 192, 1000, 4321] {
            let value_m = f64::from(sixteenths) * 0.0254 / 16.0;
            let shown = crate::quantity::length(value_m, UnitSystem::UsCustomary);
            near(&shown, UnitSystem::UsCustomary, value_m);
        }
    }

    #[test]
    fn forces_and_stresses_are_read_in_either_system() {
        // NIST SP 811, B.8: 1 lbf = 4.448 222 N, 1 ksi = 6.894 757 MPa, 1 lbf ft = 1.355 818 N·m; to the digits printed.
        let near = |found: f64, expected: f64| assert!((found / expected - 1.0).abs() < 1e-6, "{found} {expected}");
        near(parse_force("15", UnitSystem::Si).unwrap(), 15e3);
        near(parse_force("2500 N", UnitSystem::UsCustomary).unwrap(), 2500.0);
        near(parse_force("5000", UnitSystem::UsCustomary).unwrap(), 5000.0 * 4.448_222);
        near(parse_force("5 kip", UnitSystem::Si).unwrap(), 5000.0 * 4.448_222);
        near(parse_stress("4 ksi", UnitSystem::Si).unwrap(), 4.0 * 6.894_757e6);
        near(parse_moment("1000 lbf ft", UnitSystem::Si).unwrap(), 1355.818);
        near(parse_share("5").unwrap(), 0.05);
        assert!(parse_force("5 kg", UnitSystem::Si).is_err());
    }

    #[test]
    fn every_kind_reads_back_what_it_shows() {
        let kinds = [Kind::Length, Kind::Area, Kind::Force, Kind::Moment, Kind::Stress, Kind::Mass, Kind::Angle];
        for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
            for kind in kinds.into_iter().chain([Kind::Share, Kind::Number]) {
                let shown = crate::quantity::number(kind, 2.5, units);
                let read = parse(kind, &shown, units).unwrap();
                assert_eq!(crate::quantity::number(kind, read, units), shown, "{kind:?} {units:?}");
            }
        }
    }

    #[test]
    fn nonsense_is_refused_and_named() {
        for text in ["", "abc", "1.5 miles", "1..5", "3 4 5x", "1/0", "--", "1e400"] {
            assert!(parse_length(text, UnitSystem::Si).is_err(), "{text}");
        }
        assert_eq!(parse_angle("30").unwrap(), 30.0_f64.to_radians());
        assert_eq!(parse_angle("0.5 rad").unwrap(), 0.5);
    }
}
