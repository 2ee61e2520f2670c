//! Which drawing lies on which sheet.

use gantline_drawing::building::{BuildingOptions, building};
use gantline_drawing::elevation::{ElevationOptions, elevation};
use gantline_drawing::fit::fit_scale;
use gantline_drawing::label::LabelPlaces;
use gantline_drawing::plan_view::{PlanViewOptions, plan_view_keeping};
use gantline_drawing::section::{SectionDetail, SectionLoads, SectionOptions, section};
use gantline_drawing::shown::{Overlay, Shown};
use gantline_drawing::text::Heading;
use gantline_drawing::{Drawing, Scale};
use gantline_plan::document::{PlacementId, Plan, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use glam::DVec2;

use super::View;
use crate::session::camera::PT_PER_MM;
use crate::session::{Camera, OverlaySet, Sheet, SheetRect};

/// What a sheet's next drawing takes from the last: places of labels, so that they don't jump.
#[derive(Debug, Clone, Default)]
pub struct Memory {
    places: LabelPlaces,
}

/// The drawing of a sheet at a scale; none when what it draws is not there.
pub fn draw(sheet: Sheet, view: &View<'_>, scale: Scale, memory: &mut Memory) -> Option<Drawing> {
    let (units, selected) = (view.units, view.selection.iter().collect());
    match sheet {
        Sheet::Plan => {
            let shown = shown_on_plan(view);
            let overview = view.beside == Some(sheet);
            let options =
                PlanViewOptions { shown, units, selected, overview, roof: view.level, ..PlanViewOptions::at(scale) };
            let made = plan_view_keeping(view.plan, view.assessment, &options, &memory.places);
            memory.places = made.places;
            Some(made.drawing)
        }
        Sheet::Section(unit) => {
            let loads = view.assessment.units.get(&unit).map(|unit| SectionLoads::governing(unit)).unwrap_or_default();
            let detail = if view.beside == Some(sheet) { SectionDetail::Main } else { SectionDetail::Whole };
            let options =
                SectionOptions { scale, units, shown: view.overlays.drawn(), loads, heading: Heading::LeftOut, detail };
            section(view.plan, view.assessment, unit, &options)
        }
        Sheet::Elevation(edge) => {
            let key = view.assessment.facade_of(edge)?.facade.key;
            elevation(
                view.plan,
                view.assessment,
                key,
                &ElevationOptions { scale, units, selected, heading: Heading::LeftOut },
            )
        }
        Sheet::Building => {
            let options = BuildingOptions { units, selected, ..BuildingOptions::at(scale) };
            building(view.plan, view.assessment, &options)
        }
    }
}

/// With everything shown, reactions stand beside selected units only: a block beside each of many would hide the plan.
fn shown_on_plan(view: &View<'_>) -> Shown {
    let shown = view.overlays.drawn();
    if view.overlays == OverlaySet::All && view.selection.units().is_empty() {
        shown.without(Overlay::Reactions)
    } else {
        shown
    }
}

/// The camera that shows the whole drawing of a sheet; none when there is nothing to show.
pub fn fitted(sheet: Sheet, view: &View<'_>, rect: SheetRect) -> Option<Camera> {
    if sheet == Sheet::Plan {
        const AROUND_M: f64 = 2.5;
        let corners = view.plan.edges().map(|place| place.ring.ends(place.index).0);
        return Some(Camera::fitted(&Bounds::of(corners)?.grown(AROUND_M), rect));
    }
    const FILL: f64 = 0.96;
    /// On a small sheet texts are smaller, so that the thing drawn keeps its share of it.
    const TEXT_SIZES: [f64; 4] = [PT_PER_MM, 3.3, 2.85, 2.5];
    let make = |scale: Scale| draw(sheet, view, scale, &mut Memory::default());
    let mut found = None;
    for pt_per_mm in TEXT_SIZES {
        let scale = fit_scale(rect.size() * FILL / pt_per_mm, make)?;
        let bounds = make(scale)?.bounds()?;
        let m_per_pt = scale.m_per_mm / pt_per_mm;
        found = Some(Camera { center: (bounds.min_m + bounds.max_m) / 2.0, m_per_pt, pt_per_mm });
        if bounds.size_m().cmple(rect.size() * m_per_pt).all() && is_large_enough(sheet, view, m_per_pt, rect) {
            break;
        }
    }
    found
}

/// Whether what is drawn keeps a fair share of the sheet beside its texts.
fn is_large_enough(sheet: Sheet, view: &View<'_>, m_per_pt: f64, rect: SheetRect) -> bool {
    const SHARE: f64 = 0.3;
    let across_m = match sheet {
        Sheet::Section(unit) => view
            .assessment
            .units
            .get(&unit)
            .and_then(|unit| unit.resolved.as_ref().ok())
            .map_or(0.0, |unit| unit.mast.height_m.max(unit.arm.outreach_m + unit.arm.tail_m)),
        Sheet::Elevation(_) | Sheet::Building | Sheet::Plan => return true,
    };
    across_m / m_per_pt >= rect.size().min_element() * SHARE
}

/// Points that span a thing in the plan.
pub fn corners_of(plan: &Plan, thing: ThingId) -> Vec<DVec2> {
    match thing {
        ThingId::Plan => plan.edges().map(|place| place.ring.ends(place.index).0).collect(),
        ThingId::Roof(id) => plan.roofs.get(&id).map_or_else(Vec::new, |roof| roof.outer.points()),
        ThingId::Edge(id) => EdgeLine::of(plan, id).map_or_else(Vec::new, |line| vec![line.start, line.end]),
        ThingId::Obstacle(id) => plan.obstacles.get(&id).map_or_else(Vec::new, |obstacle| obstacle.outline.clone()),
        ThingId::Placement(id) => around(plan, id),
        // How large its page is, only its file knows.
        ThingId::Underlay(id) => plan.underlays.get(&id).map_or_else(Vec::new, |one| vec![one.origin_m]),
    }
}

fn around(plan: &Plan, id: PlacementId) -> Vec<DVec2> {
    const AROUND_M: f64 = 3.0;
    let frame = plan.placements.get(&id).and_then(|placement| Frame::of(plan, &placement.stands));
    frame.map_or_else(Vec::new, |frame| vec![frame.at - DVec2::splat(AROUND_M), frame.at + DVec2::splat(AROUND_M)])
}
