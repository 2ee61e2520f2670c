//! A family: parts that interchange, with the combinations that exist.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Arm, Base, Brace, Combination, Fixing, MakeUp, Mast, Material, SlewStops};
use crate::document::PartId;

/// Where a family's data come from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Origin {
    /// Made up for demonstration: no such parts are made.
    Invented,
    /// Declared by whoever makes the parts.
    DeclaredBy(String),
}

/// A family of parts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Family {
    /// Its name.
    pub name: String,
    /// Where its data come from.
    pub origin: Origin,
    /// Materials by name.
    pub materials: BTreeMap<String, Material>,
    /// Masts.
    pub masts: BTreeMap<PartId, Mast>,
    /// Arms.
    pub arms: BTreeMap<PartId, Arm>,
    /// Braces.
    pub braces: BTreeMap<PartId, Brace>,
    /// Bases.
    pub bases: BTreeMap<PartId, Base>,
    /// Fixing products that bases name.
    #[serde(default)]
    pub fixings: BTreeMap<PartId, Fixing>,
    /// Combinations that exist.
    pub combinations: Vec<Combination>,
    /// Tallest mast that may carry a front brace, if there is such a limit.
    #[serde(default)]
    pub front_brace_tallest_mast_m: Option<f64>,
}

impl Family {
    /// The combination of these parts, if it exists.
    pub fn combination(&self, mast: &PartId, arm: &PartId, brace: Option<&PartId>) -> Option<&Combination> {
        self.combinations.iter().find(|c| c.mast == *mast && c.arm == *arm && c.brace.as_ref() == brace)
    }

    /// Every make-up that the combinations and bases allow, in the order of the combinations.
    pub fn make_ups(&self, family: crate::document::FamilyId) -> Vec<MakeUp> {
        let mut all = Vec::new();
        for combination in &self.combinations {
            for (base_id, base) in &self.bases {
                if base.takes_masts() && (base.takes.is_empty() || base.takes.contains(&combination.mast)) {
                    all.push(MakeUp {
                        family,
                        mast: combination.mast.clone(),
                        arm: combination.arm.clone(),
                        brace: combination.brace.clone(),
                        base: base_id.clone(),
                        fixing: None,
                        slew_stops: SlewStops::WholeTurn,
                        drawn_slew_rad: 0.0,
                        foot_bearing_rad: 0.0,
                        foot_level_m: 0.0,
                    });
                }
            }
        }
        all
    }
}
