//! Makes documents in memory, one after another, and puts them into a folder together: whoever stops in between has
//! written nothing.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

use gantline_plan::assess::Assessment;
use gantline_plan::document::Plan;
use gantline_plan::quantity::UnitSystem;

use super::{DocumentKind, Imprint};
use crate::disk::{DiskFault, replace_all};
use crate::drawing_set::{Given, PaperSize, drawing_set};
use crate::dxf_drawing::{DrawingUnit, dxf, plan_sheet};
use crate::ifc_model::ifc;
use crate::load_plan::load_plan;
use crate::paper::{Paper, Printer};
use crate::report::report_on_paper;
use crate::schedule::{self, ScheduleFault};

/// Which documents are wanted, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// Kinds, in any order.
    pub kinds: Vec<DocumentKind>,
    /// Units of measure of what people read; tables for programs and models are SI.
    pub units: UnitSystem,
    /// The unit of the drawing for CAD.
    pub drawing_unit: DrawingUnit,
    /// Size of the sheets of drawing set and load plan.
    pub size: PaperSize,
    /// A date in place of the plan's.
    pub date: Option<String>,
}

/// A document, ready to be written.
#[derive(Debug, Clone, PartialEq)]
pub struct Document {
    /// Name of its file; it begins with the program's, so that no one else's file is replaced.
    pub name: String,
    /// Its content.
    pub bytes: Vec<u8>,
}

/// How far the work is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// What is made next.
    pub next: DocumentKind,
    /// How many kinds are made.
    pub made: usize,
    /// How many are wanted.
    pub wanted: usize,
}

/// Is told before each kind of document, and says whether to go on.
pub type Watch<'a> = dyn FnMut(Progress) -> ControlFlow<()> + 'a;

/// Why documents were not written.
#[derive(Debug, thiserror::Error)]
pub enum DocumentFault {
    /// The schedule.
    #[error(transparent)]
    Schedule(#[from] ScheduleFault),
    /// A table.
    #[error("the table {name} can't be written: {cause}")]
    Table {
        /// Name of its file.
        name: String,
        /// What is wrong.
        cause: ::csv::Error,
    },
    /// A document on paper.
    #[error("{name} can't be printed: {cause}")]
    Print {
        /// Name of its file.
        name: String,
        /// What is wrong.
        cause: String,
    },
    /// The disk.
    #[error(transparent)]
    Disk(#[from] DiskFault),
    /// Someone stopped the work; nothing was written.
    #[error("stopped; no document was written")]
    Stopped,
}

impl Wanted {
    /// Every kind, with the plan's own date.
    pub fn all(units: UnitSystem) -> Self {
        let (kinds, drawing_unit) = (DocumentKind::ALL.to_vec(), DrawingUnit::default());
        Self { kinds, units, drawing_unit, size: PaperSize::usual(units), date: None }
    }
}

/// Makes the documents of a plan; those on paper are printed by whoever can.
pub fn make(
    plan: &Plan,
    assessment: &Assessment,
    wanted: &Wanted,
    printer: Printer,
    watch: &mut Watch<'_>,
) -> Result<Vec<Document>, DocumentFault> {
    let imprint = Imprint::of(plan, wanted.date.as_deref());
    let kinds: Vec<DocumentKind> = DocumentKind::ALL.into_iter().filter(|kind| wanted.kinds.contains(kind)).collect();
    let mut documents = Vec::new();
    for (made, &next) in kinds.iter().enumerate() {
        if watch(Progress { next, made, wanted: kinds.len() }).is_break() {
            return Err(DocumentFault::Stopped);
        }
        documents.extend(one_kind(next, (plan, assessment), &imprint, wanted, printer)?);
    }
    Ok(documents)
}

/// Puts documents into a folder: all of them, or, where one can't be written, none.
pub fn write(folder: &Path, documents: &[Document]) -> Result<Vec<PathBuf>, DocumentFault> {
    let files: Vec<(PathBuf, &[u8])> =
        documents.iter().map(|document| (folder.join(&document.name), document.bytes.as_slice())).collect();
    replace_all(&files)?;
    Ok(files.into_iter().map(|(path, _)| path).collect())
}

fn printed(name: &str, paper: &Paper, printer: Printer) -> Result<Document, DocumentFault> {
    match printer(paper) {
        Ok(bytes) => Ok(Document { name: name.to_owned(), bytes }),
        Err(cause) => Err(DocumentFault::Print { name: name.to_owned(), cause }),
    }
}

fn one_kind(
    kind: DocumentKind,
    (plan, assessment): (&Plan, &Assessment),
    imprint: &Imprint,
    wanted: &Wanted,
    printer: Printer,
) -> Result<Vec<Document>, DocumentFault> {
    let units = wanted.units;
    let given = Given { plan, assessment, imprint, units, size: wanted.size };
    Ok(match kind {
        DocumentKind::DrawingSet => vec![printed("gantline-drawings.pdf", &drawing_set(&given), printer)?],
        DocumentKind::Report => {
            vec![printed("gantline-report.pdf", &report_on_paper(plan, assessment, imprint, units), printer)?]
        }
        DocumentKind::LoadPlan => vec![printed("gantline-loads.pdf", &load_plan(&given), printer)?],
        DocumentKind::Schedule => {
            let bytes = schedule::workbook(plan, assessment, imprint, units)?;
            vec![Document { name: "gantline-schedule.xlsx".to_owned(), bytes }]
        }
        DocumentKind::Drawing => {
            let sheet = plan_sheet(plan, assessment, imprint, units);
            let bytes = dxf((plan, assessment), &sheet, wanted.drawing_unit, units);
            vec![Document { name: "gantline-plan.dxf".to_owned(), bytes }]
        }
        DocumentKind::Model => {
            let bytes = ifc(plan, assessment, imprint).into_bytes();
            vec![Document { name: "gantline-model.ifc".to_owned(), bytes }]
        }
        DocumentKind::Tables => {
            let tables = [
                schedule::bases::bases(plan, assessment),
                schedule::anchorage::anchorage(plan, assessment),
                schedule::reactions::reactions(plan, assessment),
                schedule::findings::findings(plan, assessment),
            ];
            let document = |table: &schedule::Table| {
                let name = format!("gantline-{}.csv", table.name.to_lowercase());
                match schedule::csv(table, imprint) {
                    Ok(text) => Ok(Document { name, bytes: text.into_bytes() }),
                    Err(cause) => Err(DocumentFault::Table { name, cause }),
                }
            };
            tables.iter().map(document).collect::<Result<_, _>>()?
        }
    })
}
