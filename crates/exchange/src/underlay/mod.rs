//! Underlays: the architect's drawing or a scan, as pixels at a wanted resolution or as lines to snap to.
//!
//! [`recognize()`] tells from the first bytes what a file is. [`Source::open`] reads as much as is needed to say which pages
//! there are and how large they are, without decoding a pixel; [`Source::pixels`] gives a part of a page. Whatever is broken,
//! cut off, locked or too large is an [`UnderlayFault`].
//!
//! Places of a page run from its lower left corner to the right and upward, in the unit of its kind: points of 1/72 inch,
//! pixels, or the unit of the drawing.

mod drawn;
pub mod fault;
pub mod limits;
pub mod lines;
mod pdf;
mod picture;
pub mod pixels;
mod recognize;
mod shrink;
pub mod source;

pub use fault::UnderlayFault;
pub use lines::Lines;
pub use pixels::{Extent, Pixels, Wanted};
pub use recognize::recognize;
pub use source::{Source, attach};
