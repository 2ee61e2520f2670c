//! One sheet: its drawing, what lies over it, and one response for the pointer.

use egui::{CursorIcon, Event, EventFilter, Key, Painter, PointerButton, Pos2, Rect, Response, Sense, Ui, Vec2, pos2};
use gantline_drawing::Drawing;
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::card::{self, Card};
use super::elsewhere::{self, Mapping};
use super::paint::{light_up, scale_of};
use super::{accessible, compass, grid, handles, legend, pick, sketch, tags, underlay};
use crate::derived::{Drawn, View};
use crate::intent::Intent;
use crate::preferences::WheelDoes;
use crate::session::{Camera, Sheet, SheetRect};
use crate::sight::Sight;
use crate::tools::gesture::{DRAG_THRESHOLD_PT, Held, PointerEvent, Spot, TOUCH_THRESHOLD_PT};
use crate::tools::{Hit, Scene, ToolKind};

/// What a sheet is shown with.
pub struct OnSheet<'a> {
    /// What lies on it.
    pub sheet: Sheet,
    /// Whether it is the main sheet.
    pub main: bool,
    /// What panels see.
    pub sight: Sight<'a>,
    /// What drawings are made from.
    pub view: &'a View<'a>,
    /// What tools see.
    pub scene: &'a Scene<'a>,
    /// What the wheel does.
    pub wheel: WheelDoes,
}

/// What the pointer did on a sheet.
#[derive(Debug, Default)]
pub struct Told {
    /// The sheet.
    pub sheet: Sheet,
    /// Events for the tool, in order.
    pub events: Vec<PointerEvent>,
    /// Points that a press may move before it is a drag.
    pub threshold_pt: f64,
}

impl Told {
    /// What was told on one of two sheets: the pointer is on one of them only.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        if self.events.is_empty() { other } else { self }
    }
}

/// The id of the main sheet's response, which takes the focus.
pub fn main_id() -> egui::Id {
    egui::Id::unique("main sheet")
}

/// Shows a sheet in a rectangle.
pub fn show(ui: &mut Ui, rect: Rect, on: &OnSheet<'_>, drawn: &mut Drawn, intents: &mut Vec<Intent>) -> Told {
    let id = if on.main { main_id() } else { egui::Id::unique("companion sheet") };
    let response = ui.interact(rect, id, Sense::click_and_drag());
    let name = if on.main { "Main sheet" } else { "Companion" };
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Canvas, true, name));
    let painter = ui.painter_at(rect);
    let palette = on.sight.look.palette;
    painter.rect_filled(rect, 0.0, palette.sheet);
    let sheet_rect = sheet_rect(rect);
    let Some(camera) = camera(on, drawn, sheet_rect, intents) else {
        empty(&painter, rect, on);
        return Told::default();
    };
    if on.sheet == Sheet::Plan {
        let (level, selection) = (on.view.level, on.view.selection);
        let looked = (&camera, sheet_rect);
        grid::paint(&painter, &camera, sheet_rect, palette);
        underlay::paint(&painter, on.view.plan, on.sight.underlays, (level, selection), looked, palette);
    }
    let drawing = drawn.drawing(on.sheet, on.view, scale_of(&camera));
    if let Some(drawing) = &drawing {
        drawn.paint(on.sheet, &camera, sheet_rect, palette, &painter);
        if on.sheet == Sheet::Plan && on.main {
            legend::paint(&painter, drawing, &camera, sheet_rect, palette);
        }
        if let Some(thing) = on.sight.session.hover {
            light_up(drawing, thing, &camera, sheet_rect, palette.accent, &painter);
        }
    }
    let moved = look_around(ui, &response, on, &camera, sheet_rect);
    if let Some(moved) = moved {
        intents.push(Intent::Look { main: on.main, sheet: on.sheet, camera: moved });
    }
    if on.sheet != Sheet::Plan {
        return elsewhere_told(ui, &response, on, drawn, &camera, sheet_rect, intents);
    }
    plan_only(ui, &painter, &response, on, (&camera, sheet_rect), drawing.as_deref(), intents)
}

