//! The building in section: slabs in concrete hatch, build-up, parapets with copings, obstacles, and where the drawing ends.

use gantline_plan::document::{Plan, Ring, Roof, RoofId, ThingId};
use gantline_plan::geometry::mass::parapet_strip;
use gantline_plan::geometry::polygons::Polygon;
use glam::DVec2;

use super::scene::{Scene, thickness_at_m};
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle};

/// How far a coping stands over a parapet's faces, paper mm.
const COPING_MM: f64 = 0.6;

/// Draws all of the building that the plane cuts inside the window.
pub(super) fn draw_building(pencil: &mut Pencil, scene: &Scene) {
    for (&id, roof) in &scene.plan.roofs {
        let parapets = parapets(scene, roof);
        draw_slab(pencil, scene, id, roof, &parapets);
        for cut in &parapets {
            pencil.about = Some(cut.thing);
            draw_parapet(pencil, scene, cut);
        }
    }
    draw_obstacles(pencil, scene);
    pencil.about = Some(scene.thing);
    draw_break(pencil, scene);
}

/// A cut: between two distances from the mast axis and two heights.
struct Cut {
    thing: ThingId,
    x: (f64, f64),
    y: (f64, f64),
}

/// Stretches of the plane inside a polygon, m from the mast axis, within the window.
fn inside(scene: &Scene, polygon: &Polygon) -> Vec<(f64, f64)> {
    let (left, right) = (scene.window.min_m.x, scene.window.max_m.x);
    let along = |fraction: f64| left + (right - left) * fraction;
    polygon
        .clip_segment(scene.plane.in_plan(left), scene.plane.in_plan(right))
        .into_iter()
        .map(|(from, to)| (along(from), along(to)))
        .collect()
}

/// A rectangle clipped to the window's heights; none outside of it.
fn rectangle(scene: &Scene, x: (f64, f64), y: (f64, f64)) -> Option<[DVec2; 4]> {
    let (low, high) = (y.0.max(scene.window.min_m.y), y.1.min(scene.window.max_m.y));
    let corner = DVec2::new;
    (high > low && x.1 > x.0).then(|| [corner(x.0, low), corner(x.1, low), corner(x.1, high), corner(x.0, high)])
}

fn parapets(scene: &Scene, roof: &Roof) -> Vec<Cut> {
    let base = roof.level_m - scene.plane.level_m;
    let mut cuts = Vec::new();
    for ring in roof.rings() {
        for index in 0..ring.len() {
            let edge = ring.edge(index);
            if edge.parapet.height_m <= 0.0 || edge.parapet.thickness_m <= 0.0 {
                continue;
            }
            let strip = Polygon::simple(parapet_strip(ring, index));
            for x in inside(scene, &strip) {
                cuts.push(Cut { thing: ThingId::Edge(edge.id), x, y: (base, base + edge.parapet.height_m) });
            }
        }
    }
    cuts
}

fn draw_slab(pencil: &mut Pencil, scene: &Scene, id: RoofId, roof: &Roof, parapets: &[Cut]) {
    pencil.about = Some(ThingId::Roof(id));
    let top = roof.level_m - scene.plane.level_m;
    let polygon = Polygon { outer: roof.outer.points(), holes: roof.holes.iter().map(Ring::points).collect() };
    for x in inside(scene, &polygon) {
        if let Some(slab) = slab_ring(scene, x, top, &steps(scene, roof, x)) {
            pencil.area(Layer::Ground, Fill::Hatch(Hatch::Concrete), None, slab.clone());
            outline_within(pencil, scene, &slab);
        }
        for part in without(x, parapets) {
            let Some(layer) = rectangle(scene, part, (top, top + roof.build_up_m)) else { continue };
            pencil.area(Layer::Ground, Fill::Hatch(Hatch::BuildUp), None, layer);
            pencil.line(Layer::Outline, Pen::Edge, [layer[3], layer[2]]);
        }
    }
}

/// The slab's thickness along a stretch: where each part ends, and how thick the slab is there.
fn steps(scene: &Scene, roof: &Roof, x: (f64, f64)) -> Vec<(f64, f64)> {
    let zones: Vec<Polygon> = roof.slab.zones.iter().map(|zone| Polygon::simple(zone.outline.clone())).collect();
    let crossed = zones.iter().flat_map(|zone| inside(scene, zone)).flat_map(|(from, to)| [from, to]);
    let mut ends: Vec<f64> = crossed.filter(|&at| at > x.0 && at < x.1).chain([x.1]).collect();
    ends.sort_by(f64::total_cmp);
    let mut from = x.0;
    let mut found: Vec<(f64, f64)> = Vec::new();
    for to in ends {
        let thickness_m = thickness_at_m(roof, scene.plane.in_plan(from.midpoint(to)));
        from = to;
        match found.last_mut() {
            Some((end, known)) if *known == thickness_m => *end = to,
            _ => found.push((to, thickness_m)),
        }
    }
    found
}

