//! Runs the commands of the table.

use gantline_plan::catalog::{PartKind, next_with};
use gantline_plan::change::{Change, PlacementPatch};
use gantline_plan::document::{EdgeId, PlacementId, Plan, Standing, Station, ThingId};
use gantline_plan::geometry::frame::{EdgeLine, Frame};
use glam::DVec2;

use super::{edit, file, gesture, ghost, one, outgoing, view};
use crate::app::{App, scene_of};
use crate::command::{Command, Pace, Sense, Way};
use crate::intent::{Intent, Then};
use crate::session::{Next, Page, Question};
use crate::tools::copies::usual_pitch_m;
use crate::tools::move_units::moved_by;
use crate::tools::{Tool, ToolKind};

/// Runs one command.
pub fn run(app: &mut App, command: Command) {
    match command {
        Command::New => file::leave(app, Next::New),
        Command::Open => file::leave(app, Next::Open),
        Command::Outline => super::outline::ask_for_drawing(app),
        Command::Underlay => super::underlay::ask_for_file(app),
        Command::Save => file::save(app),
        Command::SaveAs => file::save_as(app),
        Command::WriteDocuments => outgoing::ask_for_folder(app),
        Command::WritePicture => outgoing::ask_for_picture(app),
        Command::Close => file::leave(app, Next::Close),
        Command::Undo => undo(app),
        Command::Redo => redo(app),
        Command::Tool(kind @ (ToolKind::ScaleUnderlay | ToolKind::TurnUnderlay)) => {
            super::underlay::take_tool(app, kind);
        }
        Command::Tool(kind) => gesture::take_tool(app, kind),
        Command::Swap => app.session.slots.swapped = !app.session.slots.swapped,
        Command::Pin => view::pin(app),
        Command::Overlays(set) => view::overlays(app, set),
        Command::NextPart(kind) => next_part(app, kind),
        Command::Nudge(way, pace) => nudge(app, way, pace),
        Command::Slew(sense, pace) => slew(app, sense, pace),
        Command::Fit => view::fit(app),
        Command::FitSelection => view::fit_selection(app),
        Command::ZoomIn => view::zoom(app, 1.25),
        Command::ZoomOut => view::zoom(app, 0.8),
        Command::Step(sense) => view::step(app, sense),
        Command::Finding(sense) => view::finding(app, sense),
        Command::Level(sense) => view::level(app, sense),
        Command::NextArea => view::next_area(app),
        Command::FindTag => page(app, Page::FindTag),
        Command::Shortcuts => page(app, Page::Shortcuts),
        Command::Preferences => page(app, Page::Preferences),
        Command::Basis => page(app, Page::Basis),
        Command::Duplicate => duplicate(app),
        Command::CopyAlong => copy_along(app),
        Command::Mirror => mirror(app),
        Command::Delete => delete(app),
        Command::SelectAll => view::select_all(app),
        Command::Drawer(drawer) => {
            app.session.drawer = if app.session.drawer == Some(drawer) { None } else { Some(drawer) };
        }
    }
}

fn page(app: &mut App, page: Page) {
    app.session.asked_text.clear();
    app.session.page = if app.session.page.as_ref() == Some(&page) { None } else { Some(page) };
}

fn undo(app: &mut App) {
    drop_gesture(app);
    let Some(document) = &mut app.document else {
        return;
    };
    let name = document.history.undo_name();
    if document.history.undo() {
        app.session.said = format!("Taken back: {}.", name.unwrap_or_default());
        edit::changed(app, Then::Keep, &[]);
    }
}

fn redo(app: &mut App) {
    drop_gesture(app);
    let Some(document) = &mut app.document else {
        return;
    };
    let name = document.history.redo_name();
    if document.history.redo() {
        app.session.said = format!("Made again: {}.", name.unwrap_or_default());
        edit::changed(app, Then::Keep, &[]);
    }
}

/// Undo in the middle of a gesture drops the gesture first.
fn drop_gesture(app: &mut App) {
    if app.document.as_ref().is_some_and(|document| document.history.in_gesture()) {
        one(app, Intent::Abandon);
        app.session.tool = Tool::of(app.session.tool.kind());
        app.session.recognizer.forget();
    }
    ghost::drop(app);
}

/// The next mast, arm or brace: of the unit in hand, else of the units selected.
fn next_part(app: &mut App, kind: PartKind) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    if app.session.tool.kind() == ToolKind::Unit {
        let next =
            app.session.hand.make_up.as_ref().and_then(|now| next_with(plan.families.get(&now.family)?, now, kind));
        if let Some(next) = next {
            ghost::take_in_hand(app, next);
        }
        return;
    }
    let changes = app.session.selection.units().into_iter().filter_map(|id| {
        let now = &plan.placements.get(&id)?.make_up;
        let next = next_with(plan.families.get(&now.family)?, now, kind)?;
        let patch = PlacementPatch { make_up: Some(next), ..PlacementPatch::default() };
        Some(Change::SetPlacements(vec![id], patch))
    });
    let changes: Vec<Change> = changes.collect();
    if !changes.is_empty() {
        edit::change(app, "change part", &Change::All(changes), Then::Keep);
    }
}

