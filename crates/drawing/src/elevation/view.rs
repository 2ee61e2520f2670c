//! The whole elevation, put together.

use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, ThingId};
use gantline_plan::geometry::facade::FacadeKey;
use glam::DVec2;

use super::face::draw_face;
use super::gaps::draw_gaps;
use super::heading::draw_heading;
use super::options::ElevationOptions;
use super::reach::reach_regions;
use super::scales::{draw_depths, draw_distances, draw_levels};
use super::units::units;
use crate::drawing::Drawing;
use crate::label::{LabelPlaces, label_marks, place};
use crate::mark::Stress;
use crate::pencil::Pencil;
use crate::taken::Taken;
use crate::text::Heading;

/// From the highest thing drawn to the heading, paper mm.
const HEADING_MM: f64 = 9.0;

/// The elevation of a facade, named by its first edge; none when the plan has no such facade.
pub fn elevation(
    plan: &Plan,
    assessment: &Assessment,
    facade: FacadeKey,
    options: &ElevationOptions,
) -> Option<Drawing> {
    let found = assessment.facades.get(&facade)?;
    let mut pencil = Pencil::about(options.scale, ThingId::Edge(facade), Stress::Plain);
    draw_face(&mut pencil, plan, found);
    pencil.extend(reach_regions(assessment, found, options));
    let drawn = units(plan, assessment, found, options);
    let top = drawn.tags.iter().map(|tag| tag.point.y).fold(found.facade.top_level_m, f64::max);
    pencil.extend(drawn.marks);
    draw_levels(&mut pencil, plan, found, options);
    draw_depths(&mut pencil, found, options);
    draw_distances(&mut pencil, found, &drawn.stations, options);
    let mut taken = Taken::by_texts(pencil.marks(), options.scale);
    draw_gaps(&mut pencil, found, options, &mut taken);
    let placed = place(drawn.tags, &mut taken, &LabelPlaces::new(), options.scale);
    let labels: Vec<_> = placed.iter().flat_map(|one| label_marks(one, options.scale)).collect();
    let highest = placed.iter().map(|one| one.label.point.y + options.scale.m(one.offset_mm.y)).fold(top, f64::max);
    let corner = DVec2::new(0.0, highest + options.scale.m(HEADING_MM));
    pencil.about = Some(ThingId::Edge(facade));
    if options.heading == Heading::Written {
        draw_heading(&mut pencil, plan, found, options, corner);
    }
    let mut marks = pencil.done();
    marks.extend(labels);
    Some(Drawing::of(options.scale, marks))
}
