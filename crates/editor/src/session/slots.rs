//! Which drawing lies where: the main sheet and the companion, which follows the selection.

use gantline_plan::document::{EdgeId, PlacementId, Plan};

use super::{Selected, Selection};

/// A drawing that can lie on a sheet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sheet {
    /// The plan.
    #[default]
    Plan,
    /// The section through a unit.
    Section(PlacementId),
    /// The elevation of the facade below an edge.
    Elevation(EdgeId),
    /// The whole building in outline.
    Building,
}

/// Where drawings lie.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Slots {
    /// Whether the companion lies on the main sheet and the plan beside it.
    pub swapped: bool,
    /// The companion drawing that is kept in spite of the selection.
    pub pinned: Option<Sheet>,
}

impl Sheet {
    /// Whether what it draws is still on the plan.
    pub fn is_on(self, plan: &Plan) -> bool {
        match self {
            Self::Plan | Self::Building => true,
            Self::Section(unit) => plan.placements.contains_key(&unit),
            Self::Elevation(edge) => plan.find_edge(edge).is_some(),
        }
    }
}

impl Slots {
    /// The companion drawing for a selection: a unit's section, an edge's elevation, else the building.
    pub fn companion(&self, plan: &Plan, selection: &Selection) -> Sheet {
        if let Some(pinned) = self.pinned.filter(|sheet| sheet.is_on(plan)) {
            return pinned;
        }
        let followed = match selection.shown() {
            Selected::Unit(unit) => Sheet::Section(unit),
            Selected::Units(units) => units.first().map_or(Sheet::Building, |&unit| Sheet::Section(unit)),
            Selected::Edges(edges) => edges.first().map_or(Sheet::Building, |&edge| Sheet::Elevation(edge)),
            Selected::Nothing
            | Selected::Roof(_)
            | Selected::Obstacle(_)
            | Selected::Underlay(_)
            | Selected::Several => Sheet::Building,
        };
        if followed.is_on(plan) { followed } else { Sheet::Building }
    }

    /// What lies on the main sheet and what beside it. A drawing that a press has begun on stays until the button goes up,
    /// whatever is selected meanwhile: the rest of the gesture is read on it.
    pub fn placed(&self, plan: &Plan, selection: &Selection, pressed_on: Option<Sheet>) -> (Sheet, Sheet) {
        let pressed_on = pressed_on.filter(|&sheet| sheet != Sheet::Plan && sheet.is_on(plan));
        let companion = pressed_on.unwrap_or_else(|| self.companion(plan, selection));
        if self.swapped { (companion, Sheet::Plan) } else { (Sheet::Plan, companion) }
    }
}
