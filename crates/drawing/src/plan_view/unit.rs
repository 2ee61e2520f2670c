//! A unit in plan: base plate, socket, mast, arm at its drawn slew, brace, tip. From afar a tick and its tag.

use std::f64::consts::PI;

use gantline_plan::assess::UnitAssessment;
use gantline_plan::catalog::{BraceKind, FootFrom, ResolvedUnit};
use gantline_plan::document::{Placement, PlacementId, ThingId};
use gantline_plan::geometry::frame::Frame;
use glam::DVec2;

use super::base::{base_words, draw_base, draw_foot};
use super::options::PlanViewOptions;
use crate::hatch::Hatch;
use crate::label::{Label, LabelKind, Row};
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::taken::Taken;
use crate::text::TextStyle;

/// Length of the tick that stands for a unit from afar, paper mm.
const TICK_MM: f64 = 3.0;
/// Radius of the ring at a tip, and of a foot's sign, paper mm.
const SIGN_MM: f64 = 0.8;
/// Pieces into which an arm is cut to say where no label may stand.
const ARM_PIECES: u32 = 4;

/// Marks of one unit.
pub fn unit_marks(
    id: PlacementId,
    placement: &Placement,
    unit: &UnitAssessment,
    options: &PlanViewOptions,
) -> Vec<Mark> {
    let Some(frame) = unit.frame else { return Vec::new() };
    let thing = ThingId::Placement(id);
    let mut stress = options.stress(thing);
    if stress == Stress::Plain {
        stress = options.stress_on(frame.roof);
    }
    let mut pencil = Pencil::about(options.scale, thing, stress);
    match &unit.resolved {
        _ if options.is_coarse() => tick(&mut pencil, &frame),
        Ok(resolved) => parts(&mut pencil, placement, resolved, unit, &frame),
        Err(_) => unknown(&mut pencil, &frame),
    }
    pencil.done()
}

fn tick(pencil: &mut Pencil, frame: &Frame) {
    let out = frame.direction(0.0) * pencil.scale.m(TICK_MM);
    pencil.line(Layer::Unit, Pen::Outline, [frame.at, frame.at + out]);
    pencil.disc(Layer::Unit, Fill::Ink(Pen::Outline), None, frame.at, pencil.scale.m(0.6));
}

/// A cross in a ring: what stands here can't be drawn, because something of it is missing.
fn unknown(pencil: &mut Pencil, frame: &Frame) {
    let radius = pencil.scale.m(2.0);
    pencil.disc(Layer::Unit, Fill::Paper, Some(Pen::Conflict), frame.at, radius);
    for angle in [PI / 4.0, 3.0 * PI / 4.0] {
        let half = DVec2::from_angle(angle) * radius;
        pencil.line(Layer::Unit, Pen::Conflict, [frame.at - half, frame.at + half]);
    }
}

fn parts(pencil: &mut Pencil, placement: &Placement, unit: &ResolvedUnit, result: &UnitAssessment, frame: &Frame) {
    let slew = placement.make_up.drawn_slew_rad;
    let along = frame.direction(slew);
    let part = Fill::Hatch(Hatch::Part);
    draw_base(pencil, unit, result, frame);
    foot(pencil, unit, frame, slew);
    let width = unit.arm.tube.section.width_m() / 2.0;
    let arm = bar(frame.at - along * unit.arm.tail_m, frame.at + along * unit.arm.outreach_m, width);
    pencil.area(Layer::Unit, part, Some(Pen::Outline), arm);
    brace(pencil, unit, frame, along);
    pencil.disc(Layer::Unit, part, Some(Pen::Outline), frame.at, unit.mast.tube.section.width_m() / 2.0);
    axis_cross(pencil, frame.at, along);
    tip(pencil, unit, frame, slew);
}

/// A bar between two points as a rectangle.
fn bar(from: DVec2, to: DVec2, half_width: f64) -> [DVec2; 4] {
    let side = (to - from).normalize_or_zero().perp() * half_width;
    [from - side, to - side, to + side, from + side]
}

/// A brace lies below the arm and is drawn as hidden; its pins are small circles.
fn brace(pencil: &mut Pencil, unit: &ResolvedUnit, frame: &Frame, along: DVec2) {
    let Some(brace) = &unit.brace else { return };
    let (from_m, to_m) = match brace.kind {
        BraceKind::RearToMast { tail_at_m, .. } => (0.0, -tail_at_m),
        BraceKind::RearToBase { tail_at_m, base_at_m } => (-base_at_m, -tail_at_m),
        BraceKind::Front { arm_at_m, .. } => (0.0, arm_at_m),
        BraceKind::RearFoot { .. } => return,
    };
    let half = brace.tube.section.width_m() / 2.0;
    let (from, to) = (frame.at + along * from_m, frame.at + along * to_m);
    let [a, b, c, d] = bar(from, to, half);
    pencil.line(Layer::Unit, Pen::Hidden, [a, b]);
    pencil.line(Layer::Unit, Pen::Hidden, [d, c]);
    for pin in [from, to] {
        pencil.disc(Layer::Unit, Fill::Ink(Pen::Outline), None, pin, pencil.scale.m(0.3).min(half));
    }
}

