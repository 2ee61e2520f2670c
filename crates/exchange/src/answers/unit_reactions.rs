//! One unit with everything it brings to the structure.

use gantline_plan::assess::{Assessment, Outcome, UnitAssessment};
use gantline_plan::document::{PlacementId, Plan};
use schemars::JsonSchema;
use serde::Serialize;

use super::combination::CombinationAnswer;
use super::finding::FindingAnswer;
use super::make_up::MakeUpAnswer;
use super::strength::StrengthAnswer;
use super::unit_place::{SlewStretch, UnitPlace, stretches, tag_of};

/// A unit's reactions.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct UnitReactions {
    /// The unit.
    pub id: PlacementId,
    /// Its tag.
    pub tag: String,
    /// Where it stands; null when its edge or roof is gone.
    pub place: Option<UnitPlace>,
    /// Its parts; null when some are missing.
    pub make_up: Option<MakeUpAnswer>,
    /// What is missing or wrong; null when its parts are known.
    pub make_up_fault: Option<String>,
    /// Slew at which a person may hang.
    pub loaded_slew: Vec<SlewStretch>,
    /// Slew that serves a facade.
    pub serving_slew: Vec<SlewStretch>,
    /// Every combination of the basis, in its order.
    pub combinations: Vec<CombinationAnswer>,
    /// Strength and stiffness; null when its parts are not known.
    pub strength: Option<StrengthAnswer>,
    /// What could not be checked for this unit. Never a pass.
    pub not_checked: Vec<FindingAnswer>,
}

impl UnitReactions {
    /// Every unit of a plan.
    pub fn all(plan: &Plan, assessment: &Assessment) -> Vec<Self> {
        assessment.units.iter().map(|(&id, unit)| Self::of(plan, id, unit)).collect()
    }

    fn of(plan: &Plan, id: PlacementId, unit: &UnitAssessment) -> Self {
        let reactions = unit.reactions.as_deref();
        let resolved = unit.resolved.as_deref().ok();
        let open = unit.checks.iter().filter(|check| matches!(check.outcome, Outcome::NotChecked(_)));
        Self {
            id,
            tag: tag_of(plan, id),
            place: UnitPlace::of(unit),
            make_up: resolved.map(MakeUpAnswer::of),
            make_up_fault: unit.resolved.as_ref().err().map(ToString::to_string),
            loaded_slew: stretches(&unit.loaded),
            serving_slew: stretches(&unit.serving),
            combinations: reactions
                .map_or_else(Vec::new, |found| found.combinations.iter().map(CombinationAnswer::of).collect()),
            strength: resolved.zip(reactions).map(|(unit, reactions)| StrengthAnswer::of(unit, reactions)),
            not_checked: open.filter_map(FindingAnswer::of).collect(),
        }
    }
}
