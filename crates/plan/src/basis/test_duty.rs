//! Test duty: what kind of test a kind of fixing gets before it is used. A datum of the basis and no rule of the program.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::Sourced;

/// What kind of test is due.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TestDuty {
    /// None: it is inspected before the pour.
    None,
    /// A pull that must be held.
    Proof(Box<ProofTest>),
    /// What the engineer says.
    ByEngineer,
}

/// A proof test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ProofTest {
    /// Pull on one anchor.
    pub load_n: Sourced<f64>,
    /// Share of the anchors that are tested, 0 to 1.
    pub share: Sourced<f64>,
    /// How long the pull is held, s.
    pub hold_s: Sourced<f64>,
    /// In which direction it is pulled, in words ("along the anchor").
    pub direction: String,
    /// When it is repeated, in words ("by the engineer's decision").
    pub interval: String,
}

impl TestDuty {
    /// The duty in words and figures, as a schedule prints it.
    pub fn words(&self) -> String {
        match self {
            Self::None => "no pull test: inspected before the pour".to_owned(),
            Self::ByEngineer => "test by the engineer's decision".to_owned(),
            Self::Proof(proof) => format!(
                "proof test: {:.2} kN on {:.0} % of the anchors, held {} s, {}; repeated {}",
                proof.load_n.value / 1e3,
                proof.share.value * 100.0,
                proof.hold_s.value,
                proof.direction,
                proof.interval
            ),
        }
    }
}
