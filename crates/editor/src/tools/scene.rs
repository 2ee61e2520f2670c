//! What a tool may see: the plan as it was when the gesture began, the selection, the make-up in hand, lines under the plan,
//! what is typed.

use std::collections::BTreeMap;
use std::sync::Arc;

use gantline_exchange::underlay::Lines;
use gantline_plan::catalog::MakeUp;
use gantline_plan::document::{ContentHash, Plan, RoofId};
use gantline_plan::geometry::rings::ring_contains;
use glam::DVec2;

use super::Typed;
use crate::session::Selection;

/// What a tool may see.
#[derive(Debug, Clone, Copy)]
pub struct Scene<'a> {
    /// The plan from which a gesture is replayed.
    pub plan: &'a Plan,
    /// What is selected.
    pub selection: &'a Selection,
    /// The make-up that the unit tool places.
    pub hand: Option<&'a MakeUp>,
    /// How far behind the outline the unit tool sets a mast axis, m.
    pub hand_setback_m: f64,
    /// The roof whose level is worked on.
    pub level: Option<RoofId>,
    /// Lines of drawings under the plan, by attachment.
    pub lines: &'a BTreeMap<ContentHash, Arc<Lines>>,
    /// Values typed so far.
    pub typed: Typed,
}

/// Level of a first roof just sketched, m: a usual one, to be changed at once.
pub const FIRST_ROOF_LEVEL_M: f64 = 20.0;

impl Scene<'_> {
    /// The roof under a point: the one worked on if it is there, else the highest.
    pub fn roof_at(&self, point: DVec2) -> Option<RoofId> {
        let under = |id: &RoofId| {
            self.plan.roofs.get(id).is_some_and(|roof| {
                ring_contains(&roof.outer.points(), point)
                    && !roof.holes.iter().any(|hole| ring_contains(&hole.points(), point))
            })
        };
        if let Some(level) = self.level.filter(under) {
            return Some(level);
        }
        let roofs = self.plan.roofs.iter().filter(|(id, _)| under(id));
        roofs.max_by(|(_, a), (_, b)| a.level_m.total_cmp(&b.level_m)).map(|(&id, _)| id)
    }

    /// Level at which a new roof is sketched: that of the roof worked on, else a usual one to be changed at once.
    pub fn new_roof_level_m(&self) -> f64 {
        let worked_on = self.level.and_then(|id| self.plan.roofs.get(&id));
        worked_on.or_else(|| self.plan.roofs.values().last()).map_or(FIRST_ROOF_LEVEL_M, |roof| roof.level_m)
    }
}
