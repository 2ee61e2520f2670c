//! Which units are shown.

use serde::{Deserialize, Serialize};

/// SI or US customary units on screen and paper; the plan itself is always in SI.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UnitSystem {
    /// Meters, kilonewtons.
    #[default]
    Si,
    /// Feet and inches, pounds.
    UsCustomary,
}

/// What a figure is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// Length, m.
    Length,
    /// Area, m².
    Area,
    /// Force, N.
    Force,
    /// Moment, N·m.
    Moment,
    /// Stress or pressure, Pa.
    Stress,
    /// Mass, kg.
    Mass,
    /// Angle, rad.
    Angle,
    /// A ratio shown in percent.
    Share,
    /// A bare number.
    Number,
}

impl Kind {
    /// The unit in which figures of this kind are shown; empty where each figure carries its own, as feet and inches do,
    /// and for bare numbers.
    pub const fn unit(self, units: UnitSystem) -> &'static str {
        match (self, units) {
            (Self::Length, UnitSystem::Si) => "m",
            (Self::Length, UnitSystem::UsCustomary) | (Self::Number, _) => "",
            (Self::Area, UnitSystem::Si) => "m²",
            (Self::Area, UnitSystem::UsCustomary) => "sq ft",
            (Self::Force, UnitSystem::Si) => "kN",
            (Self::Force, UnitSystem::UsCustomary) => "lbf",
            (Self::Moment, UnitSystem::Si) => "kNm",
            (Self::Moment, UnitSystem::UsCustomary) => "lbf ft",
            (Self::Stress, UnitSystem::Si) => "MPa",
            (Self::Stress, UnitSystem::UsCustomary) => "ksi",
            (Self::Mass, UnitSystem::Si) => "kg",
            (Self::Mass, UnitSystem::UsCustomary) => "lb",
            (Self::Angle, _) => "°",
            (Self::Share, _) => "%",
        }
    }

    /// The unit in which figures of this kind stand in a column or along an axis: plain numbers need one for all, so that feet
    /// are not feet and inches.
    pub const fn column_unit(self, units: UnitSystem) -> &'static str {
        match (self, units) {
            (Self::Length, UnitSystem::UsCustomary) => "ft",
            _ => self.unit(units),
        }
    }

    /// A figure in the unit shown from its SI value: what a chart's axis counts in. Lengths are meters or feet.
    pub fn in_shown_unit(self, value: f64, units: UnitSystem) -> f64 {
        let us = units == UnitSystem::UsCustomary;
        value
            / match self {
                Self::Length if us => M_PER_FT,
                Self::Area if us => M_PER_FT * M_PER_FT,
                Self::Force if us => N_PER_LBF,
                Self::Force => 1e3,
                Self::Moment if us => N_PER_LBF * M_PER_FT,
                Self::Moment => 1e3,
                Self::Stress if us => N_PER_LBF / (M_PER_IN * M_PER_IN) * 1e3,
                Self::Stress => 1e6,
                Self::Mass if us => KG_PER_LB,
                Self::Angle => std::f64::consts::PI / 180.0,
                Self::Share => 0.01,
                Self::Length | Self::Area | Self::Mass | Self::Number => 1.0,
            }
    }
}

/// Exact or published factors (NIST SP 811).
pub(super) const M_PER_FT: f64 = 0.3048;
pub(super) const M_PER_IN: f64 = 0.0254;
pub(super) const N_PER_LBF: f64 = 4.448_221_615_260_5;
pub(super) const KG_PER_LB: f64 = 0.453_592_37;
