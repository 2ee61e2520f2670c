//! Where the plane of a section crosses edges of roofs: facades seen from the side, with their steps and foot.

use gantline_plan::assess::Assessment;
use gantline_plan::document::{Edge, EdgeId, FacadeStep, Plan, RoofId, ThingId};
use gantline_plan::geometry::frame::EdgeLine;
use glam::DVec2;

use super::plane::SectionPlane;
use super::scene::Scene;
use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;

/// A plane flatter to an edge than this does not show its facade: cosine of the angle between them.
const LEAST_COSINE: f64 = 0.05;

/// Where the plane crosses an edge.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Crossing {
    pub roof: RoofId,
    pub edge: EdgeId,
    /// The outline, m from the mast axis.
    pub x_m: f64,
    /// Cosine between the plane and the edge's outward direction: positive where the plane leaves the roof.
    pub cosine: f64,
    /// Level of the facade's top over the section's slab.
    pub top_m: f64,
    /// Level of its foot over the section's slab.
    pub foot_m: f64,
    /// Steps of its face.
    pub profile: Vec<FacadeStep>,
}

impl Crossing {
    /// Whether it is the edge of this roof that lies in front of the mast.
    pub fn is_front(&self, roof: RoofId) -> bool {
        self.roof == roof && self.x_m >= 0.0 && self.cosine > LEAST_COSINE
    }

    /// A facade's face at an offset, m from the mast axis, as cut by the plane.
    pub fn face_m(&self, offset_m: f64) -> f64 {
        self.x_m + offset_m / self.cosine
    }

    /// The face at its top.
    pub fn top_face_m(&self) -> f64 {
        self.face_m(self.profile.first().map_or(0.0, |step| step.offset_m))
    }

    /// The step of the face that stands farthest out.
    pub fn farthest_face_m(&self) -> f64 {
        self.profile.iter().map(|step| self.face_m(step.offset_m)).fold(self.x_m, f64::max)
    }
}

/// Crossings in order along the plane, between two distances from the mast axis.
pub(super) fn crossings(
    plan: &Plan,
    assessment: &Assessment,
    plane: &SectionPlane,
    between: (f64, f64),
) -> Vec<Crossing> {
    let mut all: Vec<Crossing> = plan
        .edges()
        .filter_map(|place| {
            let (start, end) = place.ring.ends(place.index);
            let line = EdgeLine::between(start, end);
            let cosine = line.outward.dot(plane.along);
            if cosine.abs() < LEAST_COSINE {
                return None;
            }
            let x_m = line.behind_m(plane.at) / cosine;
            let along_m = line.along_m(plane.in_plan(x_m));
            let on_edge = (-1e-6..=line.length_m + 1e-6).contains(&along_m);
            let near = x_m >= between.0 && x_m <= between.1;
            (on_edge && near).then(|| crossing(plan, assessment, plane, place.roof_id, place.edge(), (x_m, cosine)))
        })
        .collect();
    all.sort_by(|a, b| a.x_m.total_cmp(&b.x_m).then(a.edge.cmp(&b.edge)));
    all
}

fn crossing(
    plan: &Plan,
    assessment: &Assessment,
    plane: &SectionPlane,
    roof: RoofId,
    edge: &Edge,
    (x_m, cosine): (f64, f64),
) -> Crossing {
    let facade = assessment.facade_of(edge.id).map(|found| &found.facade);
    let level_m = plan.roofs.get(&roof).map_or(plane.level_m, |roof| roof.level_m);
    let top_level_m = facade.map_or(level_m + edge.parapet.height_m, |facade| facade.top_level_m);
    let foot_level_m = facade.map_or(0.0, |facade| facade.foot_level_m);
    Crossing {
        roof,
        edge: edge.id,
        x_m,
        cosine,
        top_m: top_level_m - plane.level_m,
        foot_m: foot_level_m - plane.level_m,
        profile: edge.facade.profile.clone(),
    }
}

/// Draws the faces of all facades crossed, from their tops down to their feet or to where the drawing ends.
pub(super) fn draw_facades(pencil: &mut Pencil, scene: &Scene) {
    for crossing in &scene.crossings {
        if crossing.x_m < scene.window.min_m.x || crossing.x_m > scene.window.max_m.x {
            continue;
        }
        pencil.about = Some(ThingId::Edge(crossing.edge));
        draw_face(pencil, scene, crossing);
    }
    pencil.about = Some(scene.thing);
}

fn draw_face(pencil: &mut Pencil, scene: &Scene, crossing: &Crossing) {
    let low = scene.window.min_m.y.max(crossing.foot_m);
    let high = scene.window.max_m.y;
    let mut points = Vec::new();
    for (index, step) in crossing.profile.iter().enumerate() {
        let next = crossing.profile.get(index + 1).map_or(f64::INFINITY, |next| next.from_depth_m);
        let x = crossing.face_m(step.offset_m);
        let (from, to) = (crossing.top_m - step.from_depth_m, (crossing.top_m - next).max(low));
        if from > low && to < high {
            points.extend([DVec2::new(x, from.min(high)), DVec2::new(x, to)]);
        }
    }
    let Some(&end) = points.last() else { return };
    pencil.line(Layer::Outline, Pen::Outline, points);
    if crossing.foot_m > scene.window.min_m.y {
        let out = end + DVec2::X * crossing.cosine.signum() * pencil.scale.m(10.0);
        pencil.line(Layer::Outline, Pen::CutEdge, [end, out]);
    }
}
