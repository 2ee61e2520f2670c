//! What all units together reach of a facade, and where the gaps are.

use super::assessment::{FacadeAssessment, GapRegion};
use super::coverage::Coverage;
use super::reach::Reach;
use crate::document::PlacementId;
use crate::geometry::facade::Facade;
use crate::geometry::spans::Spans;
use crate::geometry::strips::Face;

/// Puts the reach of the units that serve a facade together. Its checks are made elsewhere.
pub fn assess_facade(facade: &Facade, reaches: &[(PlacementId, &Reach)]) -> FacadeAssessment {
    let face = Face { length_m: facade.line.length_m, height_m: facade.height_m() };
    let area_m2 = face.length_m * face.height_m;
    let mut result = FacadeAssessment {
        facade: facade.clone(),
        area_m2,
        covered_m2: 0.0,
        gaps: Vec::new(),
        full_height: Spans::none(),
        full_height_gaps: Spans::one(0.0, face.length_m),
        served_by: reaches.iter().map(|&(id, _)| id).collect(),
        checks: Vec::new(),
    };
    if !facade.data.needs_access || face.height_m <= 0.0 {
        return result;
    }
    if let Ok(coverage) = Coverage::of(face, reaches.iter().map(|&(_, reach)| reach)) {
        result.covered_m2 = coverage.covered_area_m2;
        result.full_height_gaps = coverage.open_somewhere();
        result.full_height = coverage.whole_height;
        result.gaps = coverage
            .gaps
            .into_iter()
            .map(|gap| GapRegion { outline: gap.region.outer, holes: gap.region.holes, area_m2: gap.area_m2 })
            .collect();
    }
    result
}
