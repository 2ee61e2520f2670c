//! Load cases: a rope's pull, a tether at the base's eye, wind on the unit.
//!
//! Each tension states its level, so that a load with factors inside can't be factored again.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;

/// Standard gravity, m/s² (ISO 80000-3).
pub const GRAVITY_M_S2: f64 = 9.80665;

/// Name of a case inside its basis.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(transparent)]
pub struct CaseId(pub String);

/// A load case.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LoadCase {
    /// Its name in words.
    pub name: String,
    /// What acts.
    pub load: CaseLoad,
}

/// What acts in a case.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CaseLoad {
    /// A rope at the arm's tip, in any direction of the load cone.
    Rope {
        /// How many persons hang on it.
        persons: u32,
        /// How hard it pulls.
        tension: Tension,
    },
    /// A person tied to the base's eye: horizontal, any direction, at eye height.
    Tether {
        /// How hard it pulls.
        tension: Tension,
    },
    /// Wind on mast, arm and brace, any horizontal direction.
    Wind {
        /// Working or parked.
        state: WindState,
        /// Speed at the unit's height, gusts included as the source says.
        speed_m_s: Sourced<f64>,
        /// Load factor of the design level.
        load_factor: Sourced<f64>,
    },
}

/// In which state the wind meets the unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum WindState {
    /// While technicians work.
    InService,
    /// Left standing with no one on it.
    Parked,
}

/// How hard a rope pulls, and at which level that is meant.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Tension {
    /// Masses as they are: mass × g × dynamic factor; the load factor is applied at the design level only.
    Service {
        /// Persons, tools and rope.
        mass_kg: Sourced<f64>,
        /// Factor for jerks and stops.
        dynamic: Sourced<f64>,
        /// Load factor of the design level.
        load_factor: Sourced<f64>,
    },
    /// An anchor load with its factors inside: no load factor is ever applied to it.
    Ultimate {
        /// The load.
        anchor_load_n: Sourced<f64>,
    },
    /// A multiple of the combination's declared rating, to be held by the resistance the source names.
    MultipleOfRated {
        /// How many times.
        times: Sourced<f64>,
    },
}

impl Tension {
    /// The pull as it is in service, N; none where the source gives no such value.
    pub fn service_n(&self) -> Option<f64> {
        match self {
            Self::Service { mass_kg, dynamic, .. } => Some(mass_kg.value * GRAVITY_M_S2 * dynamic.value),
            Self::Ultimate { .. } | Self::MultipleOfRated { .. } => None,
        }
    }
}
