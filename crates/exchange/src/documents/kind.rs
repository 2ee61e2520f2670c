//! Kinds of documents and the files they are.

/// A kind of document.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DocumentKind {
    /// Bases, reactions, parts, findings and basis as a workbook.
    Schedule,
    /// The plan view for CAD.
    Drawing,
    /// Roofs, bases, units and clear zones as a building model.
    Model,
    /// Bases, reactions and findings as tables for other programs.
    Tables,
    /// Roof plans, elevations, sections and setting-out on sheets.
    DrawingSet,
    /// Bases with what they bring to the structure, on sheets.
    LoadPlan,
    /// Everything that a reviewer needs to follow the plan from loads to verdicts, as a text on pages.
    Report,
}

impl DocumentKind {
    /// All kinds, in the order in which they are made.
    pub const ALL: [Self; 7] =
        [Self::Schedule, Self::Drawing, Self::Model, Self::Tables, Self::DrawingSet, Self::LoadPlan, Self::Report];

    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Schedule => "schedule (XLSX)",
            Self::Drawing => "plan drawing (DXF)",
            Self::Model => "model (IFC)",
            Self::Tables => "tables (CSV)",
            Self::DrawingSet => "drawing set (PDF)",
            Self::LoadPlan => "load plan (PDF)",
            Self::Report => "calculation report (PDF)",
        }
    }
}
