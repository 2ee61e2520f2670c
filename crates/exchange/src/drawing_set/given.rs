//! What sheets are drawn from.

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use super::paper_size::PaperSize;
use crate::documents::Imprint;

/// What sheets are drawn from, and how they are wanted.
#[derive(Debug, Clone, Copy)]
pub struct Given<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// What was computed about it.
    pub assessment: &'a Assessment,
    /// What every sheet says of itself.
    pub imprint: &'a Imprint,
    /// Units of figures and scales.
    pub units: UnitSystem,
    /// Size of the sheets.
    pub size: PaperSize,
}