/// The cut slab with a step in its underside wherever its thickness changes, clipped to the window's heights.
fn slab_ring(scene: &Scene, x: (f64, f64), top: f64, steps: &[(f64, f64)]) -> Option<Vec<DVec2>> {
    let (low, high) = (scene.window.min_m.y, top.min(scene.window.max_m.y));
    let mut ring = Vec::with_capacity(2 * steps.len() + 2);
    let mut from = x.0;
    for &(to, thickness_m) in steps {
        let y = (top - thickness_m).max(low);
        if high <= y {
            return None;
        }
        ring.extend([DVec2::new(from, y), DVec2::new(to, y)]);
        from = to;
    }
    ring.extend([DVec2::new(x.1, high), DVec2::new(x.0, high)]);
    (x.1 > x.0).then_some(ring)
}

/// A stretch without what parapets take of it.
fn without(x: (f64, f64), parapets: &[Cut]) -> Vec<(f64, f64)> {
    let mut taken: Vec<(f64, f64)> = parapets.iter().map(|cut| cut.x).collect();
    taken.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut free = Vec::new();
    let mut from = x.0;
    for (begin, end) in taken {
        if begin > from && begin < x.1 {
            free.push((from, begin));
        }
        from = from.max(end);
    }
    if from < x.1 {
        free.push((from, x.1));
    }
    free
}

/// The outline of a cut, open where the drawing's window ends it.
fn outline_within(pencil: &mut Pencil, scene: &Scene, ring: &[DVec2]) {
    let (min, max) = (scene.window.min_m, scene.window.max_m);
    let at_rim = |a: DVec2, b: DVec2| {
        let same = |x: f64, y: f64, rim: f64| (x - rim).abs() < 1e-9 && (y - rim).abs() < 1e-9;
        same(a.x, b.x, min.x) || same(a.x, b.x, max.x) || same(a.y, b.y, min.y) || same(a.y, b.y, max.y)
    };
    for (&a, &b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        if !at_rim(a, b) {
            pencil.line(Layer::Outline, Pen::CutEdge, [a, b]);
        }
    }
}

fn draw_parapet(pencil: &mut Pencil, scene: &Scene, cut: &Cut) {
    let Some(ring) = rectangle(scene, cut.x, cut.y) else { return };
    pencil.area(Layer::Ground, Fill::Hatch(Hatch::Parapet), None, ring);
    outline_within(pencil, scene, &ring);
    let over = DVec2::X * pencil.scale.m(COPING_MM);
    if cut.y.1 <= scene.window.max_m.y {
        pencil.line(Layer::Outline, Pen::CutEdge, [ring[3] - over, ring[2] + over]);
    }
}

fn draw_obstacles(pencil: &mut Pencil, scene: &Scene) {
    for (&id, obstacle) in &scene.plan.obstacles {
        let Some(roof) = scene.plan.roofs.get(&obstacle.roof) else { continue };
        let base = roof.level_m - scene.plane.level_m;
        pencil.about = Some(ThingId::Obstacle(id));
        for x in inside(scene, &Polygon::simple(obstacle.outline.clone())) {
            let heights = (base + obstacle.from_m, base + obstacle.to_m);
            let Some(ring) = rectangle(scene, x, heights) else { continue };
            pencil.area(Layer::Ground, Fill::Hatch(Hatch::Obstacle), None, ring);
            outline_within(pencil, scene, &ring);
            let at = (ring[0] + ring[2]) / 2.0;
            let name = Text::new(obstacle.name.clone(), at, Anchor::CENTER, TextStyle::Name, Pen::Lettering);
            if pencil.scale.mm(ring[1].x - ring[0].x) > name.width_mm() + 1.0 {
                pencil.text_on_paper(Layer::Lettering, name);
            }
        }
    }
}

/// Zigzag lines where slabs go on beyond the drawing.
fn draw_break(pencil: &mut Pencil, scene: &Scene) {
    let polygon =
        Polygon { outer: scene.roof.outer.points(), holes: scene.roof.holes.iter().map(Ring::points).collect() };
    for x in [scene.window.min_m.x, scene.window.max_m.x] {
        if polygon.contains(scene.plane.in_plan(x)) {
            let past = pencil.scale.m(2.0);
            let (low, high) = (scene.soffit_m() - past, scene.slab_m() + scene.roof.build_up_m + past);
            zigzag(pencil, DVec2::new(x, low), DVec2::new(x, high));
        }
    }
}

/// A line with a kink in its middle: here the thing goes on.
pub(super) fn zigzag(pencil: &mut Pencil, from: DVec2, to: DVec2) {
    let along = (to - from).normalize_or_zero();
    let (middle, side) = (from.midpoint(to), along.perp() * pencil.scale.m(1.6));
    let step = along * pencil.scale.m(0.9);
    let points = [from, middle - step, middle - step * 0.5 + side, middle + step * 0.5 - side, middle + step, to];
    pencil.line(Layer::Outline, Pen::Break, points);
}

/// The roof that a plan's section stands on, for its words.
pub(super) fn roof_name(plan: &Plan, id: RoofId) -> String {
    plan.roofs.get(&id).map_or_else(String::new, |roof| roof.name.clone())
}
