//! The facade's face: its outline, the coping of each edge, the slab's level, the ground or roof on which it ends.

use gantline_plan::assess::FacadeAssessment;
use gantline_plan::document::{Plan, ThingId};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle};

/// Ground line past the facade's ends, paper mm.
const PAST_MM: f64 = 5.0;

/// Draws the face.
pub(super) fn draw_face(pencil: &mut Pencil, plan: &Plan, found: &FacadeAssessment) {
    let facade = &found.facade;
    let (length, low, high) = (facade.line.length_m, facade.foot_level_m, facade.top_level_m);
    let rectangle = Polygon::rectangle(DVec2::new(0.0, low.min(high)), DVec2::new(length, high));
    let fill = if facade.data.needs_access { Hatch::Roof } else { Hatch::NoAccess };
    pencil.polygon(Layer::Ground, Fill::Hatch(fill), None, rectangle.clone());
    let corners = &rectangle.outer;
    pencil.line(Layer::Outline, Pen::Outline, [corners[3], corners[0], corners[1], corners[2]]);
    let past = pencil.scale.m(PAST_MM);
    pencil.line(Layer::Outline, Pen::CutEdge, [DVec2::new(-past, low), DVec2::new(length + past, low)]);
    draw_copings(pencil, plan, found);
    if let Some(roof) = plan.roofs.get(&facade.roof) {
        let slab = roof.level_m;
        pencil.line(Layer::Outline, Pen::Hidden, [DVec2::new(0.0, slab), DVec2::new(length, slab)]);
    }
    if !facade.data.needs_access {
        let at = (corners[0] + corners[2]) / 2.0;
        let text = Text::new("needs no access", at, Anchor::CENTER, TextStyle::Name, Pen::Lettering);
        pencil.text_on_paper(Layer::Lettering, text);
    }
}

/// The top of each edge's parapet, with a step where they differ.
fn draw_copings(pencil: &mut Pencil, plan: &Plan, found: &FacadeAssessment) {
    let mut line: Vec<DVec2> = Vec::new();
    for part in &found.facade.edges {
        let Some(place) = plan.find_edge(part.edge) else { continue };
        let top = place.roof.level_m + place.edge().parapet.height_m;
        line.extend([DVec2::new(part.from_m, top), DVec2::new(part.to_m, top)]);
    }
    pencil.about = Some(ThingId::Edge(found.facade.key));
    pencil.line(Layer::Outline, Pen::CutEdge, line);
}
