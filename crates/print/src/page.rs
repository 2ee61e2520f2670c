//! One page: its things in their order, from millimeters with y up to points with y down.

use gantline_exchange::paper::{OnPage, Page};
use glam::DVec2;
use krilla::Document;
use krilla::page::PageSettings;
use krilla::surface::Surface;

use crate::PT_PER_MM;
use crate::ink;
use crate::lettering::{Faces, Line};
use crate::picture;

/// Largest side of a page that readers of PDF take, mm: 200 inches (ISO 32000-1, annex C).
const LARGEST_MM: f64 = 5080.0;

/// Where millimeters of the page lie in points.
#[derive(Clone, Copy)]
pub struct Place {
    height_mm: f64,
}

impl Place {
    /// A point of the page in points from its upper left corner.
    pub fn pt(self, at_mm: DVec2) -> DVec2 {
        DVec2::new(at_mm.x, self.height_mm - at_mm.y) * PT_PER_MM
    }
}

/// Prints a page.
pub fn print(document: &mut Document, page: &Page, faces: &Faces) -> Result<(), String> {
    let size = page.size_mm;
    let is_paper = |mm: f64| mm > 0.0 && mm <= LARGEST_MM;
    let settings = PageSettings::from_wh((size.x * PT_PER_MM) as f32, (size.y * PT_PER_MM) as f32)
        .filter(|_| is_paper(size.x) && is_paper(size.y))
        .ok_or_else(|| format!("{} by {} mm is no size of a page", size.x, size.y))?;
    let place = Place { height_mm: size.y };
    let mut sheet = document.start_page_with(settings);
    let mut surface = sheet.surface();
    for thing in &page.things {
        one(&mut surface, place, thing, faces);
    }
    surface.finish();
    sheet.finish();
    Ok(())
}

fn one(surface: &mut Surface<'_>, place: Place, thing: &OnPage, faces: &Faces) {
    match thing {
        OnPage::Words(words) => {
            let line = Line {
                words: &words.words,
                face: words.face,
                size_pt: words.size_mm * PT_PER_MM,
                ink: words.ink,
                turn_rad: 0.0,
                begins: 0.0,
                drop_pt: 0.0,
            };
            faces.write(surface, place.pt(words.at_mm), &line);
        }
        OnPage::Line { points_mm, width_mm, ink } => {
            let path = ink::path(points_mm.iter().map(|&at| place.pt(at)), false);
            ink::stroke(surface, path, *ink, *width_mm, &[]);
        }
        OnPage::Area { rings_mm, ink } => {
            let rings = rings_mm.iter().map(|ring| ring.iter().map(|&at| place.pt(at)));
            ink::fill(surface, ink::rings(rings), *ink);
        }
        OnPage::Picture { drawing, window, at_mm } => {
            picture::print(surface, place, (drawing, *window, *at_mm), faces);
        }
    }
}
