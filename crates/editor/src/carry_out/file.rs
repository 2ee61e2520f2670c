//! Files: opening, saving, copies for recovery, and the questions that go with them.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use gantline_exchange::disk::{RecoveryCopy, SaveFault, Stamp, plan_file};

use super::{edit, outgoing};
use crate::app::{App, Picking};
use crate::demonstration;
use crate::document::open_document::SaveTrouble;
use crate::document::picker::with_ending;
use crate::document::{Done, Job, OpenDocument, Picked, Wanted, new_plan};
use crate::intent::Answer;
use crate::session::page::PathQuestion;
use crate::session::{Next, Page, Question, Session};

/// Leaves the open plan for something else, after asking if something would be lost.
pub fn leave(app: &mut App, next: Next) {
    if app.document.as_ref().is_some_and(OpenDocument::is_changed) {
        app.session.question = Some(Question::Unsaved(next));
    } else {
        go(app, next);
    }
}

/// Whether the window may close now; if not, the question is shown.
pub fn may_leave(app: &mut App) -> bool {
    if app.document.as_ref().is_some_and(OpenDocument::is_changed) {
        app.session.question = Some(Question::Unsaved(Next::Quit));
        return false;
    }
    drop_copy(app);
    true
}

fn go(app: &mut App, next: Next) {
    match next {
        Next::New => new(app),
        Next::Open => {
            app.picking = Some(Picking::Open);
            app.picker.ask(&Wanted::Open);
        }
        Next::OpenPath(path) => open(app, &path),
        Next::OpenSoundParts(path) => open_sound_parts(app, &path),
        Next::OpenDemonstration(index) => open_demonstration(app, index),
        Next::Close => close(app),
        Next::Quit => {
            drop_copy(app);
            app.leaves = true;
        }
    }
}

fn fresh_session(app: &App) -> Session {
    Session { overlays: app.preferences.overlays, units: app.preferences.units, ..Session::default() }
}

fn show(app: &mut App, document: OpenDocument) {
    drop_copy(app);
    app.session = fresh_session(app);
    app.document = Some(document);
}

fn close(app: &mut App) {
    drop_copy(app);
    app.document = None;
    app.session = fresh_session(app);
}

fn new(app: &mut App) {
    app.untitled += 1;
    match new_plan() {
        Ok(plan) => {
            let document = OpenDocument::untitled(plan, "", app.untitled);
            show(app, document);
            super::gesture::take_tool(app, crate::tools::ToolKind::Roof);
        }
        Err(why) => app.session.said = why,
    }
}

fn open_demonstration(app: &mut App, index: usize) {
    let Some(found) = demonstration::PLANS.get(index) else {
        return;
    };
    match gantline_plan::file::read(found.text.as_bytes()) {
        Ok(plan) => {
            app.untitled += 1;
            let document = OpenDocument::untitled(plan, found.name, app.untitled);
            show(app, document);
        }
        Err(fault) => {
            app.session.page =
                Some(Page::CantOpen { path: PathBuf::from(found.name), what: fault.to_string(), left_out: None });
        }
    }
}

/// Opens a file; the plan open before is lost only once this one is read.
fn open(app: &mut App, path: &Path) {
    match plan_file::open(path) {
        Ok(opened) => {
            let copy = app.copies.as_ref().and_then(|copies| copies.left_of(path));
            app.untitled += 1;
            let document = OpenDocument::opened(opened.plan, path.to_owned(), opened.stamp, app.untitled);
            show(app, document);
            app.session.looked_at = true;
            app.preferences.remember(path);
            keep_preferences(app);
            if let Some(copy) = copy {
                app.session.question = Some(Question::Recover { copy: copy.file.clone(), of: name_of_copy(&copy) });
            }
        }
        Err(fault) => {
            let left_out = plan_file::open_sound_parts(path).ok().filter(|sound| !sound.plan.roofs.is_empty());
            let left_out = left_out.map(|sound| sound.left_out.into_iter().map(|one| one.part).collect());
            app.session.page = Some(Page::CantOpen { path: path.to_owned(), what: fault.to_string(), left_out });
        }
    }
}

/// Opens what is sound of a file, as a plan of its own: the file stays as it is.
fn open_sound_parts(app: &mut App, path: &Path) {
    match plan_file::open_sound_parts(path) {
        Ok(sound) => {
            app.untitled += 1;
            let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
            show(app, OpenDocument::part(sound.plan, format!("Part of {name}"), app.untitled));
            let count = sound.left_out.len();
            app.session.said = format!("Open without {count} of its parts; saving asks for a file of its own.");
        }
        Err(fault) => {
            app.session.page = Some(Page::CantOpen { path: path.to_owned(), what: fault.to_string(), left_out: None });
        }
    }
}

