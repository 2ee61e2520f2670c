//! The whole plan view, put together from its things; labels are placed last, around all that is drawn.

use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, Ring, Roof, RoofId, ThingId};
use gantline_plan::geometry::rings;

use super::options::PlanViewOptions;
use super::{
    clearance_labels, conflict_marks, edge_distance_marks, keep_clear_of, obstacle_marks, reach_marks, reaction_label,
    roof_marks, room_marks, setback_marks, setting_out_marks, tag_label, unit_marks, zone_marks,
};
use crate::drawing::Drawing;
use crate::label::{Label, LabelPlaces, PlacedLabel, label_marks, place, places_of};
use crate::layer::Layer;
use crate::mark::{Fill, Mark, Shape};
use crate::scale::Scale;
use crate::shown::Overlay;
use crate::taken::{Taken, TakenBox};

/// A plan view with the places of its labels, to be handed to the next one.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanView {
    /// The drawing.
    pub drawing: Drawing,
    /// Places of the labels.
    pub places: LabelPlaces,
}

/// A plan view.
pub fn plan_view(plan: &Plan, assessment: &Assessment, options: &PlanViewOptions) -> Drawing {
    plan_view_keeping(plan, assessment, options, &LabelPlaces::new()).drawing
}

/// A plan view whose labels stay where they stood before, where that is still free.
pub fn plan_view_keeping(
    plan: &Plan,
    assessment: &Assessment,
    options: &PlanViewOptions,
    before: &LabelPlaces,
) -> PlanView {
    let mut marks = Vec::new();
    for id in roofs_upward(plan) {
        marks.extend(roof_marks(plan, id, options));
    }
    let mut labels = Vec::new();
    for &id in plan.obstacles.keys() {
        let (drawn, label) = obstacle_marks(plan, id, options);
        marks.extend(drawn);
        labels.extend(label.filter(|_| !options.overview));
    }
    dimensions_and_reach(plan, assessment, options, &mut marks);
    units(plan, assessment, options, &mut marks);
    let placed = labels_placed(plan, assessment, options, labels, &marks, before);
    let mut marks = without_what_labels_cover(marks, &placed, options.scale);
    for one in &placed {
        marks.extend(label_marks(one, options.scale));
    }
    PlanView { drawing: Drawing::of(options.scale, marks), places: places_of(&placed) }
}

/// Setting-out, then reach; in a narrow courtyard a figure that would stand on another one, or on a roof's name, is left out.
fn dimensions_and_reach(plan: &Plan, assessment: &Assessment, options: &PlanViewOptions, marks: &mut Vec<Mark>) {
    let mut taken = Taken::by_texts(marks.iter(), options.scale);
    if options.shown.has(Overlay::SettingOut) && !options.is_coarse() {
        let drawn = setting_out_marks(plan, assessment, options);
        marks.extend(without_overlap(drawn, &mut taken, options.scale));
    }
    if options.shown.has(Overlay::Reach) {
        for facade in assessment.facades.values() {
            let drawn = reach_marks(plan, assessment, facade, options);
            marks.extend(without_overlap(drawn, &mut taken, options.scale));
        }
    }
}

/// Leaves texts out that would stand on what is taken, with the paper under them.
fn without_overlap(marks: Vec<Mark>, taken: &mut Taken, scale: Scale) -> Vec<Mark> {
    let mut kept: Vec<Mark> = Vec::with_capacity(marks.len());
    for mark in marks {
        let Shape::Text(text) = &mark.shape else {
            kept.push(mark);
            continue;
        };
        if taken.take_if_free(&text.corners(scale), scale) {
            kept.push(mark);
        } else if kept.last().is_some_and(is_paper) {
            kept.pop();
        }
    }
    kept
}

/// Leaves dimensions' figures out that a label stands on: a tag or a name says more than a distance.
fn without_what_labels_cover(marks: Vec<Mark>, placed: &[PlacedLabel], scale: Scale) -> Vec<Mark> {
    let mut taken = Taken::new();
    for one in placed {
        taken.add(one.taken(scale));
    }
    let mut kept: Vec<Mark> = Vec::with_capacity(marks.len());
    for mark in marks {
        let covered = match &mark.shape {
            Shape::Text(text) if mark.layer == Layer::Dimension => {
                TakenBox::of(&text.corners(scale), scale).is_some_and(|one| !taken.is_free(&one))
            }
            _ => false,
        };
        if !covered {
            kept.push(mark);
        } else if kept.last().is_some_and(is_paper) {
            kept.pop();
        }
    }
    kept
}

