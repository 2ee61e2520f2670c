//! What a press takes hold of, and what is dragged then.

use gantline_plan::change::Change;
use gantline_plan::document::{PlacementId, Plan, ThingId};

use super::before;
use super::copies::Copies;
use super::gesture::Spot;
use super::move_outline::{MoveOutline, OutlinePart};
use super::move_underlay::MoveUnderlay;
use super::move_units::MoveUnits;
use super::sketch::{CardLine, SketchLine};
use super::turn_unit::{SetUnitBack, SlewUnit};
use super::{Asked, Handle, Hit, Scene};
use crate::intent::Then;
use crate::session::Selection;

/// Something that is being dragged.
#[derive(Debug, Clone)]
pub(super) enum Dragged {
    Units(MoveUnits),
    Outline(MoveOutline),
    Slew(SlewUnit),
    Setback(SetUnitBack),
    Copies(Copies),
    Underlay(MoveUnderlay),
}

impl Dragged {
    pub(super) fn name(&self) -> &'static str {
        match self {
            Self::Units(_) => "move unit",
            Self::Outline(outline) => outline.name(),
            Self::Slew(_) => "slew unit",
            Self::Setback(_) => "set unit back",
            Self::Copies(_) => "copy along edge",
            Self::Underlay(_) => "move underlay",
        }
    }

    pub(super) fn asks(&self) -> Vec<Asked> {
        match self {
            Self::Units(units) => units.asks(),
            Self::Outline(outline) => outline.asks(),
            Self::Slew(slew) => slew.asks(),
            Self::Setback(setback) => setback.asks(),
            Self::Copies(copies) => copies.asks(),
            Self::Underlay(underlay) => underlay.asks(),
        }
    }

    pub(super) fn change(&mut self, spot: &Spot, scene: &Scene<'_>) -> Option<Change> {
        match self {
            Self::Units(units) => units.change(spot, scene),
            Self::Outline(outline) => outline.change(spot, scene),
            Self::Slew(slew) => slew.change(spot, scene),
            Self::Setback(setback) => setback.change(spot, scene),
            Self::Copies(copies) => copies.change(Some(spot), scene),
            Self::Underlay(underlay) => Some(underlay.change(spot, scene)),
        }
    }

    pub(super) fn card(&self, scene: &Scene<'_>) -> Vec<CardLine> {
        match self {
            Self::Units(units) => units.card(scene.plan),
            Self::Outline(outline) => outline.card(scene.plan),
            Self::Slew(slew) => slew.card(),
            Self::Setback(setback) => setback.card(),
            Self::Copies(copies) => copies.card(),
            Self::Underlay(underlay) => underlay.card(),
        }
    }

    /// Where what is dragged was when the gesture began.
    pub(super) fn before(&self, plan: &Plan) -> Vec<SketchLine> {
        match self {
            Self::Units(units) => before::lines(plan, units.moved()),
            Self::Outline(outline) => outline.ghost(plan).into_iter().collect(),
            Self::Slew(slew) => before::lines(plan, &[slew.unit()]),
            Self::Setback(setback) => before::lines(plan, &[setback.unit()]),
            Self::Copies(_) | Self::Underlay(_) => Vec::new(),
        }
    }

    pub(super) fn then(&self) -> Then {
        match self {
            Self::Copies(_) => Then::SelectMade,
            Self::Units(_) | Self::Outline(_) | Self::Slew(_) | Self::Setback(_) | Self::Underlay(_) => Then::Keep,
        }
    }
}

/// What a press takes hold of.
pub(super) enum Taken {
    /// This, after selecting what is given.
    Dragged(Box<Dragged>, Option<Selection>),
    /// Something locked.
    Locked(ThingId),
    /// Nothing: a box begins.
    Ground,
}

/// What a press at a place takes hold of.
pub(super) fn taken(from: &Spot, scene: &Scene<'_>) -> Taken {
    let dragged = |dragged: Option<Dragged>| dragged.map_or(Taken::Ground, |d| Taken::Dragged(Box::new(d), None));
    let outline = |part: OutlinePart| dragged(MoveOutline::begin(part, from, scene.plan).map(Dragged::Outline));
    let Some(&hit) = from.hits.first() else {
        return Taken::Ground;
    };
    match hit {
        Hit::Handle(Handle::Slew(unit)) => dragged(SlewUnit::begin(unit, from, scene.plan).map(Dragged::Slew)),
        Hit::Handle(Handle::Setback(unit)) => dragged(SetUnitBack::begin(unit, from, scene.plan).map(Dragged::Setback)),
        Hit::Handle(Handle::Copy(unit)) => dragged(Copies::begin(unit, Some(from), scene.plan).map(Dragged::Copies)),
        Hit::Handle(Handle::ObstacleCorner(id, corner)) => outline(OutlinePart::ObstacleCorner(id, corner)),
        Hit::Handle(Handle::NewCorner(edge)) => outline(OutlinePart::NewCorner(edge)),
        Hit::Unit(unit) => unit_taken(unit, from, scene),
        Hit::Corner(edge) => outline(OutlinePart::Corner(edge)),
        Hit::Edge(edge) => {
            let roof = scene.plan.find_edge(edge).map(|place| place.roof_id);
            match roof {
                Some(roof) if scene.selection.has(ThingId::Roof(roof)) => outline(OutlinePart::Edge(edge)),
                _ => Taken::Ground,
            }
        }
        Hit::Obstacle(id) if scene.selection.has(ThingId::Obstacle(id)) => outline(OutlinePart::Obstacle(id)),
        // What lies over a selected underlay and is not moved itself lets the underlay be moved.
        Hit::Obstacle(_) | Hit::Roof(_) | Hit::Underlay(_) => {
            let selected = from.hits.iter().find_map(|hit| match hit {
                Hit::Underlay(id) if scene.selection.has(ThingId::Underlay(*id)) => Some(*id),
                _ => None,
            });
            dragged(selected.map(|id| Dragged::Underlay(MoveUnderlay::begin(id, from))))
        }
    }
}

fn unit_taken(unit: PlacementId, from: &Spot, scene: &Scene<'_>) -> Taken {
    let thing = ThingId::Placement(unit);
    if scene.plan.placements.get(&unit).is_some_and(|placement| placement.locked) {
        return Taken::Locked(thing);
    }
    let (moved, select) = if scene.selection.has(thing) {
        (scene.selection.units(), None)
    } else {
        (vec![unit], Some(Selection::of([thing])))
    };
    match MoveUnits::begin(unit, moved, from, scene.plan) {
        Some(units) => Taken::Dragged(Box::new(Dragged::Units(units)), select),
        None => Taken::Ground,
    }
}
