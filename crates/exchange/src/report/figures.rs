//! Figures of the report: at least four digits wherever someone is to compute on with them.

use gantline_plan::assess::Amount;
use gantline_plan::basis::LoadLevel;
use gantline_plan::quantity::{self, Kind, UnitSystem};
use glam::{DVec2, DVec3};

/// A figure with which someone computes on.
pub fn precise(amount: Amount, units: UnitSystem) -> String {
    match amount.kind {
        // Parts of a facade are measured in square meters, areas of steel and concrete in square millimeters.
        Kind::Area if amount.value.abs() >= 1.0 => quantity::area(amount.value, units),
        Kind::Share => quantity::utilization(amount.value),
        Kind::Mass | Kind::Angle => quantity::number(amount.kind, amount.value, units),
        kind => quantity::traced(without_rounding(amount.value, kind), si_unit(kind), units),
    }
}

/// What is left of rounding is nothing: less than a hundredth of a newton or newton meter, less than a ten-thousandth of a
/// millimeter.
fn without_rounding(value: f64, kind: Kind) -> f64 {
    let nothing = match kind {
        Kind::Force | Kind::Moment => 0.01,
        Kind::Length => 1e-7,
        _ => 0.0,
    };
    if value.abs() < nothing { 0.0 } else { value }
}

/// The SI unit of a kind as records write it.
const fn si_unit(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "m",
        Kind::Area => "m2",
        Kind::Force => "N",
        Kind::Moment => "N*m",
        Kind::Stress => "Pa",
        Kind::Mass | Kind::Angle | Kind::Share | Kind::Number => "",
    }
}

/// A force with which someone computes on.
pub fn force(value_n: f64, units: UnitSystem) -> String {
    quantity::traced(without_rounding(value_n, Kind::Force), "N", units)
}

/// A moment with which someone computes on.
pub fn moment(value_nm: f64, units: UnitSystem) -> String {
    quantity::traced(without_rounding(value_nm, Kind::Moment), "N*m", units)
}

/// A length with which someone computes on.
pub fn length(value_m: f64, units: UnitSystem) -> String {
    quantity::traced(without_rounding(value_m, Kind::Length), "m", units)
}

/// Two lengths of one place.
pub fn place(at_m: DVec2, units: UnitSystem) -> String {
    format!("({}, {})", quantity::length(at_m.x, units), quantity::length(at_m.y, units))
}

/// A number as a code writes it.
pub fn number(value: f64) -> String {
    quantity::traced(value, "", UnitSystem::Si)
}

/// Head of a column of [`pull`]s.
pub const PULL: &str = "Pull of the rope, from straight down";

/// Direction of a rope's pull: how far from straight down, and which way. Short, for it stands beside many figures.
pub fn pull(pull: Option<DVec3>) -> String {
    let Some(pull) = pull else { return "no rope pulls".to_owned() };
    let from_down = quantity::angle((-pull.z).clamp(-1.0, 1.0).acos());
    let level = pull.truncate();
    if level.length() < 1e-9 {
        return "straight down".to_owned();
    }
    format!("{from_down} toward {}", quantity::angle(level.y.atan2(level.x)))
}

/// The level of a combination, so that no two levels are mixed up.
pub fn level(level: LoadLevel) -> String {
    format!("{} level", level.name())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_areas_keep_their_digits_and_facades_are_in_square_meters() {
        let area = |value| precise(Amount { kind: Kind::Area, value }, UnitSystem::Si);
        assert_eq!(area(245e-6), "245 mm²");
        assert_eq!(area(312.25), "312.2 m²");
    }

    #[test]
    fn what_is_left_of_rounding_is_nothing() {
        assert_eq!(moment(-1.2e-4, UnitSystem::Si), "0 kNm");
        assert_eq!(force(3.187, UnitSystem::Si), "0.003187 kN");
    }

    #[test]
    fn a_pull_is_told_from_straight_down() {
        assert_eq!(pull(Some(DVec3::new(0.5, 0.0, -0.75_f64.sqrt()))), "30.0° toward 0.0°");
        assert_eq!(pull(Some(DVec3::NEG_Z)), "straight down");
    }
}
