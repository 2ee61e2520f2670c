//! Property sets of our own names: labels, texts, and figures with the measure that says their unit.

use gantline_plan::quantity::{Kind, NOTHING_RESISTS};

use super::guid::Identities;
use super::step::{NONE, Ref, Step, label, list, real, text};
use crate::answers::Figure;

/// A property's value.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// Words.
    Words(String),
    /// A figure in SI.
    Figure(Kind, f64),
    /// A number of things.
    Count(usize),
}

/// A property.
pub type Property = (String, Value);

/// A property of words; none when there are none.
pub fn words(name: &str, words: impl Into<String>) -> Option<Property> {
    let words = words.into();
    (!words.is_empty()).then(|| (name.to_owned(), Value::Words(words)))
}

/// A property with a figure of nine digits; none when it is not finite, but for a share of a resistance that is none: that is
/// said.
pub fn figure(name: impl Into<String>, kind: Kind, value: f64) -> Option<Property> {
    let figure = Figure::of(value);
    if figure.says_nothing_resists(kind) {
        return words(&name.into(), NOTHING_RESISTS);
    }
    value.is_finite().then(|| (name.into(), Value::Figure(kind, figure.value())))
}

/// A property with a number of things.
pub fn count(name: &str, count: usize) -> Property {
    (name.to_owned(), Value::Count(count))
}

/// A property with a coordinate in the grid of a drawing, m.
pub fn in_grid(name: &str, value_m: f64) -> Property {
    (name.to_owned(), Value::Figure(Kind::Length, Figure::in_grid(value_m).value()))
}

/// Writes a set and gives it to things.
pub fn set(step: &mut Step, ids: &Identities, thing: &str, name: &str, properties: &[Property], to: &[Ref]) {
    if properties.is_empty() || to.is_empty() {
        return;
    }
    let written: Vec<Ref> = properties
        .iter()
        .map(|(name, value)| {
            step.add("IFCPROPERTYSINGLEVALUE", &format!("{},{NONE},{},{NONE}", label(name), written(value)))
        })
        .collect();
    let key = format!("{name} of {thing}");
    let values = format!("{},{NONE},{},{NONE},{}", ids.of_thing(&key), label(name), list(written));
    let set = step.add("IFCPROPERTYSET", &values);
    let id = ids.of_thing(&format!("{key}, given"));
    let to = list(to.iter().copied());
    step.add("IFCRELDEFINESBYPROPERTIES", &format!("{id},{NONE},{NONE},{NONE},{to},{set}"));
}

fn written(value: &Value) -> String {
    match value {
        Value::Words(words) if words.chars().count() <= 255 => format!("IFCLABEL({})", text(words)),
        Value::Words(words) => format!("IFCTEXT({})", text(words)),
        Value::Figure(kind, value) => format!("{}({})", measure(*kind), real(*value)),
        Value::Count(count) => format!("IFCINTEGER({count})"),
    }
}

const fn measure(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "IFCLENGTHMEASURE",
        Kind::Area => "IFCAREAMEASURE",
        Kind::Force => "IFCFORCEMEASURE",
        Kind::Moment => "IFCTORQUEMEASURE",
        Kind::Stress => "IFCPRESSUREMEASURE",
        Kind::Mass => "IFCMASSMEASURE",
        Kind::Angle => "IFCPLANEANGLEMEASURE",
        Kind::Share => "IFCRATIOMEASURE",
        Kind::Number => "IFCREAL",
    }
}
