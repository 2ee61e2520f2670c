//! The unit in section: base plate, socket, mast, arm, brace of its kind, joints, tip.

use gantline_plan::assess::Part;
use gantline_plan::assess::parts_swept::{Profile, profiles};
use gantline_plan::catalog::Head;
use glam::DVec2;

use super::base::{draw_base, draw_foot};
use super::scene::Scene;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;

const PART: Fill = Fill::Hatch(Hatch::Part);
/// Radius of a pin, paper mm, where the parts don't ask for less.
const PIN_MM: f64 = 0.7;

/// Draws the unit.
pub(super) fn draw_unit(pencil: &mut Pencil, scene: &Scene) {
    let unit = scene.unit;
    let (depth, height) = (unit.arm.tube.section.depth_m(), unit.mast.height_m);
    let arm = bar(DVec2::new(-unit.arm.tail_m, height), DVec2::new(unit.arm.outreach_m, height), depth);
    draw_brace(pencil, scene);
    // An arm without a tail begins at the mast's axis, and the mast's head stands before it.
    if unit.arm.tail_m > unit.mast.tube.section.depth_m() / 2.0 {
        draw_mast(pencil, scene, height);
        pencil.area(Layer::Unit, PART, Some(Pen::Outline), arm);
    } else {
        pencil.area(Layer::Unit, PART, Some(Pen::Outline), arm);
        draw_mast(pencil, scene, height + depth / 2.0);
    }
    draw_base(pencil, scene);
    draw_head(pencil, scene);
    draw_pins(pencil, scene);
    let (low, high) = (-pencil.scale.m(3.0), height + depth / 2.0 + pencil.scale.m(3.0));
    pencil.line(Layer::Unit, Pen::Axis, [DVec2::new(0.0, low), DVec2::new(0.0, high)]);
    for point in &unit.arm.points {
        let at = DVec2::new(point.out_m, height - point.drop_m);
        pencil.disc(Layer::Unit, Fill::Paper, Some(Pen::Outline), at, pencil.scale.m(0.8));
    }
}

/// A bar of a depth between two points, as a rectangle.
pub(super) fn bar(from: DVec2, to: DVec2, depth_m: f64) -> [DVec2; 4] {
    let side = (to - from).normalize_or_zero().perp() * (depth_m / 2.0);
    [from - side, to - side, to + side, from + side]
}

fn draw_mast(pencil: &mut Pencil, scene: &Scene, top_m: f64) {
    let unit = scene.unit;
    let low = DVec2::new(0.0, unit.base.socket_top_m);
    let mast = bar(low, DVec2::new(0.0, top_m), unit.mast.tube.section.depth_m());
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), mast);
}

/// The brace as a bar between its points; a strut that stands askew to the plane is drawn as seen.
fn draw_brace(pencil: &mut Pencil, scene: &Scene) {
    let Some((from, to, depth)) = brace_line(scene) else { return };
    pencil.area(Layer::Unit, PART, Some(Pen::Outline), bar(from, to, depth));
    draw_foot(pencil, scene);
}

/// Both ends of the brace's axis, and its depth.
pub(super) fn brace_line(scene: &Scene) -> Option<(DVec2, DVec2, f64)> {
    let profile = brace_profile(scene)?;
    let from = DVec2::new(profile.from_out_m, profile.from_up_m);
    let to = scene.foot().unwrap_or(DVec2::new(profile.to_out_m, profile.to_up_m));
    Some((from, to, profile.depth_m))
}

/// The profile of the brace, if there is one.
pub(super) fn brace_profile(scene: &Scene) -> Option<Profile> {
    profiles(scene.unit).into_iter().find(|profile| profile.part != Part::Arm)
}

/// A pinned head shows its pin, a stiff one its gussets.
fn draw_head(pencil: &mut Pencil, scene: &Scene) {
    let unit = scene.unit;
    let height = unit.mast.height_m;
    if unit.arm.head == Head::Pinned {
        draw_pin(pencil, DVec2::new(0.0, height), unit.arm.tube.section.depth_m());
        return;
    }
    let (half, low) = (unit.mast.tube.section.depth_m() / 2.0, height - unit.arm.tube.section.depth_m() / 2.0);
    let leg = unit.mast.tube.section.depth_m() * 0.7;
    for side in [-1.0, 1.0] {
        let corner = DVec2::new(side * half, low);
        let gusset = [corner, corner + DVec2::new(side * leg, 0.0), corner - DVec2::Y * leg];
        if side > 0.0 || unit.arm.tail_m > leg + half {
            pencil.area(Layer::Unit, PART, Some(Pen::Edge), gusset);
        }
    }
}

fn draw_pins(pencil: &mut Pencil, scene: &Scene) {
    if let Some((from, to, depth)) = brace_line(scene) {
        draw_pin(pencil, from, depth);
        draw_pin(pencil, to, depth);
    }
}

fn draw_pin(pencil: &mut Pencil, at: DVec2, depth_m: f64) {
    let radius = pencil.scale.m(PIN_MM).min(depth_m * 0.45);
    pencil.disc(Layer::Unit, Fill::Paper, Some(Pen::Edge), at, radius);
    pencil.disc(Layer::Unit, Fill::Ink(Pen::Outline), None, at, radius * 0.4);
}
