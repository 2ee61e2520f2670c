//! PDF documents: their pages and how large they are, and a part of a page at a wanted resolution.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::Arc;

use glam::DVec2;
use hayro::hayro_interpret::InterpreterSettings;
use hayro::hayro_interpret::util::TransformExt;
use hayro::hayro_syntax::{DecryptionError, LoadPdfError, Pdf};
use hayro::kurbo::Affine;
use hayro::vello_cpu::color::palette::css::WHITE;
use hayro::vello_cpu::{Pixmap, RasterizerSettings, RenderContext, Resources, TargetInit};
use hayro::{RenderCache, RenderSettings, render_into};

use super::fault::UnderlayFault;
use super::limits::{LONGEST_PAGE, LONGEST_SIDE, MOST_PAGES};
use super::pixels::{Extent, Pixels, Wanted};

const KIND: &str = "PDF";

/// A document.
pub struct Document {
    pdf: Pdf,
    /// Width and height of each page as it is seen, points.
    pub sizes: Vec<DVec2>,
}

/// The bytes as the reader of PDF shares them.
struct Shared(Arc<[u8]>);

impl AsRef<[u8]> for Shared {
    fn as_ref(&self) -> &[u8] {
        &self.0
    }
}

/// A reader of files that others made meets what nobody has thought of: what makes it give up is a broken file to us.
fn guarded<T>(what: &str, work: impl FnOnce() -> T) -> Result<T, UnderlayFault> {
    catch_unwind(AssertUnwindSafe(work))
        .map_err(|_| UnderlayFault::Broken { kind: KIND, what: format!("{what} can't be read") })
}

/// Readers look for the end mark in the last kilobyte; some programs write a little after it.
const END_MARK_WITHIN: usize = 4096;

impl Document {
    /// Opens a document. One whose end is missing is refused: what is lost of it would not be seen to be lost.
    pub fn open(bytes: &Arc<[u8]>) -> Result<Self, UnderlayFault> {
        const END_MARK: &[u8] = b"%%EOF";
        let tail = bytes.get(bytes.len().saturating_sub(END_MARK_WITHIN)..).unwrap_or(bytes);
        if !tail.windows(END_MARK.len()).any(|part| part == END_MARK) {
            return Err(UnderlayFault::CutOff { kind: KIND, missing: "its end mark" });
        }
        let shared = Arc::new(Shared(Arc::clone(bytes)));
        let pdf = guarded("the document", || Pdf::new(shared))?.map_err(|fault| match fault {
            LoadPdfError::Decryption(DecryptionError::PasswordProtected | DecryptionError::UnsupportedAlgorithm) => {
                UnderlayFault::Encrypted
            }
            LoadPdfError::Decryption(fault) => UnderlayFault::Broken { kind: KIND, what: format!("{fault:?}") },
            LoadPdfError::Invalid => {
                UnderlayFault::Broken { kind: KIND, what: "its list of pages can't be found".to_owned() }
            }
        })?;
        let sizes: Vec<DVec2> = guarded("its list of pages", || {
            let size = |(width, height): (f32, f32)| DVec2::new(f64::from(width), f64::from(height));
            pdf.pages().iter().take(MOST_PAGES + 1).map(|page| size(page.render_dimensions())).collect()
        })?;
        if sizes.is_empty() {
            return Err(UnderlayFault::NoPage);
        }
        if sizes.len() > MOST_PAGES {
            return Err(UnderlayFault::TooManyPages { has: pdf.pages().len(), most: MOST_PAGES });
        }
        let is_page = |size: &DVec2| size.cmpge(DVec2::ONE).all() && size.cmple(DVec2::splat(LONGEST_PAGE)).all();
        if let Some((index, size)) = sizes.iter().enumerate().find(|(_, size)| !is_page(size)) {
            let shown = |value: f64| format!("{value:.0}");
            return Err(UnderlayFault::PageSize { page: index + 1, width: shown(size.x), height: shown(size.y) });
        }
        Ok(Self { pdf, sizes })
    }

    /// A part of a page, counted from 0; none when the part lies beside it.
    pub fn pixels(&self, page: usize, wanted: &Wanted) -> Result<Option<Pixels>, UnderlayFault> {
        let (Some(shown), Some(&size)) = (self.pdf.pages().get(page), self.sizes.get(page)) else {
            return Ok(None);
        };
        let Some(part) = wanted.part.common(&Extent { min: DVec2::ZERO, max: size }) else { return Ok(None) };
        let wanted = Wanted { part, px_per_unit: wanted.px_per_unit }.within_limits();
        let scale = wanted.px_per_unit;
        // Out to whole pixels, counted from the upper left corner.
        let from_px = DVec2::new(part.min.x, size.y - part.max.y) * scale;
        let to_px = DVec2::new(part.max.x, size.y - part.min.y) * scale;
        let (from_px, to_px) = (from_px.floor(), to_px.ceil());
        let size_px = (to_px - from_px).clamp(DVec2::ONE, DVec2::splat(LONGEST_SIDE + 2.0));
        let (width, height) = (size_px.x as u16, size_px.y as u16);
        let pixmap = guarded("the page", || {
            let mut context = RenderContext::new(width, height);
            let to_part = Affine::translate((-from_px.x, -from_px.y)) * Affine::scale(scale);
            let transform = to_part * shown.initial_transform(true).to_kurbo();
            let settings = InterpreterSettings::default();
            render_into(shown, &RenderCache::new(), &settings, &RenderSettings::default(), &mut context, transform);
            context.flush();
            let mut pixmap = Pixmap::new(width, height);
            let on_white =
                RasterizerSettings { target_init: TargetInit::Clear(WHITE), ..RasterizerSettings::default() };
            context.render_with(&mut pixmap, &mut Resources::default(), on_white);
            pixmap
        })?;
        let min = DVec2::new(from_px.x, 0.0) / scale + DVec2::Y * (size.y - (from_px.y + size_px.y) / scale);
        Ok(Some(Pixels {
            part: Extent { min, max: min + size_px / scale },
            px_per_unit: scale,
            width: usize::from(width),
            height: usize::from(height),
            rgba: pixmap.data_as_u8_slice().to_vec(),
        }))
    }
}
