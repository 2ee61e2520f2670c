//! A node for each thing on the sheet, with name and value, for screen readers and tests; none is a tab stop.

use egui::{Id, Pos2, Rect, Role, Sense, Ui, WidgetInfo, pos2};
use gantline_plan::assess::Assessment;
use gantline_plan::document::{Plan, Standing, ThingId};
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use gantline_plan::quantity::{UnitSystem, length, level};
use glam::DVec2;

use crate::derived::Underlays;
use crate::session::{Camera, SheetRect};
use crate::words;

/// A node where something is refused, so that the place is told and not only crossed out.
pub fn refused(ui: &Ui, at: Pos2, why: &str) {
    mark(ui, "refused here", at, "Refused here", why);
}

/// A node for the card at the pointer: the figures of the gesture, one after the other.
pub fn card(ui: &Ui, at: Pos2, figures: &str) {
    if !figures.is_empty() {
        mark(ui, "card at the pointer", at, "At the pointer", figures);
    }
}

fn mark(ui: &Ui, id: impl std::hash::Hash + std::fmt::Debug, at: Pos2, name: &str, value: &str) {
    let response = ui.interact(Rect::from_center_size(at, egui::Vec2::splat(10.0)), Id::unique(id), Sense::hover());
    response.widget_info(|| {
        let mut info = WidgetInfo::labeled(Role::GraphicsObject, true, name);
        info.current_text_value = Some(value.to_owned());
        info
    });
}

/// A node where a part comes too near something, with how near and how near it may.
pub fn conflicts(ui: &Ui, plan: &Plan, assessment: &Assessment, place: &dyn Fn(DVec2) -> Pos2, units: UnitSystem) {
    for (&id, unit) in &assessment.units {
        for (index, pair) in unit.clearances.iter().enumerate().filter(|(_, pair)| pair.conflict) {
            let at = place(pair.at);
            if !ui.clip_rect().contains(at) {
                continue;
            }
            let unit = words::name(plan, ThingId::Placement(id));
            let name = format!("Conflict of {unit}: {}, {}", words::clearance(plan, pair), words::over(pair.over));
            let value = format!("{} of {}", length(pair.clear_m, units), length(pair.limit_m, units));
            mark(ui, ("conflict", id, index), at, &name, &value);
        }
    }
}

/// Adds the nodes of everything in sight.
pub fn nodes(ui: &Ui, plan: &Plan, assessment: &Assessment, camera: &Camera, sheet: SheetRect, units: UnitSystem) {
    let place = |point: DVec2| {
        let at = camera.screen_from_drawing(sheet, point);
        pos2(at.x as f32, at.y as f32)
    };
    let seen =
        Rect::from_min_max(pos2(sheet.min.x as f32, sheet.min.y as f32), pos2(sheet.max.x as f32, sheet.max.y as f32));
    let node = |thing: ThingId, rect: Rect, value: &dyn Fn() -> String| {
        if !seen.intersects(rect) {
            return;
        }
        let response = ui.interact(rect, Id::unique(("thing", thing)), Sense::hover());
        response.widget_info(|| {
            let mut info = WidgetInfo::labeled(Role::GraphicsObject, true, words::name(plan, thing));
            info.current_text_value = Some(value());
            info
        });
    };
    for (&id, roof) in &plan.roofs {
        if let Some(bounds) = gantline_plan::geometry::bounds::Bounds::of(roof.outer.points()) {
            let rect = Rect::from_two_pos(place(bounds.min_m), place(bounds.max_m));
            node(ThingId::Roof(id), rect, &|| format!("level {}", level(roof.level_m, units)));
        }
    }
    for edge in plan.edges() {
        let (from, to) = edge.ring.ends(edge.index);
        let middle = place(from.midpoint(to));
        let rect = Rect::from_center_size(middle, egui::Vec2::splat(8.0));
        node(ThingId::Edge(edge.edge().id), rect, &|| length(EdgeLine::between(from, to).length_m, units));
    }
    for (&id, obstacle) in &plan.obstacles {
        if let Some(bounds) = gantline_plan::geometry::bounds::Bounds::of(obstacle.outline.iter().copied()) {
            let rect = Rect::from_two_pos(place(bounds.min_m), place(bounds.max_m));
            node(ThingId::Obstacle(id), rect, &|| format!("top {}", length(obstacle.to_m, units)));
        }
    }
    for (&id, placement) in &plan.placements {
        if let Some(frame) = Frame::of(plan, &placement.stands) {
            let rect = Rect::from_center_size(place(frame.at), egui::Vec2::splat(12.0));
            let thing = ThingId::Placement(id);
            node(thing, rect, &|| {
                let stands = match &placement.stands {
                    Standing::OnEdge { edge, station, .. } => {
                        let edge_length = EdgeLine::of(plan, *edge).map_or(0.0, |line| line.length_m);
                        format!("along {}", length(station.along_m(edge_length), units))
                    }
                    Standing::Free { .. } => "stands free".to_owned(),
                };
                format!("{stands}, {}", words::tally_of(assessment, thing))
            });
        }
    }
}

/// Adds the nodes of underlays whose place is known.
pub fn underlays(ui: &Ui, plan: &Plan, shown: &Underlays, place: &dyn Fn(DVec2) -> Pos2) {
    for (&id, underlay) in plan.underlays.iter().filter(|(_, one)| one.shown) {
        let Some(corners) = shown.corners(underlay) else { continue };
        let corners = corners.map(place);
        let rect = Rect::from_points(&corners).intersect(ui.clip_rect());
        let thing = ThingId::Underlay(id);
        let response = ui.interact(rect, Id::unique(("thing", thing)), Sense::hover());
        response.widget_info(|| {
            let mut info = WidgetInfo::labeled(Role::GraphicsObject, true, words::name(plan, thing));
            let state = if underlay.locked { "underlay, locked" } else { "underlay" };
            info.current_text_value = Some(state.to_owned());
            info
        });
    }
}
