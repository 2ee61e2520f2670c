//! What lies around a plate: where the arm points, how the rope pulls it, on which sides edges lie.

use gantline_plan::assess::anchorage::Fixed;
use gantline_plan::geometry::frame::within_half_turn;
use gantline_plan::quantity;
use glam::DVec2;

use super::scene::Scene;
use super::writing::{Beside, write};
use crate::dimension::readable;
use crate::layer::Layer;
use crate::mark::Fill;
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::taken::Taken;
use crate::text::{Anchor, Text, TextStyle};

/// Farthest from the plate at which an edge is drawn where it is, paper mm; farther ones stand behind a break.
const EDGE_MM: f64 = 9.0;
/// From an edge's line to its words, paper mm.
const WORDS_MM: f64 = 2.2;
/// The arm past the plate, and the rope's pull past the arm, paper mm.
const ARM_MM: f64 = 4.0;
const PULL_MM: f64 = 6.5;
/// Edges that are drawn: the nearest.
const MOST_EDGES: usize = 2;
/// A slew nearer to the one shown than this is the same, rad.
const SAME_RAD: f64 = 0.009;
/// A pull less inclined than this is straight down: the sine of the angle.
const UPRIGHT: f64 = 0.02;

/// Draws the nearest edges as heavy lines at their sides, with their distance from the nearest anchor.
pub(super) fn draw_edges(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene) {
    let Some(found) = scene.result.base.as_ref().filter(|_| scene.options.of == Fixed::Base) else { return };
    for edge in found.edges.iter().take(MOST_EDGES) {
        let toward = (edge.on_edge - edge.anchor).try_normalize();
        let Some(toward) = toward.and_then(|toward| scene.seen_from_plan(toward)) else { continue };
        let Some(frame) = scene.result.frame else { continue };
        let Some(anchor) = scene.seen_from_plan(edge.anchor - frame.at) else { continue };
        let true_m = anchor.dot(toward) + edge.distance_m;
        let rim_m = reach_m(scene, toward);
        let drawn_m = true_m.clamp(rim_m.min(true_m), rim_m + pencil.scale.m(EDGE_MM));
        let half = toward.perp() * reach_m(scene, toward.perp());
        let at = toward * drawn_m;
        pencil.line(Layer::Outline, Pen::SlabEdge, [at - half, at + half]);
        if true_m > drawn_m + 1e-9 {
            broken(pencil, toward, (rim_m, drawn_m), half);
        }
        let words = format!("edge {}", quantity::length(edge.distance_m, scene.options.units));
        let mut text = Text::new(
            words,
            at + toward * pencil.scale.m(WORDS_MM),
            Anchor::CENTER,
            TextStyle::Dimension,
            Pen::Lettering,
        );
        text.rotation_rad = readable(toward.perp().to_angle());
        taken.add_points(&text.corners(pencil.scale), pencil.scale);
        taken.add_line(at - half, at + half, pencil.scale);
        pencil.text_on_paper(Layer::Reading, text);
    }
}

/// Two short strokes between plate and edge: the distance is not drawn to scale.
fn broken(pencil: &mut Pencil, toward: DVec2, between_m: (f64, f64), half: DVec2) {
    let middle = toward * between_m.0.midpoint(between_m.1) - half * 0.85;
    let (along, across) = (toward * pencil.scale.m(0.6), toward.perp() * pencil.scale.m(1.3));
    for side in [-1.0, 1.0] {
        let at = middle + along * side;
        pencil.line(Layer::Outline, Pen::Break, [at - across - along * 0.6, at + across + along * 0.6]);
    }
    let base = -half * 0.85;
    pencil.line(Layer::Outline, Pen::Dimension, [toward * between_m.0 + base, middle - along]);
    pencil.line(Layer::Outline, Pen::Dimension, [middle + along, toward * between_m.1 + base]);
}

