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

/// Inside the strip's lines, mm.
const STRIP_MM: f64 = 4.0;
/// What a strip says that had no room for all.
const ELSEWHERE: &str = "More notes, and what else belongs to the legend: sheet N-01.";
/// Between what stands in the strip, mm.
const GAP_MM: f64 = 5.0;
/// How far letters reach below their line, mm.
const DESCENT_MM: f64 = 0.8;
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
    /// Notes that found no room beside what they are about.
    Notes,
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
            Self::Notes => 'N',
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

/// Puts drafts into frames, numbers them, and makes a paper of them. What has no room in a strip goes to sheets of notes.
pub fn paper(given: &Given<'_>, title: &str, mut drafts: Vec<Draft>) -> Paper {
    let mut left: Vec<Aside> = Vec::new();
    for draft in &mut drafts {
        for one in keep_what_fits(given, draft) {
            if !left.contains(&one) {
                left.push(one);
            }
        }
    }
    drafts.extend(sheets_of_notes(given, left));
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
    let inside = strip.within(STRIP_MM);
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

/// Leaves beside a draft what its strip has room for, with a word on where the rest is; gives the rest.
fn keep_what_fits(given: &Given<'_>, draft: &mut Draft) -> Vec<Aside> {
    let inside = given.size.strip().within(STRIP_MM);
    let width_mm = inside.size_mm().x;
    let scale = draft.scale.map(|scale| scale.words);
    let (_, top_mm) = title_block(given, inside, ("", ""), scale);
    let title_mm = TITLE.lines(&draft.title, width_mm).len() as f64 * TITLE.line_mm() + TITLE.size_mm + GAP_MM;
    let mut room_mm = inside.max_mm.y - top_mm - title_mm;
    let all_mm: f64 = draft.aside.iter().map(|one| height_mm(one, width_mm)).sum();
    if all_mm <= room_mm {
        return Vec::new();
    }
    let elsewhere = Aside::Note(ELSEWHERE.to_owned());
    room_mm -= height_mm(&elsewhere, width_mm);
    let mut left = Vec::new();
    for one in std::mem::take(&mut draft.aside) {
        let high_mm = height_mm(&one, width_mm);
        if high_mm <= room_mm {
            room_mm -= high_mm;
            draft.aside.push(one);
        } else {
            left.push(one);
        }
    }
    draft.aside.push(elsewhere);
    left
}

/// Height that something takes in a strip, with the gap below it, mm.
fn height_mm(one: &Aside, width_mm: f64) -> f64 {
    let own_mm = match one {
        Aside::Drawing(drawing) => whole(drawing).map_or(0.0, |(_, size_mm)| size_mm.y),
        Aside::Note(words) => {
            TEXT.size_mm + (TEXT.lines(words, width_mm).len() as f64 - 1.0) * TEXT.line_mm() + DESCENT_MM
        }
    };
    own_mm + GAP_MM / 2.0
}

/// Notes in columns as wide as the strip that had no room for them.
fn sheets_of_notes(given: &Given<'_>, notes: Vec<Aside>) -> Vec<Draft> {
    let room = given.size.room();
    let width_mm = given.size.strip().within(STRIP_MM).size_mm().x;
    let mut pages: Vec<Vec<OnPage>> = Vec::new();
    let mut corner = room.max_mm;
    for one in notes {
        if pages.is_empty() || corner.y - height_mm(&one, width_mm) < room.min_mm.y {
            corner = DVec2::new(corner.x + width_mm + 2.0 * GAP_MM, room.max_mm.y);
        }
        if pages.is_empty() || corner.x + width_mm > room.max_mm.x {
            pages.push(Vec::new());
            corner = DVec2::new(room.min_mm.x, room.max_mm.y);
        }
        let Some(things) = pages.last_mut() else { continue };
        let column = Area { min_mm: DVec2::new(corner.x, room.min_mm.y), max_mm: corner + DVec2::X * width_mm };
        corner.y = aside(things, one, column);
    }
    let draft =
        |things| Draft { series: Series::Notes, title: "Notes".to_owned(), scale: None, things, aside: Vec::new() };
    pages.into_iter().map(draft).collect()
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
            y += TEXT.line_mm() - DESCENT_MM;
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
