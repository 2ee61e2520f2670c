//! Work on a drawing whose outlines are about to be taken into the plan.

use std::collections::BTreeSet;
use std::path::PathBuf;
use std::sync::Arc;

use gantline_exchange::outline::{Asked, Heights, KeptPlace, LengthUnit, LineWork, Outlines, Role, usual};
use glam::DVec2;

use super::Camera;

/// A drawing that is being read or chosen from.
#[derive(Debug, Clone)]
pub struct OutlineDialog {
    /// Its file.
    pub path: PathBuf,
    /// How far it is.
    pub stage: Stage,
    /// Tells what was asked for last from what was asked before: an older answer is dropped.
    pub serial: u64,
}

/// How far a drawing is.
#[derive(Debug, Clone)]
pub enum Stage {
    /// It is being read.
    Reading,
    /// It can't be read; why.
    Unreadable(String),
    /// It is read.
    Choosing(Box<Choosing>),
}

/// What is chosen from a drawing.
#[derive(Debug, Clone)]
pub struct Choosing {
    /// The drawing.
    pub work: Arc<LineWork>,
    /// Layers, unit, tolerance, origin.
    pub asked: Asked,
    /// What came of them.
    pub answer: Answer,
    /// What each outline is taken for.
    pub roles: Vec<Role>,
    /// The outline that is looked at.
    pub selected: Option<usize>,
    /// Levels and heights of what is taken.
    pub heights: Heights,
    /// The camera over the preview, once it was moved.
    pub camera: Option<Camera>,
    /// Why the outlines can't be taken.
    pub trouble: Option<Trouble>,
}

/// What came of the chosen layers, unit and tolerance.
#[derive(Debug, Clone)]
pub enum Answer {
    /// Something is still to be said.
    Waiting,
    /// It is being worked out.
    Computing,
    /// These outlines.
    Found(Arc<Outlines>),
    /// Nothing; why.
    Fault(String),
}

/// Why outlines can't be taken, and where.
#[derive(Debug, Clone, PartialEq)]
pub struct Trouble {
    /// Why.
    pub why: String,
    /// Where on the plan, if there is a place.
    pub at: Option<DVec2>,
}

/// What the dialog asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OutlineWish {
    /// A layer is looked at, or no more.
    Layer(usize, bool),
    /// The drawing is in this unit.
    Unit(LengthUnit),
    /// Gaps up to this are closed, m.
    Tolerance(f64),
    /// Chords leave curves by at most this, m.
    Chord(f64),
    /// An outline is taken for this.
    Role(usize, Role),
    /// All outlines of a layer are taken for this.
    RoleOfLayer(usize, Role),
    /// An outline is looked at.
    Select(Option<usize>),
    /// Other levels and heights.
    Heights(Heights),
    /// Another camera over the preview; none fits all.
    Look(Option<Camera>),
    /// The outlines are taken.
    Take,
    /// Another drawing is asked for; this one stays until it is chosen.
    ChooseAnother,
    /// Nothing is taken.
    Cancel,
}

impl Choosing {
    /// The beginning: the file's own unit, and its layer where it has only one.
    pub fn of(work: Arc<LineWork>, place: Option<KeptPlace>, heights: Heights) -> Self {
        let mut with_lines = (0..work.layers.len()).filter(|&place| work.layers[place].traces > 0);
        let layers = match (with_lines.next(), with_lines.next()) {
            (Some(only), None) => BTreeSet::from([only]),
            _ => BTreeSet::new(),
        };
        let asked =
            Asked { layers, unit: work.stated_unit(), tolerance_m: usual::GAP_M, chord_m: usual::CHORD_M, place };
        Self {
            work,
            asked,
            answer: Answer::Waiting,
            roles: Vec::new(),
            selected: None,
            heights,
            camera: None,
            trouble: None,
        }
    }

    /// The outlines, once they are there.
    pub fn outlines(&self) -> Option<&Arc<Outlines>> {
        match &self.answer {
            Answer::Found(found) => Some(found),
            Answer::Waiting | Answer::Computing | Answer::Fault(_) => None,
        }
    }

    /// How many outlines have a role.
    pub fn count(&self, role: Role) -> usize {
        self.roles.iter().filter(|one| **one == role).count()
    }
}
