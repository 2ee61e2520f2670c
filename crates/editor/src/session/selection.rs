//! What is selected: things of the plan, in the order of their ids.

use std::collections::BTreeSet;

use gantline_plan::document::{EdgeId, ObstacleId, PlacementId, Plan, RoofId, ThingId, UnderlayId};

/// A set of selected things.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Selection {
    things: BTreeSet<ThingId>,
}

/// What a selection is of, as far as panels differ.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Selected {
    /// Nothing.
    Nothing,
    /// One roof.
    Roof(RoofId),
    /// Edges, at least one.
    Edges(Vec<EdgeId>),
    /// One unit.
    Unit(PlacementId),
    /// Several units.
    Units(Vec<PlacementId>),
    /// One obstacle.
    Obstacle(ObstacleId),
    /// One underlay.
    Underlay(UnderlayId),
    /// Things of several kinds, or several roofs or obstacles.
    Several,
}

impl Selection {
    /// A selection of these things.
    pub fn of(things: impl IntoIterator<Item = ThingId>) -> Self {
        Self { things: things.into_iter().collect() }
    }

    /// The things in order.
    pub fn iter(&self) -> impl Iterator<Item = ThingId> + '_ {
        self.things.iter().copied()
    }

    /// Whether nothing is selected.
    pub fn is_empty(&self) -> bool {
        self.things.is_empty()
    }

    /// How many things are selected.
    pub fn len(&self) -> usize {
        self.things.len()
    }

    /// Whether this thing is selected.
    pub fn has(&self, thing: ThingId) -> bool {
        self.things.contains(&thing)
    }

    /// Adds a thing, or takes it away if it was selected.
    pub fn toggle(&mut self, thing: ThingId) {
        if !self.things.remove(&thing) {
            self.things.insert(thing);
        }
    }

    /// Adds things.
    pub fn add(&mut self, things: impl IntoIterator<Item = ThingId>) {
        self.things.extend(things);
    }

    /// Drops what is no longer on the plan.
    pub fn keep_what_is_on(&mut self, plan: &Plan) {
        self.things.retain(|&thing| plan.has(thing));
    }

    /// The selected units.
    pub fn units(&self) -> Vec<PlacementId> {
        let unit = |thing: &ThingId| if let ThingId::Placement(id) = thing { Some(*id) } else { None };
        self.things.iter().filter_map(unit).collect()
    }

    /// The selected edges.
    pub fn edges(&self) -> Vec<EdgeId> {
        let edge = |thing: &ThingId| if let ThingId::Edge(id) = thing { Some(*id) } else { None };
        self.things.iter().filter_map(edge).collect()
    }

    /// The one thing that is selected.
    pub fn single(&self) -> Option<ThingId> {
        if self.things.len() == 1 { self.things.first().copied() } else { None }
    }

    /// What panels show for it.
    pub fn shown(&self) -> Selected {
        match self.single() {
            Some(ThingId::Roof(id)) => return Selected::Roof(id),
            Some(ThingId::Placement(id)) => return Selected::Unit(id),
            Some(ThingId::Obstacle(id)) => return Selected::Obstacle(id),
            Some(ThingId::Underlay(id)) => return Selected::Underlay(id),
            Some(ThingId::Edge(id)) => return Selected::Edges(vec![id]),
            Some(ThingId::Plan) | None => {}
        }
        if self.things.is_empty() || self.single() == Some(ThingId::Plan) {
            return Selected::Nothing;
        }
        let (units, edges) = (self.units(), self.edges());
        if units.len() == self.things.len() {
            Selected::Units(units)
        } else if edges.len() == self.things.len() {
            Selected::Edges(edges)
        } else {
            Selected::Several
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn toggling_twice_leaves_the_selection_as_it_was() {
        let unit = ThingId::Placement(PlacementId::from_number(3));
        let mut selection = Selection::default();
        selection.toggle(unit);
        assert_eq!(selection.shown(), Selected::Unit(PlacementId::from_number(3)));
        selection.toggle(unit);
        assert_eq!(selection.shown(), Selected::Nothing);
    }

    #[test]
    fn edges_and_units_together_are_shown_as_several_things() {
        let edge = ThingId::Edge(EdgeId::from_number(1));
        let unit = ThingId::Placement(PlacementId::from_number(2));
        assert_eq!(Selection::of([edge, unit]).shown(), Selected::Several);
        assert_eq!(Selection::of([edge]).shown(), Selected::Edges(vec![EdgeId::from_number(1)]));
    }
}
