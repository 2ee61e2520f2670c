//! Prints pages as PDF: vectors at true size, and text that can be selected and searched, in the shipped typeface.
//!
//! [`pdf`] prints a [`Paper`]: `page` its pages, `picture` the drawings on them, `ink` lines and areas, `lettering` words.
//! Nothing here decides what stands where. The same paper gives the same bytes: the only date is the paper's own.
#![warn(missing_docs)]

mod ink;
mod lettering;
mod page;
mod picture;

use gantline_exchange::paper::Paper;
use krilla::destination::XyzDestination;
use krilla::geom::Point;
use krilla::metadata::{DateTime, Metadata};
use krilla::outline::{Outline, OutlineNode};
use krilla::{Document, SerializeSettings};

use lettering::Faces;

/// Points in a millimeter: PDF counts in points of 1/72 inch.
const PT_PER_MM: f64 = 72.0 / 25.4;

/// Prints a paper as the bytes of a PDF file, or says in words what can't be printed.
pub fn pdf(paper: &Paper) -> Result<Vec<u8>, String> {
    printed(paper, SerializeSettings::default())
}

fn printed(paper: &Paper, settings: SerializeSettings) -> Result<Vec<u8>, String> {
    if paper.pages.is_empty() {
        return Err("there is no page to be printed".to_owned());
    }
    let faces = Faces::read()?;
    let mut document = Document::new_with(settings);
    let mut outline = Outline::new();
    for (number, page) in paper.pages.iter().enumerate() {
        page::print(&mut document, page, &faces).map_err(|fault| format!("page {}: {fault}", number + 1))?;
        if let Some(name) = &page.bookmark {
            let top = XyzDestination::new(number, Point::from_xy(0.0, 0.0));
            outline.push_child(OutlineNode::new(name.clone(), top));
        }
    }
    document.set_outline(outline);
    document.set_metadata(metadata(paper));
    document.finish().map_err(|fault| format!("the PDF can't be put together: {fault:?}"))
}