/// What only the plan has: handles, sketch, card, compass, nodes, and events for the tool.
fn plan_only(
    ui: &mut Ui,
    painter: &Painter,
    response: &Response,
    on: &OnSheet<'_>,
    (camera, sheet): (&Camera, SheetRect),
    drawing: Option<&Drawing>,
    intents: &mut Vec<Intent>,
) -> Told {
    let (look, session) = (on.sight.look, on.sight.session);
    let pointed_at = |at: DVec2| {
        let hits = pick::hits(on.sight.plan, &session.selection, at, camera.m_per_pt);
        let mut hits = tags::with_tag(hits, drawing, at, camera.m_per_pt);
        hits.extend(on.sight.underlays.at(on.sight.plan, session.level, at).map(Hit::Underlay));
        hits
    };
    let pointer = ui.input(|input| input.pointer.latest_pos()).filter(|_| response.contains_pointer());
    if session.tool.kind() == ToolKind::Select && !session.recognizer.is_pressed() {
        let at = pointer.map(|at| camera.drawing_from_screen(sheet, vec(at)));
        let hot = at.and_then(|at| pointed_at(at).first().copied());
        for placed in crate::tools::handles::handles(on.view.plan, &session.selection, camera.m_per_pt) {
            handles::paint(painter, &placed, place(camera, sheet, placed.at), hot == Some(placed.hit), look.palette);
        }
        cursor(ui, response, hot, session);
    }
    compass::paint(painter, camera, sheet, on.sight.plan.datum.north_rad, look.units, look.palette);
    if let Some(building) = Bounds::of(on.sight.plan.edges().map(|place| place.ring.ends(place.index).0)) {
        compass::point_to(painter, camera, sheet, &building, look.palette);
    }
    let drawn = session.tool.sketch(on.scene);
    sketch::paint(painter, &drawn, camera, sheet, look.units, look.palette);
    if let Some(refused) = &session.refused
        && let Some(at) = refused.at.map(|at| place(camera, sheet, at))
    {
        sketch::cross(painter, at, look.palette.blocking);
        accessible::refused(ui, at, &refused.why);
    }
    let word = drawn.caught.map(|caught| caught.by.name).or(drawn.word.as_deref());
    let refused = session.refused.as_ref().map(|refused| refused.why.as_str());
    let shown = Card { lines: &drawn.card, typed: session.typed.as_ref(), word, refused };
    let dragging = session.recognizer.is_pressed() && session.pressed_on == Some(Sheet::Plan);
    let beside = pointer.or_else(|| ui.input(|input| input.pointer.latest_pos()).filter(|_| dragging));
    let elsewhere = session.recognizer.is_pressed() && !dragging;
    let without_pointer = !elsewhere && (session.typed.is_some() || refused.is_some() || session.tool.is_busy());
    if let Some(beside) = beside.or_else(|| without_pointer.then(|| response.rect.center())) {
        card::paint(painter, &shown, beside, look.units, look.palette);
        accessible::card(ui, beside, &card::words(&shown, look.units));
    }
    let placed = |at: DVec2| place(camera, sheet, at);
    accessible::conflicts(ui, on.view.plan, on.view.assessment, &placed, look.units);
    accessible::underlays(ui, on.view.plan, on.sight.underlays, &placed);
    accessible::nodes(ui, on.view.plan, on.view.assessment, camera, sheet, look.units);
    let pointed = |at: DVec2| (at, pointed_at(at));
    told(ui, response, on, camera, sheet, &pointed, intents)
}

/// On other drawings things can be selected, and units dragged along a facade or inward.
fn elsewhere_told(
    ui: &mut Ui,
    response: &Response,
    on: &OnSheet<'_>,
    drawn: &mut Drawn,
    camera: &Camera,
    sheet: SheetRect,
    intents: &mut Vec<Intent>,
) -> Told {
    let session = on.sight.session;
    if session.tool.kind() != ToolKind::Select {
        return Told::default();
    }
    let Some(drawing) = drawn.drawing(on.sheet, on.view, scale_of(camera)) else {
        return Told::default();
    };
    let dragged = session.tool.dragged_unit().map(Hit::Unit);
    let pointed = |at: DVec2| {
        let hits = elsewhere::hits(&drawing, at, camera.m_per_pt);
        let unit = dragged.or_else(|| hits.first().copied());
        // From the plan as it was when the gesture began, so that the way of the pointer is measured from there.
        let mapping = Mapping::of(on.sheet, on.scene.plan, on.sight.assessment, unit);
        (mapping.map_or(at, |mapping| mapping.in_plan(at)), hits)
    };
    let told = told(ui, response, on, camera, sheet, &pointed, intents);
    if session.pressed_on == Some(on.sheet)
        && session.recognizer.is_pressed()
        && let Some(at) = ui.input(|input| input.pointer.latest_pos())
    {
        let sketch = session.tool.sketch(on.scene);
        let word = sketch.caught.map(|caught| caught.by.name);
        let card = Card { lines: &sketch.card, typed: session.typed.as_ref(), word, refused: None };
        card::paint(&ui.painter_at(response.rect), &card, at, on.sight.look.units, on.sight.look.palette);
    }
    told
}

