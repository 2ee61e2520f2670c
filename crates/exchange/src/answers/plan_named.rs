//! Which plan an answer is about, and what may be done with it.

use gantline_plan::document::Plan;
use gantline_plan::file::content_hash;
use schemars::JsonSchema;
use serde::Serialize;

/// What every answer says first.
pub const CAUTION: &str = "For planning. Rated loads and families come from whoever makes them; everything is to be \
    verified by a licensed structural engineer and a competent person under the local code; anchors are proof-tested \
    where required. Not a permit to hang from a rope.";

/// The plan an answer was made from.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct PlanNamed {
    /// Name of the job.
    pub job: String,
    /// Revision mark.
    pub revision: String,
    /// Remark of the title block.
    pub remark: String,
    /// SHA-256 of the plan file, 64 hexadecimal digits.
    pub content_sha256: String,
    /// Name of the load basis.
    pub load_basis: String,
    /// The law or standard behind the load basis, and what was read of it.
    pub regime: String,
    /// Edition of the design code on the side of resistances.
    pub design_code: String,
    /// Families in use.
    pub families: Vec<FamilyNamed>,
}

/// A family in use.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FamilyNamed {
    /// Its name.
    pub name: String,
    /// Whether it is made up for demonstration: no such parts are made.
    pub is_invented: bool,
}

impl PlanNamed {
    /// Names a plan.
    pub fn of(plan: &Plan) -> Self {
        let families = plan.families.values().map(|family| FamilyNamed {
            name: family.name.clone(),
            is_invented: family.origin == gantline_plan::catalog::Origin::Invented,
        });
        Self {
            job: plan.title.job.clone(),
            revision: plan.title.revision.clone(),
            remark: plan.title.remark.clone(),
            content_sha256: content_hash(plan).unwrap_or_default(),
            load_basis: plan.basis.name.clone(),
            regime: plan.basis.regime.value.clone(),
            design_code: plan.code.edition.clone(),
            families: families.collect(),
        }
    }
}
