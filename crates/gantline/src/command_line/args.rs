//! What can be asked on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use gantline_exchange::documents::DocumentKind;
use gantline_exchange::drawing_set::PaperSize;
use gantline_exchange::dxf_drawing::DrawingUnit;
use gantline_exchange::outline::LengthUnit;
use gantline_exchange::outline::usual;
use gantline_plan::quantity::UnitSystem;

/// Plans rope access to facades from portable mast-and-arm units. Without a subcommand the window opens.
///
/// For planning: everything is to be verified by a licensed structural engineer and a competent person under the local
/// code. Not a permit to hang from a rope.
#[derive(Debug, Parser)]
#[command(name = "gantline", version, args_conflicts_with_subcommands = true)]
pub struct Asked {
    /// The plan to open in the window.
    #[arg(value_name = "PLAN")]
    pub plan: Option<PathBuf>,
    /// What is to be answered instead.
    #[command(subcommand)]
    pub question: Option<Question>,
}

/// A question that needs no window.
#[derive(Debug, Subcommand)]
pub enum Question {
    /// Check a plan: what is reached, how near things come, every finding. Exit code 1 when something blocks.
    Check(CheckArgs),
    /// Tell the reactions of every unit in every combination, with all that acts at the same time.
    Reactions(ReactionsArgs),
    /// Write the plan as files for others: schedule, drawing, model, tables, drawing set, load plan, calculation report. All of them are written, or none.
    Documents(DocumentsArgs),
    /// Print the JSON Schema of the plan file or of an answer.
    Schema(SchemaArgs),
    /// Make a plan of outlines in a drawing (DXF, GeoJSON). Without a layer, tell what the layers hold.
    ///
    /// The outermost outlines of the layers become roofs, those in them holes, those in holes roofs again. Exit code 1 when
    /// an outline was refused or two meet.
    Outline(OutlineArgs),
    /// Do the main job on a demonstration plan: checks, reactions and drawings as files.
    Demonstration(DemonstrationArgs),
}

/// What `check` is given.
#[derive(Debug, Args)]
pub struct CheckArgs {
    /// The plan.
    pub plan: PathBuf,
    /// Answer as JSON; the tally then goes to the error output.
    #[arg(long)]
    pub json: bool,
    /// Count what could not be checked as blocking.
    #[arg(long)]
    pub strict: bool,
    /// Units of measure of the answer in words; JSON is always SI.
    #[arg(long, value_enum, default_value = "si")]
    pub units: Units,
}

/// Units of measure of answers in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Units {
    /// Meters, kilonewtons, kilograms.
    Si,
    /// Feet and inches, pounds.
    Us,
}

impl Units {
    /// The system of units that is meant.
    pub const fn system(self) -> UnitSystem {
        match self {
            Self::Si => UnitSystem::Si,
            Self::Us => UnitSystem::UsCustomary,
        }
    }
}

/// What `reactions` is given.
#[derive(Debug, Args)]
pub struct ReactionsArgs {
    /// The plan.
    pub plan: PathBuf,
    /// Answer as JSON.
    #[arg(long, conflicts_with = "csv")]
    pub json: bool,
    /// Answer as a table of all sets.
    #[arg(long)]
    pub csv: bool,
    /// Units of measure of the answer in words; JSON and the table are always SI.
    #[arg(long, value_enum, default_value = "si")]
    pub units: Units,
}

/// What `documents` is given.
#[derive(Debug, Args)]
pub struct DocumentsArgs {
    /// The plan.
    pub plan: PathBuf,
    /// The folder to write to; files of the same names there are replaced.
    #[arg(long, value_name = "FOLDER")]
    pub to: PathBuf,
    /// Only these, with commas between them; without it, all.
    #[arg(long, value_enum, value_delimiter = ',')]
    pub only: Vec<DocumentChoice>,
    /// Unit of the drawing for CAD.
    #[arg(long, value_enum, default_value = "m")]
    pub dxf_in: DrawnIn,
    /// Size of the sheets of drawing set and load plan; without it A1, or ARCH D in US customary units.
    #[arg(long, value_enum)]
    pub paper: Option<PaperChoice>,
    /// Date printed on them in place of the plan's; best as 2026-03-31.
    #[arg(long)]
    pub date: Option<String>,
    /// Units of measure of what people read; tables and models for other programs are always SI.
    #[arg(long, value_enum, default_value = "si")]
    pub units: Units,
}

