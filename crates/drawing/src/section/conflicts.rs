//! Clearances that are too small and lie in the section's plane, as crosses with their figures.

use std::f64::consts::FRAC_PI_4;

use gantline_plan::assess::PairClearance;
use gantline_plan::quantity;
use glam::DVec2;

use super::scene::Scene;
use crate::label::{Label, LabelKind, Row};
use crate::layer::Layer;
use crate::mark::Stress;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::plan_view::against_word;
use crate::text::TextStyle;

/// A place nearer to the plane than this is drawn in it, m.
const IN_PLANE_M: f64 = 0.25;
/// Half the size of the cross, paper mm.
const CROSS_MM: f64 = 1.4;
/// Most conflicts shown.
const MOST_SHOWN: usize = 2;

/// Draws crosses and gives the figures to be placed beside them.
pub(super) fn draw_conflicts(pencil: &mut Pencil, scene: &Scene) -> Vec<Label> {
    let half = pencil.scale.m(CROSS_MM);
    let mut labels = Vec::new();
    for pair in shown(scene) {
        let at = DVec2::new(scene.plane.x_m(pair.at), pair.level_m - scene.plane.level_m);
        for angle in [FRAC_PI_4, 3.0 * FRAC_PI_4] {
            let reach = DVec2::from_angle(angle) * half;
            pencil.line(Layer::Conflict, Pen::Conflict, [at - reach, at + reach]);
        }
        labels.push(label(scene, pair, at, labels.len()));
    }
    labels
}

/// Conflicts in the plane, each pair of things once, the tightest first.
fn shown<'a>(scene: &Scene<'a>) -> Vec<&'a PairClearance> {
    let mut seen: Vec<&PairClearance> = Vec::new();
    for pair in scene.result.tightest() {
        let known = seen.iter().any(|other| (other.part, other.against) == (pair.part, pair.against));
        let here = scene.plane.beside_m(pair.at) <= IN_PLANE_M;
        if pair.conflict && here && !known && seen.len() < MOST_SHOWN {
            seen.push(pair);
        }
    }
    seen
}

fn label(scene: &Scene, pair: &PairClearance, at: DVec2, number: usize) -> Label {
    let (clear, limit) =
        (quantity::length(pair.clear_m, scene.options.units), quantity::length(pair.limit_m, scene.options.units));
    let what = format!("{}, {}", pair.part.word(), against_word(scene.plan, pair.against));
    Label {
        key: (scene.thing, LabelKind::Clearance(u8::try_from(number).unwrap_or(u8::MAX))),
        point: at,
        prefers: DVec2::new(-0.8, 0.6),
        away_mm: CROSS_MM + 2.0,
        rows: vec![Row::words(what, TextStyle::Note), Row::words(format!("{clear} of {limit}"), TextStyle::Reading)],
        pen: Pen::Conflict,
        stress: Stress::Plain,
        optional: false,
    }
}
