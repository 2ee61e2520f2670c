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

/// Exact or published factors (NIST SP 811).
pub(super) const M_PER_FT: f64 = 0.3048;
pub(super) const M_PER_IN: f64 = 0.0254;
pub(super) const N_PER_LBF: f64 = 4.448_221_615_260_5;
pub(super) const KG_PER_LB: f64 = 0.453_592_37;
