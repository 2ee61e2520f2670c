//! A table as schedule and CSV print it: columns that know what they count, rows of cells in SI.
//!
//! Each table lists its columns in one place, with heading, key, unit, width and what stands in the cell: a new column is
//! one entry there, and is printed everywhere.

use gantline_plan::quantity::{Kind, NOTHING_RESISTS, UnitSystem};

use crate::answers::Figure;

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing: not known, or it does not apply.
    Empty,
    /// Words.
    Text(String),
    /// A figure in SI, with what it is.
    Amount(Kind, Figure),
    /// The unit of a figure that stands in another cell of the row.
    UnitOf(Kind),
    /// A number of things.
    Count(usize),
}

/// What a column counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Counts {
    /// Words, numbers of things, or figures of many kinds that say their unit beside them.
    Anything,
    /// Figures of one kind; the heading names the unit.
    Only(Kind),
}

/// A column of rows of a kind.
pub struct Column<R> {
    /// Heading.
    pub heading: &'static str,
    /// Its name for other programs, without the unit.
    pub key: &'static str,
    /// What it counts.
    pub counts: Counts,
    /// Width, in characters.
    pub width: f64,
    /// What stands in a row.
    pub cell: fn(&R) -> Cell,
}

/// The head of a column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Head {
    /// Heading.
    pub heading: &'static str,
    /// Its name for other programs, without the unit.
    pub key: &'static str,
    /// What it counts.
    pub counts: Counts,
    /// Width, in characters.
    pub width: f64,
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Its name.
    pub name: &'static str,
    /// What is to be known about it, in one line.
    pub about: String,
    /// Columns that stay in sight, and are repeated on every printed page.
    pub kept_columns: u16,
    /// Heads of its columns.
    pub heads: Vec<Head>,
    /// Rows, each with a cell for each column.
    pub rows: Vec<Vec<Cell>>,
}

impl<R> Column<R> {
    /// A column of words, of numbers of things, or of figures of many kinds.
    pub const fn of_anything(heading: &'static str, key: &'static str, width: f64, cell: fn(&R) -> Cell) -> Self {
        Self { heading, key, counts: Counts::Anything, width, cell }
    }

    /// A column of figures of one kind.
    pub const fn of(kind: Kind, heading: &'static str, key: &'static str, cell: fn(&R) -> Cell) -> Self {
        Self { heading, key, counts: Counts::Only(kind), width: FIGURE_WIDTH, cell }
    }
}

/// Width of a column of figures, in characters.
const FIGURE_WIDTH: f64 = 8.5;

impl Table {
    /// A table of these columns.
    pub fn of<R>(
        name: &'static str,
        about: String,
        kept_columns: u16,
        columns: &[Column<R>],
        rows: impl IntoIterator<Item = R>,
    ) -> Self {
        let head = |column: &Column<R>| Head {
            heading: column.heading,
            key: column.key,
            counts: column.counts,
            width: column.width,
        };
        let cells = |row: R| columns.iter().map(|column| (column.cell)(&row)).collect();
        Self {
            name,
            about,
            kept_columns,
            heads: columns.iter().map(head).collect(),
            rows: rows.into_iter().map(cells).collect(),
        }
    }
}

impl Cell {
    /// Words; nothing when there are none.
    pub fn text(words: impl Into<String>) -> Self {
        let words = words.into();
        if words.is_empty() { Self::Empty } else { Self::Text(words) }
    }

    /// Words, if there are any.
    pub fn text_if(words: Option<impl Into<String>>) -> Self {
        words.map_or(Self::Empty, Self::text)
    }

    /// A figure from its SI value.
    pub fn amount(kind: Kind, value: f64) -> Self {
        Self::figure(kind, Figure::of(value))
    }

    /// A figure of an answer; nothing when it is not finite, but for a share of a resistance that is none: that is said.
    pub fn figure(kind: Kind, figure: Figure) -> Self {
        if figure.value().is_finite() {
            Self::Amount(kind, figure)
        } else if figure.says_nothing_resists(kind) {
            Self::text(NOTHING_RESISTS)
        } else {
            Self::Empty
        }
    }

    /// A figure, if it is known.
    pub fn amount_if(kind: Kind, value: Option<f64>) -> Self {
        value.map_or(Self::Empty, |value| Self::amount(kind, value))
    }

    /// Yes or no.
    pub fn yes_no(is_so: bool) -> Self {
        Self::text(if is_so { "yes" } else { "no" })
    }
}

impl Head {
    /// The heading with the unit in which the column's figures are printed.
    pub fn with_unit(&self, units: UnitSystem) -> String {
        match self.counts {
            Counts::Only(kind) if !kind.column_unit(units).is_empty() => {
                format!("{} ({})", self.heading, kind.column_unit(units))
            }
            _ => self.heading.to_owned(),
        }
    }

    /// The key with the SI unit of the column's figures.
    pub fn key_with_unit(&self) -> String {
        match self.counts {
            Counts::Only(kind) if !key_unit(kind).is_empty() => format!("{}_{}", self.key, key_unit(kind)),
            _ => self.key.to_owned(),
        }
    }
}

/// The SI unit as keys of answers end in it.
const fn key_unit(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "m",
        Kind::Area => "m2",
        Kind::Force => "n",
        Kind::Moment => "nm",
        Kind::Stress => "pa",
        Kind::Mass => "kg",
        Kind::Angle => "rad",
        Kind::Share | Kind::Number => "",
    }
}

/// The SI unit as its symbol.
pub const fn si_symbol(kind: Kind) -> &'static str {
    match kind {
        Kind::Length => "m",
        Kind::Area => "m²",
        Kind::Force => "N",
        Kind::Moment => "N·m",
        Kind::Stress => "Pa",
        Kind::Mass => "kg",
        Kind::Angle => "rad",
        Kind::Share | Kind::Number => "",
    }
}
