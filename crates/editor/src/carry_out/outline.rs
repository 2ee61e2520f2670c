//! Outlines from a drawing: reading it behind the window's back, what is chosen, and taking it in one step.

use std::path::PathBuf;
use std::sync::Arc;

use gantline_exchange::outline::{Heights, LineWork, OutlineFault, Outlines, Role, place_to_keep};

use super::{edit, view};
use crate::app::{App, Picking};
use crate::document::{Job, Wanted};
use crate::intent::Then;
use crate::session::outline::{Answer, Choosing, OutlineDialog, OutlineWish, Stage, Trouble};
use crate::tools::scene::FIRST_ROOF_LEVEL_M;

/// Asks for a drawing.
pub fn ask_for_drawing(app: &mut App) {
    if app.document.is_some() {
        app.picking = Some(Picking::Drawing);
        app.picker.ask(&Wanted::Drawing);
    }
}

/// Reads a drawing.
pub fn read(app: &mut App, path: PathBuf) {
    if app.document.is_none() {
        return;
    }
    let serial = app.session.outline.as_ref().map_or(0, |dialog| dialog.serial) + 1;
    app.worker.ask(Job::ReadDrawing { path: path.clone(), serial });
    app.session.outline = Some(OutlineDialog { path, stage: Stage::Reading, serial });
}

/// A drawing was read, or not.
pub fn was_read(app: &mut App, serial: u64, outcome: Result<Arc<LineWork>, String>) {
    let Some(document) = &app.document else { return };
    let plan = document.plan();
    let heights = Heights::usual(plan, FIRST_ROOF_LEVEL_M);
    let place = place_to_keep(plan);
    let Some(dialog) = app.session.outline.as_mut().filter(|dialog| dialog.serial == serial) else { return };
    dialog.stage = match outcome {
        Ok(work) => Stage::Choosing(Box::new(Choosing::of(work, place, heights))),
        Err(why) => Stage::Unreadable(why),
    };
    put_together(app);
}

/// Asks for the outlines of what is chosen, once everything is said.
fn put_together(app: &mut App) {
    let Some(dialog) = &mut app.session.outline else { return };
    let Stage::Choosing(choosing) = &mut dialog.stage else { return };
    choosing.trouble = None;
    dialog.serial += 1;
    if choosing.asked.layers.is_empty() || choosing.asked.unit.is_none() {
        choosing.answer = Answer::Waiting;
        choosing.roles.clear();
        choosing.selected = None;
        return;
    }
    choosing.answer = Answer::Computing;
    let (work, asked) = (Arc::clone(&choosing.work), choosing.asked.clone());
    app.worker.ask(Job::Outlines { work, asked, serial: dialog.serial });
}

/// Outlines were put together, or not.
pub fn was_put_together(app: &mut App, serial: u64, outcome: Result<Arc<Outlines>, OutlineFault>) {
    let Some(dialog) = app.session.outline.as_mut().filter(|dialog| dialog.serial == serial) else { return };
    let Stage::Choosing(choosing) = &mut dialog.stage else { return };
    choosing.selected = None;
    match outcome {
        Ok(found) => {
            choosing.roles = found.cautious_roles();
            choosing.answer = Answer::Found(found);
        }
        Err(fault) => {
            choosing.roles.clear();
            choosing.answer = Answer::Fault(fault.to_string());
        }
    }
}

/// Carries out what the dialog asks for.
pub fn wish(app: &mut App, wish: OutlineWish) {
    match wish {
        OutlineWish::Cancel => {
            app.worker.stop_drawing();
            app.session.outline = None;
            return;
        }
        OutlineWish::Take => return take(app),
        OutlineWish::ChooseAnother => return ask_for_drawing(app),
        _ => {}
    }
    let Some(dialog) = &mut app.session.outline else { return };
    let Stage::Choosing(choosing) = &mut dialog.stage else { return };
    choosing.trouble = None;
    match wish {
        OutlineWish::Layer(place, true) => drop(choosing.asked.layers.insert(place)),
        OutlineWish::Layer(place, false) => drop(choosing.asked.layers.remove(&place)),
        OutlineWish::Unit(unit) => choosing.asked.unit = Some(unit),
        OutlineWish::Tolerance(tolerance_m) => choosing.asked.tolerance_m = tolerance_m,
        OutlineWish::Chord(chord_m) => choosing.asked.chord_m = chord_m,
        OutlineWish::Role(index, role) => {
            if let Some(known) = choosing.roles.get_mut(index) {
                *known = role;
            }
            return;
        }
        OutlineWish::RoleOfLayer(layer, role) => {
            roles_of_layer(choosing, layer, role);
            return;
        }
        OutlineWish::Select(index) => {
            choosing.selected = index;
            return;
        }
        OutlineWish::Heights(heights) => {
            choosing.heights = heights;
            return;
        }
        OutlineWish::Look(camera) => {
            choosing.camera = camera;
            return;
        }
        OutlineWish::Take | OutlineWish::ChooseAnother | OutlineWish::Cancel => return,
    }
    choosing.camera = None;
    put_together(app);
}

fn roles_of_layer(choosing: &mut Choosing, layer: usize, role: Role) {
    let Some(found) = choosing.outlines().cloned() else { return };
    for (one, known) in found.loops.iter().zip(&mut choosing.roles) {
        if one.layer == layer {
            *known = role;
        }
    }
}

/// Takes the outlines as one step; what can't be taken is said with its place, and nothing changes.
fn take(app: &mut App) {
    let (Some(document), Some(dialog)) = (&app.document, &mut app.session.outline) else { return };
    let Stage::Choosing(choosing) = &mut dialog.stage else { return };
    let Some(found) = choosing.outlines() else { return };
    match found.change(document.plan(), &choosing.roles, &choosing.heights) {
        Ok(change) => {
            app.session.outline = None;
            edit::change(app, "take outlines from a drawing", &change, Then::SelectMade);
            view::fit(app);
        }
        Err(fault) => {
            choosing.trouble = Some(Trouble { why: edit::sentence(&fault.to_string()), at: fault.place() });
        }
    }
}