/// Saves to the plan's own file, or asks for one.
pub fn save(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    match document.path.clone() {
        Some(path) => {
            let job = Job::Save { plan: Arc::clone(document.settled()), path, seen: document.stamp.clone() };
            app.worker.ask(job);
        }
        None => save_as(app),
    }
}

/// Asks where to save.
pub fn save_as(app: &mut App) {
    let Some(document) = &app.document else {
        return;
    };
    let name = match &document.path {
        Some(_) => document.name(),
        None => "plan.json".to_owned(),
    };
    let folder = document.path.as_deref().and_then(Path::parent).map(Path::to_owned);
    app.picking = Some(Picking::Save);
    app.picker.ask(&Wanted::Save { name, folder });
}

/// Saves to a file, whatever is there: whoever chose it was asked by the dialog.
pub fn save_to(app: &mut App, path: PathBuf) {
    if let Some(document) = &app.document {
        let plan = Arc::clone(document.settled());
        app.worker.ask(Job::Save { plan, path, seen: None });
    }
}

/// Takes in what the picker says.
pub fn picker_told(app: &mut App) {
    let Some(picking) = app.picking else {
        return;
    };
    let Some(picked) = app.picker.answer() else {
        return;
    };
    app.picking = None;
    match (picked, picking) {
        (Picked::File(path), Picking::Open) => open(app, &path),
        (Picked::File(path), Picking::Drawing) => super::outline::read(app, path),
        (Picked::File(path), Picking::Underlay) => super::underlay::read(app, path),
        (Picked::File(path), Picking::Save) => save_to(app, with_ending(path)),
        (Picked::File(folder), Picking::Folder) => outgoing::write_documents(app, folder),
        (Picked::File(path), Picking::Picture) => outgoing::write_picture(app, path),
        (Picked::Nothing, _) => app.after_save = None,
        (Picked::NoDialog(why), picking) => {
            app.session.said = format!("The desktop shows no file dialog: {why}.");
            let (question, begin) = match picking {
                Picking::Open => (PathQuestion::Open, String::new()),
                Picking::Drawing => (PathQuestion::Drawing, String::new()),
                Picking::Underlay => (PathQuestion::Underlay, String::new()),
                Picking::Save => (PathQuestion::Save, suggested_path(app)),
                Picking::Folder => (PathQuestion::Folder, outgoing::suggested_path(app, picking)),
                Picking::Picture => (PathQuestion::Picture, outgoing::suggested_path(app, picking)),
            };
            app.session.asked_text = begin;
            app.session.page = Some(Page::Path(question));
        }
    }
}

fn suggested_path(app: &App) -> String {
    let known = app.document.as_ref().and_then(|document| document.path.clone());
    let folder = || directories::UserDirs::new().map(|dirs| dirs.home_dir().to_owned()).unwrap_or_default();
    known.unwrap_or_else(|| folder().join("plan.json")).display().to_string()
}

/// Takes in what the disk says.
pub fn disk_told(app: &mut App, done: Done) {
    match done {
        Done::Saved { plan, path, outcome: Ok(stamp) } => {
            drop_copy(app);
            app.session.said = format!("Saved: {}", path.display());
            app.preferences.remember(&path);
            keep_preferences(app);
            if let Some(document) = &mut app.document {
                document.was_saved(plan, path, stamp);
            }
            app.session.looked_at = false;
            if let Some(next) = app.after_save.take() {
                leave(app, next);
            }
        }
        Done::Saved { path, outcome: Err(SaveFault::ChangedSince { .. }), .. } => {
            app.session.question = Some(Question::ChangedOnDisk(path));
        }
        Done::Saved { path, outcome: Err(fault), .. } => {
            app.after_save = None;
            if let Some(document) = &mut app.document {
                document.save_trouble = Some(SaveTrouble { path, why: fault.to_string() });
            }
        }
        Done::DrawingRead { serial, outcome } => super::outline::was_read(app, serial, outcome),
        Done::Outlined { serial, outcome } => super::outline::was_put_together(app, serial, outcome),
        Done::CopyTrouble(why) => app.session.said = format!("No copy for recovery: {why}"),
        Done::CopyDone => {}
    }
}