fn sheet_rect(rect: Rect) -> SheetRect {
    SheetRect { min: vec(rect.min), max: vec(rect.max) }
}

fn vec(at: Pos2) -> DVec2 {
    DVec2::new(f64::from(at.x), f64::from(at.y))
}

fn place(camera: &Camera, sheet: SheetRect, point: DVec2) -> Pos2 {
    let at = camera.screen_from_drawing(sheet, point);
    pos2(at.x as f32, at.y as f32)
}

/// The camera moved by hand, else the one that fits. The plan's is kept once it was fitted, so that it never moves alone.
fn camera(on: &OnSheet<'_>, drawn: &mut Drawn, sheet: SheetRect, intents: &mut Vec<Intent>) -> Option<Camera> {
    let session = on.sight.session;
    let moved = if on.main { &session.cameras } else { &session.companion_cameras };
    if let Some(camera) = moved.get(&on.sheet) {
        return Some(*camera);
    }
    if on.sheet == Sheet::Plan && on.sight.plan.roofs.is_empty() {
        let camera = Camera::default();
        intents.push(Intent::Look { main: on.main, sheet: on.sheet, camera });
        return Some(camera);
    }
    let fitted = drawn.fitted(on.sheet, on.view, sheet)?;
    if on.sheet == Sheet::Plan && on.main {
        intents.push(Intent::Look { main: on.main, sheet: on.sheet, camera: fitted });
    }
    Some(fitted)
}

fn empty(painter: &Painter, rect: Rect, on: &OnSheet<'_>) {
    let words = match on.sheet {
        Sheet::Section(_) => "This unit has no section: its make-up is not complete.",
        Sheet::Elevation(_) => "This edge has no facade.",
        Sheet::Plan | Sheet::Building => "Select a unit to see its section, an edge to see its facade.",
    };
    let font = egui::FontId::proportional(crate::theme::type_scale::BODY);
    let ink = on.sight.look.palette.ink_faint;
    let galley = painter.layout(words.to_owned(), font, ink, rect.width() - 60.0);
    painter.galley(rect.center() - galley.size() / 2.0, galley, ink);
}

fn cursor(ui: &Ui, response: &Response, hot: Option<Hit>, session: &crate::session::Session) {
    if !response.contains_pointer() {
        return;
    }
    let icon = match hot {
        Some(Hit::Handle(_) | Hit::Corner(_)) => CursorIcon::Grab,
        Some(Hit::Unit(_)) => CursorIcon::Move,
        _ if session.tool.kind() == ToolKind::Select => CursorIcon::Default,
        _ => CursorIcon::Crosshair,
    };
    ui.ctx().set_cursor_icon(icon);
}

/// Wheel, pinch, middle drag, and Space with a drag.
fn look_around(ui: &Ui, response: &Response, on: &OnSheet<'_>, camera: &Camera, sheet: SheetRect) -> Option<Camera> {
    let mut moved = *camera;
    let space = ui.input(|input| input.key_down(Key::Space));
    if response.dragged_by(PointerButton::Middle) || space && response.dragged_by(PointerButton::Primary) {
        moved = moved.panned(vec_of(response.drag_delta()));
    }
    if response.contains_pointer() {
        let (scroll, zoom, at) =
            ui.input(|input| (input.smooth_scroll_delta(), input.zoom_delta(), input.pointer.latest_pos()));
        let about = at.map_or(sheet.middle(), vec);
        if zoom != 1.0 {
            moved = moved.zoomed(f64::from(zoom), about, sheet);
        } else if scroll != Vec2::ZERO {
            moved = match on.wheel {
                WheelDoes::Zooms if scroll.x == 0.0 => moved.zoomed(f64::from(scroll.y / 220.0).exp(), about, sheet),
                WheelDoes::Zooms | WheelDoes::Pans => moved.panned(vec_of(scroll)),
            };
        }
    }
    (moved != *camera).then_some(moved)
}

