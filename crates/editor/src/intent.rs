//! Intents: what panels and tools ask for during a frame. They are carried out at its end, in order.

use std::path::PathBuf;

use gantline_plan::catalog::MakeUp;
use gantline_plan::change::{Change, Refused};
use gantline_plan::document::{RoofId, ThingId};
use gantline_plan::quantity::UnitSystem;
use glam::DVec2;

use crate::command::Command;
use crate::preferences::{ThemeChoice, WheelDoes};
use crate::session::outline::OutlineWish;
use crate::session::{Camera, Drawer, OverlaySet, Page, Selection, Sheet, UnderlayWish};
use crate::tools::gesture::GestureKey;

/// One wish.
#[derive(Debug, Clone, PartialEq)]
pub enum Intent {
    /// A change of the plan as one step of undo.
    Change {
        /// Name of the step.
        name: &'static str,
        /// The change.
        change: Change,
        /// What is selected afterward.
        then: Then,
    },
    /// Begins a gesture.
    Begin(&'static str),
    /// Shows the plan as it would be.
    Preview(Change),
    /// Ends the gesture as one step.
    Commit {
        /// What is selected afterward.
        then: Then,
    },
    /// Drops the gesture.
    Abandon,
    /// Shows a thing that a click would place; none takes it away.
    Ghost(Option<Box<Change>>),
    /// Says at the pointer why something can't be done.
    Refuse(Refused),
    /// Says something in the status line.
    Say(String),
    /// Selects.
    Select(Selection),
    /// A key that belongs to a gesture.
    Key(GestureKey),
    /// A number is typed during a gesture.
    Type(TypeKey),
    /// Goes to a thing: selects it and brings it into sight.
    GoTo(ThingId, Option<DVec2>),
    /// Runs a command of the table.
    Run(Command),
    /// Takes a make-up in hand.
    TakeInHand(MakeUp),
    /// Sets the camera of a drawing on the main sheet, or on the companion.
    Look {
        /// Whether it lies on the main sheet.
        main: bool,
        /// The drawing.
        sheet: Sheet,
        /// The camera.
        camera: Camera,
    },
    /// Works on another roof's level.
    Level(RoofId),
    /// Shows an overlay set.
    Overlays(OverlaySet),
    /// Opens or closes the drawer.
    Drawer(Option<Drawer>),
    /// Opens a page over the sheet, or closes it.
    Page(Option<Page>),
    /// Lights a thing up everywhere.
    Hover(Option<ThingId>),
    /// Opens a file.
    OpenPath(PathBuf),
    /// Opens what is sound of a file that can't be read whole.
    OpenSoundParts(PathBuf),
    /// Opens a demonstration plan.
    OpenDemonstration(usize),
    /// Reads a drawing whose outlines are to be taken.
    ReadDrawing(PathBuf),
    /// What the dialog about a drawing asks for.
    Outline(OutlineWish),
    /// Reads a drawing or a scan to be laid under the plan.
    ReadUnderlay(PathBuf),
    /// What the dialog about an underlay asks for.
    Underlay(UnderlayWish),
    /// Saves to a file.
    SaveTo(PathBuf),
    /// Writes the documents into a folder.
    DocumentsTo(PathBuf),
    /// Writes the drawing on the main sheet as a picture.
    PictureTo(PathBuf),
    /// Stops what is being written for others.
    StopWriting,
    /// Answers the open question.
    Answer(Answer),
    /// Shows other units of measure.
    Units(UnitSystem),
    /// Shows another theme.
    Theme(ThemeChoice),
    /// Chooses which combination of the basis charts show.
    Chart(usize),
    /// What the wheel does.
    Wheel(WheelDoes),
    /// Opens what an earlier run left, by its place in the list.
    Rescue(usize),
    /// Drops what an earlier run left.
    DropRescue(usize),
}

/// Keys of a field that is typed in during a gesture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TypeKey {
    /// Text.
    Text(String),
    /// Takes the last character back.
    Backspace,
    /// To the next field.
    Next,
    /// To the field before.
    Previous,
}

/// What is selected after a change.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// What was selected before.
    Keep,
    /// What the change made; for a roof its edges.
    SelectMade,
}

/// Answers to questions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Save first, then go on.
    Save,
    /// Go on without saving.
    Discard,
    /// Stay.
    Cancel,
    /// Yes to what was asked.
    Yes,
}

impl Intent {
    /// A change that keeps the selection.
    pub fn change(name: &'static str, change: Change) -> Self {
        Self::Change { name, change, then: Then::Keep }
    }

    /// A change after which what it made is selected.
    pub fn make(name: &'static str, change: Change) -> Self {
        Self::Change { name, change, then: Then::SelectMade }
    }
}
