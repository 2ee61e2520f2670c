//! Figures to text: fixed decimals, so that digits don't jump while a figure changes.

use super::unit_system::{KG_PER_LB, Kind, M_PER_FT, M_PER_IN, N_PER_LBF, UnitSystem};

/// A figure of any kind from its SI value.
pub fn number(kind: Kind, value: f64, units: UnitSystem) -> String {
    match kind {
        Kind::Length => length(value, units),
        Kind::Area => area(value, units),
        Kind::Force => force(value, units),
        Kind::Moment => moment(value, units),
        Kind::Stress => stress(value, units),
        Kind::Mass => mass(value, units),
        Kind::Angle => angle(value),
        Kind::Share => share(value),
        Kind::Number => format!("{:.2}", clean(value, 2)),
    }
}

/// The same without its unit, for columns whose heading names it.
pub fn digits(kind: Kind, value: f64, units: UnitSystem) -> String {
    let text = number(kind, value, units);
    let unit = kind.unit(units);
    text.strip_suffix(unit).map_or_else(|| text.clone(), |digits| digits.trim_end().to_owned())
}

/// Rounds away a minus sign that would stand before zeros only.
fn clean(value: f64, decimals: i32) -> f64 {
    let step = 10.0_f64.powi(-decimals);
    if value.abs() < step / 2.0 { 0.0 } else { value }
}

/// A length: `1.500 m`, or feet and inches to the sixteenth: `4' 11 1/16"`.
pub fn length(value_m: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.3} m", clean(value_m, 3)),
        UnitSystem::UsCustomary => feet_and_inches(value_m),
    }
}

/// A level over level zero, with its sign.
pub fn level(value_m: f64, units: UnitSystem) -> String {
    let sign = if value_m > 0.0 { "+" } else { "" };
    format!("{sign}{}", length(value_m, units))
}

/// Nearest sixteenth of an inch.
fn feet_and_inches(value_m: f64) -> String {
    let sixteenths = (value_m.abs() / M_PER_IN * 16.0).round() as i64;
    let sign = if value_m < 0.0 && sixteenths > 0 { "-" } else { "" };
    let (feet, rest) = (sixteenths / 192, sixteenths % 192);
    let (inches, part) = (rest / 16, rest % 16);
    let mut denominator = 16;
    let mut numerator = part;
    while numerator > 0 && numerator % 2 == 0 {
        numerator /= 2;
        denominator /= 2;
    }
    let fraction = if numerator == 0 { String::new() } else { format!(" {numerator}/{denominator}") };
    if feet == 0 { format!("{sign}{inches}{fraction}\"") } else { format!("{sign}{feet}' {inches}{fraction}\"") }
}

/// An area: `12.3 m²` or `132.4 sq ft`.
pub fn area(value_m2: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.1} m²", clean(value_m2, 1)),
        UnitSystem::UsCustomary => {
            format!("{:.1} sq ft", clean(value_m2 / (M_PER_FT * M_PER_FT), 1))
        }
    }
}

/// A force: `12.21 kN` or `2745 lbf`.
pub fn force(value_n: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.2} kN", clean(value_n / 1e3, 2)),
        UnitSystem::UsCustomary => format!("{:.0} lbf", clean(value_n / N_PER_LBF, 0)),
    }
}

/// A moment: `13.84 kNm` or `10211 lbf ft`.
pub fn moment(value_nm: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.2} kNm", clean(value_nm / 1e3, 2)),
        UnitSystem::UsCustomary => {
            format!("{:.0} lbf ft", clean(value_nm / (N_PER_LBF * M_PER_FT), 0))
        }
    }
}

/// A stress: `215.0 MPa` or `31.2 ksi`.
pub fn stress(value_pa: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.1} MPa", clean(value_pa / 1e6, 1)),
        UnitSystem::UsCustomary => {
            format!("{:.1} ksi", clean(value_pa / (N_PER_LBF / (M_PER_IN * M_PER_IN)) / 1e3, 1))
        }
    }
}

/// A mass: `21.4 kg` or `47.2 lb`.
pub fn mass(value_kg: f64, units: UnitSystem) -> String {
    match units {
        UnitSystem::Si => format!("{:.1} kg", clean(value_kg, 1)),
        UnitSystem::UsCustomary => format!("{:.1} lb", clean(value_kg / KG_PER_LB, 1)),
    }
}