fn is_paper(mark: &Mark) -> bool {
    matches!(&mark.shape, Shape::Area(area) if area.fill == Fill::Paper && area.edge.is_none())
}

/// Low roofs first, so that high ones cover them.
fn roofs_upward(plan: &Plan) -> Vec<RoofId> {
    let mut ids: Vec<RoofId> = plan.roofs.keys().copied().collect();
    ids.sort_by(|a, b| plan.roofs[a].level_m.total_cmp(&plan.roofs[b].level_m).then(a.cmp(b)));
    ids
}

fn units(plan: &Plan, assessment: &Assessment, options: &PlanViewOptions, marks: &mut Vec<Mark>) {
    let fine = !options.is_coarse();
    let mut taken = if options.all_setbacks { Taken::by_texts(marks.iter(), options.scale) } else { Taken::new() };
    for (&id, placement) in &plan.placements {
        let Some(unit) = assessment.units.get(&id) else { continue };
        marks.extend(unit_marks(id, placement, unit, options));
        if fine && options.shown.has(Overlay::ClearZones) {
            marks.extend(zone_marks(id, unit, options));
        }
        if fine && options.shown.has(Overlay::Room) && options.speaks_of(ThingId::Placement(id)) {
            marks.extend(room_marks(id, unit, options));
        }
        if fine && options.shown.has(Overlay::Clearances) {
            marks.extend(conflict_marks(id, unit, options));
        }
        let selected = options.is_in_focus(ThingId::Placement(id));
        if fine && options.shown.has(Overlay::SettingOut) {
            if selected {
                marks.extend(setback_marks(plan, id, unit, options));
            } else if options.all_setbacks {
                let drawn = setback_marks(plan, id, unit, options);
                marks.extend(without_overlap(drawn, &mut taken, options.scale));
            }
        }
        if fine && selected {
            let mut taken = Taken::by_texts(marks.iter(), options.scale);
            let drawn = edge_distance_marks(id, unit, options);
            marks.extend(without_overlap(drawn, &mut taken, options.scale));
        }
    }
}

/// Tags of selected units first, then names, then other tags, then figures.
fn labels_placed(
    plan: &Plan,
    assessment: &Assessment,
    options: &PlanViewOptions,
    names: Vec<Label>,
    marks: &[Mark],
    before: &LabelPlaces,
) -> Vec<PlacedLabel> {
    let mut taken = Taken::by_texts(marks, options.scale);
    keep_outlines_clear(&mut taken, plan, options);
    let (mut selected, mut tags, mut figures) = (Vec::new(), Vec::new(), Vec::new());
    for (&id, placement) in &plan.placements {
        let Some(unit) = assessment.units.get(&id) else { continue };
        keep_clear_of(&mut taken, placement, unit, options);
        let thing = ThingId::Placement(id);
        let into = if options.selected.contains(&thing) { &mut selected } else { &mut tags };
        into.extend(tag_label(id, placement, unit, options));
        if options.is_coarse() {
            continue;
        }
        if options.shown.has(Overlay::Clearances) {
            figures.extend(clearance_labels(plan, id, unit, options));
        }
        if options.shown.has(Overlay::Reactions) && options.speaks_of(thing) {
            figures.extend(reaction_label(id, unit, options));
        }
    }
    let mut placed = place(selected, &mut taken, before, options.scale);
    placed.extend(place(names, &mut taken, before, options.scale));
    placed.extend(place(tags, &mut taken, before, options.scale));
    placed.extend(place(figures, &mut taken, before, options.scale));
    placed
}

/// Labels stand beside outlines and obstacles rather than on them.
fn keep_outlines_clear(taken: &mut Taken, plan: &Plan, options: &PlanViewOptions) {
    let of_roofs = plan.roofs.values().flat_map(Roof::rings).map(Ring::points);
    let obstacles = plan.obstacles.values().map(|obstacle| obstacle.outline.clone());
    for ring in of_roofs.chain(obstacles) {
        for (from, to) in rings::segments(&ring) {
            taken.add_line(from, to, options.scale);
        }
    }
}
