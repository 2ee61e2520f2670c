//! The work in hand.

use std::collections::BTreeMap;
use std::sync::Arc;

use gantline_exchange::underlay::Lines;
use gantline_plan::document::{ContentHash, Plan, RoofId, ThingId};
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use super::{
    Camera, Drawer, Hand, OutlineDialog, OverlaySet, Page, Question, Selection, Sheet, SheetRect, Slots, UnderlayDialog,
};
use crate::intent::Intent;
use crate::tools::gesture::Recognizer;
use crate::tools::{Tool, TypedEntry};

/// The work in hand on one plan.
#[derive(Debug, Clone, Default)]
pub struct Session {
    /// What is selected.
    pub selection: Selection,
    /// Units of measure, as the preferences have them.
    pub units: UnitSystem,
    /// The tool in hand.
    pub tool: Tool,
    /// Tells clicks from drags.
    pub recognizer: Recognizer,
    /// The sheet on which the button went down.
    pub pressed_on: Option<Sheet>,
    /// Numbers being typed.
    pub typed: Option<TypedEntry>,
    /// The make-up that the unit tool places.
    pub hand: Hand,
    /// The roof whose level is worked on.
    pub level: Option<RoofId>,
    /// Overlays.
    pub overlays: OverlaySet,
    /// Which drawing lies where.
    pub slots: Slots,
    /// Cameras of drawings on the main sheet that were moved by hand; others are fitted.
    pub cameras: BTreeMap<Sheet, Camera>,
    /// The same for drawings on the companion.
    pub companion_cameras: BTreeMap<Sheet, Camera>,
    /// The thing under the pointer.
    pub hover: Option<ThingId>,
    /// Why something could not be done, shown at its place.
    pub refused: Option<RefusedAt>,
    /// What was said last.
    pub said: String,
    /// The open drawer.
    pub drawer: Option<Drawer>,
    /// The page over the sheet.
    pub page: Option<Page>,
    /// The drawing whose outlines are about to be taken.
    pub outline: Option<OutlineDialog>,
    /// The file that is about to be laid under the plan.
    pub underlay: Option<UnderlayDialog>,
    /// Lines of drawings under the plan, by attachment, for tools to snap to.
    pub lines: BTreeMap<ContentHash, Arc<Lines>>,
    /// The question to be answered first.
    pub question: Option<Question>,
    /// Intents that wait for the answer.
    pub waiting: Vec<Intent>,
    /// A unit that a click would place.
    pub ghost: Option<Ghost>,
    /// Which finding was gone to last.
    pub finding: Option<usize>,
    /// Which combination charts show; none: the governing one.
    pub chart_combination: Option<usize>,
    /// Whether the plan is only looked at until someone says that it may be edited.
    pub looked_at: bool,
    /// When the last nudge was made, s.
    pub nudged_at_s: f64,
    /// Where the main sheet lies on the screen.
    pub main_rect: Option<SheetRect>,
    /// The tag being looked for, or the path being typed.
    pub asked_text: String,
    /// The area that F6 went to last.
    pub area: Area,
    /// A panel area that is to take the focus.
    pub focus: Option<Area>,
}

impl Session {
    /// The drawing on which the button is down.
    pub fn drawing_pressed(&self) -> Option<Sheet> {
        self.pressed_on.filter(|_| self.recognizer.is_pressed())
    }
}

/// Areas of the window that F6 goes through.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Area {
    /// The top bar.
    Bar,
    /// The main sheet.
    #[default]
    Sheet,
    /// The inspector.
    Inspector,
    /// The drawer.
    Drawer,
}

/// Why something could not be done.
#[derive(Debug, Clone, PartialEq)]
pub struct RefusedAt {
    /// Where on the plan, if there is a place.
    pub at: Option<DVec2>,
    /// Why.
    pub why: String,
    /// When it was said, s: it stays long enough to be read.
    pub at_s: f64,
}

/// The plan with a thing that a click would place.
#[derive(Debug, Clone)]
pub struct Ghost {
    /// The plan as it would be.
    pub plan: Arc<Plan>,
    /// The thing.
    pub thing: Option<ThingId>,
    /// A number that changes with every ghost.
    pub serial: u64,
}