/// An angle in degrees: `30.0°`.
pub fn angle(value_rad: f64) -> String {
    format!("{:.1}°", clean(value_rad.to_degrees(), 1))
}

/// A ratio in percent: `84 %`; below ten percent with one decimal, `0.5 %`, since limits stand there. `100 %` is the whole and
/// nothing else: what would round to it is written with a decimal that says on which side it lies, `99.9 %` or `100.1 %`.
pub fn share(value: f64) -> String {
    let percent = value * 100.0;
    if value != 1.0 && (percent - 100.0).abs() <= 0.5 {
        let tenths =
            if value > 1.0 { (percent * 10.0).ceil().max(1001.0) } else { (percent * 10.0).floor().min(999.0) };
        return format!("{:.1} %", tenths / 10.0);
    }
    // What would round up to 10.0 is written as 10.
    if percent.abs() < 9.95 { format!("{:.1} %", clean(percent, 1)) } else { format!("{percent:.0} %") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_show_three_decimals_or_sixteenths_of_an_inch() {
        assert_eq!(length(1.5, UnitSystem::Si), "1.500 m");
        assert_eq!(length(-0.0001, UnitSystem::Si), "0.000 m");
        assert_eq!(length(0.3048 * 12.0 + 0.0254 * 6.5, UnitSystem::UsCustomary), "12' 6 1/2\"");
        assert_eq!(length(0.0254 * 3.25, UnitSystem::UsCustomary), "3 1/4\"");
        assert_eq!(length(-0.3048, UnitSystem::UsCustomary), "-1' 0\"");
    }

    #[test]
    fn digits_and_unit_together_are_the_whole_figure() {
        let kinds = [Kind::Length, Kind::Area, Kind::Force, Kind::Moment, Kind::Stress, Kind::Mass, Kind::Angle];
        for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
            for kind in kinds.into_iter().chain([Kind::Share, Kind::Number]) {
                let (whole, digits) = (number(kind, -1234.5, units), digits(kind, -1234.5, units));
                let unit = kind.unit(units);
                let joint = if kind == Kind::Angle || unit.is_empty() { "" } else { " " };
                assert_eq!(whole, format!("{digits}{joint}{unit}"));
                if (kind, units) != (Kind::Length, UnitSystem::UsCustomary) {
                    let shown: f64 = digits.parse().unwrap();
                    // Half of the last digit shown: forces and moments in pounds show none.
                    assert!((shown - kind.in_shown_unit(-1234.5, units)).abs() <= 0.5, "{kind:?}");
                }
            }
        }
    }

    #[test]
    fn a_limit_of_half_a_percent_is_neither_none_nor_one() {
        // The right side is what anyone writes by hand for these ratios.
        let written = [(0.005, "0.5 %"), (0.0949, "9.5 %"), (0.0996, "10 %"), (0.84, "84 %"), (0.0, "0.0 %")];
        for (value, text) in written {
            assert_eq!(share(value), text);
        }
        assert_eq!(share(-0.0004), "0.0 %");
    }

    #[test]
    fn only_the_whole_is_a_hundred_percent() {
        let written = [(1.0, "100 %"), (1.004, "100.4 %"), (1.000_001, "100.1 %"), (1.0 + f64::EPSILON, "100.1 %")];
        for (value, text) in written {
            assert_eq!(share(value), text);
        }
        let below = [
            (0.999_999, "99.9 %"),
            (1.0 - f64::EPSILON, "99.9 %"),
            (0.996, "99.6 %"),
            (0.995, "99.5 %"),
            (0.994, "99 %"),
        ];
        for (value, text) in below {
            assert_eq!(share(value), text);
        }
        assert_eq!((share(1.006), share(1.0049)), ("101 %".to_owned(), "100.5 %".to_owned()));
        assert_eq!(digits(Kind::Share, 1.004, UnitSystem::Si), "100.4");
    }

    #[test]
    fn five_thousand_pounds_are_22_24_kilonewtons() {
        // 29 CFR 1910.27 prints 5,000 lb; NIST SP 811 gives 4.448 222 N per pound-force.
        assert_eq!(force(5000.0 * N_PER_LBF, UnitSystem::Si), "22.24 kN");
        assert_eq!(force(22_241.1, UnitSystem::UsCustomary), "5000 lbf");
    }
}