fn metadata(paper: &Paper) -> Metadata {
    let mut about = Metadata::new()
        .title(paper.title.clone())
        .creator("Gantline".to_owned())
        .producer("Gantline".to_owned())
        .language("en-US".to_owned());
    if !paper.author.is_empty() {
        about = about.authors(vec![paper.author.clone()]);
    }
    match paper.date {
        Some((year, month, day)) => about.creation_date(DateTime::new(year).month(month).day(day)),
        None => about,
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use gantline_drawing::letter_width::Face;
    use gantline_drawing::{Drawing, Fill, Hatch, Layer, Mark, Pen, Polygon, Scale};
    use gantline_exchange::palette::BLACK;
    use gantline_exchange::paper::{OnPage, Page, Words};
    use glam::DVec2;

    use super::*;

    /// A page with words, and with an edge of ten meters drawn at 1 to 100.
    fn paper() -> Paper {
        let edge = Mark::line(Layer::Outline, Pen::SlabEdge, vec![DVec2::new(3.0, 4.0), DVec2::new(13.0, 4.0)]);
        let ground = Polygon::rectangle(DVec2::new(3.0, 4.0), DVec2::new(13.0, 6.0));
        let zone = Mark::area(Layer::ClearZone, Fill::Hatch(Hatch::ClearZoneArm), Some(Pen::ClearZone), ground);
        let drawing = Arc::new(Drawing::of(Scale::one_to(100.0), vec![edge, zone]));
        let window = drawing.bounds().unwrap().grown(0.1);
        let words = Words {
            words: "Roof ψ ≤ 1".to_owned(),
            at_mm: DVec2::new(20.0, 20.0),
            size_mm: 2.8,
            face: Face::Condensed,
            ink: BLACK,
        };
        let things = vec![OnPage::Words(words), OnPage::Picture { drawing, window, at_mm: DVec2::splat(30.0) }];
        let page = Page { size_mm: DVec2::new(841.0, 594.0), bookmark: Some("R-01".to_owned()), things };
        Paper { title: "Set".to_owned(), author: "A".to_owned(), date: Some((2026, 3, 31)), pages: vec![page] }
    }

    fn in_the_open(paper: &Paper) -> String {
        let settings = SerializeSettings {
            compress_content_streams: false,
            ascii_compatible: true,
            ..SerializeSettings::default()
        };
        String::from_utf8_lossy(&printed(paper, settings).unwrap()).into_owned()
    }

    /// Witness: 841 mm by 594 mm are 2383.937 by 1683.780 points of 1/72 inch.
    #[test]
    fn a_page_has_the_size_of_its_paper() {
        let text = in_the_open(&paper());
        let from = text.find("/MediaBox").unwrap();
        let inside = text[from..].split(['[', ']']).nth(1).unwrap();
        let numbers: Vec<f64> = inside.split_whitespace().map(|number| number.parse().unwrap()).collect();
        assert_eq!(numbers[..2], [0.0, 0.0]);
        assert!((numbers[2] - 2383.937).abs() < 2e-3 && (numbers[3] - 1683.780).abs() < 2e-3, "{numbers:?}");
    }

    /// Witness: 10 m at 1 to 100 are 100 mm, which are 283.465 points; the pen is 0.5 mm wide, 1.417 points.
    #[test]
    fn an_edge_of_ten_meters_measures_ten_meters_at_the_scale_of_its_drawing() {
        let text = in_the_open(&paper());
        let words: Vec<&str> = text.split_whitespace().collect();
        let number = |at: usize| words[at].parse::<f64>().unwrap_or(f64::NAN);
        let straight = (5..words.len()).filter(|&at| words[at] == "l" && words[at - 3] == "m");
        let lengths: Vec<f64> = straight.map(|at| (number(at - 2) - number(at - 5)).abs()).collect();
        assert!(lengths.iter().any(|length| (length - 283.4646).abs() < 1e-3), "{lengths:?}");
        let widths: Vec<f64> = (1..words.len()).filter(|&at| words[at] == "w").map(|at| number(at - 1)).collect();
        assert!(widths.iter().any(|width| (width - 1.4173).abs() < 1e-3), "{widths:?}");
    }

    #[test]
    fn the_same_paper_gives_the_same_bytes_with_its_own_date_only() {
        let (first, second) = (pdf(&paper()).unwrap(), pdf(&paper()).unwrap());
        assert!(first == second);
        let text = in_the_open(&paper());
        assert!(text.contains("(D:20260331"), "the paper's date");
        assert_eq!(text.matches("(D:").count(), text.matches("(D:20260331").count(), "and no other");
        let undated = in_the_open(&Paper { date: None, ..paper() });
        assert!(!undated.contains("(D:"));
    }

    #[test]
    fn only_letters_that_are_used_are_in_the_file() {
        let bytes = pdf(&paper()).unwrap();
        assert!(bytes.starts_with(b"%PDF-") && bytes.len() < 60_000, "{} bytes", bytes.len());
    }

    #[test]
    fn what_can_not_be_printed_is_said_in_words() {
        let fault = pdf(&Paper { pages: Vec::new(), ..paper() }).unwrap_err();
        assert_eq!(fault, "there is no page to be printed");
        for size_mm in [DVec2::ZERO, DVec2::new(f64::NAN, 10.0), DVec2::new(10.0, 1e6)] {
            let mut paper = paper();
            paper.pages[0].size_mm = size_mm;
            assert!(pdf(&paper).unwrap_err().starts_with("page 1: "), "{size_mm}");
        }
    }

    #[test]
    fn places_that_are_nowhere_leave_no_ink_and_no_fault() {
        let mut paper = paper();
        let nowhere = DVec2::new(f64::NAN, f64::INFINITY);
        paper.pages[0].things.push(OnPage::Line { points_mm: vec![nowhere, nowhere], width_mm: 0.2, ink: BLACK });
        paper.pages[0].things.push(OnPage::Area { rings_mm: vec![vec![nowhere; 3], Vec::new()], ink: BLACK });
        let words = Words { words: "x".to_owned(), at_mm: nowhere, size_mm: 3.0, face: Face::Regular, ink: BLACK };
        paper.pages[0].things.push(OnPage::Words(words));
        assert!(pdf(&paper).is_ok());
    }
}
