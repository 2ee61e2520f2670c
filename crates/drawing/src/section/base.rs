//! The base in section, by its kind: plate, anchors at their embedment, what raises it, socket with the mast in it.
//!
//! Everything is seen square to the plane, so that a plate turned against it is seen wider.

use gantline_plan::catalog::{Base, BaseKind, HoldDown, PedestalBody, WallSide};
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use super::anchors::{Axis, Rod, draw_rods};
use super::scene::Scene;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;

const PART: Fill = Fill::Hatch(Hatch::Part);

/// Draws the base that the mast stands in.
pub(super) fn draw_base(pencil: &mut Pencil, scene: &Scene) {
    let base = &scene.unit.base;
    if let BaseKind::WallSocket { side, eccentricity_m, plate_middle_m, .. } = base.kind {
        draw_on_wall(pencil, scene, &OnWall { base, side, eccentricity_m, plate_middle_m });
        draw_mast_inside(pencil, scene);
        return;
    }
    let plate = span(&base.plate_m, scene.along_arm());
    match &base.kind {
        BaseKind::Pedestal { height_m, body: PedestalBody::Plinth { corners_m } } => {
            draw_plinth(pencil, scene, corners_m, *height_m);
        }
        BaseKind::CastInSleeve { depth_m, drained, .. } => draw_sleeve(pencil, scene, *depth_m, *drained),
        BaseKind::OnSteel => draw_beam(pencil, scene, plate),
        _ => {}
    }
    draw_rods(pencil, scene, &rods(scene));
    let top_m = base.plate_thickness_m;
    let from_m = match &base.kind {
        BaseKind::Pedestal { height_m, body: PedestalBody::SteelStub } => {
            draw_stub(pencil, base, *height_m);
            *height_m
        }
        BaseKind::FlushPlate { stack_height_m, hold_down } => {
            draw_pinned_foot(pencil, base, (*stack_height_m, hold_down), plate);
            top_m
        }
        _ => top_m,
    };
    let radius = base.socket_diameter_m / 2.0;
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle((-radius, radius), (from_m, base.socket_top_m)));
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle(plate, (0.0, top_m)));
    if let BaseKind::CastInSleeve { capped: Some(true), .. } = base.kind {
        // The cap lies beside while a mast stands in the sleeve: where it goes is dashed.
        let cap = rectangle((-radius * 1.12, radius * 1.12), (base.socket_top_m, base.socket_top_m + top_m));
        pencil.ring(Layer::Unit, Pen::Ghost, cap);
    }
    draw_mast_inside(pencil, scene);
}

/// A rectangle between two places and two heights.
pub(super) fn rectangle(x: (f64, f64), y: (f64, f64)) -> [DVec2; 4] {
    [DVec2::new(x.0, y.0), DVec2::new(x.1, y.0), DVec2::new(x.1, y.1), DVec2::new(x.0, y.1)]
}

/// Where corners lie along a direction: the least and the farthest, m.
pub(super) fn span(corners: &[DVec2], along: DVec2) -> (f64, f64) {
    let places = corners.iter().map(|corner| corner.dot(along));
    places.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}

/// The anchors of the base, each once where several lie behind one another.
fn rods(scene: &Scene) -> Vec<Rod> {
    let base = &scene.unit.base;
    let (Some(anchors), Some(fixing)) = (&base.anchors, &scene.unit.fixing) else { return Vec::new() };
    let at = anchors.at_m.iter().map(|at| at.dot(scene.along_arm()));
    at.map(|x| Rod {
        head: DVec2::new(x, base.plate_thickness_m),
        surface: DVec2::new(x, 0.0),
        into: DVec2::NEG_Y,
        embedment_m: anchors.embedment_m,
        member_m: scene.thickness_m(x),
        axis: Axis::Upright,
        fixing: fixing.clone(),
    })
    .collect()
}

/// The mast goes on inside the socket.
fn draw_mast_inside(pencil: &mut Pencil, scene: &Scene) {
    let base = &scene.unit.base;
    let half = scene.unit.mast.tube.section.depth_m() / 2.0;
    let foot = base.socket_top_m - base.engaged_m;
    let hidden = [(-half, base.socket_top_m), (-half, foot), (half, foot), (half, base.socket_top_m)];
    pencil.line(Layer::Unit, Pen::Hidden, hidden.map(DVec2::from));
}