/// How far plate and anchors reach in a direction, m.
pub(super) fn reach_m(scene: &Scene, toward: DVec2) -> f64 {
    let corners = scene.base.plate_m.iter().chain(scene.base.anchors.iter().flat_map(|anchors| &anchors.at_m));
    corners.map(|corner| corner.dot(toward)).fold(0.0, f64::max)
}

/// Draws arm and rope of the state, and the arm as the plan has it; at a foot where the mast stands.
pub(super) fn draw_arm(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene) {
    if scene.options.of == Fixed::Foot {
        ray(pencil, taken, scene, DVec2::X, Pen::Axis, "to the mast");
        return;
    }
    let drawn_rad = scene.placement.make_up.drawn_slew_rad;
    let slewed = |slew_rad: f64| scene.seen_from_base(DVec2::from_angle(slew_rad));
    let state = scene.state();
    if let Some(state) = state
        && let Some(toward) = slewed(state.slew_rad)
    {
        let tip = ray(pencil, taken, scene, toward, Pen::Outline, "arm");
        rope(pencil, taken, scene, tip, toward);
    }
    let is_another = state.is_none_or(|state| within_half_turn(state.slew_rad - drawn_rad).abs() > SAME_RAD);
    if is_another && let Some(toward) = slewed(drawn_rad) {
        ray(pencil, taken, scene, toward, Pen::Ghost, "arm as drawn");
    }
}

/// A line from the tube past the plate, with its words; gives its end.
fn ray(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene, toward: DVec2, pen: Pen, words: &str) -> DVec2 {
    let scale = pencil.scale;
    let from = toward * (scene.base.socket_diameter_m / 2.0);
    let past_m = box_m(scene, toward) + scale.m(ARM_MM);
    let tip = toward * past_m;
    pencil.line(Layer::Unit, pen, [from, tip]);
    pencil.disc(Layer::Unit, Fill::Paper, Some(pen), tip, scale.m(0.7));
    taken.add_line(from, tip, scale);
    let words = Beside { words: words.to_owned(), at: tip, own_m: scale.m(0.7), prefers: toward.perp(), pen };
    write(pencil, taken, Beside { pen: Pen::Lettering, ..words });
    tip
}

/// From the middle to the rim of the box round the plate in a direction, m.
fn box_m(scene: &Scene, toward: DVec2) -> f64 {
    let half = scene.bounds.max_m.abs().max(scene.bounds.min_m.abs());
    let to = |part: f64, half: f64| if part.abs() > 1e-9 { half / part.abs() } else { f64::INFINITY };
    to(toward.x, half.x).min(to(toward.y, half.y))
}

/// The rope's pull in plan at the end of the arm; a ring with a dot where it hangs straight down.
fn rope(pencil: &mut Pencil, taken: &mut Taken, scene: &Scene, tip: DVec2, arm: DVec2) {
    let Some(pull) = scene.state().and_then(|state| state.pull) else { return };
    let scale = pencil.scale;
    let level = pull.truncate();
    let Some(toward) =
        level.try_normalize().filter(|_| level.length() > UPRIGHT).and_then(|to| scene.seen_from_base(to))
    else {
        pencil.disc(Layer::Load, Fill::Ink(Pen::LoadArrow), None, tip, scale.m(0.45));
        let words = "rope straight down".to_owned();
        let own_m = scale.m(0.7);
        write(pencil, taken, Beside { words, at: tip, own_m, prefers: -arm.perp(), pen: Pen::LoadArrow });
        return;
    };
    let end = tip + toward * scale.m(PULL_MM);
    pencil.arrow(Layer::Load, Pen::LoadArrow, tip, end);
    taken.add_line(tip, end, scale);
    let from_down = quantity::angle((-pull.z).clamp(-1.0, 1.0).acos());
    let words = format!("rope, {from_down} from down");
    let beside = Beside { words, at: end, own_m: scale.m(0.5), prefers: toward, pen: Pen::LoadArrow };
    if let Some(beside) = write(pencil, taken, beside) {
        write(pencil, taken, Beside { words: "rope".to_owned(), ..beside });
    }
}
