//! Changes of the plan, and gestures.

use std::collections::BTreeSet;

use gantline_plan::change::{Change, Refused};
use gantline_plan::document::{Plan, ThingId};

use super::{ghost, one};
use crate::app::App;
use crate::intent::{Intent, Then};
use crate::session::{Question, RefusedAt, Selection};

/// One change as one step.
pub fn change(app: &mut App, name: &'static str, change: &Change, then: Then) {
    if app.session.looked_at {
        app.session.waiting.push(Intent::Change { name, change: change.clone(), then });
        app.session.question = Some(Question::Edit);
        return;
    }
    ghost::drop(app);
    let Some(document) = &mut app.document else {
        return;
    };
    match document.history.change(name, change) {
        Ok(done) => {
            app.session.said = if done.said.is_empty() { format!("{}.", sentence(name)) } else { done.said.join("; ") };
            changed(app, then, &done.made);
        }
        Err(refused) => refuse(app, &refused),
    }
}

/// Begins a gesture.
pub fn begin(app: &mut App, name: &'static str) {
    if app.session.looked_at {
        app.session.tool = crate::tools::Tool::of(app.session.tool.kind());
        app.session.recognizer.forget();
        app.session.question = Some(Question::Edit);
        return;
    }
    ghost::drop(app);
    if let Some(document) = &mut app.document {
        document.history.begin(name);
    }
}

/// Shows the plan as it would be.
pub fn preview(app: &mut App, change: &Change) {
    let Some(document) = &mut app.document else {
        return;
    };
    match document.history.preview(change) {
        Ok(()) => app.session.refused = None,
        Err(refused) => refuse(app, &refused),
    }
}

/// Ends a gesture as one step.
pub fn commit(app: &mut App, then: Then) {
    let Some(document) = &mut app.document else {
        return;
    };
    let before = document.history.before_gesture().cloned();
    document.history.commit();
    app.session.typed = None;
    let made = before.map_or_else(Vec::new, |before| new_things(&before, document.plan()));
    if let Some(name) = document.history.undo_name() {
        app.session.said = format!("{}.", sentence(name));
    }
    changed(app, then, &made);
}

/// Drops a gesture.
pub fn abandon(app: &mut App) {
    if let Some(document) = &mut app.document {
        document.history.abandon();
        document.renew_changed();
    }
    app.session.typed = None;
    app.session.refused = None;
}

/// Says why something can't be done, at its place.
pub fn refuse(app: &mut App, refused: &Refused) {
    let why = match (&app.document, refused) {
        (Some(document), Refused::Locked(thing)) => {
            format!("{} is locked.", crate::words::name(document.plan(), *thing))
        }
        _ => sentence(&refused.to_string()),
    };
    app.session.said.clone_from(&why);
    app.session.refused = Some(RefusedAt { at: refused.place(), why, at_s: app.now_s });
}

/// Sees to selection, level and ghost after a change.
pub fn changed(app: &mut App, then: Then, made: &[ThingId]) {
    let Some(document) = &mut app.document else {
        return;
    };
    document.renew_changed();
    let plan = document.plan().clone();
    app.session.refused = None;
    app.session.selection.keep_what_is_on(&plan);
    app.session.hover = app.session.hover.filter(|thing| plan.has(*thing));
    if !app.session.level.is_some_and(|level| plan.roofs.contains_key(&level)) {
        app.session.level = None;
    }
    app.session.cameras.retain(|sheet, _| sheet.is_on(&plan));
    app.session.companion_cameras.retain(|sheet, _| sheet.is_on(&plan));
    if then == Then::SelectMade && !made.is_empty() {
        select_made(app, &plan, made);
    }
    ghost::renew(app);
}

/// A new roof is worked on at once: all its edges are selected, so that their data are seen.
fn select_made(app: &mut App, plan: &Plan, made: &[ThingId]) {
    let mut things = BTreeSet::new();
    for &thing in made {
        match thing {
            ThingId::Roof(id) => {
                app.session.level = Some(id);
                things.extend(
                    plan.edges().filter(|place| place.roof_id == id).map(|place| ThingId::Edge(place.edge().id)),
                );
            }
            ThingId::Edge(edge) => {
                let ring = plan.find_edge(edge).map(|place| place.ring);
                things.extend(
                    ring.into_iter().flat_map(gantline_plan::document::Ring::corners).map(|c| ThingId::Edge(c.edge.id)),
                );
            }
            ThingId::Obstacle(_) | ThingId::Placement(_) | ThingId::Underlay(_) => {
                things.insert(thing);
            }
            ThingId::Plan => {}
        }
    }
    app.session.selection = Selection::of(things);
}

fn new_things(before: &Plan, now: &Plan) -> Vec<ThingId> {
    let units = now.placements.keys().filter(|id| !before.placements.contains_key(id));
    units.map(|&id| ThingId::Placement(id)).collect()
}

/// The plan may be edited from now on; what waited is carried out.
pub fn allow(app: &mut App) {
    app.session.looked_at = false;
    for intent in std::mem::take(&mut app.session.waiting) {
        one(app, intent);
    }
}

/// With a capital letter.
pub fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
