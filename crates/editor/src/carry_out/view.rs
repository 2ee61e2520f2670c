//! What is looked at: selection, cameras, overlays.

use gantline_plan::document::{PlacementId, ThingId};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use crate::app::App;
use crate::command::Sense;
use crate::derived::drawn::bounds_of;
use crate::session::session::Area;
use crate::session::{Camera, Drawer, OverlaySet, Selected, Selection, Sheet};

/// Selects, and works on the level of what is selected.
pub fn select(app: &mut App, selection: Selection) {
    if let Some(document) = &app.document {
        let plan = document.plan();
        let roof = match selection.single() {
            Some(ThingId::Roof(id)) => Some(id),
            Some(ThingId::Edge(edge)) => plan.find_edge(edge).map(|place| place.roof_id),
            Some(ThingId::Obstacle(id)) => plan.obstacles.get(&id).map(|obstacle| obstacle.roof),
            Some(ThingId::Underlay(id)) => plan.underlays.get(&id).and_then(|underlay| underlay.roof),
            Some(ThingId::Placement(_) | ThingId::Plan) | None => None,
        };
        app.session.level = roof.or(app.session.level);
    }
    app.session.selection = selection;
}

/// Selects a thing and brings it into sight.
pub fn go_to(app: &mut App, thing: ThingId, place: Option<DVec2>) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan().clone();
    if thing != ThingId::Plan {
        select(app, Selection::of([thing]));
    }
    let middle = || bounds_of(&plan, std::iter::once(thing)).map(|bounds| (bounds.min_m + bounds.max_m) / 2.0);
    let (Some(at), Some(sheet)) = (place.or_else(middle), app.session.main_rect) else {
        return;
    };
    if let Some(camera) = app.session.cameras.get_mut(&Sheet::Plan) {
        let inner = camera.seen(sheet).size_m() * 0.4;
        let off = (at - camera.center).abs();
        if off.x > inner.x || off.y > inner.y {
            camera.center = at;
        }
    }
}

/// Shows an overlay set, and remembers it for the next plan.
pub fn overlays(app: &mut App, set: OverlaySet) {
    app.session.overlays = set;
    app.preferences.overlays = set;
    super::file::keep_preferences(app);
}

/// Fits the main sheet's drawing.
pub fn fit(app: &mut App) {
    let sheet = main_sheet(app);
    app.session.cameras.remove(&sheet);
    app.session.companion_cameras.clear();
}

/// Fits what is selected.
pub fn fit_selection(app: &mut App) {
    let (Some(document), Some(rect)) = (&app.document, app.session.main_rect) else {
        return;
    };
    let underlay = match app.session.selection.single() {
        Some(ThingId::Underlay(id)) => document.plan().underlays.get(&id).and_then(|one| app.underlays.corners(one)),
        _ => None,
    };
    let bounds = match underlay {
        Some(corners) => Bounds::of(corners),
        None => bounds_of(document.plan(), app.session.selection.iter()),
    };
    let Some(bounds) = bounds else {
        return fit(app);
    };
    app.session.cameras.insert(Sheet::Plan, Camera::fitted(&bounds, rect));
}

/// Zooms about the middle of the main sheet.
pub fn zoom(app: &mut App, factor: f64) {
    let sheet = main_sheet(app);
    if let (Some(rect), Some(camera)) = (app.session.main_rect, app.session.cameras.get_mut(&sheet)) {
        *camera = camera.zoomed(factor, rect.middle(), rect);
    }
}

fn main_sheet(app: &App) -> Sheet {
    let session = &app.session;
    app.document.as_ref().map_or(Sheet::Plan, |document| {
        session.slots.placed(document.plan(), &session.selection, session.drawing_pressed()).0
    })
}

/// Keeps the companion as it is, or lets it follow again.
pub fn pin(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let slots = &mut app.session.slots;
    slots.pinned = match slots.pinned {
        Some(_) => None,
        None => Some(slots.companion(document.plan(), &app.session.selection)),
    };
}

