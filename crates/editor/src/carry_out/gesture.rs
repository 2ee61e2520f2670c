//! Tells the tool what pointer and keys do, and carries out what it answers.

use super::{ghost, one};
use crate::app::{App, scene_of};
use crate::intent::{Intent, TypeKey};
use crate::session::Selection;
use crate::session::session::Area;
use crate::tools::gesture::{GestureEvent, GestureKey, PointerEvent};
use crate::tools::{Tool, ToolKind, TypedEntry};

/// How long a refusal stays at the pointer at least, s.
const READ_S: f64 = 2.5;

/// A pointer event on the plan.
pub fn pointer(app: &mut App, event: PointerEvent, threshold_pt: f64) {
    if let Some(event) = app.session.recognizer.tell(event, threshold_pt) {
        tell(app, &event);
    }
}

/// Tells the tool one event.
pub fn tell(app: &mut App, event: &GestureEvent) {
    let read = app.session.refused.as_ref().is_some_and(|refused| app.now_s - refused.at_s > READ_S);
    if read || !matches!(event, GestureEvent::Hover(_) | GestureEvent::Leave) {
        app.session.refused = None;
    }
    let Some(document) = &app.document else {
        return;
    };
    let mut tool = std::mem::take(&mut app.session.tool);
    let intents = tool.step(event, &scene_of(document, &app.session));
    app.session.tool = tool;
    let ends_typing = matches!(event, GestureEvent::Click(_) | GestureEvent::Drop(_));
    for intent in intents {
        one(app, intent);
    }
    if ends_typing {
        app.session.typed = None;
    }
}

/// Lets the tool take a new look.
pub fn renew(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let mut tool = std::mem::take(&mut app.session.tool);
    let intents = tool.renew(&scene_of(document, &app.session));
    app.session.tool = tool;
    for intent in intents {
        one(app, intent);
    }
}

/// Enter, Esc, Backspace.
pub fn key(app: &mut App, key: GestureKey) {
    match key {
        GestureKey::Escape => escape(app),
        GestureKey::Enter => enter(app),
        GestureKey::Backspace => tell(app, &GestureEvent::Key(key)),
    }
}

/// One rung a press: page, typed value, gesture or unfinished shape, tool, selection.
fn escape(app: &mut App) {
    app.session.refused = None;
    if app.session.question.is_some() {
        super::file::answer(app, crate::intent::Answer::Cancel);
    } else if app.session.outline.is_some() {
        app.session.outline = None;
    } else if app.session.underlay.is_some() {
        app.session.underlay = None;
    } else if app.session.page.is_some() {
        app.session.page = None;
    } else if app.session.typed.is_some() {
        app.session.typed = None;
        renew(app);
    } else if app.session.tool.is_busy() || corner_picked(app) {
        tell(app, &GestureEvent::Key(GestureKey::Escape));
        app.session.recognizer.forget();
    } else if app.session.tool.kind() != ToolKind::Select {
        take_tool(app, ToolKind::Select);
    } else {
        app.session.selection = Selection::default();
    }
}

fn corner_picked(app: &App) -> bool {
    let (Some(document), Tool::Select(select)) = (&app.document, &app.session.tool) else {
        return false;
    };
    select.picked_corner(document.plan(), &app.session.selection).is_some()
}

/// Yes to what the status line announces; with nothing in hand and one thing selected, to the inspector.
fn enter(app: &mut App) {
    let units = app.session.units;
    if app.session.typed.as_ref().is_some_and(|typed| typed.fault(units).is_some()) {
        return;
    }
    let idle = app.session.tool.kind() == ToolKind::Select && !app.session.tool.is_busy();
    if idle {
        if !app.session.selection.is_empty() {
            app.session.focus = Some(Area::Inspector);
        }
        return;
    }
    tell(app, &GestureEvent::Key(GestureKey::Enter));
    app.session.recognizer.forget();
    app.session.typed = None;
    ghost::renew(app);
}

/// A number is typed.
pub fn typed(app: &mut App, key: TypeKey) {
    match (&mut app.session.typed, key) {
        (Some(entry), TypeKey::Text(text)) => entry.push(&text),
        (None, TypeKey::Text(text)) => {
            app.session.typed = TypedEntry::open(&app.session.tool.asks(), &text);
            app.session.focus = Some(Area::Sheet);
        }
        (Some(entry), TypeKey::Backspace) => {
            if !entry.backspace() {
                app.session.typed = None;
            }
        }
        (Some(entry), TypeKey::Next) => entry.next(),
        (Some(entry), TypeKey::Previous) => entry.previous(),
        (None, TypeKey::Backspace | TypeKey::Next | TypeKey::Previous) => {}
    }
    renew(app);
}

/// Takes another tool in hand; what the old one had begun is dropped.
pub fn take_tool(app: &mut App, kind: ToolKind) {
    if app.document.as_ref().is_some_and(|document| document.history.in_gesture()) {
        one(app, Intent::Abandon);
    }
    app.session.typed = None;
    app.session.refused = None;
    app.session.recognizer.forget();
    app.session.tool = Tool::of(kind);
    app.session.focus = Some(Area::Sheet);
    ghost::drop(app);
    if kind == ToolKind::Unit {
        ghost::begin(app);
    }
}
