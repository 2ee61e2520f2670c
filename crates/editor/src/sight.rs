//! What panels may see in a frame: everything read-only.

use std::sync::Arc;

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use crate::derived::Underlays;
use crate::session::Session;
use crate::theme::Palette;

/// How things are shown.
#[derive(Debug, Clone, Copy)]
pub struct Look<'a> {
    /// Colors.
    pub palette: &'a Palette,
    /// Units of measure.
    pub units: UnitSystem,
}

/// What panels may see.
#[derive(Debug, Clone, Copy)]
pub struct Sight<'a> {
    /// The plan as it is.
    pub plan: &'a Arc<Plan>,
    /// Its assessment.
    pub assessment: &'a Assessment,
    /// Whether no gesture is under way: what takes long is asked for only then.
    pub at_rest: bool,
    /// Pictures of underlays.
    pub underlays: &'a Underlays,
    /// The work in hand.
    pub session: &'a Session,
    /// How things are shown.
    pub look: Look<'a>,
}
