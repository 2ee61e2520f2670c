//! Pointing at things on drawings other than the plan: what lies there, and where it is in the plan.

use gantline_drawing::section::SectionPlane;
use gantline_drawing::{Drawing, Layer, Shape};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, Standing, ThingId};
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use gantline_plan::geometry::rings::ring_contains;
use gantline_plan::geometry::segments::distance_to_segment;
use glam::DVec2;

use crate::session::Sheet;
use crate::tools::Hit;

/// Reach of the pointer, screen points.
const REACH_PT: f64 = 8.0;

/// What lies at a point of a drawing: units before all else, then what was drawn last.
pub fn hits(drawing: &Drawing, at: DVec2, m_per_pt: f64) -> Vec<Hit> {
    let reach_m = REACH_PT * m_per_pt;
    let mut found: Vec<Hit> = Vec::new();
    for mark in drawing.marks.iter().rev().filter(|mark| mark.layer != Layer::Dimension) {
        let Some(hit) = mark.about.and_then(hit_of).filter(|hit| !found.contains(hit)) else {
            continue;
        };
        let near = match &mark.shape {
            Shape::Line(line) => distance_to_path(&line.points, line.closed, at) <= reach_m,
            Shape::Area(area) => ring_contains(&area.polygon.outer, at),
            Shape::Text(text) => ring_contains(&text.corners(drawing.scale), at),
        };
        if near {
            found.push(hit);
        }
    }
    found.sort_by_key(|hit| !matches!(hit, Hit::Unit(_)));
    found
}

fn hit_of(thing: ThingId) -> Option<Hit> {
    match thing {
        ThingId::Placement(id) => Some(Hit::Unit(id)),
        ThingId::Edge(id) => Some(Hit::Edge(id)),
        ThingId::Obstacle(id) => Some(Hit::Obstacle(id)),
        ThingId::Roof(id) => Some(Hit::Roof(id)),
        ThingId::Underlay(_) | ThingId::Plan => None,
    }
}

fn distance_to_path(points: &[DVec2], closed: bool, at: DVec2) -> f64 {
    let open = points.windows(2).map(|pair| distance_to_segment(at, pair[0], pair[1]));
    let last = match (closed, points.first(), points.last()) {
        (true, Some(&first), Some(&last)) => distance_to_segment(at, last, first),
        _ => f64::INFINITY,
    };
    open.fold(last, f64::min)
}

/// How points of a drawing lie in the plan: in an elevation along the facade, in a section along the arm.
#[derive(Debug, Clone, Copy)]
pub enum Mapping {
    /// Along a facade, this far behind it: at the setback of the unit pointed at.
    AlongFacade(EdgeLine, f64),
    /// Along the arm of a unit.
    InSection(SectionPlane),
}

impl Mapping {
    /// The mapping of a sheet; `unit` is what is pointed at or dragged. None where drags mean nothing.
    pub fn of(sheet: Sheet, plan: &Plan, assessment: &Assessment, unit: Option<Hit>) -> Option<Self> {
        match sheet {
            Sheet::Plan | Sheet::Building => None,
            Sheet::Elevation(edge) => {
                let line = assessment.facade_of(edge)?.facade.line;
                let setback_m = match unit {
                    Some(Hit::Unit(id)) => match plan.placements.get(&id).map(|placement| &placement.stands) {
                        Some(Standing::OnEdge { setback_m, .. }) => *setback_m,
                        Some(Standing::Free { .. }) | None => 0.0,
                    },
                    _ => 0.0,
                };
                Some(Self::AlongFacade(line, setback_m))
            }
            Sheet::Section(id) => {
                let placement = plan.placements.get(&id)?;
                let frame = Frame::of(plan, &placement.stands)?;
                let along = frame.direction(placement.make_up.drawn_slew_rad);
                Some(Self::InSection(SectionPlane { at: frame.at, along, level_m: frame.level_m }))
            }
        }
    }

    /// The plan point of a point of the drawing.
    pub fn in_plan(self, point: DVec2) -> DVec2 {
        match self {
            Self::AlongFacade(line, setback_m) => line.point(point.x, setback_m),
            Self::InSection(plane) => plane.in_plan(point.x),
        }
    }
}