/// The strut to a foot of its own, and the foot's sign.
fn foot(pencil: &mut Pencil, unit: &ResolvedUnit, frame: &Frame, slew: f64) {
    let Some(brace) = &unit.brace else { return };
    let BraceKind::RearFoot { from, distance_m, .. } = brace.kind else { return };
    let head = match from {
        FootFrom::MastHead => frame.at,
        FootFrom::ArmTail => frame.at - frame.direction(slew) * unit.arm.tail_m,
    };
    let foot = frame.at + frame.direction(PI + unit.foot_bearing_rad) * distance_m;
    let part = Fill::Hatch(Hatch::Part);
    draw_foot(pencil, unit, frame);
    pencil.area(Layer::Unit, part, Some(Pen::Outline), bar(head, foot, brace.tube.section.width_m() / 2.0));
    let radius = pencil.scale.m(SIGN_MM).max(brace.tube.section.width_m());
    pencil.disc(Layer::Unit, part, Some(Pen::Outline), foot, radius);
    axis_cross(pencil, foot, frame.direction(unit.foot_bearing_rad));
}

fn axis_cross(pencil: &mut Pencil, at: DVec2, along: DVec2) {
    let half = pencil.scale.m(1.6);
    for direction in [along, along.perp()] {
        pencil.line(Layer::Unit, Pen::Dimension, [at - direction * half, at + direction * half]);
    }
}

fn tip(pencil: &mut Pencil, unit: &ResolvedUnit, frame: &Frame, slew: f64) {
    let turn = DVec2::from_angle(frame.outward_rad + slew);
    let radius = pencil.scale.m(SIGN_MM);
    for point in &unit.arm.points {
        let at = frame.at + turn.rotate(DVec2::new(point.out_m, point.sideways_m));
        pencil.disc(Layer::Unit, Fill::Paper, Some(Pen::Outline), at, radius);
        pencil.disc(Layer::Unit, Fill::Ink(Pen::Outline), None, at, radius * 0.4);
    }
}

/// The unit's tag, to be placed beside its base, rather inboard than outboard.
pub fn tag_label(
    id: PlacementId,
    placement: &Placement,
    unit: &UnitAssessment,
    options: &PlanViewOptions,
) -> Option<Label> {
    let frame = unit.frame?;
    let thing = ThingId::Placement(id);
    let plate = unit.resolved.as_ref().map_or(0.0, |resolved| resolved.base.plate_half_m());
    let stress = options.stress(thing);
    let mut rows = vec![Row::words(placement.tag.0.clone(), TextStyle::Tag)];
    if !options.is_coarse() {
        rows.extend(base_words(unit, options.is_in_focus(thing)).map(|words| Row::words(words, TextStyle::Note)));
    }
    Some(Label {
        key: (thing, LabelKind::Tag),
        point: frame.at,
        prefers: -frame.direction(0.0),
        away_mm: options.scale.mm(plate) + 1.6,
        rows,
        pen: Pen::TagFrame,
        stress,
        optional: !options.is_in_focus(thing),
    })
}

/// Takes the places of a unit's parts, so that no label covers them.
pub fn keep_clear_of(taken: &mut Taken, placement: &Placement, unit: &UnitAssessment, options: &PlanViewOptions) {
    let Some(frame) = unit.frame else { return };
    let scale = options.scale;
    let Ok(resolved) = &unit.resolved else { return };
    if options.is_coarse() {
        return;
    }
    let half = resolved.base.plate_half_m() + scale.m(0.6);
    taken.add_points(&[frame.at - DVec2::splat(half), frame.at + DVec2::splat(half)], scale);
    let along = frame.direction(placement.make_up.drawn_slew_rad);
    let width = resolved.arm.tube.section.width_m() / 2.0 + scale.m(0.4);
    let (tail, tip) = (frame.at - along * resolved.arm.tail_m, frame.at + along * resolved.arm.outreach_m);
    for piece in 0..ARM_PIECES {
        let at = |index: u32| tail.lerp(tip, f64::from(index) / f64::from(ARM_PIECES));
        taken.add_points(&bar(at(piece), at(piece + 1), width), scale);
    }
    if let Some(BraceKind::RearFoot { distance_m, .. }) = resolved.brace.as_ref().map(|brace| brace.kind) {
        let foot = frame.at + frame.direction(PI + resolved.foot_bearing_rad) * distance_m;
        let at = |index: u32| frame.at.lerp(foot, f64::from(index) / f64::from(ARM_PIECES));
        for piece in 0..ARM_PIECES {
            taken.add_points(&bar(at(piece), at(piece + 1), width), scale);
        }
    }
}
