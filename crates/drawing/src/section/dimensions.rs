//! Dimensions of a section: heights at both sides, lengths of the arm above, distances to the edge below.

use gantline_plan::catalog::BraceKind;
use gantline_plan::quantity;
use glam::DVec2;

use super::facade::Crossing;
use super::scene::Scene;
use crate::dimension::{DimensionLine, Measured, ROW_MM, chain, chain_with_room};
use crate::layer::Layer;
use crate::pencil::Pencil;

/// Line of the distances below, under what is drawn, paper mm.
const BELOW_MM: f64 = FIRST_MM - 1.0;
/// Kept free between figures past the ends of lines that meet at a corner, paper mm.
const CORNER_MM: f64 = 2.0;
/// From what is drawn to the first dimension line, paper mm.
const FIRST_MM: f64 = 7.0;

/// Draws all dimensions; gives the top of them, m.
pub(super) fn draw_dimensions(pencil: &mut Pencil, scene: &Scene) -> f64 {
    heights_of_unit(pencil, scene);
    heights_of_edge(pencil, scene);
    distances_below(pencil, scene);
    lengths_above(pencil, scene)
}

fn words(scene: &Scene, meters: f64) -> String {
    quantity::length(meters, scene.options.units)
}

/// A place to measure from, with the name of the length that ends here.
type Stop = (&'static str, DVec2);

/// A height, whatever the distance between its two places.
fn height(scene: &Scene, from: DVec2, to: DVec2) -> Measured {
    Measured::new(from, to, words(scene, (to.y - from.y).abs()))
}

/// A length along the arm, whatever the heights of its two places.
fn length(scene: &Scene, from: DVec2, to: DVec2) -> Measured {
    Measured::new(from, to, words(scene, (to.x - from.x).abs()))
}

/// Lengths one after another; places that fall together count once.
fn in_a_row(
    scene: &Scene,
    stops: &[Stop],
    part: impl Fn(DVec2) -> f64,
    measured: impl Fn(&Scene, DVec2, DVec2) -> Measured,
) -> Vec<Measured> {
    let mut kept: Vec<Stop> = Vec::new();
    for &stop in stops {
        if kept.last().is_none_or(|&(_, last)| (part(stop.1) - part(last)).abs() > 0.0005) {
            kept.push(stop);
        }
    }
    kept.windows(2).map(|pair| measured(scene, pair[0].1, pair[1].1).named(pair[1].0)).collect()
}

fn heights(scene: &Scene, stops: &[Stop]) -> Vec<Measured> {
    in_a_row(scene, stops, |place| place.y, height)
}

fn lengths(scene: &Scene, stops: &[Stop]) -> Vec<Measured> {
    in_a_row(scene, stops, |place| place.x, length)
}

fn upright(x: f64) -> DimensionLine {
    DimensionLine { through: DVec2::new(x, 0.0), along: DVec2::Y }
}

fn level(y: f64) -> DimensionLine {
    DimensionLine { through: DVec2::new(0.0, y), along: DVec2::X }
}

/// Behind the unit: clear height under the arm, mast height, and the brace's pin on the mast.
fn heights_of_unit(pencil: &mut Pencil, scene: &Scene) {
    let unit = scene.unit;
    let back = -unit.arm.tail_m.max(unit.base.plate_half_m());
    let left = scene.window.min_m.x;
    let at = |row: f64| upright(left - pencil.scale.m(FIRST_MM + row * ROW_MM));
    let plate = DVec2::new(-unit.base.plate_half_m(), 0.0);
    let head = DVec2::new(back, unit.mast.height_m);
    let mast = [height(scene, plate, head).named("mast to arm's axis")];
    if !scene.options.is_whole() {
        chain(pencil, Layer::Dimension, at(0.0), &mast);
        return;
    }
    let (clear, axis) = (at(0.0), at(1.0));
    let underside = DVec2::new(back, unit.clear_height_m());
    chain(pencil, Layer::Dimension, clear, &[height(scene, plate, underside).named("clear under arm")]);
    let plinth = DVec2::new(plate.x, scene.slab_m());
    let raised = (scene.slab_m() < 0.0).then(|| height(scene, plinth, plate).named("plinth"));
    let heights: Vec<Measured> = raised.into_iter().chain(mast).collect();
    chain(pencil, Layer::Dimension, axis, &heights);
    if let Some((pin, top)) = brace_height(scene) {
        let line = upright(top.x.min(pin.x) - pencil.scale.m(5.0));
        chain(pencil, Layer::Dimension, line, &[height(scene, pin, top).named("pin")]);
    }
}

/// The brace's pin on the mast, and the arm's axis over it, at the side on which the height between them is written:
/// behind a rear brace, behind the mast of a front brace.
fn brace_height(scene: &Scene) -> Option<(DVec2, DVec2)> {
    let unit = scene.unit;
    let half = unit.mast.tube.section.depth_m() / 2.0;
    let (below_arm_m, back) = match unit.brace.as_ref()?.kind {
        BraceKind::RearToMast { below_arm_m, tail_at_m } => (below_arm_m, tail_at_m),
        BraceKind::Front { below_arm_m, .. } => (below_arm_m, half),
        BraceKind::RearToBase { .. } | BraceKind::RearFoot { .. } => return None,
    };
    let axis = unit.mast.height_m;
    Some((DVec2::new(-half, axis - below_arm_m), DVec2::new(-back, axis)))
}

/// In front: slab, build-up and parapet over slab and over the finish, and the room between coping and arm.
fn heights_of_edge(pencil: &mut Pencil, scene: &Scene) {
    let roof = scene.roof;
    let right = scene.window.max_m.x;
    let near = upright(right + pencil.scale.m(FIRST_MM));
    let far = upright(right + pencil.scale.m(FIRST_MM + ROW_MM));
    let front = scene.front();
    let edge = front.map_or(right, |crossing| crossing.x_m);
    let parapet = front.and_then(|crossing| scene.plan.find_edge(crossing.edge)).map(|place| place.edge().parapet);
    let top = DVec2::new(edge, scene.slab_m());
    // Just behind the edge: a zone may end at it.
    let slab = top - DVec2::Y * scene.thickness_m(edge - 0.001);
    let Some(parapet) = parapet.filter(|parapet| parapet.height_m > 0.0) else {
        chain(pencil, Layer::Dimension, near, &heights(scene, &[("", slab), ("slab", top)]));
        return;
    };
    let coping = DVec2::new(edge, scene.slab_m() + parapet.height_m);
    if !scene.options.is_whole() {
        chain(pencil, Layer::Dimension, near, &heights(scene, &[("", top), ("parapet", coping)]));
        return;
    }
    let mut places = vec![("", slab), ("slab", top), ("parapet", coping)];
    let arm = DVec2::new(edge, scene.unit.clear_height_m());
    if scene.unit.arm.outreach_m > edge && arm.y > coping.y {
        places.push(("to arm", arm));
    }
    let room_mm = pencil.scale.mm(scene.soffit_m() - scene.window.min_m.y) + BELOW_MM - CORNER_MM;
    chain_with_room(pencil, Layer::Dimension, near, &heights(scene, &places), room_mm);
    if roof.build_up_m > 0.0 {
        let finish = DVec2::new(edge, scene.slab_m() + roof.build_up_m);
        chain(
            pencil,
            Layer::Dimension,
            far,
            &heights(scene, &[("", top), ("build-up", finish), ("over finish", coping)]),
        );
    }
}

/// Below: foot or lug, mast axis, outline, facade, rope.
fn distances_below(pencil: &mut Pencil, scene: &Scene) {
    let low = scene.window.min_m.y;
    let line = level(low - pencil.scale.m(BELOW_MM));
    // Loads stand below the slab; the line of the axis begins below them.
    let axis_y = if scene.options.base_actions().is_some() { low + pencil.scale.m(1.0) } else { scene.soffit_m() };
    let axis = DVec2::new(0.0, axis_y);
    let mut stops: Vec<Stop> = Vec::new();
    if let Some(foot) = scene.foot() {
        stops.push(("", foot));
    }
    if let Some(BraceKind::RearToBase { base_at_m, .. }) = scene.unit.brace.as_ref().map(|brace| brace.kind) {
        stops.push(("", DVec2::new(-base_at_m, 0.0)));
    }
    stops.push((if scene.foot().is_some() { "foot" } else { "lug" }, axis));
    if let Some(crossing) = scene.front() {
        let square = crossing.cosine > 1.0 - 1e-9;
        let outline = DVec2::new(crossing.x_m, scene.soffit_m());
        stops.push((if square { "setback" } else { "to edge" }, outline));
        stops.extend(face(crossing, low).map(|at| ("offset", at)));
        let tip = DVec2::new(scene.tip().x, low);
        if tip.x > crossing.top_face_m() {
            stops.push((if square { "stand-off" } else { "to rope" }, tip));
        }
    }
    stops.sort_by(|a, b| a.1.x.total_cmp(&b.1.x));
    let end = stops.last().map_or(0.0, |stop| stop.1.x);
    let room_mm = pencil.scale.mm(scene.window.max_m.x - end) + FIRST_MM - CORNER_MM;
    chain_with_room(pencil, Layer::Dimension, line, &lengths(scene, &stops), room_mm);
}

/// The face at the top of a facade: from it stand-off is counted.
fn face(crossing: &Crossing, low: f64) -> Option<DVec2> {
    let face = crossing.top_face_m();
    ((face - crossing.x_m).abs() > 0.0005).then(|| DVec2::new(face, low))
}

/// Above: the brace's pin on the arm in a first row, tail and outreach in a second.
fn lengths_above(pencil: &mut Pencil, scene: &Scene) -> f64 {
    let unit = scene.unit;
    let top = unit.mast.height_m + unit.arm.tube.section.depth_m() / 2.0;
    let (tail, axis) = (DVec2::new(-unit.arm.tail_m, top), DVec2::new(0.0, top));
    let tip = DVec2::new(unit.arm.outreach_m, top);
    let mut row = FIRST_MM;
    if !scene.options.is_whole() {
        let line = level(top + pencil.scale.m(row));
        chain(pencil, Layer::Dimension, line, &lengths(scene, &[("", axis), ("outreach", tip)]));
        return top + pencil.scale.m(row);
    }
    let pin = match unit.brace.as_ref().map(|brace| brace.kind) {
        Some(BraceKind::RearToMast { tail_at_m, .. } | BraceKind::RearToBase { tail_at_m, .. }) => Some(-tail_at_m),
        Some(BraceKind::Front { arm_at_m, .. }) => Some(arm_at_m),
        Some(BraceKind::RearFoot { .. }) | None => None,
    };
    if let Some(x) = pin {
        let pin = DVec2::new(x, top);
        chain(pencil, Layer::Dimension, level(top + pencil.scale.m(row)), &[length(scene, axis, pin).named("brace")]);
        row += ROW_MM;
    }
    let line = level(top + pencil.scale.m(row));
    chain(pencil, Layer::Dimension, line, &lengths(scene, &[("", tail), ("tail", axis), ("outreach", tip)]));
    top + pencil.scale.m(row)
}
