//! What a text that flows over pages is made of, before anyone knows where a page ends.

use std::sync::Arc;

use gantline_drawing::Drawing;

use super::formula::Formula;

/// A piece of a text.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A heading; never the last thing on a page.
    Heading {
        /// 1 begins a chapter, 2 a section, 3 a part of one.
        level: u8,
        /// The words.
        words: String,
    },
    /// Words that fill lines.
    Paragraph {
        /// The words.
        words: String,
        /// How they look.
        look: Look,
    },
    /// A formula in a line of its own; too long for one, it is broken before a sign of equality, a sum or a product.
    Formula {
        /// The formula.
        formula: Formula,
        /// What stands at the right margin: clause or source; may be empty.
        source: String,
    },
    /// A table; its head stands again on each page it goes on to, no row is broken.
    Table(Table),
    /// A drawing at its own scale, in the middle between the margins; one that is too large for a page is cut and says so.
    Picture {
        /// The drawing.
        drawing: Arc<Drawing>,
        /// Words under it.
        caption: String,
    },
    /// The list of chapters and sections with their pages; chapters only where all would fill more than a page.
    Contents,
    /// Pieces that stand on one page, if a page can hold them.
    Together(Vec<Block>),
    /// What follows begins on a new page.
    NewPage,
}

/// How a paragraph looks.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Look {
    /// As the text.
    #[default]
    Plain,
    /// Smaller: sources, remarks.
    Remark,
    /// Framed, so that nobody passes over it.
    Caution,
    /// With a dot before it.
    Item,
}

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// The columns from left to right.
    pub columns: Vec<Column>,
    /// The rows; cells beyond the columns are left out, missing ones are empty.
    pub rows: Vec<Row>,
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// Its share of the width.
    pub share: f64,
    /// Whether its cells end at its right side, as figures do.
    pub is_figures: bool,
}

/// A row of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its cells.
    pub cells: Vec<Cell>,
    /// Whether it stands out: what fails, what governs.
    pub is_strong: bool,
}

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Words; they fill lines.
    Words(String),
    /// A formula or symbol.
    Formula(Formula),
}

impl From<String> for Cell {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<&str> for Cell {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}
