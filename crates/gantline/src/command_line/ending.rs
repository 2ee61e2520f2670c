//! How a question ends: with an exit code that other programs can rely on, or with a fault that names the file.

use std::path::PathBuf;
use std::process::ExitCode;

use gantline_exchange::disk::{DiskFault, OpenFault, SaveFault};
use gantline_exchange::documents::DocumentFault;
use gantline_exchange::outline::{OutlineFault, TakeFault};
use gantline_exchange::png::PngFault;

/// What was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ending {
    /// Nothing blocks.
    Clear,
    /// Something blocks.
    Blocked,
}

impl From<Ending> for ExitCode {
    fn from(ending: Ending) -> Self {
        match ending {
            Ending::Clear => Self::SUCCESS,
            Ending::Blocked => Self::from(1),
        }
    }
}

/// The exit code of a plan or a command line that can't be read.
pub const UNREADABLE: u8 = 2;

/// Why a question has no answer.
#[derive(Debug, thiserror::Error)]
pub enum NoAnswer {
    /// The plan can't be opened; the fault names the file and the place in it.
    #[error(transparent)]
    Open(#[from] OpenFault),
    /// A file can't be written.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// A folder can't be made.
    #[error("can't make the folder {}: {cause}", folder.display())]
    Folder {
        /// The folder.
        folder: PathBuf,
        /// What the system answered.
        cause: std::io::Error,
    },
    /// The answer can't be put into words of JSON.
    #[error("the answer can't be written as JSON: {0}")]
    Json(#[from] serde_json::Error),
    /// The answer can't be put into a table.
    #[error("the answer can't be written as CSV: {0}")]
    Csv(String),
    /// Documents could not be written.
    #[error(transparent)]
    Documents(#[from] DocumentFault),
    /// A drawing can't become a picture.
    #[error(transparent)]
    Picture(#[from] PngFault),
    /// The demonstration plan can't be read.
    #[error("the demonstration plan: {0}")]
    Demonstration(#[from] gantline_plan::file::ReadError),
    /// A drawing can't be read as outlines.
    #[error("{}: {fault}", path.display())]
    Drawing {
        /// The file.
        path: PathBuf,
        /// Where in the file and what.
        fault: OutlineFault,
    },
    /// No layer was named.
    #[error("name a layer of {} with --layer, and the plan with --output", path.display())]
    NoLayer {
        /// The drawing.
        path: PathBuf,
    },
    /// No file was named for the plan.
    #[error("name the plan to be written with --output")]
    NoOutput,
    /// Outlines can't be taken into a plan.
    #[error("{}: {fault}", path.display())]
    Taking {
        /// The drawing.
        path: PathBuf,
        /// Why.
        fault: TakeFault,
    },
    /// There is nothing to begin a plan with.
    #[error("{0}")]
    NewPlan(String),
    /// The plan can't be saved.
    #[error(transparent)]
    Save(#[from] SaveFault),
    /// The answer could not be told.
    #[error("can't write to the output: {0}")]
    Output(#[from] std::io::Error),
}
