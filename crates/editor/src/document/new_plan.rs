//! A plan to begin with: the first load basis of the list and the demonstration families.

use gantline_plan::basis::{DesignCode, presets};
use gantline_plan::change::{Change, apply};
use gantline_plan::document::Plan;

use crate::demonstration;

/// A plan with nothing on it but the first load basis of the list and the demonstration families; else what could not be
/// read, in words.
pub fn new_plan() -> Result<Plan, String> {
    let presets = presets().map_err(|fault| format!("The load bases can't be read: {fault}"))?;
    let basis = presets.into_iter().next().ok_or_else(|| "There is no load basis to begin with.".to_owned())?.basis;
    let families = demonstration::families()?;
    let add = families.into_iter().map(|family| Change::AddFamily(Box::new(family))).collect();
    let empty = Plan::empty(basis, DesignCode::eurocode());
    apply(&empty, &Change::All(add)).map(|applied| applied.plan).map_err(|refused| refused.to_string())
}
