//! The plan: the whole document. Everything shown about it is computed from it.

use std::collections::BTreeMap;
use std::sync::Arc;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{
    Attachment, ContentHash, Datum, Edge, EdgeId, FamilyId, Obstacle, ObstacleId, Placement, PlacementId, Ring, Roof,
    RoofId, ThingId, Title, Underlay, UnderlayId,
};
use crate::basis::{DesignCode, LoadBasis};
use crate::catalog::Family;

/// A plan for rope access to one building.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Plan {
    /// Title block.
    pub title: Title,
    /// Where the coordinates stand in the world.
    pub datum: Datum,
    /// What pulls on the units, with which factors, and the working rules.
    pub basis: LoadBasis,
    /// How resistances are found.
    pub code: DesignCode,
    /// Roofs.
    pub roofs: BTreeMap<RoofId, Roof>,
    /// Obstacles.
    pub obstacles: BTreeMap<ObstacleId, Obstacle>,
    /// Families in use, copied in so that a plan opened elsewhere is whole.
    pub families: BTreeMap<FamilyId, Arc<Family>>,
    /// Placed units.
    pub placements: BTreeMap<PlacementId, Placement>,
    /// Drawings and scans under the plan, the lowest first.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub underlays: BTreeMap<UnderlayId, Underlay>,
    /// The files that they show.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub attachments: BTreeMap<ContentHash, Attachment>,
    /// The number of the next id; ids are never used twice.
    pub(crate) next_id: u64,
}

/// An edge of a plan with the ring and roof it belongs to.
#[derive(Debug, Clone, Copy)]
pub struct EdgePlace<'a> {
    /// The roof.
    pub roof_id: RoofId,
    /// The roof.
    pub roof: &'a Roof,
    /// The ring.
    pub ring: &'a Ring,
    /// Index of the corner that the edge leaves.
    pub index: usize,
}

impl<'a> EdgePlace<'a> {
    /// The edge's data.
    pub fn edge(&self) -> &'a Edge {
        self.ring.edge(self.index)
    }
}

impl Plan {
    /// A plan with nothing on it but the basis and the code it is made to.
    pub fn empty(basis: LoadBasis, code: DesignCode) -> Self {
        Self {
            title: Title::default(),
            datum: Datum::default(),
            basis,
            code,
            roofs: BTreeMap::new(),
            obstacles: BTreeMap::new(),
            families: BTreeMap::new(),
            placements: BTreeMap::new(),
            underlays: BTreeMap::new(),
            attachments: BTreeMap::new(),
            next_id: 1,
        }
    }

    /// A number never used before.
    pub(crate) fn mint(&mut self) -> u64 {
        let number = self.next_id;
        self.next_id += 1;
        number
    }

    /// The attachments that an underlay shows.
    pub fn attachments_in_use(&self) -> impl Iterator<Item = (ContentHash, &Attachment)> {
        let is_used = |hash: &ContentHash| self.underlays.values().any(|underlay| underlay.attachment == *hash);
        self.attachments.iter().filter(move |(hash, _)| is_used(hash)).map(|(&hash, attachment)| (hash, attachment))
    }

    /// Drops the attachments that no underlay shows.
    pub(crate) fn drop_unused_attachments(&mut self) {
        let underlays = &self.underlays;
        self.attachments.retain(|hash, _| underlays.values().any(|underlay| underlay.attachment == *hash));
    }

    /// Where an edge is.
    pub fn find_edge(&self, edge: EdgeId) -> Option<EdgePlace<'_>> {
        self.roofs.iter().find_map(|(&roof_id, roof)| {
            roof.find_edge(edge).map(|(ring, index)| EdgePlace { roof_id, roof, ring, index })
        })
    }

    /// All edges in order of roof, ring and corner.
    pub fn edges(&self) -> impl Iterator<Item = EdgePlace<'_>> {
        self.roofs.iter().flat_map(|(&roof_id, roof)| {
            roof.rings()
                .flat_map(move |ring| (0..ring.len()).map(move |index| EdgePlace { roof_id, roof, ring, index }))
        })
    }

    /// Whether the thing is on the plan.
    pub fn has(&self, thing: ThingId) -> bool {
        match thing {
            ThingId::Plan => true,
            ThingId::Roof(id) => self.roofs.contains_key(&id),
            ThingId::Edge(id) => self.find_edge(id).is_some(),
            ThingId::Obstacle(id) => self.obstacles.contains_key(&id),
            ThingId::Placement(id) => self.placements.contains_key(&id),
            ThingId::Underlay(id) => self.underlays.contains_key(&id),
        }
    }
}
