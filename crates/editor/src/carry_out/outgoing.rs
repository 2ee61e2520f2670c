//! What leaves the plan for others: documents into a folder, the drawing on the main sheet as a picture.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use gantline_exchange::documents::{Imprint, Wanted};
use gantline_exchange::dxf_drawing::sheet::with_imprint;

use crate::app::{App, Picking};
use crate::derived::{View, picture};
use crate::document::picker::with_picture_ending;
use crate::document::{Leaving, Outgoing, Wanted as WantedPath};
use crate::session::Sheet;
use crate::theme::Palette;

/// Asks where documents go.
pub fn ask_for_folder(app: &mut App) {
    if app.document.is_some() && !is_busy(app) {
        app.picking = Some(Picking::Folder);
        app.picker.ask(&WantedPath::Folder(folder(app)));
    }
}

/// Asks where the picture goes.
pub fn ask_for_picture(app: &mut App) {
    if app.document.is_some() && !is_busy(app) {
        app.picking = Some(Picking::Picture);
        app.picker.ask(&WantedPath::Picture { name: suggested_picture(app), folder: folder(app) });
    }
}

/// Begins to write the documents of the plan, without an open gesture.
pub fn write_documents(app: &mut App, folder: PathBuf) {
    let Some(document) = app.document.as_ref().filter(|_| app.outgoing.is_none()) else {
        return;
    };
    let (plan, wanted) = (Arc::clone(document.settled()), Wanted::all(app.preferences.units));
    app.outgoing = Some(Outgoing::begin(Leaving::Documents { plan, wanted, printer: app.printer, folder }));
}

/// Begins to write what is drawn on the main sheet.
pub fn write_picture(app: &mut App, path: PathBuf) {
    let Some(document) = app.document.as_ref().filter(|_| app.outgoing.is_none()) else {
        return;
    };
    let (plan, assessment) = (Arc::clone(document.plan()), app.assessed.of_plan());
    let view = View {
        plan: &plan,
        assessment: &assessment,
        selection: &app.session.selection,
        overlays: app.session.overlays,
        beside: None,
        level: app.session.level,
        units: app.preferences.units,
        palette: &Palette::LIGHT,
        in_gesture: false,
    };
    let Some(drawing) = picture(main_sheet(app), &view) else {
        "There is nothing drawn to be written.".clone_into(&mut app.session.said);
        return;
    };
    let drawing = Box::new(with_imprint(drawing, &Imprint::of(&plan, None)));
    app.outgoing = Some(Outgoing::begin(Leaving::Picture { drawing, path: with_picture_ending(path) }));
}

/// Stops what is leaving.
pub fn stop(app: &mut App) {
    if let Some(outgoing) = &app.outgoing {
        outgoing.stop();
    }
}

/// Takes in how far it is and what came of it.
pub fn told(app: &mut App) {
    if let Some(ended) = app.outgoing.as_mut().and_then(Outgoing::outcome) {
        has_ended(app, ended);
    }
}

/// Waits for what is leaving, for tests.
pub fn wait(app: &mut App) {
    if let Some(ended) = app.outgoing.as_mut().map(Outgoing::wait) {
        has_ended(app, ended);
    }
}

fn has_ended(app: &mut App, ended: Result<String, String>) {
    app.outgoing = None;
    app.session.said = ended.unwrap_or_else(|why| format!("Not written: {why}"));
}

fn is_busy(app: &mut App) -> bool {
    let is_busy = app.outgoing.is_some();
    if is_busy {
        "Something is being written; wait for it or stop it.".clone_into(&mut app.session.said);
    }
    is_busy
}

fn main_sheet(app: &App) -> Sheet {
    let Some(document) = &app.document else { return Sheet::Plan };
    app.session.slots.placed(document.plan(), &app.session.selection, None).0
}

fn suggested_picture(app: &App) -> String {
    let name = match main_sheet(app) {
        Sheet::Plan => "plan",
        Sheet::Section(_) => "section",
        Sheet::Elevation(_) => "elevation",
        Sheet::Building => "building",
    };
    format!("{name}.svg")
}

/// The folder of the plan's file.
fn folder(app: &App) -> Option<PathBuf> {
    app.document.as_ref()?.path.as_deref().and_then(Path::parent).map(Path::to_owned)
}

/// What a typed path begins with.
pub(crate) fn suggested_path(app: &App, picking: Picking) -> String {
    let home = || directories::UserDirs::new().map(|dirs| dirs.home_dir().to_owned()).unwrap_or_default();
    let folder = folder(app).unwrap_or_else(home);
    let path = if picking == Picking::Picture { folder.join(suggested_picture(app)) } else { folder };
    path.display().to_string()
}
