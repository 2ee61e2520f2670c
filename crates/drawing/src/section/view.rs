//! The whole section, put together.

use gantline_plan::assess::Assessment;
use gantline_plan::document::{PlacementId, Plan};
use glam::DVec2;

use super::building::draw_building;
use super::conflicts::draw_conflicts;
use super::dimensions::draw_dimensions;
use super::facade::draw_facades;
use super::heading::draw_heading;
use super::loads::{draw_loads, draw_rope};
use super::options::SectionOptions;
use super::scene::Scene;
use super::unit::{bar, brace_line, draw_unit};
use super::zones::draw_zones;
use crate::drawing::Drawing;
use crate::label::{LabelPlaces, label_marks, place};
use crate::mark::Stress;
use crate::pencil::Pencil;
use crate::shown::Overlay;
use crate::taken::Taken;
use crate::text::Heading;

/// From the upper dimension line to the heading, paper mm.
const HEADING_MM: f64 = 7.0;

/// The section through a unit; none when it is not on the plan or something of it is missing.
pub fn section(plan: &Plan, assessment: &Assessment, id: PlacementId, options: &SectionOptions) -> Option<Drawing> {
    let scene = Scene::of(plan, assessment, id, options)?;
    let mut pencil = Pencil::about(options.scale, scene.thing, Stress::Plain);
    draw_building(&mut pencil, &scene);
    draw_facades(&mut pencil, &scene);
    if options.shown.has(Overlay::ClearZones) {
        draw_zones(&mut pencil, &scene);
    }
    draw_unit(&mut pencil, &scene);
    draw_rope(&mut pencil, &scene);
    draw_loads(&mut pencil, &scene);
    let top = draw_dimensions(&mut pencil, &scene);
    let corner = DVec2::new(scene.window.min_m.x - options.scale.m(14.0), top + options.scale.m(HEADING_MM));
    if options.heading == Heading::Written {
        draw_heading(&mut pencil, &scene, corner);
    }
    let labels = if options.shown.has(Overlay::Clearances) { draw_conflicts(&mut pencil, &scene) } else { Vec::new() };
    let mut taken = Taken::by_texts(pencil.marks(), options.scale);
    keep_parts_clear(&mut taken, &scene);
    let placed = place(labels, &mut taken, &LabelPlaces::new(), options.scale);
    let mut marks = pencil.done();
    marks.extend(placed.iter().flat_map(|one| label_marks(one, options.scale)));
    Some(Drawing::of(options.scale, marks))
}

/// No figure may stand on mast, arm or brace.
fn keep_parts_clear(taken: &mut Taken, scene: &Scene) {
    let (unit, scale) = (scene.unit, scene.options.scale);
    let height = unit.mast.height_m;
    let arm = bar(
        DVec2::new(-unit.arm.tail_m, height),
        DVec2::new(unit.arm.outreach_m, height),
        unit.arm.tube.section.depth_m(),
    );
    taken.add_points(&arm, scale);
    let mast = bar(DVec2::ZERO, DVec2::new(0.0, height), unit.mast.tube.section.depth_m());
    taken.add_points(&mast, scale);
    if let Some((from, to, depth)) = brace_line(scene) {
        for piece in 0..6 {
            let at = |index: i32| from.lerp(to, f64::from(index) / 6.0);
            taken.add_points(&bar(at(piece), at(piece + 1), depth), scale);
        }
    }
}
