//! A sheet: its frame, what is drawn on it, the strip at its right, and its number.

use std::collections::BTreeMap;
use std::sync::Arc;

use gantline_drawing::legend::{entries, legend_marks};
use gantline_drawing::north_arrow::{RADIUS_MM, north_marks};
use gantline_drawing::scale_bar::scale_bar_marks;
use gantline_drawing::{Drawing, Scale};
use gantline_plan::geometry::bounds::Bounds;
use glam::DVec2;

use super::given::Given;
use super::lettering::{TEXT, TITLE, outline, rule};
use super::paper_size::Area;
use super::title_block::title_block;
use super::usual_scale::UsualScale;
use crate::paper::{OnPage, Page, Paper};

/// Between what stands in the strip, mm.
const GAP_MM: f64 = 5.0;
/// Rim around pictures, mm: half a line of the widest pen, and descenders.
const RIM_MM: f64 = 1.2;

/// Which of the set's sheets it is: the first letter of its number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Series {
    /// Roof plans.
    Roof,
    /// Elevations.
    Elevation,
    /// Sections.
    Section,
    /// Tables of setting-out.
    Table,
    /// Loads.
    Load,
}

impl Series {
    /// The number of its sheet that comes after so many.
    pub fn number(self, before: usize) -> String {
        let letter = match self {
            Self::Roof => 'R',
            Self::Elevation => 'E',
            Self::Section => 'S',
            Self::Table => 'T',
            Self::Load => 'L',
        };
        format!("{letter}-{:02}", before + 1)
    }
}

/// A sheet before it has its frame and its number.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    /// Which series it belongs to.
    pub series: Series,
    /// Its title.
    pub title: String,
    /// Its scale; none where nothing on it is drawn to scale or several scales are.
    pub scale: Option<UsualScale>,
    /// What is on it, inside its room.
    pub things: Vec<OnPage>,
    /// What stands beside, from the top of the strip down.
    pub aside: Vec<Aside>,
}

/// What stands in the strip.
#[derive(Debug, Clone, PartialEq)]
pub enum Aside {
    /// A small drawing.
    Drawing(Arc<Drawing>),
    /// A note.
    Note(String),
}

/// Puts drafts into frames, numbers them, and makes a paper of them.
pub fn paper(given: &Given<'_>, title: &str, drafts: Vec<Draft>) -> Paper {
    let count = drafts.len();
    let mut numbered: BTreeMap<Series, usize> = BTreeMap::new();
    let pages = drafts.into_iter().enumerate().map(|(index, draft)| {
        let before = numbered.entry(draft.series).or_default();
        let number = draft.series.number(*before);
        *before += 1;
        page(given, draft, &number, &format!("sheet {} of {count}", index + 1))
    });
    let pages: Vec<Page> = pages.collect();
    let job = &given.imprint.plan.job;
    Paper {
        title: if job.is_empty() { title.to_owned() } else { format!("{title}: {job}") },
        author: given.imprint.author.clone(),
        date: given.imprint.iso_date(),
        pages,
    }
}

fn page(given: &Given<'_>, draft: Draft, number: &str, of_all: &str) -> Page {
    let size = given.size;
    let strip = size.strip();
    let mut things = draft.things;
    things.push(outline(size.frame(), 0.7));
    things.push(outline(strip, 0.35));
    let inside = strip.within(4.0);
    let scale = draft.scale.map(|scale| scale.words);
    let (block, top_mm) = title_block(given, inside, (number, of_all), scale);
    things.extend(block);
    let left = inside.min_mm.x;
    let mut y = inside.max_mm.y - TITLE.size_mm;
    for words in TITLE.lines(&draft.title, inside.size_mm().x) {
        things.push(TITLE.at(words, DVec2::new(left, y)));
        y -= TITLE.line_mm();
    }
    things.push(rule(DVec2::new(left, y + 2.0), inside.size_mm().x, 0.18));
    y -= GAP_MM / 2.0;
    for one in draft.aside {
        y = aside(&mut things, one, Area { max_mm: DVec2::new(inside.max_mm.x, y), min_mm: DVec2::new(left, top_mm) });
    }
    Page { size_mm: size.size_mm(), bookmark: Some(format!("{number} {}", draft.title)), things }
}

/// Puts something at the top of what is left of the strip; gives what is left then.
fn aside(things: &mut Vec<OnPage>, one: Aside, left: Area) -> f64 {
    let mut y = left.max_mm.y;
    match one {
        Aside::Drawing(drawing) => {
            let Some((window, size_mm)) = whole(&drawing) else { return y };
            y -= size_mm.y;
            things.push(OnPage::Picture { drawing, window, at_mm: DVec2::new(left.min_mm.x - RIM_MM, y) });
        }
        Aside::Note(words) => {
            y -= TEXT.size_mm;
            for line in TEXT.lines(&words, left.size_mm().x) {
                things.push(TEXT.at(line, DVec2::new(left.min_mm.x, y)));
                y -= TEXT.line_mm();
            }
        }
    }
    y - GAP_MM / 2.0
}

/// All of a drawing: its window and its size on paper, mm.
pub fn whole(drawing: &Drawing) -> Option<(Bounds, DVec2)> {
    let window = drawing.bounds()?.grown(drawing.scale.m(RIM_MM));
    Some((window, window.size_m() / drawing.scale.m_per_mm))
}

/// A whole drawing as a picture whose lower left corner lies here.
pub fn picture(drawing: Arc<Drawing>, at_mm: DVec2) -> Option<OnPage> {
    let (window, _) = whole(&drawing)?;
    Some(OnPage::Picture { drawing, window, at_mm })
}

/// Scale bar, and north arrow where a plan is seen.
pub fn scale_and_north(given: &Given<'_>, scale: Scale, with_north: bool) -> Aside {
    let mut marks = Vec::new();
    let mut at = DVec2::new(scale.m(3.0), 0.0);
    if with_north {
        let center = DVec2::new(scale.m(RADIUS_MM + 2.0), scale.m(RADIUS_MM));
        marks.extend(north_marks(center, given.plan.datum.north_rad, scale));
        at.x += scale.m(2.0 * RADIUS_MM + 8.0);
    }
    marks.extend(scale_bar_marks(at, scale, given.units));
    Aside::Drawing(Arc::new(Drawing::of(scale, marks)))
}

/// The legend of what a drawing is hatched with; none where nothing is.
pub fn legend(drawing: &Drawing) -> Option<Aside> {
    let hatches = entries(drawing);
    let marks = legend_marks(&hatches, DVec2::ZERO, hatches.len(), drawing.scale);
    (!hatches.is_empty()).then(|| Aside::Drawing(Arc::new(Drawing::of(drawing.scale, marks))))
}