fn nudge_m(pace: Pace) -> f64 {
    match pace {
        Pace::Fine => 0.001,
        Pace::Usual => 0.01,
        Pace::Coarse => 0.1,
    }
}

/// Runs of nudges within this time are one step of undo, s.
const ONE_RUN_S: f64 = 1.0;

fn nudge(app: &mut App, way: Way, pace: Pace) {
    const NAME: &str = "nudge";
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan().clone();
    let step = nudge_m(pace);
    let (along_m, inward_m) = match way {
        Way::Back => (-step, 0.0),
        Way::Ahead => (step, 0.0),
        Way::Inward => (0.0, step),
        Way::Outward => (0.0, -step),
    };
    let by = DVec2::new(along_m, inward_m);
    let changes: Vec<Change> =
        app.session.selection.iter().filter_map(|thing| nudged(&plan, thing, along_m, inward_m, by)).collect();
    if changes.is_empty() {
        return;
    }
    edit::change(app, NAME, &Change::All(changes), Then::Keep);
    let now_s = app.now_s;
    if let Some(document) = &mut app.document
        && now_s - app.session.nudged_at_s < ONE_RUN_S
    {
        document.history.join_last(NAME);
    }
    app.session.nudged_at_s = now_s;
}

fn nudged(plan: &Plan, thing: ThingId, along_m: f64, inward_m: f64, by: DVec2) -> Option<Change> {
    match thing {
        ThingId::Placement(id) => moved_by(plan, id, along_m, inward_m, by),
        ThingId::Edge(edge) if inward_m != 0.0 => {
            let line = EdgeLine::of(plan, edge)?;
            Some(Change::MoveEdge { edge, by: -line.outward * inward_m })
        }
        ThingId::Obstacle(id) => {
            let mut obstacle = plan.obstacles.get(&id)?.clone();
            obstacle.outline.iter_mut().for_each(|corner| *corner += by);
            Some(Change::SetObstacle(id, obstacle))
        }
        ThingId::Roof(roof) => Some(Change::MoveRoof { roof, by }),
        ThingId::Underlay(underlay) => Some(Change::MoveUnderlay { underlay, by }),
        ThingId::Edge(_) | ThingId::Plan => None,
    }
}

fn slew(app: &mut App, sense: Sense, pace: Pace) {
    let degrees: f64 = if pace == Pace::Fine { 1.0 } else { 5.0 };
    let step = if sense == Sense::Ahead { degrees.to_radians() } else { -degrees.to_radians() };
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    let changes = app.session.selection.units().into_iter().filter_map(|id| {
        let now = plan.placements.get(&id)?.make_up.drawn_slew_rad;
        let to = gantline_plan::geometry::frame::within_half_turn(now + step);
        let patch = PlacementPatch { drawn_slew_rad: Some(to), ..PlacementPatch::default() };
        Some(Change::SetPlacements(vec![id], patch))
    });
    let changes: Vec<Change> = changes.collect();
    if !changes.is_empty() {
        edit::change(app, "slew unit", &Change::All(changes), Then::Keep);
    }
}

fn duplicate(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    let copies = app.session.selection.units().into_iter().filter_map(|id| {
        let placement = plan.placements.get(&id)?;
        let by_m = usual_pitch_m(id, plan, 1.0);
        let stands = match &placement.stands {
            Standing::OnEdge { edge, station, setback_m, turn_rad } => {
                let length_m = EdgeLine::of(plan, *edge)?.length_m;
                let station = Station::nearest(station.along_m(length_m) + by_m, length_m);
                Standing::OnEdge { edge: *edge, station, setback_m: *setback_m, turn_rad: *turn_rad }
            }
            Standing::Free { roof, at, outward_rad, serves } => {
                let aside = Frame::of(plan, &placement.stands)?.direction(std::f64::consts::FRAC_PI_2);
                Standing::Free {
                    roof: *roof,
                    at: *at + aside * by_m,
                    outward_rad: *outward_rad,
                    serves: serves.clone(),
                }
            }
        };
        Some(Change::Place { make_up: placement.make_up.clone(), stands, tag: None })
    });
    place_all(app, "duplicate", copies.collect());
}

fn place_all(app: &mut App, name: &'static str, places: Vec<Change>) {
    if places.is_empty() {
        "Select units first.".clone_into(&mut app.session.said);
    } else {
        edit::change(app, name, &Change::All(places), Then::SelectMade);
    }
}

