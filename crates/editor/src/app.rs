//! The application without a window: one frame reads, collects intents, and carries them out at its end.

use std::collections::VecDeque;
use std::path::PathBuf;
use std::sync::{Arc, Mutex};

use egui::{CentralPanel, Panel, Ui};
use gantline_exchange::disk::{Autosave, RecoveryCopy};
use gantline_exchange::paper::Printer;
use gantline_plan::assess::Assessment;
use gantline_plan::quantity::UnitSystem;

use crate::canvas::canvas::{self, OnSheet, Told};
use crate::derived::{Assessed, Drawn, Underlays, View};
use crate::document::{OpenDocument, Outgoing, Picker, UnderlayWorker, Worker};
use crate::intent::Intent;
use crate::panels;
use crate::preferences::{Preferences, Store, ThemeChoice};
use crate::session::session::Area;
use crate::session::{Next, Session, Sheet, SheetRect};
use crate::sight::{Look, Sight};
use crate::theme::{Layout, style, type_scale};
use crate::tools::Scene;
use crate::{carry_out, keys};

/// What the application is started with.
pub struct Start {
    /// Where preferences and recovery copies are kept.
    pub store: Store,
    /// Asks for files.
    pub picker: Box<dyn Picker>,
    /// Prints documents on paper.
    pub printer: Printer,
    /// Called when something was done behind the window's back.
    pub wake: Box<dyn Fn() + Send>,
    /// A plan to open at once.
    pub open: Option<PathBuf>,
}

/// The application.
pub struct App {
    pub(crate) store: Store,
    pub(crate) preferences: Preferences,
    pub(crate) document: Option<OpenDocument>,
    pub(crate) session: Session,
    pub(crate) assessed: Assessed,
    drawn: Drawn,
    pub(crate) underlays: Underlays,
    pub(crate) underlay_worker: UnderlayWorker,
    pub(crate) underlays_asked: u64,
    pub(crate) picker: Box<dyn Picker>,
    pub(crate) picking: Option<Picking>,
    pub(crate) printer: Printer,
    pub(crate) worker: Worker,
    pub(crate) outgoing: Option<Outgoing>,
    pub(crate) copies: Option<Arc<Autosave>>,
    pub(crate) rescued: Vec<RecoveryCopy>,
    pub(crate) untitled: u64,
    pub(crate) after_save: Option<Next>,
    pub(crate) copy_due_s: Option<f64>,
    pub(crate) now_s: f64,
    pub(crate) leaves: bool,
    styled: bool,
    waiting: VecDeque<Intent>,
}

/// Copies of plans never saved, and those beside the plans opened last, that an earlier run left.
fn rescued_after_crash(copies: &Autosave, preferences: &Preferences) -> Vec<RecoveryCopy> {
    let mut found = copies.left_behind().map_or_else(|_| Vec::new(), |found| found.copies);
    for copy in preferences.recent.iter().filter_map(|path| copies.left_of(path)) {
        if found.iter().all(|known| known.file != copy.file) {
            found.push(copy);
        }
    }
    found
}

/// What a file is being picked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Picking {
    /// To be opened.
    Open,
    /// To be saved to.
    Save,
    /// A folder for documents.
    Folder,
    /// A picture to be written.
    Picture,
    /// A drawing whose outlines are to be taken.
    Drawing,
    /// A drawing or a scan to be laid under the plan.
    Underlay,
}

