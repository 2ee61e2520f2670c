//! Pages: what is printed and where, in paper millimeters from the lower left corner of the page, y up.

use std::sync::Arc;

use gantline_drawing::Drawing;
use gantline_drawing::letter_width::Face;
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use crate::palette::Color;

/// A document of pages. Whoever can print makes a PDF of it; nothing in this room does, so that nobody waits for a printer
/// who prints nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct Paper {
    /// Title, as it stands in the document's properties.
    pub title: String,
    /// Who planned it.
    pub author: String,
    /// Year, month and day of the document's properties; none where the plan has no date that is one.
    pub date: Option<(u16, u8, u8)>,
    /// The pages in order.
    pub pages: Vec<Page>,
}

/// One page.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Width and height, mm.
    pub size_mm: DVec2,
    /// Its name in the list of contents that a reader of the file shows; none where it has none.
    pub bookmark: Option<String>,
    /// What is on it, painted in this order.
    pub things: Vec<OnPage>,
}

/// Something on a page.
#[derive(Debug, Clone, PartialEq)]
pub enum OnPage {
    /// Words in one line.
    Words(Words),
    /// A line.
    Line {
        /// Its points, mm.
        points_mm: Vec<DVec2>,
        /// Width, mm.
        width_mm: f64,
        /// Color.
        ink: Color,
    },
    /// An area with holes by the even-odd rule, painted solid.
    Area {
        /// Rings, mm.
        rings_mm: Vec<Vec<DVec2>>,
        /// Color.
        ink: Color,
    },
    /// A part of a drawing at the drawing's own scale: one millimeter of its paper is one of the page.
    Picture {
        /// The drawing.
        drawing: Arc<Drawing>,
        /// The part that shows, m; what reaches beyond is cut off.
        window: Bounds,
        /// Where the window's lower left corner lies, mm.
        at_mm: DVec2,
    },
}

impl OnPage {
    /// The same, shifted on the page.
    #[must_use]
    pub fn moved(self, by_mm: DVec2) -> Self {
        let all = |points: Vec<DVec2>| points.into_iter().map(|point| point + by_mm).collect();
        match self {
            Self::Words(words) => Self::Words(Words { at_mm: words.at_mm + by_mm, ..words }),
            Self::Line { points_mm, width_mm, ink } => Self::Line { points_mm: all(points_mm), width_mm, ink },
            Self::Area { rings_mm, ink } => Self::Area { rings_mm: rings_mm.into_iter().map(all).collect(), ink },
            Self::Picture { drawing, window, at_mm } => Self::Picture { drawing, window, at_mm: at_mm + by_mm },
        }
    }
}

/// Words in one line.
#[derive(Debug, Clone, PartialEq)]
pub struct Words {
    /// The words.
    pub words: String,
    /// Where they begin, on the line on which capitals stand, mm.
    pub at_mm: DVec2,
    /// The em, mm.
    pub size_mm: f64,
    /// Cut of the typeface.
    pub face: Face,
    /// Color.
    pub ink: Color,
}

/// Prints: a PDF, or what is wrong in words. The same paper gives the same bytes.
pub type Printer = fn(&Paper) -> Result<Vec<u8>, String>;

/// Prints the words alone, a line each: for tests that look for words, and for whoever wants no PDF.
pub fn words_alone(paper: &Paper) -> Result<Vec<u8>, String> {
    let mut text = format!("{}\n", paper.title);
    let mut line = |words: &str| {
        text.push_str(words);
        text.push('\n');
    };
    for thing in paper.pages.iter().flat_map(|page| &page.things) {
        match thing {
            OnPage::Words(words) => line(&words.words),
            OnPage::Picture { drawing, .. } => drawing.words().for_each(&mut line),
            OnPage::Line { .. } | OnPage::Area { .. } => {}
        }
    }
    Ok(text.into_bytes())
}