/// A document by the name of its format.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum DocumentChoice {
    /// Bases, reactions, parts, findings and basis as a workbook (XLSX).
    Schedule,
    /// The plan view for CAD.
    Dxf,
    /// Roofs, bases, units and clear zones as a building model.
    Ifc,
    /// Bases, reactions and findings as tables.
    Csv,
    /// Roof plans, elevations, sections and setting-out on sheets (PDF).
    Drawings,
    /// Bases with what they bring to the structure, on sheets (PDF).
    Loads,
    /// Everything that a reviewer needs to follow the plan from loads to verdicts (PDF).
    Report,
}

/// Sizes of sheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PaperChoice {
    /// 841 by 594 mm.
    A1,
    /// 420 by 297 mm.
    A3,
    /// 36 by 24 inches.
    ArchD,
}

impl PaperChoice {
    /// The size that is meant.
    pub const fn size(self) -> PaperSize {
        match self {
            Self::A1 => PaperSize::A1,
            Self::A3 => PaperSize::A3,
            Self::ArchD => PaperSize::ArchD,
        }
    }
}

/// The unit of the drawing for CAD.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum DrawnIn {
    /// Meters.
    M,
    /// Millimeters.
    Mm,
    /// Inches.
    In,
    /// Feet.
    Ft,
}

impl DrawnIn {
    /// The unit that is meant.
    pub const fn unit(self) -> DrawingUnit {
        match self {
            Self::M => DrawingUnit::Meters,
            Self::Mm => DrawingUnit::Millimeters,
            Self::In => DrawingUnit::Inches,
            Self::Ft => DrawingUnit::Feet,
        }
    }
}

impl DocumentChoice {
    /// The kind of document that is meant.
    pub const fn kind(self) -> DocumentKind {
        match self {
            Self::Schedule => DocumentKind::Schedule,
            Self::Dxf => DocumentKind::Drawing,
            Self::Ifc => DocumentKind::Model,
            Self::Csv => DocumentKind::Tables,
            Self::Drawings => DocumentKind::DrawingSet,
            Self::Loads => DocumentKind::LoadPlan,
            Self::Report => DocumentKind::Report,
        }
    }
}

/// What `schema` is given.
#[derive(Debug, Args)]
pub struct SchemaArgs {
    /// Of what.
    #[arg(value_enum, default_value = "plan")]
    pub of: SchemaOf,
}

/// What has a schema.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SchemaOf {
    /// The plan file.
    Plan,
    /// The answer of `check --json`.
    Check,
    /// The answer of `reactions --json`.
    Reactions,
}

/// What `outline` is given.
#[derive(Debug, Args)]
pub struct OutlineArgs {
    /// The drawing.
    pub drawing: PathBuf,
    /// A layer whose outlines are taken; may be given several times.
    #[arg(long = "layer", value_name = "NAME")]
    pub layers: Vec<String>,
    /// The unit of the drawing, where it states none or a wrong one.
    #[arg(long, value_enum)]
    pub units: Option<DrawingUnits>,
    /// Chords leave curves by at most this, meters.
    #[arg(long, value_name = "METERS", default_value_t = usual::CHORD_M)]
    pub chords: f64,
    /// Gaps up to this are closed, meters.
    #[arg(long, value_name = "METERS", default_value_t = usual::GAP_M)]
    pub tolerance: f64,
    /// Top of the structural slab over level zero, meters; without it the level of a roof just sketched.
    #[arg(long, value_name = "METERS", allow_negative_numbers = true)]
    pub level: Option<f64>,
    /// The plan file to be written; what is there is kept as its previous version.
    #[arg(short = 'o', long = "output", value_name = "PLAN")]
    pub output: Option<PathBuf>,
}

/// Units that drawings are made in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum DrawingUnits {
    /// Millimeters.
    Mm,
    /// Centimeters.
    Cm,
    /// Meters.
    M,
    /// Inches.
    In,
    /// Feet.
    Ft,
}

impl DrawingUnits {
    /// The unit that is meant.
    pub const fn unit(self) -> LengthUnit {
        match self {
            Self::Mm => LengthUnit::Millimeter,
            Self::Cm => LengthUnit::Centimeter,
            Self::M => LengthUnit::Meter,
            Self::In => LengthUnit::Inch,
            Self::Ft => LengthUnit::Foot,
        }
    }
}

/// What `demonstration` is given.
#[derive(Debug, Args)]
pub struct DemonstrationArgs {
    /// The folder to write to.
    #[arg(long, value_name = "FOLDER", default_value = "target/demonstration")]
    pub to: PathBuf,
}
