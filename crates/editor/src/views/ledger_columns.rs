//! Columns of the ledger: those of reactions and those of bases, each with its width, its figures and its order.

use std::cmp::Ordering;

use gantline_plan::quantity::{Kind, UnitSystem};

use super::ledger_row::LedgerRow;

/// Which columns are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ColumnSet {
    /// Make-up, reactions, reach.
    #[default]
    Reactions,
    /// Bases, fixings, what they use of their resistance.
    Bases,
}

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Column {
    /// Tag.
    #[default]
    Tag,
    /// Edge.
    Edge,
    /// From the start of the edge.
    Along,
    /// Behind the outline.
    Setback,
    /// Mast, arm, brace.
    MakeUp,
    /// What governs the reactions.
    Combination,
    /// Largest upward force.
    FzMax,
    /// Largest downward force.
    FzMin,
    /// Largest horizontal force.
    V,
    /// Largest moment.
    M,
    /// Largest twist.
    Mz,
    /// Facade reached.
    Covered,
    /// Tightest clearance.
    Clearance,
    /// Kind of base.
    Base,
    /// Kind of fixing.
    Fixing,
    /// What governs the base.
    Mode,
    /// Its utilization.
    Utilization,
    /// To the nearest edge of the concrete.
    EdgeDistance,
    /// Concrete under it.
    Thickness,
    /// Test that is due.
    Test,
    /// Findings.
    Findings,
}

impl ColumnSet {
    /// Both in order.
    pub const EACH: [Self; 2] = [Self::Reactions, Self::Bases];

    /// Its name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Reactions => "Reactions",
            Self::Bases => "Bases",
        }
    }

    /// Its columns.
    pub const fn columns(self) -> &'static [Column] {
        match self {
            Self::Reactions => &[
                Column::Tag,
                Column::Edge,
                Column::Along,
                Column::Setback,
                Column::MakeUp,
                Column::Combination,
                Column::FzMax,
                Column::FzMin,
                Column::V,
                Column::M,
                Column::Mz,
                Column::Covered,
                Column::Clearance,
                Column::Findings,
            ],
            Self::Bases => &[
                Column::Tag,
                Column::Edge,
                Column::Setback,
                Column::Base,
                Column::Fixing,
                Column::Mode,
                Column::Utilization,
                Column::EdgeDistance,
                Column::Thickness,
                Column::Test,
                Column::Findings,
            ],
        }
    }
}

impl Column {
    /// Heading, width, kind of its figures, and what it is.
    pub const fn said(self) -> (&'static str, f32, Option<Kind>, &'static str) {
        match self {
            Self::Tag => ("tag", 58.0, None, "The tag of the unit."),
            Self::Edge => ("edge", 104.0, None, "The edge it stands on."),
            Self::Along => ("along", 62.0, Some(Kind::Length), "From the start of the edge."),
            Self::Setback => ("setback", 66.0, Some(Kind::Length), "Mast axis behind the outline."),
            Self::MakeUp => ("make-up", 142.0, None, "Mast, arm and brace."),
            Self::Combination => {
                ("governs", 132.0, None, "Combination with the largest moment at the design level, and its level.")
            }
            Self::FzMax => {
                ("Fz max", 70.0, Some(Kind::Force), "Largest upward force over all combinations of this level.")
            }
            Self::FzMin => ("Fz min", 68.0, Some(Kind::Force), "Largest downward force, negative, at this level."),
            Self::V => ("V", 56.0, Some(Kind::Force), "Largest horizontal force over all combinations of this level."),
            Self::M => ("M", 62.0, Some(Kind::Moment), "Largest moment over all combinations of this level."),
            Self::Mz => ("Mz", 66.0, Some(Kind::Moment), "Largest twist over all combinations of this level."),
            Self::Covered => ("reach", 60.0, Some(Kind::Length), "Facade reached from top to foot."),
            Self::Clearance => ("clearance", 112.0, Some(Kind::Length), "The tightest: has and asks."),
            Self::Base => ("base", 158.0, None, "Kind of the base."),
            Self::Fixing => ("fixing", 128.0, None, "What it is fixed with."),
            Self::Mode => ("governs base", 150.0, None, "The look that uses most of its resistance."),
            Self::Utilization => (
                "used",
                126.0,
                Some(Kind::Share),
                "Largest share of a resistance that is used; what was not checked is marked.",
            ),
            Self::EdgeDistance => {
                ("to edge", 74.0, Some(Kind::Length), "Nearest anchor to the nearest edge of the concrete.")
            }
            Self::Thickness => ("concrete", 76.0, Some(Kind::Length), "Thickness of the concrete under the base."),
            Self::Test => ("test", 144.0, None, "Test that the load basis asks for of this kind of fixing."),
            Self::Findings => ("findings", 92.0, None, "Blocking, caution, not checked."),
        }
    }
}

