//! Change: everything that can be asked of a plan. The plan changes in no other way.

use glam::DVec2;

use crate::basis::{DesignCode, LoadBasis};
use crate::catalog::{Family, MakeUp, SlewStops};
use crate::document::{
    Attachment, Datum, EdgeId, FacadeFoot, FacadeStep, Obstacle, ObstacleId, PartId, PlacementId, RoofId, Slab,
    Standing, Tag, Title, Underlay, UnderlayId, WallConcrete,
};

/// One wish; a list of wishes is one too.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// All of these, in order, or none.
    All(Vec<Change>),
    /// A new title block.
    SetTitle(Title),
    /// A new datum.
    SetDatum(Datum),
    /// Another load basis.
    SetBasis(Box<LoadBasis>),
    /// Another design code.
    SetCode(DesignCode),
    /// A roof from its outline, drawn in either direction.
    AddRoof {
        /// Its name; empty: one is made up.
        name: String,
        /// Top of its structural slab.
        level_m: f64,
        /// Corners of the structural slab's edge.
        outline: Vec<DVec2>,
    },
    /// A hole in a roof, drawn in either direction.
    AddHole {
        /// The roof.
        roof: RoofId,
        /// Corners.
        outline: Vec<DVec2>,
    },
    /// Takes a roof away, with its holes, the obstacles on it and the units that stand on it.
    RemoveRoof(RoofId),
    /// Takes a hole away, with the units that stand on its edges; the hole is named by any of its edges.
    RemoveHole(EdgeId),
    /// Changes data of a roof.
    SetRoof(RoofId, RoofPatch),
    /// Moves the corner that this edge leaves.
    MoveCorner {
        /// The edge that leaves the corner.
        edge: EdgeId,
        /// Its new place.
        to: DVec2,
    },
    /// Moves an edge as a whole.
    MoveEdge {
        /// The edge.
        edge: EdgeId,
        /// By how much.
        by: DVec2,
    },
    /// Moves a roof as a whole, with the free units and obstacles on it.
    MoveRoof {
        /// The roof.
        roof: RoofId,
        /// By how much.
        by: DVec2,
    },
    /// Splits an edge by a new corner on it or beside it.
    InsertCorner {
        /// The edge.
        edge: EdgeId,
        /// Where the new corner is.
        at: DVec2,
    },
    /// Takes the corner away that this edge leaves; the edge before it takes over.
    RemoveCorner {
        /// The edge that leaves the corner.
        edge: EdgeId,
    },
    /// Changes data of edges.
    SetEdges(Vec<EdgeId>, EdgePatch),
    /// An obstacle.
    AddObstacle(Obstacle),
    /// Another state of an obstacle.
    SetObstacle(ObstacleId, Obstacle),
    /// Takes an obstacle away.
    RemoveObstacle(ObstacleId),
    /// Copies a family into the plan, unless an equal one is there.
    AddFamily(Box<Family>),
    /// Places a unit; without a tag it gets the next free one.
    Place {
        /// Its parts.
        make_up: MakeUp,
        /// Where.
        stands: Standing,
        /// Its tag.
        tag: Option<Tag>,
    },
    /// Puts a unit elsewhere.
    SetStanding(PlacementId, Standing),
    /// Changes data of units.
    SetPlacements(Vec<PlacementId>, PlacementPatch),
    /// Fixes units by another product than the one their base names; none: the base's own.
    SetFixing(Vec<PlacementId>, Option<PartId>),
    /// Takes units away.
    RemovePlacements(Vec<PlacementId>),
    /// Lays an attachment under the plan.
    AddUnderlay {
        /// Where and how it lies; the attachment that it names is the one given here.
        underlay: Underlay,
        /// What it shows.
        attachment: Attachment,
    },
    /// Moves an underlay.
    MoveUnderlay {
        /// The underlay.
        underlay: UnderlayId,
        /// By how much.
        by: DVec2,
    },
    /// Scales an underlay by a length that is known of it; the first place stays where it is.
    ScaleUnderlay {
        /// The underlay.
        underlay: UnderlayId,
        /// Where one of its places lies now.
        from: DVec2,
        /// Where the other lies now.
        to: DVec2,
        /// How far apart they are.
        length_m: f64,
    },
    /// Turns an underlay by a direction that is known of it; the first place stays where it is.
    TurnUnderlay {
        /// The underlay.
        underlay: UnderlayId,
        /// Where one of its places lies now.
        from: DVec2,
        /// Where the other lies now.
        to: DVec2,
        /// Direction from the first to the other, counter-clockwise from the plan's x axis.
        direction_rad: f64,
    },
    /// Changes data of an underlay.
    SetUnderlay(UnderlayId, UnderlayPatch),
    /// Takes an underlay away, with its attachment where no other shows it.
    RemoveUnderlay(UnderlayId),
}

/// Data of an underlay; what is none stays as it is.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct UnderlayPatch {
    /// Name.
    pub name: Option<String>,
    /// Page, from 1.
    pub page: Option<u32>,
    /// The roof on whose level it lies; the inner none: under every level.
    pub roof: Option<Option<RoofId>>,
    /// Length of one of its own units.
    pub m_per_unit: Option<f64>,
    /// Turn.
    pub turn_rad: Option<f64>,
    /// Opacity.
    pub opacity: Option<f64>,
    /// Lock.
    pub locked: Option<bool>,
    /// Whether it is shown.
    pub shown: Option<bool>,
}

/// Data of a roof; what is none stays as it is.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct RoofPatch {
    /// Name.
    pub name: Option<String>,
    /// Level.
    pub level_m: Option<f64>,
    /// Build-up.
    pub build_up_m: Option<f64>,
    /// Slab.
    pub slab: Option<Slab>,
    /// Lock.
    pub locked: Option<bool>,
}

/// Data of edges; what is none stays as it is.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct EdgePatch {
    /// Height of the parapet.
    pub parapet_height_m: Option<f64>,
    /// Its thickness.
    pub parapet_thickness_m: Option<f64>,
    /// Its inset.
    pub parapet_inset_m: Option<f64>,
    /// Its concrete; the inner none: not known.
    pub parapet_concrete: Option<Option<WallConcrete>>,
    /// Whether the facade needs access.
    pub needs_access: Option<bool>,
    /// Offsets of the facade.
    pub profile: Option<Vec<FacadeStep>>,
    /// Where it ends.
    pub ends_at: Option<FacadeFoot>,
    /// Whether the data are confirmed.
    pub confirmed: Option<bool>,
}

/// Data of units; what is none stays as it is.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PlacementPatch {
    /// Tag.
    pub tag: Option<Tag>,
    /// Mast.
    pub mast: Option<PartId>,
    /// Arm.
    pub arm: Option<PartId>,
    /// Brace; the inner none is a unit without one.
    pub brace: Option<Option<PartId>>,
    /// Base.
    pub base: Option<PartId>,
    /// All parts at once.
    pub make_up: Option<MakeUp>,
    /// Slew stops.
    pub slew_stops: Option<SlewStops>,
    /// Drawn slew.
    pub drawn_slew_rad: Option<f64>,
    /// Setback, for units on an edge.
    pub setback_m: Option<f64>,
    /// Distance from the edge's start, for units on an edge.
    pub along_m: Option<f64>,
    /// Turn, for units on an edge.
    pub turn_rad: Option<f64>,
    /// Bearing of the rear foot.
    pub foot_bearing_rad: Option<f64>,
    /// Level of the rear foot.
    pub foot_level_m: Option<f64>,
    /// Lock.
    pub locked: Option<bool>,
}
