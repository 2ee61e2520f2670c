//! Title block and datum.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What the title block says. Dates are text that people enter: the plan has no clock.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Title {
    /// Name of the job.
    pub job: String,
    /// Street, place.
    pub address: String,
    /// Who planned it.
    pub author: String,
    /// Revision mark, such as "A".
    pub revision: String,
    /// Date of the revision, as entered.
    pub date: String,
    /// Anything else that belongs on the sheet, such as "invented scenario".
    pub remark: String,
}

/// Where the plan's coordinates stand in the world.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default, deny_unknown_fields)]
pub struct Datum {
    /// What level zero is, in words ("street at the main entrance").
    pub level_zero: String,
    /// Direction of north, counter-clockwise from the plan's y axis.
    pub north_rad: f64,
}
