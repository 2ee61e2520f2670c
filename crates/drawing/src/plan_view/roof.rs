//! A roof in plan: its edge heavy, parapets as hatched bands inside it, folds in its holes, its name and level.

use gantline_plan::document::{Plan, Ring, Roof, RoofId, ThingId};
use gantline_plan::geometry::mass::parapet_strip;
use gantline_plan::geometry::polygons::Polygon;
use gantline_plan::quantity;
use glam::DVec2;

use super::edges::{area_of, higher_roofs, ring_under};
use super::options::PlanViewOptions;
use super::slab_zones::draw_slab_zones;
use crate::hatch::Hatch;
use crate::layer::Layer;
use crate::level_mark::level_mark;
use crate::mark::{Fill, Mark, Stress};
use crate::pen::Pen;
use crate::pencil::Pencil;
use crate::roomiest::roomiest;
use crate::text::{Anchor, Text, TextStyle, width_mm};

/// A parapet thinner than this on paper is only tinted, mm.
const LEAST_HATCHED_MM: f64 = 0.5;

/// Marks of one roof.
pub fn roof_marks(plan: &Plan, id: RoofId, options: &PlanViewOptions) -> Vec<Mark> {
    let Some(roof) = plan.roofs.get(&id) else { return Vec::new() };
    let mut stress = options.stress(ThingId::Roof(id));
    if stress == Stress::Plain {
        stress = options.stress_on(id);
    }
    let mut pencil = Pencil::about(options.scale, ThingId::Roof(id), stress);
    let ground = if stress == Stress::Faint { Hatch::OtherRoof } else { Hatch::Roof };
    pencil.polygon(Layer::Ground, Fill::Hatch(ground), None, area_of(roof));
    draw_slab_zones(&mut pencil, roof, options);
    let covers = higher_roofs(plan, id);
    for ring in roof.rings() {
        parapets(&mut pencil, ring, options);
        pencil.about = Some(ThingId::Roof(id));
        pencil.stress = stress;
        ring_under(&mut pencil, Layer::Outline, Pen::SlabEdge, &ring.points(), &covers);
    }
    for hole in &roof.holes {
        fold(&mut pencil, &hole.points());
    }
    selected_edges(&mut pencil, roof, options);
    pencil.about = Some(ThingId::Roof(id));
    pencil.stress = if stress == Stress::Selected { Stress::Plain } else { stress };
    name(&mut pencil, plan, id, roof, options);
    pencil.done()
}

fn parapets(pencil: &mut Pencil, ring: &Ring, options: &PlanViewOptions) {
    for index in 0..ring.len() {
        let edge = ring.edge(index);
        if edge.parapet.height_m <= 0.0 || edge.parapet.thickness_m <= 0.0 {
            continue;
        }
        pencil.about = Some(ThingId::Edge(edge.id));
        let hatched = options.scale.mm(edge.parapet.thickness_m) >= LEAST_HATCHED_MM;
        let strip = parapet_strip(ring, index);
        // Its ground lies low, so that zones that pass over it stay in sight.
        let fill = if hatched { Hatch::Parapet } else { Hatch::Obstacle };
        pencil.area(Layer::Ground, Fill::Hatch(fill), None, strip.clone());
        if hatched {
            pencil.ring(Layer::Outline, Pen::Edge, strip);
        }
    }
}

/// The fold that marks an opening: from a corner to a point inside it and on to the far corner.
fn fold(pencil: &mut Pencil, corners: &[DVec2]) {
    let polygon = Polygon::simple(corners.to_vec());
    let first = corners[0];
    let Some(far) = corners.iter().copied().max_by(|a, b| a.distance(first).total_cmp(&b.distance(first))) else {
        return;
    };
    let across = (far - first).perp() * 0.28;
    for middle in [first.midpoint(far) + across, first.midpoint(far) - across] {
        let whole = |a: DVec2, b: DVec2| matches!(polygon.clip_segment(a, b)[..], [(from, to)] if to - from > 0.999);
        if whole(first, middle) && whole(middle, far) {
            pencil.line(Layer::Background, Pen::Fine, [first, middle, far]);
            return;
        }
    }
}

fn selected_edges(pencil: &mut Pencil, roof: &Roof, options: &PlanViewOptions) {
    for ring in roof.rings() {
        for index in 0..ring.len() {
            let thing = ThingId::Edge(ring.edge(index).id);
            if options.selected.contains(&thing) {
                let (start, end) = ring.ends(index);
                pencil.about = Some(thing);
                pencil.stress = Stress::Selected;
                pencil.line(Layer::Outline, Pen::SlabEdge, [start, end]);
            }
        }
    }
}

/// Name and level where the roof has most room for them.
fn name(pencil: &mut Pencil, plan: &Plan, id: RoofId, roof: &Roof, options: &PlanViewOptions) {
    let level = quantity::level(roof.level_m, options.units);
    let scale = options.scale;
    let wide_mm = width_mm(&roof.name, TextStyle::Name).max(width_mm(&level, TextStyle::Note) + 5.0);
    let half = DVec2::new(scale.m(wide_mm), scale.m(9.0)) / 2.0;
    let Some(at) = place_of_name(plan, id, roof, half) else { return };
    let line = scale.m(TextStyle::Name.line_mm());
    let text = Text::new(roof.name.clone(), at + DVec2::Y * line * 0.35, Anchor::OVER, TextStyle::Name, Pen::Lettering);
    pencil.text_on_paper(Layer::Lettering, text);
    let left = at + DVec2::new(-scale.m(width_mm(&level, TextStyle::Note) + 4.0) / 2.0, -line * 0.95);
    level_mark(pencil, Layer::Lettering, left, &level);
}

/// Where the name has most room beside obstacles and higher roofs; none in a roof too small for it.
fn place_of_name(plan: &Plan, id: RoofId, roof: &Roof, half: DVec2) -> Option<DVec2> {
    let obstacles = plan.obstacles.values().filter(|obstacle| obstacle.roof == id);
    let outlines = obstacles.map(|obstacle| Polygon::simple(obstacle.outline.clone()));
    let others: Vec<Polygon> = outlines.chain(higher_roofs(plan, id)).collect();
    roomiest(&area_of(roof), half, &others)
}
