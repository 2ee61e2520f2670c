//! The building view, put together.

use std::collections::BTreeSet;

use gantline_plan::assess::Assessment;
use gantline_plan::document::{Obstacle, PlacementId, Plan, Ring, Roof, RoofId, ThingId};
use gantline_plan::geometry::frame::EdgeLine;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::geometry::rings;
use gantline_plan::quantity::{self, UnitSystem};
use glam::DVec2;

use super::order::back_to_front;
use super::slant::Slant;
use crate::drawing::Drawing;
use crate::hatch::Hatch;
use crate::label::{Label, LabelKind, LabelPlaces, Row, label_marks, place};
use crate::layer::Layer;
use crate::mark::{Fill, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::scale::Scale;
use crate::taken::Taken;
use crate::text::TextStyle;

/// Options of a building view.
#[derive(Debug, Clone, PartialEq)]
pub struct BuildingOptions {
    /// The scale it is made for.
    pub scale: Scale,
    /// Units of the levels.
    pub units: UnitSystem,
    /// From where it is seen.
    pub slant: Slant,
    /// What is selected: drawn heavier.
    pub selected: BTreeSet<ThingId>,
}

impl BuildingOptions {
    /// At a scale, from the lower left.
    pub fn at(scale: Scale) -> Self {
        Self { scale, units: UnitSystem::Si, slant: Slant::default(), selected: BTreeSet::new() }
    }

    fn stress(&self, thing: ThingId) -> Stress {
        if self.selected.contains(&thing) { Stress::Selected } else { Stress::Plain }
    }
}

/// The whole building; none when there is no roof.
pub fn building(plan: &Plan, assessment: &Assessment, options: &BuildingOptions) -> Option<Drawing> {
    if plan.roofs.is_empty() {
        return None;
    }
    let mut pencil = Pencil::new(options.scale);
    let mut labels = Vec::new();
    for id in back_to_front(plan, options.slant) {
        let Some(roof) = plan.roofs.get(&id) else { continue };
        draw_roof(&mut pencil, plan, assessment, id, roof, options);
        labels.extend(level_label(id, roof, options));
    }
    let placed = place(labels, &mut Taken::new(), &LabelPlaces::new(), options.scale);
    let mut marks = pencil.done();
    marks.extend(placed.iter().flat_map(|one| label_marks(one, options.scale)));
    Some(Drawing::of(options.scale, marks))
}

/// Walls of holes that are seen through them, the roof, the outer walls that are seen, what stands on it.
fn draw_roof(
    pencil: &mut Pencil,
    plan: &Plan,
    assessment: &Assessment,
    id: RoofId,
    roof: &Roof,
    options: &BuildingOptions,
) {
    let slant = options.slant;
    for hole in &roof.holes {
        draw_walls(pencil, assessment, roof, hole, options);
    }
    pencil.about = Some(ThingId::Roof(id));
    pencil.stress = options.stress(ThingId::Roof(id));
    let seen = |ring: &Ring| ring.points().into_iter().map(|at| slant.place(at, roof.level_m)).collect::<Vec<_>>();
    let top = Polygon { outer: seen(&roof.outer), holes: roof.holes.iter().map(seen).collect() };
    pencil.polygon(Layer::Ground, Fill::Hatch(Hatch::Roof), Some(Pen::Outline), top);
    draw_walls(pencil, assessment, roof, &roof.outer, options);
    draw_on_roof(pencil, plan, assessment, id, roof, options);
    pencil.stress = Stress::Plain;
}

fn draw_walls(pencil: &mut Pencil, assessment: &Assessment, roof: &Roof, ring: &Ring, options: &BuildingOptions) {
    let slant = options.slant;
    for index in 0..ring.len() {
        let (start, end) = ring.ends(index);
        if !slant.sees(EdgeLine::between(start, end).outward) {
            continue;
        }
        let edge = ring.edge(index);
        let foot = assessment.facade_of(edge.id).map_or(0.0, |found| found.facade.foot_level_m).min(roof.level_m);
        let (high, low) = (roof.level_m, foot);
        let wall = [slant.place(start, low), slant.place(end, low), slant.place(end, high), slant.place(start, high)];
        pencil.about = Some(ThingId::Edge(edge.id));
        pencil.stress = options.stress(ThingId::Edge(edge.id));
        pencil.area(Layer::Ground, Fill::Paper, Some(Pen::Outline), wall);
    }
}

/// What stands on a roof, from back to front.
fn draw_on_roof(
    pencil: &mut Pencil,
    plan: &Plan,
    assessment: &Assessment,
    id: RoofId,
    roof: &Roof,
    options: &BuildingOptions,
) {
    let away = options.slant.away();
    let mut standing: Vec<(f64, ThingId)> = Vec::new();
    for (&obstacle, data) in plan.obstacles.iter().filter(|(_, data)| data.roof == id) {
        let nearest = data.outline.iter().map(|corner| corner.dot(away)).fold(f64::INFINITY, f64::min);
        standing.push((nearest, ThingId::Obstacle(obstacle)));
    }
    for (&unit, result) in &assessment.units {
        if let Some(frame) = result.frame.filter(|frame| frame.roof == id) {
            standing.push((frame.at.dot(away), ThingId::Placement(unit)));
        }
    }
    standing.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    for (_, thing) in standing {
        pencil.about = Some(thing);
        pencil.stress = options.stress(thing);
        match thing {
            ThingId::Obstacle(obstacle) => draw_obstacle(pencil, &plan.obstacles[&obstacle], roof, options.slant),
            ThingId::Placement(unit) => draw_unit(pencil, plan, assessment, unit, options.slant),
            ThingId::Plan | ThingId::Roof(_) | ThingId::Edge(_) | ThingId::Underlay(_) => {}
        }
    }
}

fn draw_obstacle(pencil: &mut Pencil, obstacle: &Obstacle, roof: &Roof, slant: Slant) {
    let (low, high) = (roof.level_m + obstacle.from_m, roof.level_m + obstacle.to_m);
    let ground = Fill::Hatch(Hatch::Obstacle);
    let top: Vec<DVec2> = obstacle.outline.iter().map(|&at| slant.place(at, high)).collect();
    pencil.area(Layer::Ground, ground, Some(Pen::Edge), top);
    for (a, b) in rings::segments(&obstacle.outline) {
        if slant.sees(EdgeLine::between(a, b).outward) {
            let wall = [slant.place(a, low), slant.place(b, low), slant.place(b, high), slant.place(a, high)];
            pencil.area(Layer::Ground, ground, Some(Pen::Edge), wall);
        }
    }
}

/// A unit as mast and arm in single lines.
fn draw_unit(pencil: &mut Pencil, plan: &Plan, assessment: &Assessment, id: PlacementId, slant: Slant) {
    let (Some(result), Some(placement)) = (assessment.units.get(&id), plan.placements.get(&id)) else { return };
    let (Some(frame), Ok(unit)) = (result.frame, &result.resolved) else { return };
    let along = frame.direction(placement.make_up.drawn_slew_rad);
    let head = frame.level_m + unit.mast.height_m;
    let mast = [slant.place(frame.at, frame.level_m), slant.place(frame.at, head)];
    let ends = [frame.at - along * unit.arm.tail_m, frame.at + along * unit.arm.outreach_m];
    pencil.line(Layer::Ground, Pen::Outline, mast);
    pencil.line(Layer::Ground, Pen::Outline, ends.map(|end| slant.place(end, head)));
}

/// Name and level, to stand right of the roof's rightmost corner.
fn level_label(id: RoofId, roof: &Roof, options: &BuildingOptions) -> Option<Label> {
    let corners = roof.outer.points().into_iter().map(|at| options.slant.place(at, roof.level_m));
    let point = corners.max_by(|a, b| a.x.total_cmp(&b.x))?;
    Some(Label {
        key: (ThingId::Roof(id), LabelKind::Name),
        point,
        prefers: DVec2::X,
        away_mm: 4.0,
        rows: vec![
            Row::words(roof.name.clone(), TextStyle::Name),
            Row::words(quantity::level(roof.level_m, options.units), TextStyle::Note),
        ],
        pen: Pen::TagFrame,
        stress: Stress::Plain,
        optional: false,
    })
}
