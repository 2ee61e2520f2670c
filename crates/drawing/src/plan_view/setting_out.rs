//! Setting-out in plan: a chain of dimensions outside each edge with units on it, from end to end, and setbacks.

use std::collections::BTreeMap;

use gantline_plan::assess::{Assessment, SettingOut, UnitAssessment};
use gantline_plan::document::{EdgeId, PlacementId, Plan, ThingId};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::quantity;

use super::options::PlanViewOptions;
use super::reach_band::{Band, depth_taken_mm};
use crate::dimension::{DimensionLine, Measured, ROW_MM, chain, chain_or_ticks, dimension};
use crate::layer::Layer;
use crate::mark::{Mark, Stress};
use crate::pencil::Pencil;
use crate::shown::Overlay;

/// Dimensions along all edges with units; with a unit selected, only along its edge and to its neighbors.
pub fn setting_out_marks(plan: &Plan, assessment: &Assessment, options: &PlanViewOptions) -> Vec<Mark> {
    let mut by_edge: BTreeMap<EdgeId, Vec<f64>> = BTreeMap::new();
    for (&id, unit) in &assessment.units {
        let Some(set) = &unit.setting_out else { continue };
        if options.speaks_of(ThingId::Placement(id)) {
            by_edge.entry(set.edge).or_default().extend(stations(set, options.has_selected_unit()));
        }
    }
    let mut pencil = Pencil::new(options.scale);
    for (edge, mut stations) in by_edge {
        let (Some(line), Some(facade)) = (EdgeLine::of(plan, edge), assessment.facade_of(edge)) else { continue };
        pencil.about = Some(ThingId::Edge(edge));
        stations.extend([0.0, line.length_m]);
        stations.sort_by(f64::total_cmp);
        stations.dedup_by(|a, b| (*a - *b).abs() < 0.0005);
        let measured: Vec<Measured> = stations
            .windows(2)
            .map(|pair| {
                let words = quantity::length(pair[1] - pair[0], options.units);
                Measured::new(line.point(pair[0], 0.0), line.point(pair[1], 0.0), words)
            })
            .collect();
        let with_reach = options.shown.has(Overlay::Reach);
        let taken_mm = if with_reach { depth_taken_mm(plan, assessment, facade, options) } else { 0.0 };
        let through = Band::of(plan, &facade.facade).point(0.0, options.scale.m(taken_mm + ROW_MM));
        let line = DimensionLine { through, along: line.along };
        if options.has_selected_unit() {
            chain(&mut pencil, Layer::Dimension, line, &measured);
        } else {
            chain_or_ticks(&mut pencil, Layer::Dimension, line, &measured);
        }
    }
    pencil.done()
}

/// Where on its edge a unit stands, and where its neighbors do if they are asked for.
fn stations(set: &SettingOut, with_neighbors: bool) -> Vec<f64> {
    let mut all = vec![set.from_start_m];
    if with_neighbors {
        all.extend(set.before.map(|(_, gap)| set.from_start_m - gap));
        all.extend(set.after.map(|(_, gap)| set.from_start_m + gap));
    }
    all
}

/// The setback of one unit, as a dimension square to its edge beside its base.
pub fn setback_marks(plan: &Plan, id: PlacementId, unit: &UnitAssessment, options: &PlanViewOptions) -> Vec<Mark> {
    let (Some(frame), Some(set), Ok(resolved)) = (unit.frame, &unit.setting_out, &unit.resolved) else {
        return Vec::new();
    };
    let Some(line) = EdgeLine::of(plan, set.edge) else { return Vec::new() };
    let mut pencil = Pencil::about(options.scale, ThingId::Placement(id), Stress::Plain);
    let beside = resolved.base.plate_half_m() + options.scale.m(4.0);
    let through = frame.at - line.along * beside;
    let on_edge = line.point(set.from_start_m, 0.0) - line.along * (beside - options.scale.m(1.5));
    let words = quantity::length(set.setback_m, options.units);
    dimension(&mut pencil, Layer::Dimension, DimensionLine { through, along: line.outward }, on_edge, frame.at, &words);
    pencil.done()
}