impl App {
    /// The application as it starts.
    pub fn new(start: Start) -> Self {
        let (preferences, trouble) = start.store.read();
        let copies = start.store.recovery.as_ref().and_then(|folder| Autosave::begin(folder).ok()).map(Arc::new);
        let rescued = copies.as_ref().map_or_else(Vec::new, |copies| rescued_after_crash(copies, &preferences));
        let mut session = Session { overlays: preferences.overlays, ..Session::default() };
        session.said = trouble.unwrap_or_default();
        let wake = Arc::new(Mutex::new(start.wake));
        let waker = || {
            let wake = Arc::clone(&wake);
            move || {
                if let Ok(wake) = wake.lock() {
                    wake();
                }
            }
        };
        Self {
            worker: Worker::start(copies.clone(), waker()),
            underlays: Underlays::default(),
            underlay_worker: UnderlayWorker::start(waker()),
            underlays_asked: 0,
            store: start.store,
            preferences,
            document: None,
            session,
            assessed: Assessed::default(),
            drawn: Drawn::default(),
            picker: start.picker,
            picking: None,
            printer: start.printer,
            outgoing: None,
            copies,
            rescued,
            untitled: 0,
            after_save: None,
            copy_due_s: None,
            now_s: 0.0,
            leaves: false,
            styled: false,
            waiting: start.open.map(Intent::OpenPath).into_iter().collect(),
        }
    }

    /// The open plan.
    pub fn document(&self) -> Option<&OpenDocument> {
        self.document.as_ref()
    }

    /// The assessment of the open plan.
    pub fn assessment(&self) -> Arc<Assessment> {
        self.assessed.of_plan()
    }

    /// The units of measure that are shown.
    pub fn units(&self) -> UnitSystem {
        self.preferences.units
    }

    /// Waits until what was asked of the disk is done, for tests.
    pub fn wait_for_disk(&mut self) {
        while let Some(done) = self.worker.wait() {
            carry_out::file::disk_told(self, done);
        }
    }

    /// Waits until what was asked of the thread for underlays is done, for tests.
    pub fn wait_for_underlays(&mut self, ctx: &egui::Context) {
        while let Some(done) = self.underlay_worker.wait() {
            carry_out::underlay::told(self, ctx, done);
        }
    }

    /// Waits until what is being written for others has ended, for tests.
    pub fn wait_for_outgoing(&mut self) {
        carry_out::outgoing::wait(self);
    }

    /// What was said last in the status line.
    pub fn said(&self) -> &str {
        &self.session.said
    }

    /// One frame.
    pub fn show(&mut self, ui: &mut Ui) {
        // What was asked for before the first frame, such as a plan to open, is seen in that frame.
        let asked_before = self.waiting.drain(..).collect();
        carry_out::all(self, asked_before, Told::default());
        self.prepare(ui);
        let mut intents = keys::collect(ui.ctx(), &self.session, self.document.is_some());
        let told = if self.document.is_some() {
            self.show_plan(ui, &mut intents)
        } else {
            self.show_start(ui, &mut intents);
            Told::default()
        };
        self.show_over(ui, &mut intents);
        self.give_focus(ui);
        carry_out::all(self, intents, told);
        self.finish(ui);
    }

    /// Sets fonts, styles and theme. Whoever can do so before the first frame spares it a default look.
    pub fn dress(&mut self, ctx: &egui::Context) {
        style::install(ctx);
        set_theme(ctx, self.preferences.theme);
        self.styled = true;
    }

    /// Takes in what happened since the last frame.
    fn prepare(&mut self, ui: &mut Ui) {
        if !self.styled {
            self.dress(ui.ctx());
            // This frame was begun in the toolkit's own look.
            ui.set_style(ui.ctx().global_style());
            ui.ctx().request_repaint();
        }
        self.now_s = ui.input(|input| input.time);
        while let Some(done) = self.worker.outcome() {
            carry_out::file::disk_told(self, done);
        }
        while let Some(done) = self.underlay_worker.outcome() {
            carry_out::underlay::told(self, ui.ctx(), done);
        }
        carry_out::file::picker_told(self);
        carry_out::outgoing::told(self);
        if ui.input(|input| input.viewport().close_requested()) && !self.leaves && !carry_out::file::may_leave(self) {
            ui.ctx().send_viewport_cmd(egui::ViewportCommand::CancelClose);
        }
        if let Some(document) = &self.document {
            self.assessed.renew(document.plan(), self.session.ghost.as_ref().map(|ghost| &ghost.plan));
        }
    }