/// A concrete plinth down to the slab, cut by the plane, with its own edges.
fn draw_plinth(pencil: &mut Pencil, scene: &Scene, corners_m: &[DVec2], height_m: f64) {
    let along = scene.along_arm();
    let far = corners_m.iter().map(|corner| corner.length()).fold(0.0, f64::max) + 1.0;
    let (from, to) = (along * -far, along * far);
    for (begin, end) in Polygon::simple(corners_m.to_vec()).clip_segment(from, to) {
        let at = |share: f64| (2.0 * share - 1.0) * far;
        let body = rectangle((at(begin), at(end)), (-height_m, 0.0));
        pencil.area(Layer::Ground, Fill::Hatch(Hatch::Concrete), None, body);
        pencil.line(Layer::Outline, Pen::CutEdge, [body[0], body[3], body[2], body[1]]);
    }
}

/// A tube set in the slab: walls, foot plate, and the drain through the cover below it.
fn draw_sleeve(pencil: &mut Pencil, scene: &Scene, depth_m: f64, drained: Option<bool>) {
    let base = &scene.unit.base;
    let radius = base.socket_diameter_m / 2.0;
    let inner = (scene.unit.mast.tube.section.depth_m() + base.play_m).min(base.socket_diameter_m) / 2.0;
    pencil.area(Layer::Unit, PART, Some(Pen::CutEdge), rectangle((-radius, radius), (-depth_m, 0.0)));
    let wall = (radius - inner).max(0.0);
    let foot = -depth_m + wall.min(depth_m / 4.0);
    let bore = [(-inner, 0.0), (-inner, foot), (inner, foot), (inner, 0.0)];
    pencil.line(Layer::Unit, Pen::Edge, bore.map(DVec2::from));
    if drained == Some(true) {
        let half = radius * 0.12;
        let soffit = scene.slab_m() - scene.thickness_m(0.0);
        for side in [-half, half] {
            pencil.line(Layer::Unit, Pen::Edge, [DVec2::new(side, foot), DVec2::new(side, soffit)]);
        }
    }
}

/// A beam under the plate: its depth is not known here, so that it is drawn as deep as the slab and broken off.
fn draw_beam(pencil: &mut Pencil, scene: &Scene, plate: (f64, f64)) {
    let depth = scene.thickness_m(0.0);
    let (flange, web) = (depth * 0.09, (plate.1 - plate.0) * 0.035);
    let steel = Fill::Hatch(Hatch::Steel);
    pencil.area(Layer::Background, Fill::Paper, None, rectangle(plate, (-depth, 0.0)));
    pencil.area(Layer::Outline, steel, Some(Pen::CutEdge), rectangle((-web, web), (-depth + flange, -flange)));
    for y in [(-depth, -depth + flange), (-flange, 0.0)] {
        pencil.area(Layer::Outline, steel, Some(Pen::CutEdge), rectangle(plate, y));
    }
}

/// The steel stub of a pedestal, with the flange that the socket stands on.
fn draw_stub(pencil: &mut Pencil, base: &Base, height_m: f64) {
    let (radius, thickness) = (base.socket_diameter_m / 2.0, base.plate_thickness_m);
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle((-radius, radius), (thickness, height_m)));
    let flange = rectangle((-radius * 1.3, radius * 1.3), (height_m - thickness * 0.6, height_m));
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), flange);
}

/// The foot of a removable socket on a flush plate, its pins, and, dashed, the cover's height while it is off.
fn draw_pinned_foot(pencil: &mut Pencil, base: &Base, (stack_m, pins): (f64, &HoldDown), plate: (f64, f64)) {
    let (top, pin) = (base.plate_thickness_m, pins.radius_m * 0.06);
    let half = (pins.radius_m + 3.0 * pin).max(base.socket_diameter_m / 2.0);
    let thickness = (stack_m - top).max(top * 0.4);
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle((-half, half), (top, top + thickness)));
    for x in [-pins.radius_m, pins.radius_m] {
        pencil.area(Layer::Unit, PART, Some(Pen::Edge), rectangle((x - pin, x + pin), (0.0, top + thickness + pin)));
    }
    pencil.line(Layer::Unit, Pen::Ghost, [DVec2::new(plate.0, stack_m), DVec2::new(plate.1, stack_m)]);
}

