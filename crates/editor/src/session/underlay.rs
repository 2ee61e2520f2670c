//! A file that is about to be laid under the plan.

use std::path::PathBuf;

use crate::document::underlay_worker::Brought;

/// A file that is being read, or whose page is chosen.
#[derive(Debug, Clone)]
pub struct UnderlayDialog {
    /// The file.
    pub path: PathBuf,
    /// How far it is.
    pub stage: UnderlayStage,
    /// Tells what was asked for last from what was asked before: an older answer is dropped.
    pub serial: u64,
}

/// How far a file is.
#[derive(Debug, Clone)]
pub enum UnderlayStage {
    /// It is being read.
    Reading,
    /// It can't lie under the plan; why.
    Refused(String),
    /// It has several pages.
    Choosing(Box<Brought>),
}

/// What the dialog asks for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnderlayWish {
    /// This page, from 1.
    Lay(u32),
    /// Nothing is laid.
    Cancel,
}