/// The next thing of the kind selected now.
pub fn step(app: &mut App, sense: Sense) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    let all: Vec<ThingId> = match app.session.selection.shown() {
        Selected::Roof(_) => plan.roofs.keys().map(|&id| ThingId::Roof(id)).collect(),
        Selected::Edges(_) => plan.edges().map(|place| ThingId::Edge(place.edge().id)).collect(),
        Selected::Obstacle(_) => plan.obstacles.keys().map(|&id| ThingId::Obstacle(id)).collect(),
        Selected::Underlay(_) => plan.underlays.keys().map(|&id| ThingId::Underlay(id)).collect(),
        Selected::Nothing | Selected::Several if plan.placements.is_empty() => {
            plan.edges().map(|place| ThingId::Edge(place.edge().id)).collect()
        }
        Selected::Nothing | Selected::Several | Selected::Unit(_) | Selected::Units(_) => {
            plan.placements.keys().map(|&id| ThingId::Placement(id)).collect()
        }
    };
    if all.is_empty() {
        return;
    }
    let at = app.session.selection.iter().next().and_then(|thing| all.iter().position(|known| *known == thing));
    let next = match (at, sense) {
        (None, Sense::Ahead) => 0,
        (None, Sense::Back) => all.len() - 1,
        (Some(at), Sense::Ahead) => (at + 1) % all.len(),
        (Some(at), Sense::Back) => (at + all.len() - 1) % all.len(),
    };
    go_to(app, all[next], None);
    super::ghost::renew(app);
}

/// The next finding: what it is about is selected, its place is brought into sight.
pub fn finding(app: &mut App, sense: Sense) {
    let assessment = app.assessed.of_plan();
    let findings = assessment.findings();
    if findings.is_empty() {
        app.session.said = format!("{} checks made; none fails, all were made.", assessment.tally().all());
        return;
    }
    let next = match (app.session.finding, sense) {
        (None, Sense::Ahead) => 0,
        (None, Sense::Back) => findings.len() - 1,
        (Some(at), Sense::Ahead) => (at + 1) % findings.len(),
        (Some(at), Sense::Back) => (at + findings.len() - 1) % findings.len(),
    };
    app.session.finding = Some(next);
    app.session.drawer = Some(Drawer::Findings);
    let check = findings[next];
    app.session.said = crate::views::findings::sentence(check);
    let thing = check.about.first().copied().unwrap_or(ThingId::Plan);
    go_to(app, thing, check.at.map(|place| place.at));
}

/// The roof above or below the one worked on.
pub fn level(app: &mut App, sense: Sense) {
    let Some(document) = &app.document else {
        return;
    };
    let mut roofs: Vec<_> = document.plan().roofs.iter().map(|(&id, roof)| (id, roof.level_m)).collect();
    roofs.sort_by(|a, b| a.1.total_cmp(&b.1));
    if roofs.is_empty() {
        return;
    }
    let at = app.session.level.and_then(|level| roofs.iter().position(|(id, _)| *id == level));
    let next = match (at, sense) {
        (None, _) => roofs.len() - 1,
        (Some(at), Sense::Ahead) => (at + 1).min(roofs.len() - 1),
        (Some(at), Sense::Back) => at.saturating_sub(1),
    };
    app.session.level = Some(roofs[next].0);
}

/// All of the kind selected now, else all units.
pub fn select_all(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    let all: Vec<ThingId> = match app.session.selection.shown() {
        Selected::Edges(edges) => {
            let roofs: Vec<_> = edges.iter().filter_map(|&edge| plan.find_edge(edge)).map(|p| p.roof_id).collect();
            plan.edges().filter(|p| roofs.contains(&p.roof_id)).map(|p| ThingId::Edge(p.edge().id)).collect()
        }
        Selected::Obstacle(_) => plan.obstacles.keys().map(|&id| ThingId::Obstacle(id)).collect(),
        Selected::Underlay(_) => plan.underlays.keys().map(|&id| ThingId::Underlay(id)).collect(),
        Selected::Roof(_) => plan.roofs.keys().map(|&id| ThingId::Roof(id)).collect(),
        Selected::Nothing | Selected::Several | Selected::Unit(_) | Selected::Units(_) => {
            plan.placements.keys().map(|&id| ThingId::Placement(id)).collect()
        }
    };
    app.session.selection = Selection::of(all);
}

/// The unit with a tag, or the first whose tag begins with the text.
pub fn find_tag(app: &App, text: &str) -> Option<PlacementId> {
    let plan = app.document.as_ref()?.plan();
    let wanted = text.trim().to_lowercase();
    let tags = || plan.placements.iter().map(|(&id, placement)| (id, placement.tag.0.to_lowercase()));
    tags()
        .find(|(_, tag)| *tag == wanted)
        .or_else(|| tags().find(|(_, tag)| tag.starts_with(&wanted)))
        .map(|(id, _)| id)
}

/// Goes to the next area of the window.
pub fn next_area(app: &mut App) {
    let now = app.session.area;
    app.session.area = match now {
        Area::Bar => Area::Sheet,
        Area::Sheet => Area::Inspector,
        Area::Inspector if app.session.drawer.is_some() => Area::Drawer,
        Area::Inspector | Area::Drawer => Area::Bar,
    };
    app.session.focus = Some(app.session.area);
}
