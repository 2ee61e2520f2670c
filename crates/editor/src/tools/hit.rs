//! What can lie under the pointer, and the handles by which selected things are changed.

use gantline_plan::document::{EdgeId, ObstacleId, PlacementId, RoofId, ThingId, UnderlayId};

/// Something under the pointer. Lists of hits are in order of rank: what a click takes comes first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hit {
    /// A handle of a selected thing.
    Handle(Handle),
    /// A unit.
    Unit(PlacementId),
    /// A corner of the selected roof: the one that this edge leaves.
    Corner(EdgeId),
    /// An edge.
    Edge(EdgeId),
    /// An obstacle.
    Obstacle(ObstacleId),
    /// A roof.
    Roof(RoofId),
    /// An underlay.
    Underlay(UnderlayId),
}

/// A handle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Handle {
    /// The arc at a unit's tip.
    Slew(PlacementId),
    /// The bar behind a unit's mast.
    Setback(PlacementId),
    /// The square beside a unit, from which copies are drawn out.
    Copy(PlacementId),
    /// A corner of the selected obstacle.
    ObstacleCorner(ObstacleId, usize),
    /// The middle of an edge of the selected roof, where a corner can be put in.
    NewCorner(EdgeId),
}

impl Hit {
    /// The thing that a click on it selects; a handle selects nothing.
    pub fn thing(self) -> Option<ThingId> {
        match self {
            Self::Handle(_) | Self::Corner(_) => None,
            Self::Unit(id) => Some(ThingId::Placement(id)),
            Self::Edge(id) => Some(ThingId::Edge(id)),
            Self::Obstacle(id) => Some(ThingId::Obstacle(id)),
            Self::Roof(id) => Some(ThingId::Roof(id)),
            Self::Underlay(id) => Some(ThingId::Underlay(id)),
        }
    }
}
