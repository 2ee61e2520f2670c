//! An obstacle in plan: its outline, a cross through it, its name and heights.

use gantline_plan::document::{Obstacle, ObstacleId, Plan, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity;
use glam::DVec2;

use super::options::PlanViewOptions;
use crate::hatch::Hatch;
use crate::label::{Label, LabelKind, Row};
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::text::{Anchor, Text, TextStyle, width_mm};

/// Marks of one obstacle. When name and heights find no room inside it they are returned as a label instead.
pub fn obstacle_marks(plan: &Plan, id: ObstacleId, options: &PlanViewOptions) -> (Vec<Mark>, Option<Label>) {
    let Some(obstacle) = plan.obstacles.get(&id) else { return (Vec::new(), None) };
    let thing = ThingId::Obstacle(id);
    let mut stress = options.stress(thing);
    if stress == Stress::Plain {
        stress = options.stress_on(obstacle.roof);
    }
    let mut pencil = Pencil::about(options.scale, thing, stress);
    let polygon = Polygon::simple(obstacle.outline.clone());
    pencil.polygon(Layer::Obstacle, Fill::Hatch(Hatch::Obstacle), None, polygon.clone());
    for (a, b) in diagonals(&obstacle.outline) {
        for (from, to) in polygon.clip_segment(a, b) {
            pencil.line(Layer::Obstacle, Pen::Fine, [a.lerp(b, from), a.lerp(b, to)]);
        }
    }
    // What hangs over the roof is drawn dashed, as seen from below the eye.
    let pen = if obstacle.from_m > 0.0 { Pen::Hidden } else { Pen::Outline };
    pencil.ring(Layer::Obstacle, pen, obstacle.outline.clone());
    let label = name(&mut pencil, obstacle, thing, options);
    (pencil.done(), label)
}

/// Two lines across: the diagonals of four corners, else of the box around all.
fn diagonals(outline: &[DVec2]) -> Vec<(DVec2, DVec2)> {
    if let [a, b, c, d] = *outline {
        return vec![(a, c), (b, d)];
    }
    Bounds::of(outline.iter().copied()).map_or(Vec::new(), |bounds| {
        let (low, high) = (bounds.min_m, bounds.max_m);
        vec![(low, high), (DVec2::new(low.x, high.y), DVec2::new(high.x, low.y))]
    })
}

fn name(pencil: &mut Pencil, obstacle: &Obstacle, thing: ThingId, options: &PlanViewOptions) -> Option<Label> {
    let top = quantity::length(obstacle.to_m, options.units);
    let heights = if obstacle.from_m > 0.0 {
        format!("{} to {top} over slab", quantity::length(obstacle.from_m, options.units))
    } else {
        format!("{top} over slab")
    };
    let bounds = Bounds::of(obstacle.outline.iter().copied())?;
    let center = (bounds.min_m + bounds.max_m) / 2.0;
    let scale = options.scale;
    let wide = scale.m(width_mm(&obstacle.name, TextStyle::Name).max(width_mm(&heights, TextStyle::Note)) + 2.0);
    let size = bounds.size_m();
    let fits = wide <= size.x && scale.m(10.0) <= size.y && Polygon::simple(obstacle.outline.clone()).contains(center);
    if fits {
        pencil.stress = if pencil.stress == Stress::Selected { Stress::Plain } else { pencil.stress };
        let line = scale.m(TextStyle::Name.line_mm());
        let mut write = |words: &str, up: f64, style: TextStyle| {
            let text = Text::new(words, center + DVec2::Y * up, Anchor::OVER, style, Pen::Lettering);
            pencil.text_on_paper(Layer::Lettering, text);
        };
        write(&obstacle.name, line * 0.2, TextStyle::Name);
        write(&heights, -line * 0.8, TextStyle::Note);
        return None;
    }
    Some(Label {
        key: (thing, LabelKind::Name),
        point: center,
        prefers: DVec2::Y,
        away_mm: scale.mm(size.min_element()) / 2.0 + 2.0,
        rows: vec![Row::words(obstacle.name.clone(), TextStyle::Name), Row::words(heights, TextStyle::Note)],
        pen: Pen::TagFrame,
        stress: Stress::Plain,
        optional: true,
    })
}