/// Carries out the answer to the open question.
pub fn answer(app: &mut App, answer: Answer) {
    let waiting = std::mem::take(&mut app.session.waiting);
    match (app.session.question.take(), answer) {
        (Some(Question::Unsaved(next)), Answer::Save) => {
            app.after_save = Some(next);
            save(app);
        }
        (Some(Question::Unsaved(next)), Answer::Discard) => {
            drop_copy(app);
            go(app, next);
        }
        (Some(Question::ChangedOnDisk(path)), Answer::Yes) => save_to(app, path),
        (Some(Question::ChangedOnDisk(_)), Answer::Save) => save_as(app),
        (Some(Question::DeleteRoof { .. }), Answer::Yes) => {
            for intent in waiting {
                super::one(app, intent);
            }
        }
        (Some(Question::Edit), Answer::Yes) => {
            app.session.waiting = waiting;
            edit::allow(app);
        }
        (Some(Question::Recover { copy, .. }), Answer::Yes) => recover(app, &copy),
        (Some(Question::Recover { copy, .. }), Answer::Discard) => {
            if let Ok(found) = RecoveryCopy::find(&copy) {
                // A copy that can't be removed is offered again next time: nothing is lost.
                drop(found.remove());
            }
        }
        _ => app.after_save = None,
    }
}

fn recover(app: &mut App, copy: &Path) {
    let read = RecoveryCopy::find(copy).and_then(|found| found.plan_bytes().map(|bytes| (found.of, bytes)));
    match read.map_err(|fault| fault.to_string()).and_then(|(of, bytes)| {
        gantline_plan::file::read(&bytes).map(|plan| (of, plan)).map_err(|fault| fault.to_string())
    }) {
        Ok((of, plan)) => {
            // From the start page the file itself was not opened: what it holds now must not be lost unasked.
            let stamp = app.document.as_ref().and_then(|document| document.stamp.clone());
            let stamp = stamp.or_else(|| of.is_some().then(Stamp::unseen));
            app.untitled += 1;
            let mut document = OpenDocument::rescued(plan, of, app.untitled);
            document.stamp = stamp;
            app.session = fresh_session(app);
            app.document = Some(document);
            "The rescued work is open; save it to keep it.".clone_into(&mut app.session.said);
        }
        Err(what) => app.session.page = Some(Page::CantOpen { path: copy.to_owned(), what, left_out: None }),
    }
}

/// Opens what an earlier run left.
pub fn rescue(app: &mut App, index: usize) {
    if index < app.rescued.len() {
        let copy = app.rescued.remove(index);
        recover(app, &copy.file);
    }
}

/// Drops what an earlier run left.
pub fn drop_rescue(app: &mut App, index: usize) {
    if index < app.rescued.len() {
        let copy = app.rescued.remove(index);
        if let Err(fault) = copy.remove() {
            app.session.said = fault.to_string();
        }
    }
}

/// What a copy is a copy of, in words.
pub fn name_of_copy(copy: &RecoveryCopy) -> String {
    copy.of.as_ref().map_or_else(|| "a plan never saved".to_owned(), |path| path.display().to_string())
}

/// How long after a change the copy for recovery is written, s.
const COPY_AFTER_S: f64 = 2.0;

/// Writes a copy for recovery once the plan has rested a little, or has not been copied for as long.
pub fn copy_for_recovery(app: &mut App, ctx: &egui::Context) {
    let Some(document) = &mut app.document else {
        app.copy_due_s = None;
        return;
    };
    let Some(plan) = document.to_be_copied() else {
        app.copy_due_s = None;
        return;
    };
    let due_s = *app.copy_due_s.get_or_insert(app.now_s + COPY_AFTER_S);
    if app.now_s < due_s {
        ctx.request_repaint_after(std::time::Duration::from_secs_f64(due_s - app.now_s + 0.01));
        return;
    }
    app.copy_due_s = None;
    document.copy_asked(Arc::clone(&plan));
    app.worker.ask(Job::Copy { plan, of: document.path.clone(), untitled: document.untitled });
}

/// Removes the copy for recovery of the open plan.
fn drop_copy(app: &mut App) {
    if let Some(document) = &app.document {
        app.worker.ask(Job::RemoveCopy { of: document.path.clone(), untitled: document.untitled });
    }
}

/// Writes the preferences.
pub fn keep_preferences(app: &mut App) {
    if let Some(trouble) = app.store.write(&app.preferences) {
        app.session.said = trouble;
    }
}