    /// Sees to what must go on after the frame.
    fn finish(&mut self, ui: &Ui) {
        carry_out::file::copy_for_recovery(self, ui.ctx());
        carry_out::underlay::see_to_pictures(self, ui.ctx());
        set_theme(ui.ctx(), self.preferences.theme);
        if self.leaves {
            ui.ctx().send_viewport_cmd(egui::ViewportCommand::Close);
        }
        if self.picking.is_some() || self.outgoing.is_some() {
            // A dialog that runs elsewhere wakes no one, nor does the thread that writes for others.
            ui.ctx().request_repaint_after(std::time::Duration::from_millis(100));
        }
        let title = self.document.as_ref().map_or_else(|| "Gantline".to_owned(), window_title);
        let id = egui::Id::unique("window title");
        if ui.data(|data| data.get_temp::<String>(id)).as_deref() != Some(title.as_str()) {
            ui.ctx().send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            ui.data_mut(|data| data.insert_temp(id, title));
        }
    }

    /// Gives the focus to the area that was asked for. An area's first field is the one after its anchor.
    fn give_focus(&mut self, ui: &Ui) {
        let (Some(area), true) = (self.session.focus.take(), self.document.is_some()) else {
            return;
        };
        ui.memory_mut(|memory| match area {
            Area::Sheet => memory.request_focus(canvas::main_id()),
            Area::Bar => memory.request_focus(panels::top_bar::menu_id()),
            Area::Inspector => memory.request_focus(panels::anchor::id("inspector")),
            Area::Drawer => memory.request_focus(panels::anchor::id("drawer")),
        });
        self.session.area = area;
    }

    fn show_start(&mut self, ui: &mut Ui, intents: &mut Vec<Intent>) {
        let palette = style::shown(ui.ctx());
        let rescued: Vec<String> = self.rescued.iter().map(carry_out::file::name_of_copy).collect();
        let look = Look { palette: &palette, units: self.preferences.units };
        panels::start::show(ui, look, &self.preferences.recent, &rescued, &self.session.said, intents);
    }

    fn show_plan(&mut self, ui: &mut Ui, intents: &mut Vec<Intent>) -> Told {
        let Some(document) = &self.document else {
            return Told::default();
        };
        let palette = style::shown(ui.ctx());
        let (assessment, shown_assessment) = (self.assessed.of_plan(), self.assessed.shown());
        let plan = Arc::clone(document.plan());
        let shown_plan = self.session.ghost.as_ref().map_or_else(|| Arc::clone(&plan), |ghost| Arc::clone(&ghost.plan));
        let sight = Sight {
            plan: &plan,
            assessment: &assessment,
            at_rest: !document.history.in_gesture() && self.session.ghost.is_none(),
            underlays: &self.underlays,
            session: &self.session,
            look: Look { palette: &palette, units: self.preferences.units },
        };
        let mut selection = self.session.selection.clone();
        if let Some(thing) = self.session.ghost.as_ref().and_then(|ghost| ghost.thing) {
            selection = crate::session::Selection::of([thing]);
        }
        let (main, companion) = self.session.slots.placed(&shown_plan, &selection, self.session.drawing_pressed());
        let view = View {
            plan: &shown_plan,
            assessment: &shown_assessment,
            selection: &selection,
            overlays: self.session.overlays,
            beside: Some(companion),
            level: self.session.level,
            units: self.preferences.units,
            palette: &palette,
            in_gesture: document.history.in_gesture() || self.session.ghost.is_some(),
        };
        let scene = scene_of(document, &self.session);
        let layout = Layout::of(ui.ctx().content_rect().size());
        let bar = egui::Frame::new().fill(palette.bar);
        Panel::top("top bar").exact_size(type_scale::TOP_BAR).frame(bar).show(ui, |ui| {
            panels::top_bar::show(ui, &sight, document, intents);
        });
        if let Some(trouble) = &document.save_trouble {
            panels::save_trouble::show(ui, trouble, &palette, intents);
        }
        if let Some(outgoing) = &self.outgoing {
            panels::outgoing::show(ui, outgoing.progress(), &palette, intents);
        }
        Panel::bottom("status line").exact_size(type_scale::STATUS_LINE).frame(bar).show(ui, |ui| {
            panels::status_line::show(ui, &sight, intents);
        });
        if let Some(drawer) = self.session.drawer {
            let frame = egui::Frame::new().fill(palette.panel);
            Panel::bottom("drawer").exact_size(layout.drawer).frame(frame).show(ui, |ui| {
                panels::anchor::show(ui, "drawer");
                panels::drawer::show(ui, drawer, &sight, intents);
            });
        }
        let on = |sheet: Sheet, main: bool| OnSheet {
            sheet,
            main,
            sight,
            view: &view,
            scene: &scene,
            wheel: self.preferences.wheel,
        };
        let drawn = &mut self.drawn;
        let mut told = Told::default();
        let column = egui::Frame::new().fill(palette.panel);
        Panel::right("column").exact_size(layout.column).frame(column).show(ui, |ui| {
            let told_here = panels::companion::show(ui, layout.companion, &on(companion, false), drawn, &view, intents);
            told = std::mem::take(&mut told).or(told_here);
            panels::anchor::show(ui, "inspector");
            panels::inspector::show(ui, &sight, document, intents);
        });
        let mut main_rect = None;
        CentralPanel::default().frame(egui::Frame::NONE).show(ui, |ui| {
            let rect = ui.max_rect();
            main_rect = Some(rect);
            let told_here = canvas::show(ui, rect, &on(main, true), drawn, intents);
            told = std::mem::take(&mut told).or(told_here);
            panels::over_sheet::show(ui, rect, main, &sight, intents);
        });
        drawn.keep(&[main, companion]);
        self.session.main_rect = main_rect.map(|rect| SheetRect {
            min: glam::DVec2::new(f64::from(rect.min.x), f64::from(rect.min.y)),
            max: glam::DVec2::new(f64::from(rect.max.x), f64::from(rect.max.y)),
        });
        told
    }