fn vec_of(by: Vec2) -> DVec2 {
    DVec2::new(f64::from(by.x), f64::from(by.y))
}

/// What the pointer did, in the order in which it did it.
fn told(
    ui: &mut Ui,
    response: &Response,
    on: &OnSheet<'_>,
    camera: &Camera,
    sheet: SheetRect,
    pointed: &dyn Fn(DVec2) -> (DVec2, Vec<Hit>),
    intents: &mut Vec<Intent>,
) -> Told {
    let (events, touches, space) =
        ui.input(|input| (input.events.clone(), input.any_touches(), input.key_down(Key::Space)));
    let threshold_pt = if touches { TOUCH_THRESHOLD_PT } else { DRAG_THRESHOLD_PT };
    let mut told = Told { sheet: on.sheet, events: Vec::new(), threshold_pt };
    let inside = response.contains_pointer();
    // A press belongs to the sheet on which it was made.
    let mut pressed = on.sight.session.recognizer.is_pressed() && on.sight.session.pressed_on == Some(on.sheet);
    let spot = |at: Pos2, modifiers: egui::Modifiers| {
        let (in_plan, hits) = pointed(camera.drawing_from_screen(sheet, vec(at)));
        let held = Held { shift: modifiers.shift, alt: modifiers.alt };
        Spot { at: in_plan, m_per_pt: camera.m_per_pt, held, hits }
    };
    let held = ui.input(|input| input.modifiers);
    for event in events {
        match event {
            Event::PointerMoved(at) if pressed || inside && response.rect.contains(at) => {
                told.events.push(PointerEvent::Move(vec(at), spot(at, held)));
            }
            Event::PointerButton { pos, button: PointerButton::Primary, pressed: true, modifiers }
                if inside && response.rect.contains(pos) && !space =>
            {
                response.request_focus();
                pressed = true;
                told.events.push(PointerEvent::Down(vec(pos), spot(pos, modifiers)));
            }
            Event::PointerButton { pos, button: PointerButton::Primary, pressed: false, modifiers } if pressed => {
                pressed = false;
                told.events.push(PointerEvent::Up(vec(pos), spot(pos, modifiers)));
            }
            _ => {}
        }
    }
    let was_inside_id = response.id.with("inside");
    let was_inside = ui.data(|data| data.get_temp::<bool>(was_inside_id)).unwrap_or(false);
    if was_inside && !inside && !pressed {
        told.events.push(PointerEvent::Gone);
    }
    ui.data_mut(|data| data.insert_temp(was_inside_id, inside));
    if pressed
        && let Some(at) = ui.input(|input| input.pointer.latest_pos())
        && let Some(moved) = followed_at_the_rim(on, camera, sheet, vec(at))
    {
        intents.push(Intent::Look { main: on.main, sheet: on.sheet, camera: moved });
        // The pointer stands still over a sheet that moves: to the tool that is a move.
        told.events.push(PointerEvent::Move(vec(at), spot(at, held)));
        ui.ctx().request_repaint();
    }
    keep_keys(ui, response, on);
    told
}

/// A drag near the rim scrolls slowly.
fn followed_at_the_rim(on: &OnSheet<'_>, camera: &Camera, sheet: SheetRect, at: DVec2) -> Option<Camera> {
    const RIM_PT: f64 = 20.0;
    const STEP_PT: f64 = 6.0;
    if !on.sight.session.tool.is_busy() {
        return None;
    }
    let (low, high) = (sheet.min + DVec2::splat(RIM_PT), sheet.max - DVec2::splat(RIM_PT));
    let beyond = at - at.clamp(low, high);
    (beyond != DVec2::ZERO).then(|| camera.panned(-beyond.normalize_or_zero() * STEP_PT))
}

/// While the sheet has the focus, arrows and Esc belong to it, and Tab while numbers are typed.
fn keep_keys(ui: &Ui, response: &Response, on: &OnSheet<'_>) {
    let typing = on.sight.session.typed.is_some();
    // Numbers typed over the sheet belong to it: without the focus, Tab would leave them for the first button.
    if typing && ui.memory(|memory| memory.focused().is_none()) {
        response.request_focus();
    }
    if response.has_focus() {
        let filter = EventFilter { tab: typing, horizontal_arrows: true, vertical_arrows: true, escape: true };
        ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    }
}
