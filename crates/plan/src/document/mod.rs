//! The document: plain data with typed ids, every length in meters, every angle in radians.
//!
//! Level: a roof's level is the top of its structural slab; base, parapet and obstacle heights are
//! measured from it. Direction: an edge belongs to the corner it leaves; outer rings run
//! counter-clockwise and holes clockwise, so that outside is always on the right of an edge.

pub mod attachment;
pub mod edge;
pub mod ids;
pub mod obstacle;
pub mod placement;
pub mod plan;
pub mod ring;
pub mod roof;
pub mod slab;
pub mod tag;
pub mod title;
pub mod underlay;

pub use attachment::{Attachment, AttachmentFault, AttachmentKind, ContentHash};
pub use edge::{Edge, FacadeData, FacadeFoot, FacadeStep, Parapet, WallConcrete};
pub use ids::{EdgeId, FamilyId, ObstacleId, PartId, PlacementId, RoofId, ThingId, UnderlayId};
pub use obstacle::Obstacle;
pub use placement::{EdgeEnd, Placement, Standing, Station};
pub use plan::Plan;
pub use ring::{Corner, Ring, RingFault};
pub use roof::Roof;
pub use slab::{AnchorBars, EdgeAnchorBars, EdgeBars, NoDrillZone, Slab, SlabBars, SlabZone};
pub use tag::Tag;
pub use title::{Datum, GeoPlace, Title};
pub use underlay::Underlay;
