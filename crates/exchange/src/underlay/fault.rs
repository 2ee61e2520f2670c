//! Why a file can't lie under the plan.

use gantline_plan::document::AttachmentFault;

use crate::outline::OutlineFault;

/// Why a file can't lie under the plan, or a page of it can't be shown.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum UnderlayFault {
    /// Empty, or more than a plan takes in.
    #[error(transparent)]
    Attachment(#[from] AttachmentFault),
    /// A drawing in the closed binary form.
    #[error("this is a DWG drawing ({version}): save it as DXF or PDF in the program that made it, and open that file")]
    Dwg {
        /// The version as the file names it.
        version: String,
    },
    /// None of the kinds that are shown.
    #[error("this is none of PDF, PNG, JPEG and DXF: it begins with \"{begins}\"")]
    OtherKind {
        /// Its first letters.
        begins: String,
    },
    /// It ends before it should.
    #[error("the {kind} is cut off: {missing} is missing")]
    CutOff {
        /// What kind of file it is.
        kind: &'static str,
        /// What is missing.
        missing: &'static str,
    },
    /// It can't be read as what it says it is.
    #[error("the {kind} is broken: {what}")]
    Broken {
        /// What kind of file it is.
        kind: &'static str,
        /// What is wrong.
        what: String,
    },
    /// A PDF that wants a password.
    #[error("the PDF is encrypted and opens with a password only: save it without one, and open that file")]
    Encrypted,
    /// A PDF with nothing to show.
    #[error("the PDF has no page")]
    NoPage,
    /// A page that is not there.
    #[error("there is no page {page}: the file has {has}")]
    NoSuchPage {
        /// The page asked for, from 1.
        page: u32,
        /// Pages in the file.
        has: usize,
    },
    /// More pages than are offered.
    #[error("the PDF has {has} pages; at most {most} are read: save the page that is wanted as a file of its own")]
    TooManyPages {
        /// Pages in the file.
        has: usize,
        /// Most.
        most: usize,
    },
    /// A page without a size that can be drawn.
    #[error("page {page} is {width} × {height} points: that is no page")]
    PageSize {
        /// The page, from 1.
        page: usize,
        /// Its width.
        width: String,
        /// Its height.
        height: String,
    },
    /// More pixels than are decoded.
    #[error(
        "the {kind} has {width} × {height} pixels; at most {most} million, and {longest} on a side, are read: save it smaller"
    )]
    TooManyPixels {
        /// What kind of file it is.
        kind: &'static str,
        /// Its width.
        width: u32,
        /// Its height.
        height: u32,
        /// Most, in millions.
        most: u64,
        /// Most on one side.
        longest: u32,
    },
    /// A drawing that can't be read.
    #[error(transparent)]
    Drawing(#[from] OutlineFault),
    /// A drawing with more lines than can be drawn quickly.
    #[error("the drawing has more than {most} lines, curves as chords: export the layers that are wanted alone")]
    TooManyLines {
        /// Most.
        most: usize,
    },
    /// A drawing without a line.
    #[error("the drawing has no line in it")]
    NoLine,
}