impl Column {
    /// Feet and inches are wider than meters; words give way to them.
    pub fn width(self, units: UnitSystem) -> f32 {
        let (_, width, kind, _) = self.said();
        match units {
            UnitSystem::Si => width,
            UnitSystem::UsCustomary if kind == Some(Kind::Length) => width * 1.35,
            UnitSystem::UsCustomary if self.share_of_spare() > 0.0 => width - 52.0,
            UnitSystem::UsCustomary => width,
        }
    }

    /// What it gets of the width that is left over.
    pub fn share_of_spare(self) -> f32 {
        if matches!(self, Self::MakeUp | Self::Combination | Self::Mode | Self::Test) { 0.5 } else { 0.0 }
    }
}

/// Between columns.
pub const GAP: f32 = 7.0;

/// What is missing comes last.
pub fn compare(a: &LedgerRow, b: &LedgerRow, by: Column) -> Ordering {
    let figures = |a: Option<f64>, b: Option<f64>| match (a, b) {
        (Some(a), Some(b)) => a.total_cmp(&b),
        (a, b) => b.is_some().cmp(&a.is_some()),
    };
    match by {
        Column::Tag => a.tag.cmp(&b.tag),
        Column::Edge => a.edge.cmp(&b.edge).then_with(|| figures(a.along_m, b.along_m)),
        Column::MakeUp => a.make_up.cmp(&b.make_up),
        Column::Combination => a.combination.cmp(&b.combination),
        Column::Findings => a.worst().cmp(&b.worst()),
        Column::Base => a.base.kind.cmp(&b.base.kind),
        Column::Fixing => a.base.fixing.cmp(&b.base.fixing),
        Column::Mode => a.base.mode.cmp(&b.base.mode),
        Column::Test => a.base.test.cmp(&b.base.test),
        Column::Along
        | Column::Setback
        | Column::FzMax
        | Column::FzMin
        | Column::V
        | Column::M
        | Column::Mz
        | Column::Covered
        | Column::Clearance
        | Column::Utilization
        | Column::EdgeDistance
        | Column::Thickness => figures(figure(a, by), figure(b, by)),
    }
}

/// The figure of a column, SI; none for words and for what is not known.
pub fn figure(row: &LedgerRow, column: Column) -> Option<f64> {
    match column {
        Column::Along => row.along_m,
        Column::Setback => row.setback_m,
        Column::FzMax => row.fz_max_n,
        Column::FzMin => row.fz_min_n,
        Column::V => row.v_n,
        Column::M => row.m_nm,
        Column::Mz => row.mz_nm,
        Column::Covered => row.covered_m,
        Column::Clearance => row.clearance.map(|(clear_m, limit_m, _)| clear_m - limit_m),
        Column::Utilization => row.base.utilization,
        Column::EdgeDistance => row.base.to_edge_m,
        Column::Thickness => row.base.thickness_m,
        Column::Tag
        | Column::Edge
        | Column::MakeUp
        | Column::Combination
        | Column::Base
        | Column::Fixing
        | Column::Mode
        | Column::Test
        | Column::Findings => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::views::ledger_row::BaseCells;
    use gantline_plan::assess::Tally;
    use gantline_plan::document::PlacementId;

    fn row(number: u64, m_nm: Option<f64>) -> LedgerRow {
        LedgerRow {
            id: PlacementId::from_number(number),
            tag: format!("B-{number:02}"),
            edge: String::new(),
            along_m: None,
            setback_m: None,
            make_up: String::new(),
            combination: String::new(),
            fz_max_n: None,
            fz_min_n: None,
            v_n: None,
            m_nm,
            mz_nm: None,
            covered_m: None,
            clearance: None,
            base: BaseCells::default(),
            tally: Tally::default(),
        }
    }

    #[test]
    fn units_without_figures_come_after_those_with_them() {
        let mut rows = [row(1, None), row(2, Some(3.0)), row(3, Some(-1.0))];
        rows.sort_by(|a, b| compare(a, b, Column::M));
        assert_eq!(rows.map(|row| row.tag), ["B-03", "B-02", "B-01"]);
    }

    #[test]
    fn every_column_stands_once_and_fits_the_narrow_window() {
        for set in ColumnSet::EACH {
            let columns = set.columns();
            for (index, column) in columns.iter().enumerate() {
                assert!(!columns[index + 1..].contains(column));
            }
            // The drawer of a window 1280 points wide has 1260 between its margins.
            let taken: f32 = columns.iter().map(|column| column.width(UnitSystem::Si) + GAP).sum();
            assert!(taken <= 1260.0, "{}: {taken}", set.name());
        }
    }

    #[test]
    fn the_base_used_most_comes_first_downward_and_what_was_not_computed_last() {
        let with = |number, utilization| LedgerRow {
            base: BaseCells { utilization, ..BaseCells::default() },
            ..row(number, None)
        };
        let mut rows = [with(1, None), with(2, Some(0.4)), with(3, Some(1.2))];
        rows.sort_by(|a, b| compare(a, b, Column::Utilization));
        assert_eq!(rows.map(|row| row.tag), ["B-02", "B-03", "B-01"]);
    }
}
