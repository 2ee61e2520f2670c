//! What is reached of a facade. A facade is a rectangle: s runs along it from its start, depth down from its top.

use gantline_plan::assess::{FacadeAssessment, GapRegion};
use gantline_plan::document::{EdgeId, PlacementId, RoofId};
use gantline_plan::geometry::spans::Spans;
use schemars::JsonSchema;
use serde::Serialize;

use super::figure::{Figure, outline, point};

/// A facade with its coverage.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct FacadeAnswer {
    /// Its name: its first edge.
    pub key: EdgeId,
    /// The roof whose edges it hangs below.
    pub roof: RoofId,
    /// Its edges in order along it.
    pub edges: Vec<EdgeStretch>,
    /// Where it begins in the plan.
    pub start_m: [Figure; 2],
    /// Where it ends in the plan.
    pub end_m: [Figure; 2],
    /// Its length.
    pub length_m: Figure,
    /// Its height.
    pub height_m: Figure,
    /// Level of its top over level zero.
    pub top_level_m: Figure,
    /// Level of its foot over level zero.
    pub foot_level_m: Figure,
    /// Whether technicians must reach it.
    pub needs_access: bool,
    /// Area that technicians must reach.
    pub area_needing_access_m2: Figure,
    /// Area that some unit reaches.
    pub covered_area_m2: Figure,
    /// Regions that no unit reaches; none are listed where no access is needed.
    pub gaps: Vec<GapAnswer>,
    /// Stretches reached over the whole height.
    pub covered_full_height: Vec<Stretch>,
    /// Stretches not reached over the whole height; none are listed where no access is needed.
    pub gaps_full_height: Vec<Stretch>,
    /// Units that serve it.
    pub served_by: Vec<PlacementId>,
}

/// An edge as a part of its facade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EdgeStretch {
    /// The edge.
    pub edge: EdgeId,
    /// Where it begins along the facade.
    pub from_m: Figure,
    /// Where it ends along the facade.
    pub to_m: Figure,
}

/// A region that no unit reaches.
#[derive(Debug, Clone, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct GapAnswer {
    /// Corners of its outline as (s, depth).
    pub outline_m: Vec<[Figure; 2]>,
    /// Islands in it that are reached, corners as (s, depth).
    pub holes_m: Vec<Vec<[Figure; 2]>>,
    /// Its area.
    pub area_m2: Figure,
}

/// A stretch along a facade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Stretch {
    /// Where it begins.
    pub from_m: Figure,
    /// Where it ends.
    pub to_m: Figure,
}

/// Stretches along a facade.
pub fn stretches(spans: &Spans) -> Vec<Stretch> {
    spans.iter().map(|span| Stretch { from_m: Figure::of(span.from_m), to_m: Figure::of(span.to_m) }).collect()
}

impl FacadeAnswer {
    /// What is to be said about a facade.
    pub fn of(found: &FacadeAssessment) -> Self {
        let facade = &found.facade;
        let needs_access = facade.data.needs_access;
        let edges = facade.edges.iter().map(|part| EdgeStretch {
            edge: part.edge,
            from_m: Figure::of(part.from_m),
            to_m: Figure::of(part.to_m),
        });
        Self {
            key: facade.key,
            roof: facade.roof,
            edges: edges.collect(),
            start_m: point(facade.line.start),
            end_m: point(facade.line.end),
            length_m: Figure::of(facade.line.length_m),
            height_m: Figure::of(facade.height_m()),
            top_level_m: Figure::of(facade.top_level_m),
            foot_level_m: Figure::of(facade.foot_level_m),
            needs_access,
            area_needing_access_m2: Figure::of(if needs_access { found.area_m2 } else { 0.0 }),
            covered_area_m2: Figure::of(found.covered_m2),
            gaps: found.gaps.iter().map(gap).collect(),
            covered_full_height: stretches(&found.full_height),
            gaps_full_height: if needs_access { stretches(&found.full_height_gaps) } else { Vec::new() },
            served_by: found.served_by.clone(),
        }
    }
}

fn gap(gap: &GapRegion) -> GapAnswer {
    GapAnswer {
        outline_m: outline(&gap.outline),
        holes_m: gap.holes.iter().map(|hole| outline(hole)).collect(),
        area_m2: Figure::of(gap.area_m2),
    }
}
