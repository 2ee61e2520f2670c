//! Line work: what was read from a file, blocks unfolded, before anyone has chosen layers, units and a tolerance.

use std::collections::BTreeMap;

use gantline_plan::document::GeoPlace;

use super::curve::Trace;
use super::length_unit::LengthUnit;

/// Lines and curves of a file with their layers.
#[derive(Debug, Clone, PartialEq)]
pub struct LineWork {
    /// What the file says about lengths.
    pub measure: Measure,
    /// Layers that hold anything, in order of their names.
    pub layers: Vec<Layer>,
    /// Lines and curves, in the file's own unit: x and y, or longitude and latitude.
    pub traces: Vec<Trace>,
    /// What was passed over, in words, with how many of it.
    pub passed_over: BTreeMap<String, usize>,
    /// What should be known about how the file was read.
    pub said: Vec<String>,
}

/// What a file says about its lengths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// They are in this unit.
    Stated(LengthUnit),
    /// Nothing: someone has to be asked.
    NotStated,
    /// They are degrees of longitude and latitude, about this middle: on a plane that touches there they become meters,
    /// unless the plan has a plane already.
    Degrees {
        /// The middle of everything in the file.
        middle: GeoPlace,
    },
}

/// A layer with what it holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Layer {
    /// Its name.
    pub name: String,
    /// Lines and curves on it, blocks unfolded.
    pub traces: usize,
    /// How many of them are closed by themselves.
    pub closed: usize,
    /// Anything else on it: texts, hatches, dimensions.
    pub others: usize,
    /// Whether the file shows it.
    pub shown: bool,
}

impl LineWork {
    /// The layer of this name; capitals don't matter.
    pub fn layer(&self, name: &str) -> Option<usize> {
        let exact = self.layers.iter().position(|layer| layer.name == name);
        exact.or_else(|| self.layers.iter().position(|layer| layer.name.to_lowercase() == name.to_lowercase()))
    }

    /// The unit that the file states; meters where degrees become meters.
    pub const fn stated_unit(&self) -> Option<LengthUnit> {
        match self.measure {
            Measure::Stated(unit) => Some(unit),
            Measure::NotStated => None,
            Measure::Degrees { .. } => Some(LengthUnit::Meter),
        }
    }
}
