//! Pictures in rows on sheets, each with its caption, in the order in which they come.

use std::sync::Arc;

use gantline_drawing::Drawing;
use gantline_drawing::legend::entries;
use glam::DVec2;

use super::given::Given;
use super::lettering::TEXT;
use super::sheet::{Aside, Draft, Series, legend, picture, scale_and_north, whole};
use super::usual_scale::UsualScale;
use crate::paper::OnPage;

/// Between pictures, mm.
const BETWEEN_MM: f64 = 14.0;
/// From a picture to its caption, mm.
const CAPTION_MM: f64 = 5.0;

/// A picture with its caption.
#[derive(Debug, Clone, PartialEq)]
pub struct Captioned {
    /// The picture.
    pub drawing: Arc<Drawing>,
    /// What stands under it.
    pub caption: String,
}

/// A caption takes so many lines that it is no wider than its picture.
fn caption_lines(one: &Captioned, width_mm: f64) -> Vec<String> {
    TEXT.lines(&one.caption, width_mm.max(60.0))
}

/// Width and height that a picture takes with its caption, mm.
pub fn taken_mm(one: &Captioned) -> DVec2 {
    let Some((_, size_mm)) = whole(&one.drawing) else { return DVec2::ZERO };
    let lines = caption_lines(one, size_mm.x).len() as f64;
    size_mm + DVec2::Y * (CAPTION_MM + lines * TEXT.line_mm())
}

/// Sheets of pictures that all are at one scale.
pub fn sheets(given: &Given<'_>, series: Series, title: &str, scale: UsualScale, all: &[Captioned]) -> Vec<Draft> {
    let room = given.size.room();
    let mut drafts: Vec<(Vec<OnPage>, Vec<&Captioned>)> = Vec::new();
    let (mut corner, mut row_mm) = (DVec2::new(room.min_mm.x, room.max_mm.y), 0.0_f64);
    for one in all {
        let size = taken_mm(one);
        if corner.x > room.min_mm.x && corner.x + size.x > room.max_mm.x {
            corner = DVec2::new(room.min_mm.x, corner.y - row_mm - BETWEEN_MM);
            row_mm = 0.0;
        }
        let is_fresh = corner.y >= room.max_mm.y;
        if drafts.is_empty() || (!is_fresh && corner.y - size.y < room.min_mm.y) {
            drafts.push((Vec::new(), Vec::new()));
            (corner, row_mm) = (DVec2::new(room.min_mm.x, room.max_mm.y), 0.0);
        }
        if let Some((things, shown)) = drafts.last_mut() {
            things.extend(put(one, corner));
            shown.push(one);
        }
        corner.x += size.x + BETWEEN_MM;
        row_mm = row_mm.max(size.y);
    }
    let draft = |(things, shown): (Vec<OnPage>, Vec<&Captioned>)| Draft {
        series,
        title: title.to_owned(),
        scale: Some(scale),
        things,
        aside: beside(given, scale, &shown),
    };
    drafts.into_iter().map(draft).collect()
}

/// A picture with its upper left corner here, and its caption.
fn put(one: &Captioned, corner: DVec2) -> Vec<OnPage> {
    let Some((_, size_mm)) = whole(&one.drawing) else { return Vec::new() };
    let low = corner - DVec2::Y * size_mm.y;
    let mut things: Vec<OnPage> = picture(Arc::clone(&one.drawing), low).into_iter().collect();
    for (index, line) in caption_lines(one, size_mm.x).into_iter().enumerate() {
        let down = CAPTION_MM + TEXT.line_mm() * index as f64;
        things.push(TEXT.at(line, low - DVec2::Y * down));
    }
    things
}

/// Scale bar, and one legend of all hatches on the sheet.
fn beside(given: &Given<'_>, scale: UsualScale, shown: &[&Captioned]) -> Vec<Aside> {
    let scale = scale.scale();
    let hatched = shown.iter().filter(|one| !entries(&one.drawing).is_empty());
    let marks = hatched.flat_map(|one| one.drawing.marks.iter().cloned()).collect();
    let mut aside = vec![scale_and_north(given, scale, false)];
    aside.extend(legend(&Drawing::of(scale, marks)));
    aside
}