/// A socket on the face of a wall.
struct OnWall<'a> {
    base: &'a Base,
    side: WallSide,
    eccentricity_m: f64,
    plate_middle_m: f64,
}

impl OnWall<'_> {
    /// Toward the wall along the base's x axis.
    const fn toward(&self) -> f64 {
        match self.side {
            WallSide::WallInFront => 1.0,
            WallSide::WallBehind => -1.0,
        }
    }

    /// A place so far from the mast axis toward the wall, and so far to the right as seen from in front of the face.
    fn in_base(&self, toward_m: f64, right_m: f64) -> DVec2 {
        // Who looks along the base's x axis has its y axis at the left.
        DVec2::new(self.toward() * toward_m, -self.toward() * right_m)
    }
}

fn draw_on_wall(pencil: &mut Pencil, scene: &Scene, on: &OnWall<'_>) {
    let (base, along) = (on.base, scene.along_arm());
    let slab = scene.slab_m();
    let corners = |low_m: f64, high_m: f64, half_m: f64| {
        span(
            &[(low_m, -half_m), (low_m, half_m), (high_m, -half_m), (high_m, half_m)].map(|(x, y)| on.in_base(x, y)),
            along,
        )
    };
    let (low, high) = span(&base.plate_m, DVec2::Y);
    let (left, right) = span(&base.plate_m, DVec2::X);
    let face = on.eccentricity_m;
    let heights = (slab + on.plate_middle_m + low, slab + on.plate_middle_m + high);
    let radius = base.socket_diameter_m / 2.0;
    let foot = base.socket_top_m - base.engaged_m;
    if let (Some(anchors), Some(fixing)) = (&base.anchors, &scene.unit.fixing) {
        let wall_m = scene.front().and_then(|crossing| scene.plan.find_edge(crossing.edge));
        let wall_m = wall_m.map_or(anchors.embedment_m, |place| place.edge().parapet.thickness_m);
        let into = DVec2::X * (on.toward() * along.x).signum();
        let rods = anchors.at_m.iter().map(|at| {
            let y = slab + on.plate_middle_m + at.y;
            let place = |toward_m: f64| DVec2::new(on.in_base(toward_m, at.x).dot(along), y);
            Rod {
                head: place(face - base.plate_thickness_m),
                surface: place(face),
                into,
                embedment_m: anchors.embedment_m * along.x.abs(),
                member_m: wall_m * along.x.abs(),
                axis: Axis::Level,
                fixing: fixing.clone(),
            }
        });
        draw_rods(pencil, scene, &rods.collect::<Vec<_>>());
    }
    let bracket = corners(0.0, face - base.plate_thickness_m, radius * 0.3);
    let rib = (base.socket_top_m - foot) * 0.1;
    for y in [foot.max(heights.0) + rib, base.socket_top_m.min(heights.1) - rib] {
        pencil.area(Layer::Unit, PART, Some(Pen::Edge), rectangle(bracket, (y - rib / 2.0, y + rib / 2.0)));
    }
    let plate = corners(face - base.plate_thickness_m, face, (right - left) / 2.0);
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle(plate, heights));
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), rectangle((-radius, radius), (foot - rib, base.socket_top_m)));
}

/// Draws a foot of its own with its plate and anchors.
pub(super) fn draw_foot(pencil: &mut Pencil, scene: &Scene) {
    let (Some(at), Some(foot)) = (scene.foot(), &scene.unit.foot) else { return };
    // The plate's x axis points to the mast.
    let along = DVec2::from_angle(-scene.unit.foot_bearing_rad).rotate(scene.along_arm());
    if let (Some(anchors), Some(fixing)) = (&foot.base.anchors, &foot.fixing) {
        let rods = anchors.at_m.iter().map(|place| {
            let surface = at + DVec2::X * place.dot(along);
            Rod {
                head: surface + DVec2::Y * foot.base.plate_thickness_m,
                surface,
                into: DVec2::NEG_Y,
                embedment_m: anchors.embedment_m,
                member_m: scene.thickness_m(surface.x),
                axis: Axis::Upright,
                fixing: fixing.clone(),
            }
        });
        draw_rods(pencil, scene, &rods.collect::<Vec<_>>());
    }
    let (low, high) = span(&foot.base.plate_m, along);
    let plate = rectangle((at.x + low, at.x + high), (at.y, at.y + foot.base.plate_thickness_m));
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), plate);
}
