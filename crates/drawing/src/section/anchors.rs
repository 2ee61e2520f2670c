//! Anchors in section: rods at their true embedment, with what holds each kind in the concrete.

use gantline_plan::catalog::{Fixing, FixingKind};
use glam::DVec2;

use super::scene::Scene;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;

const PART: Fill = Fill::Hatch(Hatch::Part);
/// Rods nearer to each other than this lie behind one another, m.
const SAME_M: f64 = 0.002;

/// Which way an anchor lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Axis {
    /// In a slab.
    Upright,
    /// In a wall.
    Level,
}

/// An anchor as seen.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rod {
    /// Where it leaves the plate.
    pub head: DVec2,
    /// Where it enters the concrete.
    pub surface: DVec2,
    /// Unit vector into the concrete.
    pub into: DVec2,
    /// Embedment as seen.
    pub embedment_m: f64,
    /// Thickness of what it stands in, as seen.
    pub member_m: f64,
    pub axis: Axis,
    pub fixing: Fixing,
}

/// Draws anchors, each once where several lie behind one another.
pub(super) fn draw_rods(pencil: &mut Pencil, scene: &Scene, rods: &[Rod]) {
    let mut drawn: Vec<DVec2> = Vec::new();
    for rod in rods {
        if drawn.iter().all(|known| known.distance(rod.surface) > SAME_M) {
            drawn.push(rod.surface);
            draw_rod(pencil, rod);
        }
    }
    template(pencil, scene, rods);
}

/// A bar along the rod between two depths under the surface, with a width.
fn bar(rod: &Rod, from_m: f64, to_m: f64, width_m: f64) -> [DVec2; 4] {
    let side = rod.into.perp() * (width_m / 2.0);
    let (from, to) = (rod.surface + rod.into * from_m, rod.surface + rod.into * to_m);
    [from - side, to - side, to + side, from + side]
}

fn draw_rod(pencil: &mut Pencil, rod: &Rod) {
    let fixing = &rod.fixing;
    let (width, end) = (fixing.diameter_m, rod.embedment_m);
    let over = (rod.head - rod.surface).dot(rod.into);
    let area = |pencil: &mut Pencil, pen: Pen, ring: [DVec2; 4]| pencil.area(Layer::Unit, PART, Some(pen), ring);
    match fixing.kind {
        FixingKind::Weld => {
            let leg = width.max(-over / 3.0);
            let corner = rod.surface;
            pencil.area(
                Layer::Unit,
                Fill::Ink(Pen::Edge),
                None,
                [corner, corner - rod.into * leg, corner + rod.into.perp() * leg],
            );
            return;
        }
        FixingKind::Sleeve => return,
        FixingKind::Bonded => {
            let hole = fixing.outside_diameter_m.unwrap_or(width).max(width * 1.2);
            area(pencil, Pen::Fine, bar(rod, 0.0, end, hole));
        }
        FixingKind::Undercut => {
            let wide = fixing.outside_diameter_m.unwrap_or(width);
            area(pencil, Pen::Edge, bar(rod, 0.0, end, wide));
            let (near, far) = (bar(rod, end * 0.88, end, wide), bar(rod, end * 0.88, end, wide * 1.6));
            area(pencil, Pen::Edge, [near[0], far[1], far[2], near[3]]);
        }
        FixingKind::CastInBolt | FixingKind::Cage => {
            if let Some(head) = fixing.head {
                area(pencil, Pen::Edge, bar(rod, end, end + head.thickness_m, head.diameter_m));
            }
        }
        FixingKind::ThroughBolt => {
            let behind = rod.member_m;
            area(pencil, Pen::Edge, bar(rod, behind, behind + width * 0.6, width * 3.2));
            area(pencil, Pen::Edge, bar(rod, behind + width * 0.6, behind + width * 1.4, width * 1.8));
        }
        FixingKind::SteelBolts => area(pencil, Pen::Edge, bar(rod, end, end + width * 0.8, width * 1.8)),
    }
    let end = if fixing.kind == FixingKind::ThroughBolt { rod.member_m } else { end };
    area(pencil, Pen::Edge, bar(rod, over, end, width));
    area(pencil, Pen::Edge, bar(rod, over - width * 0.8, over, width * 1.8));
}

/// The template that holds a cage's bolts while the concrete is poured: a thin ring just over their heads.
fn template(pencil: &mut Pencil, scene: &Scene, rods: &[Rod]) {
    let caged = || rods.iter().filter(|rod| rod.fixing.kind == FixingKind::Cage && rod.axis == Axis::Upright);
    let Some(first) = caged().next() else { return };
    let (low, high) = caged()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), rod| (low.min(rod.surface.x), high.max(rod.surface.x)));
    let depth = first.surface.y - first.embedment_m * 0.85;
    pencil.about = Some(scene.thing);
    pencil.line(Layer::Unit, Pen::Hidden, [DVec2::new(low, depth), DVec2::new(high, depth)]);
}