    /// Pages and questions over everything.
    fn show_over(&mut self, ui: &mut Ui, intents: &mut Vec<Intent>) {
        let palette = style::shown(ui.ctx());
        let look = Look { palette: &palette, units: self.preferences.units };
        if let Some(question) = self.session.question.clone() {
            panels::ask::show(ui, look, &question, intents);
            return;
        }
        if let Some(dialog) = self.session.outline.clone() {
            panels::outline::show(ui, look, &dialog, intents);
            return;
        }
        if let Some(dialog) = self.session.underlay.clone() {
            panels::underlay::show(ui, look, &dialog, intents);
            return;
        }
        let Some(page) = self.session.page.clone() else {
            return;
        };
        let assessment = self.assessed.of_plan();
        let plan = self.document.as_ref().map(|document| Arc::clone(document.plan()));
        panels::page::show(
            ui,
            look,
            &page,
            plan.as_deref(),
            &assessment,
            &self.preferences,
            &mut self.session.asked_text,
            intents,
        );
    }
}

/// What tools see.
pub(crate) fn scene_of<'a>(document: &'a OpenDocument, session: &'a Session) -> Scene<'a> {
    let plan = document.settled();
    let hand = &session.hand;
    let edge = session.hand.for_edge;
    Scene {
        plan,
        selection: &session.selection,
        hand: hand.make_up.as_ref().filter(|make_up| plan.families.contains_key(&make_up.family)),
        hand_setback_m: hand.setback_m(plan, edge),
        level: session.level,
        lines: &session.lines,
        typed: session.typed.as_ref().map_or_else(Default::default, |typed| typed.typed(session.units)),
    }
}

fn window_title(document: &OpenDocument) -> String {
    let mark = if document.is_changed() { "* " } else { "" };
    format!("{mark}{} – Gantline", document.name())
}

fn set_theme(ctx: &egui::Context, choice: ThemeChoice) {
    ctx.set_theme(match choice {
        ThemeChoice::System => egui::ThemePreference::System,
        ThemeChoice::Light => egui::ThemePreference::Light,
        ThemeChoice::Dark => egui::ThemePreference::Dark,
    });
}
