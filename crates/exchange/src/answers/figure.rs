//! A figure as printed: nine significant digits, so that answers of different systems are the same text.

use std::borrow::Cow;

use gantline_plan::assess::Component;
use gantline_plan::quantity::Kind;
use glam::{DVec2, DVec3};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::Serialize;

/// An SI figure, rounded; `null` when it is not finite.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[serde(transparent)]
pub struct Figure(f64);

/// Nothing smaller than this means anything here, in any SI unit: it is what rounding leaves of zero.
const NOTHING: f64 = 1.0e-9;
/// Digits printed.
const DIGITS: i32 = 9;

impl Figure {
    /// The figure with nine significant digits.
    pub fn of(value: f64) -> Self {
        if value.abs() < NOTHING {
            return Self(0.0);
        }
        Self(format!("{value:.8e}").parse().unwrap_or(value))
    }

    /// A coordinate in the grid of a drawing, m: to a tenth of a millimeter, however many digits stand before the point.
    pub fn in_grid(value_m: f64) -> Self {
        const STEP_PER_M: f64 = 1.0e4;
        Self((value_m * STEP_PER_M).round() / STEP_PER_M)
    }

    /// A figure of several that come from one computation: it is rounded where the ninth digit of the largest stands,
    /// since what lies below is rounding and differs between systems.
    pub fn beside(value: f64, largest: f64) -> Self {
        if !(largest.is_finite() && largest.abs() > NOTHING) {
            return Self::of(value);
        }
        let step = 10.0_f64.powi(largest.abs().log10().floor() as i32 + 1 - DIGITS);
        Self::of((value / step).round() * step)
    }

    /// Whether, as a figure of this kind, it is the share of a resistance that is none: a printed answer has null there.
    pub fn says_nothing_resists(self, kind: Kind) -> bool {
        kind == Kind::Share && self.0 == f64::INFINITY
    }

    /// Its value.
    pub const fn value(self) -> f64 {
        self.0
    }
}

impl JsonSchema for Figure {
    fn schema_name() -> Cow<'static, str> {
        "Figure".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "description": "An SI figure with nine significant digits; null when it is not finite.",
            "type": ["number", "null"]
        })
    }
}

/// A point of the plan: x, y, m.
pub fn point(at: DVec2) -> [Figure; 2] {
    [Figure::of(at.x), Figure::of(at.y)]
}

/// Outline of a region, m.
pub fn outline(points: &[DVec2]) -> Vec<[Figure; 2]> {
    points.iter().copied().map(point).collect()
}

/// A direction in the base's axes.
pub fn direction(pull: Option<DVec3>) -> Option<[Figure; 3]> {
    pull.map(|pull| [pull.x, pull.y, pull.z].map(|part| Figure::beside(part, 1.0)))
}

/// A figure whose key says what it is.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
pub enum Amount {
    /// A length.
    #[serde(rename = "length_m")]
    Length(Figure),
    /// An area.
    #[serde(rename = "area_m2")]
    Area(Figure),
    /// A force.
    #[serde(rename = "force_n")]
    Force(Figure),
    /// A moment.
    #[serde(rename = "moment_nm")]
    Moment(Figure),
    /// A stress or pressure.
    #[serde(rename = "stress_pa")]
    Stress(Figure),
    /// A mass.
    #[serde(rename = "mass_kg")]
    Mass(Figure),
    /// An angle.
    #[serde(rename = "angle_rad")]
    Angle(Figure),
    /// A ratio, 1 being the whole.
    #[serde(rename = "share")]
    Share(Figure),
    /// A bare number.
    #[serde(rename = "number")]
    Number(Figure),
}

impl Amount {
    /// An amount of the assessment.
    pub fn of(amount: gantline_plan::assess::Amount) -> Self {
        let figure = Figure::of(amount.value);
        match amount.kind {
            Kind::Length => Self::Length(figure),
            Kind::Area => Self::Area(figure),
            Kind::Force => Self::Force(figure),
            Kind::Moment => Self::Moment(figure),
            Kind::Stress => Self::Stress(figure),
            Kind::Mass => Self::Mass(figure),
            Kind::Angle => Self::Angle(figure),
            Kind::Share => Self::Share(figure),
            Kind::Number => Self::Number(figure),
        }
    }

    /// Its figure and the symbol of its unit; a ratio and a bare number have none.
    pub const fn figure_and_unit(self) -> (Figure, &'static str) {
        match self {
            Self::Length(figure) => (figure, "m"),
            Self::Area(figure) => (figure, "m²"),
            Self::Force(figure) => (figure, "N"),
            Self::Moment(figure) => (figure, "N·m"),
            Self::Stress(figure) => (figure, "Pa"),
            Self::Mass(figure) => (figure, "kg"),
            Self::Angle(figure) => (figure, "rad"),
            Self::Share(figure) | Self::Number(figure) => (figure, ""),
        }
    }

    /// The value of a component of a reaction.
    pub fn of_component(component: Component, figure: Figure) -> Self {
        if component.is_moment() { Self::Moment(figure) } else { Self::Force(figure) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nine_significant_digits_stay_whatever_the_size() {
        // Hand roundings: the tenth digit decides.
        assert_eq!(Figure::of(1.2345678949).value(), 1.23456789);
        assert_eq!(Figure::of(1.2345678951).value(), 1.23456790);
        assert_eq!(Figure::of(-123456789876.0).value(), -123456790000.0);
        assert_eq!(Figure::of(3.0000000004e-7).value(), 3.0e-7);
    }

    #[test]
    fn nothing_has_no_sign_and_what_is_not_finite_is_null() {
        assert_eq!(serde_json::to_string(&Figure::of(-0.0)).unwrap(), "0.0");
        assert_eq!(serde_json::to_string(&Figure::of(f64::INFINITY)).unwrap(), "null");
    }

    #[test]
    fn what_rounding_leaves_beside_a_large_figure_does_not_show() {
        assert_eq!(Figure::beside(-1.354e-12, 28680.9896).value(), 0.0);
        // The ninth digit of 28,680.9896 stands at 1e-4.
        assert_eq!(Figure::beside(1.23456789, 28680.9896).value(), 1.2346);
        assert_eq!(Figure::beside(28680.98964, 28680.98964).value(), 28680.9896);
    }

    #[test]
    fn a_coordinate_of_seven_digits_keeps_its_millimeters() {
        assert_eq!(Figure::in_grid(5_654_321.098_04).value(), 5_654_321.098);
        assert_eq!(Figure::in_grid(-0.000_01).value(), 0.0);
    }

    #[test]
    fn the_last_bits_of_a_sine_do_not_show() {
        let one = 0.1_f64 + 0.2;
        assert_ne!(one, 0.3);
        assert_eq!(Figure::of(one), Figure::of(0.3));
    }
}
