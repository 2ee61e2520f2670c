//! Rope and loads in section: the rope down in front of the facade, the pull at the tip, the actions on the structure.

use std::f64::consts::{FRAC_PI_2, PI};

use gantline_plan::quantity;
use glam::DVec2;

use super::building::zigzag;
use super::facade::Crossing;
use super::options::BaseActions;
use super::scene::Scene;
use crate::layer::Layer;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle};

/// Length of a load's arrow, paper mm.
const ARROW_MM: f64 = 9.0;
/// Where the pull stands over the break of the rope on the small sheet, paper mm.
const ABOVE_BREAK_MM: f64 = 5.0;
/// Radius of a moment's arrow, paper mm.
const TURN_MM: f64 = 5.0;

/// Draws the rope, broken below.
pub(super) fn draw_rope(pencil: &mut Pencil, scene: &Scene) {
    let tip = scene.tip();
    let low = scene.window.min_m.y;
    pencil.line(Layer::Load, Pen::Rope, [tip, DVec2::new(tip.x, low)]);
    let half = pencil.scale.m(2.6);
    let left = scene.front().map_or(tip.x, Crossing::farthest_face_m).min(tip.x) - half;
    zigzag(pencil, DVec2::new(left, low), DVec2::new(tip.x + half, low));
}

/// Draws the loads that were given, with their figures.
pub(super) fn draw_loads(pencil: &mut Pencil, scene: &Scene) {
    let loads = &scene.options.loads;
    if let Some(pull_n) = loads.rope_n {
        let tip = scene.tip();
        // On the small sheet the height of the parapet stands where the pull would: the pull goes down to the break.
        let at_m = if scene.options.is_whole() {
            scene.soffit_m()
        } else {
            scene.window.min_m.y + pencil.scale.m(ABOVE_BREAK_MM)
        };
        let point = DVec2::new(tip.x, at_m);
        pencil.arrow(Layer::Load, Pen::LoadArrow, point + DVec2::Y * pencil.scale.m(ARROW_MM), point);
        let words = format!("T {}", quantity::force(pull_n, scene.options.units));
        let at = point + DVec2::new(pencil.scale.m(1.8), pencil.scale.m(ARROW_MM * 0.35));
        text(pencil, words, at, Anchor::START);
    }
    let Some(base) = scene.options.base_actions() else { return };
    let scale = pencil.scale;
    let foot = DVec2::new(0.0, scene.soffit_m() - scale.m(1.5));
    let units = scene.options.units;
    let below = foot - DVec2::Y * scale.m(ARROW_MM);
    let (from, to) = if base.up_n > 0.0 { (below, foot) } else { (foot, below) };
    pencil.arrow(Layer::Load, Pen::LoadArrow, from, to);
    let word = if base.up_n > 0.0 { "up" } else { "down" };
    let vertical = format!("{word} {}", quantity::force(base.up_n.abs(), units));
    text(pencil, vertical, below - DVec2::Y * scale.m(3.4), Anchor::OVER);
    draw_sideways(pencil, foot, base.outward_n, units);
    draw_moment(pencil, foot, base, units);
    if scene.options.is_whole() && !loads.words.is_empty() {
        let at = below - DVec2::Y * scale.m(3.4 + TextStyle::Note.line_mm());
        let words = Text::new(loads.words.clone(), at, Anchor::OVER, TextStyle::Note, Pen::Lettering);
        pencil.text_on_paper(Layer::Load, words);
    }
}

fn draw_sideways(pencil: &mut Pencil, foot: DVec2, outward_n: f64, units: quantity::UnitSystem) {
    let scale = pencil.scale;
    let side = sideways_sign(outward_n);
    let begin = foot + DVec2::new(side * scale.m(2.0), -scale.m(3.0));
    let end = begin + DVec2::X * side * scale.m(ARROW_MM);
    pencil.arrow(Layer::Load, Pen::LoadArrow, begin, end);
    let anchor = if side > 0.0 { Anchor::START_MIDDLE } else { Anchor::END_MIDDLE };
    text(pencil, quantity::force(outward_n.abs(), units), end + DVec2::X * side * scale.m(1.2), anchor);
}

/// Where the sideways arrow points: at the right when outward.
fn sideways_sign(outward_n: f64) -> f64 {
    if outward_n < 0.0 { -1.0 } else { 1.0 }
}

/// An arc whose head turns the way the moment does: tilting outward is clockwise, with the facade at the right.
///
/// It stands across from the sideways arrow.
fn draw_moment(pencil: &mut Pencil, foot: DVec2, base: BaseActions, units: quantity::UnitSystem) {
    let scale = pencil.scale;
    let side = -sideways_sign(base.outward_n);
    let center = foot - DVec2::Y * scale.m(ARROW_MM * 0.5);
    // From low to high at the left is clockwise, at the right it is not.
    let (low, high) = if side < 0.0 { (PI + 0.9, FRAC_PI_2 + 0.25) } else { (-0.9, FRAC_PI_2 - 0.25) };
    let is_clockwise = base.tilting_nm >= 0.0;
    let (from, to) = if is_clockwise == (side < 0.0) { (low, high) } else { (high, low) };
    let arc = pencil.arc(center, scale.m(TURN_MM), from, to);
    let end = arc[arc.len() - 1];
    let along = (end - arc[arc.len() - 2]).normalize_or_zero();
    pencil.line(Layer::Load, Pen::LoadArrow, arc);
    pencil.arrow_head(Layer::Load, Pen::LoadArrow, end + along * scale.m(0.8), along);
    let at = center + DVec2::X * side * scale.m(TURN_MM + 1.4);
    let anchor = if side < 0.0 { Anchor::END_MIDDLE } else { Anchor::START_MIDDLE };
    text(pencil, format!("M {}", quantity::moment(base.tilting_nm.abs(), units)), at, anchor);
}

fn text(pencil: &mut Pencil, words: String, at: DVec2, anchor: Anchor) {
    pencil.text_on_paper(Layer::Load, Text::new(words, at, anchor, TextStyle::Reading, Pen::Lettering));
}
