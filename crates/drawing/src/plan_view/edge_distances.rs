//! Distances from a base's anchors to the nearest edges of the concrete, as dimensions beside the base.

use gantline_plan::assess::UnitAssessment;
use gantline_plan::assess::anchorage::NearEdge;
use gantline_plan::document::{PlacementId, ThingId};
use gantline_plan::quantity;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::dimension::{DimensionLine, ROW_MM, dimension};
use crate::layer::Layer;
use crate::mark::{Mark, Stress};
use crate::pencil::Pencil;

/// Most distances shown.
const MOST_SHOWN: usize = 2;
/// From the base to the line, paper mm.
const BESIDE_MM: f64 = 4.0;
/// From the base to the line beside that of its setback, paper mm.
const BESIDE_SETBACK_MM: f64 = BESIDE_MM + ROW_MM;

/// The nearest edges in two directions; toward the edge in front the dimension stands beside that of the setback.
pub fn edge_distance_marks(id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Mark> {
    let (Some(frame), Some(base), Ok(resolved)) = (unit.frame, &unit.base, &unit.resolved) else { return Vec::new() };
    let mut pencil = Pencil::about(options.scale, ThingId::Placement(id), Stress::Plain);
    let half_m = resolved.base.plate_half_m();
    let mut shown: Vec<DVec2> = Vec::new();
    for edge in &base.edges {
        let Some(toward) = toward(edge) else { continue };
        if shown.len() >= MOST_SHOWN || shown.iter().any(|known| known.dot(toward) > 0.99) {
            continue;
        }
        shown.push(toward);
        let outward = frame.direction(0.0);
        let (side, beside_mm) =
            if toward.dot(outward).abs() > 0.7 { (-outward.perp(), BESIDE_SETBACK_MM) } else { (outward, BESIDE_MM) };
        let through = frame.at + side * (half_m + options.scale.m(beside_mm));
        let line = DimensionLine { through, along: toward };
        let words = quantity::length(edge.distance_m, options.units);
        dimension(&mut pencil, Layer::Dimension, line, edge.anchor, edge.on_edge, &words);
    }
    pencil.done()
}

fn toward(edge: &NearEdge) -> Option<DVec2> {
    (edge.on_edge - edge.anchor).try_normalize()
}
