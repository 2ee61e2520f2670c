//! The answer of `reactions`: what every unit brings to the structure in every combination.

use gantline_plan::assess::{Assessment, Outcome};
use gantline_plan::document::Plan;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::Figure;
use super::finding::FindingAnswer;
use super::plan_named::{CAUTION, PlanNamed};
use super::unit_reactions::UnitReactions;

/// Axes and signs of all reactions.
pub const AXES: &str = "Action of the unit on the structure, at the underside of its base plate on the mast axis: x horizontal \
    away from the building, y along the edge, z up, right-handed; slew counter-clockwise seen from above, 0 along x. The \
    base does not turn with the slew.";

/// Everything that `reactions` says about a plan.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ReactionsAnswer {
    /// `gantline-reactions`.
    pub format: &'static str,
    /// Version of this answer's form.
    pub version: u32,
    /// What may be done with it.
    pub caution: &'static str,
    /// Axes and signs of all reactions.
    pub axes: &'static str,
    /// The plan it is about.
    pub plan: PlanNamed,
    /// Every direction in which a rope may pull, and how resistances are found.
    pub basis: BasisAnswer,
    /// What could not be checked for the plan as a whole. Never a pass.
    pub not_checked: Vec<FindingAnswer>,
    /// Units by id.
    pub units: Vec<UnitReactions>,
}

/// What all combinations have in common.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct BasisAnswer {
    /// Half-angle of the load cone around straight down.
    pub cone_half_angle_rad: Figure,
    /// Largest lean toward the building; null when not limited.
    pub inward_lean_rad: Option<Figure>,
    /// Largest lean away from the building; null when not limited.
    pub outward_lean_rad: Option<Figure>,
    /// Factor on self-weight at the design level where weight makes things worse.
    pub weight_unfavorable: Figure,
    /// Factor on self-weight at the design level where weight helps.
    pub weight_favorable: Figure,
    /// Whether resistances are reduced by factors as well.
    pub resistance_factors: bool,
    /// Why.
    pub resistance_factors_source: String,
}

impl ReactionsAnswer {
    /// The name of the form.
    pub const FORMAT: &'static str = "gantline-reactions";
    /// The version of the form.
    pub const VERSION: u32 = 2;

    /// The answer about a plan and its assessment.
    pub fn of(plan: &Plan, assessment: &Assessment) -> Self {
        let open = assessment.plan_checks.iter().filter(|check| matches!(check.outcome, Outcome::NotChecked(_)));
        Self {
            format: Self::FORMAT,
            version: Self::VERSION,
            caution: CAUTION,
            axes: AXES,
            plan: PlanNamed::of(plan),
            basis: BasisAnswer::of(plan),
            not_checked: open.filter_map(FindingAnswer::of).collect(),
            units: UnitReactions::all(plan, assessment),
        }
    }
}

impl BasisAnswer {
    fn of(plan: &Plan) -> Self {
        let basis = &plan.basis;
        let lean = basis.cone.lean.as_ref();
        Self {
            cone_half_angle_rad: Figure::of(basis.cone.half_angle_rad.value),
            inward_lean_rad: lean.map(|lean| Figure::of(lean.inward_rad.value)),
            outward_lean_rad: lean.map(|lean| Figure::of(lean.outward_rad.value)),
            weight_unfavorable: Figure::of(basis.weight.unfavorable.value),
            weight_favorable: Figure::of(basis.weight.favorable.value),
            resistance_factors: basis.resistance_factors.value,
            resistance_factors_source: basis.resistance_factors.source.clone(),
        }
    }
}
