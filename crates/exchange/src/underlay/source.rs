//! A file that lies under the plan, opened: its pages, how large they are, and what they show.

use std::sync::Arc;

use gantline_plan::document::{Attachment, AttachmentKind};
use glam::DVec2;

use super::drawn::drawn;
use super::fault::UnderlayFault;
use super::lines::Lines;
use super::pdf::Document;
use super::picture;
use super::pixels::{Extent, Pixels, Wanted};
use super::recognize;
use crate::outline;

/// An attachment, opened.
pub struct Source {
    shows: Shows,
    extents: Vec<Extent>,
}

enum Shows {
    Pdf(Box<Document>),
    Png(Arc<[u8]>),
    Jpeg(Arc<[u8]>),
    Lines(Arc<Lines>),
}

/// A file as an attachment, after it was opened once: what can't be shown is not taken into a plan.
pub fn attach(bytes: Vec<u8>) -> Result<(Attachment, Source), UnderlayFault> {
    let kind = recognize(&bytes)?;
    let attachment = Attachment::new(kind, bytes)?;
    let source = Source::open(&attachment)?;
    Ok((attachment, source))
}

impl Source {
    /// Opens an attachment: sizes are read, no pixel is decoded. Lines of a drawing are read whole.
    pub fn open(attachment: &Attachment) -> Result<Self, UnderlayFault> {
        let bytes = attachment.bytes();
        let of_pixels = |(width, height): (u32, u32)| {
            vec![Extent { min: DVec2::ZERO, max: DVec2::new(f64::from(width), f64::from(height)) }]
        };
        Ok(match attachment.kind() {
            AttachmentKind::Pdf => {
                let document = Document::open(bytes)?;
                let extents = document.sizes.iter().map(|&max| Extent { min: DVec2::ZERO, max }).collect();
                Self { shows: Shows::Pdf(Box::new(document)), extents }
            }
            AttachmentKind::Png => {
                Self { extents: of_pixels(picture::png_size(bytes)?), shows: Shows::Png(Arc::clone(bytes)) }
            }
            AttachmentKind::Jpeg => {
                Self { extents: of_pixels(picture::jpeg_size(bytes)?), shows: Shows::Jpeg(Arc::clone(bytes)) }
            }
            AttachmentKind::Dxf => {
                let lines = Lines::of(&outline::read(bytes)?)?;
                Self { extents: vec![lines.extent], shows: Shows::Lines(Arc::new(lines)) }
            }
        })
    }

    /// Where each page lies in its own coordinates; there is at least one.
    pub fn extents(&self) -> &[Extent] {
        &self.extents
    }

    /// Where a page lies, counted from 1.
    pub fn extent(&self, page: u32) -> Result<Extent, UnderlayFault> {
        let found = usize::try_from(page).ok().and_then(|page| self.extents.get(page.checked_sub(1)?)).copied();
        found.ok_or(UnderlayFault::NoSuchPage { page, has: self.extents.len() })
    }

    /// The lines of a drawing; none of anything else.
    pub fn lines(&self) -> Option<&Arc<Lines>> {
        match &self.shows {
            Shows::Lines(lines) => Some(lines),
            Shows::Pdf(_) | Shows::Png(_) | Shows::Jpeg(_) => None,
        }
    }

    /// A part of a page, counted from 1, as finely as wanted and as memory and the file allow; none when the part lies
    /// beside the page. Lines of a drawing are white on nothing: whoever shows them gives them a color.
    pub fn pixels(&self, page: u32, wanted: &Wanted) -> Result<Option<Pixels>, UnderlayFault> {
        self.extent(page)?;
        match &self.shows {
            Shows::Pdf(document) => document.pixels(page as usize - 1, wanted),
            Shows::Png(bytes) => picture::png_pixels(bytes, wanted),
            Shows::Jpeg(bytes) => picture::jpeg_pixels(bytes, wanted),
            Shows::Lines(lines) => Ok(drawn(lines, wanted)),
        }
    }
}