fn copy_along(app: &mut App) {
    let units = app.session.selection.units();
    let ([unit], Some(_)) = (units.as_slice(), &app.document) else {
        "Select one unit to copy it along its edge.".clone_into(&mut app.session.said);
        return;
    };
    gesture::take_tool(app, ToolKind::Select);
    let mut tool = std::mem::take(&mut app.session.tool);
    let intents = match (&mut tool, &app.document) {
        (Tool::Select(select), Some(document)) => select.begin_copies(*unit, &scene_of(document, &app.session)),
        _ => Vec::new(),
    };
    app.session.tool = tool;
    for intent in intents {
        one(app, intent);
    }
}

/// Sets mirrored copies; a unit in the middle is its own mirror image.
fn mirror(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan();
    let units = app.session.selection.units();
    let copies: Vec<Change> = units.iter().filter_map(|&id| mirrored(plan, id)).collect();
    if copies.is_empty() && !units.is_empty() {
        let words = "Nothing to mirror: a unit in the middle of its edge is its own mirror image, one without an edge has none.";
        words.clone_into(&mut app.session.said);
        return;
    }
    place_all(app, "mirror", copies);
}

fn mirrored(plan: &Plan, id: PlacementId) -> Option<Change> {
    const SAME_PLACE_M: f64 = 0.001;
    let placement = plan.placements.get(&id)?;
    let Standing::OnEdge { edge, station, setback_m, turn_rad } = &placement.stands else {
        return None;
    };
    let length_m = EdgeLine::of(plan, *edge)?.length_m;
    let along_m = station.along_m(length_m);
    let other_m = length_m - along_m;
    if (other_m - along_m).abs() < SAME_PLACE_M {
        return None;
    }
    let mut make_up = placement.make_up.clone();
    make_up.drawn_slew_rad = -make_up.drawn_slew_rad;
    make_up.foot_bearing_rad = -make_up.foot_bearing_rad;
    if let gantline_plan::catalog::SlewStops::Between { from_rad, to_rad } = make_up.slew_stops {
        make_up.slew_stops = gantline_plan::catalog::SlewStops::Between { from_rad: -to_rad, to_rad: -from_rad };
    }
    let stands = Standing::OnEdge {
        edge: *edge,
        station: Station::nearest(other_m, length_m),
        setback_m: *setback_m,
        turn_rad: -turn_rad,
    };
    Some(Change::Place { make_up, stands, tag: None })
}

fn delete(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let plan = document.plan().clone();
    if let Tool::Select(select) = &app.session.tool
        && let Some(edge) = select.picked_corner(&plan, &app.session.selection)
    {
        app.session.tool = Tool::of(ToolKind::Select);
        edit::change(app, "take corner away", &Change::RemoveCorner { edge }, Then::Keep);
        return;
    }
    let selection = &app.session.selection;
    if let Some(ThingId::Roof(id)) = selection.single()
        && let Some(roof) = plan.roofs.get(&id)
    {
        let on_roof = |stands: &Standing| Frame::of(&plan, stands).is_some_and(|frame| frame.roof == id);
        app.session.question = Some(Question::DeleteRoof {
            name: roof.name.clone(),
            units: plan.placements.values().filter(|placement| on_roof(&placement.stands)).count(),
            obstacles: plan.obstacles.values().filter(|obstacle| obstacle.roof == id).count(),
        });
        app.session.waiting = vec![Intent::change("delete roof", Change::RemoveRoof(id))];
        return;
    }
    let mut changes = Vec::new();
    let units = selection.units();
    if !units.is_empty() {
        changes.push(Change::RemovePlacements(units));
    }
    for thing in selection.iter() {
        if let ThingId::Obstacle(id) = thing {
            changes.push(Change::RemoveObstacle(id));
        }
        if let ThingId::Underlay(id) = thing {
            changes.push(Change::RemoveUnderlay(id));
        }
    }
    changes.extend(holes_of(&plan, &selection.edges()).into_iter().map(Change::RemoveHole));
    if changes.is_empty() {
        let words = if selection.is_empty() { "Nothing is selected." } else { "Select the roof itself to delete it." };
        words.clone_into(&mut app.session.said);
        return;
    }
    edit::change(app, "delete", &Change::All(changes), Then::Keep);
}

/// One edge of each hole that has a selected edge.
fn holes_of(plan: &Plan, edges: &[EdgeId]) -> Vec<EdgeId> {
    let holes = plan.roofs.values().flat_map(|roof| &roof.holes);
    holes.filter(|hole| edges.iter().any(|&edge| hole.index_of(edge).is_some())).map(|hole| hole.edge(0).id).collect()
}
