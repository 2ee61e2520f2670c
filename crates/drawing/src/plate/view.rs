//! The whole picture of a plate, put together.

use gantline_plan::assess::Assessment;
use gantline_plan::assess::anchorage::PlateState;
use gantline_plan::catalog::BaseKind;
use gantline_plan::document::{PlacementId, Plan};
use gantline_plan::quantity;
use glam::DVec2;

use super::anchors::{draw_anchors, write_tensions};
use super::options::{AROUND_MM, PlateOptions};
use super::scene::Scene;
use super::sides::{draw_arm, draw_edges};
use super::writing::{Beside, write};
use crate::drawing::Drawing;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::mark::{Fill, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::taken::{Taken, TakenBox};
use crate::text::{Anchor, Heading, TextStyle};

/// How far the neutral axis runs past the plate, paper mm.
const PAST_MM: f64 = 2.5;

/// A picture of the plate of a unit's base or foot; none when the unit is not on the plan, lacks a part, or has no such
/// plate.
pub fn plate(plan: &Plan, assessment: &Assessment, id: PlacementId, options: &PlateOptions) -> Option<Drawing> {
    let scene = Scene::of(plan, assessment, id, options)?;
    let mut pencil = Pencil::about(options.scale, scene.thing, Stress::Plain);
    let mut taken = Taken::new();
    if let Some(size_mm) = options.within_mm {
        take_all_around(&mut taken, size_mm);
    }
    let part = Fill::Hatch(Hatch::Part);
    pencil.area(Layer::Ground, part, Some(Pen::Outline), scene.base.plate_m.clone());
    draw_state(&mut pencil, &scene);
    draw_tube(&mut pencil, &scene);
    draw_anchors(&mut pencil, &mut taken, &scene);
    draw_edges(&mut pencil, &mut taken, &scene);
    let axis = scene.state().and_then(|state| neutral_axis(&mut pencil, &mut taken, state, &scene));
    draw_arm(&mut pencil, &mut taken, &scene);
    write_tensions(&mut pencil, &mut taken, &scene);
    if let Some((at, along)) = axis {
        let words = "neutral axis".to_owned();
        write(&mut pencil, &mut taken, Beside { words, at, own_m: 0.0, prefers: along, pen: Pen::Lettering });
    }
    if scene.turn_rad.is_none() {
        mark_up(&mut pencil, &mut taken, &scene);
    }
    if options.heading == Heading::Written {
        draw_heading(&mut pencil, &scene);
    }
    Some(Drawing::of(options.scale, pencil.done()))
}

/// Takes the paper beyond a sheet, so that no words are cut off.
fn take_all_around(taken: &mut Taken, size_mm: DVec2) {
    for side in [DVec2::X, DVec2::NEG_X, DVec2::Y, DVec2::NEG_Y] {
        taken.add(TakenBox::around(side * size_mm, size_mm + side.perp().abs() * size_mm * 2.0));
    }
}

/// What presses.
fn draw_state(pencil: &mut Pencil, scene: &Scene) {
    let Some(state) = scene.state() else { return };
    if state.pressed_m.len() > 2 {
        pencil.area(Layer::Standing, Fill::Hatch(Hatch::Pressed), None, state.pressed_m.clone());
    }
}

/// The tube that stands on the plate; on a wall it stands along it and is seen as two lines.
fn draw_tube(pencil: &mut Pencil, scene: &Scene) {
    let radius_m = scene.base.socket_diameter_m / 2.0;
    if matches!(scene.base.kind, BaseKind::WallSocket { .. }) {
        for side in [-radius_m, radius_m] {
            let ends = [scene.bounds.min_m.y, scene.bounds.max_m.y].map(|y| DVec2::new(side, y));
            pencil.line(Layer::Unit, Pen::Hidden, ends);
        }
        return;
    }
    let ring = pencil.arc(DVec2::ZERO, radius_m, 0.0, std::f64::consts::TAU);
    pencil.ring(Layer::Unit, Pen::Edge, &ring[..ring.len() - 1]);
    let half = radius_m + pencil.scale.m(1.2);
    for along in [DVec2::X, DVec2::Y] {
        pencil.line(Layer::Unit, Pen::Axis, [along * -half, along * half]);
    }
}

/// The neutral axis, dashed and past the plate at both ends; gives one end and the direction there.
fn neutral_axis(pencil: &mut Pencil, taken: &mut Taken, state: &PlateState, scene: &Scene) -> Option<(DVec2, DVec2)> {
    let [from, to] = state.neutral_axis_m?;
    let along = (to - from).try_normalize()?;
    // Wherever its two points lie, it is drawn across the box round the plate.
    let middle = (scene.bounds.min_m + scene.bounds.max_m) / 2.0;
    let foot = from + along * (middle - from).dot(along);
    let half_m = scene.bounds.size_m().length() / 2.0;
    let beside_m = foot.distance(middle);
    let reach_m = (half_m * half_m - beside_m * beside_m).max(0.0).sqrt() * 0.75 + pencil.scale.m(PAST_MM);
    let ends = [foot - along * reach_m, foot + along * reach_m];
    pencil.line(Layer::Load, Pen::Hidden, ends);
    taken.add_line(ends[0], ends[1], pencil.scale);
    // Its words stand where they are read first.
    let high = if ends[1].y >= ends[0].y { (ends[1], along) } else { (ends[0], -along) };
    Some(high)
}

/// On a wall: which way is up.
fn mark_up(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene) {
    let scale = pencil.scale;
    let from = DVec2::new(scene.bounds.min_m.x - scale.m(12.0), 0.0);
    let to = from + DVec2::Y * scale.m(7.0);
    pencil.arrow(Layer::Unit, Pen::Dimension, from, to);
    taken.add_line(from, to, scale);
    let words = Beside { words: "up".to_owned(), at: to, own_m: 0.0, prefers: DVec2::Y, pen: Pen::Lettering };
    write(pencil, taken, words);
}

/// What is shown: the look with its share, the combination and the slew.
fn draw_heading(pencil: &mut Pencil, scene: &Scene) {
    let scale = pencil.scale;
    let top = scene.bounds.max_m.y + scale.m(AROUND_MM.y);
    let at = DVec2::new(scene.bounds.min_m.x - scale.m(AROUND_MM.x), top);
    let (first, second) = match scene.used {
        None => ("nothing could be computed".to_owned(), String::new()),
        Some(used) => {
            let share = used.share().map_or_else(|| "not checked".to_owned(), quantity::utilization);
            (format!("{}: {}, {share}", used.of.word(), used.look.words()), cause(scene))
        }
    };
    let line = DVec2::Y * scale.m(TextStyle::Note.line_mm());
    pencil.text(Layer::Sheet, first, at + line, Anchor::START, TextStyle::Name);
    if !second.is_empty() {
        pencil.text(Layer::Sheet, second, at, Anchor::START, TextStyle::Note);
    }
}

fn cause(scene: &Scene) -> String {
    let Some(state) = scene.state() else { return String::new() };
    let name = scene.plan.basis.combination_name(state.combination);
    format!("{name}, slew {}", quantity::angle(state.slew_rad))
}
