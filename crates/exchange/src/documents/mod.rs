//! Documents: what leaves the plan for others, each standing alone with its imprint.
//!
//! [`make`](mod@make) makes them in memory and writes them together; [`imprint`] is what each says of itself.

pub mod imprint;
pub mod kind;
pub mod make;

pub use imprint::{CAUTION, Imprint};
pub use kind::DocumentKind;
pub use make::{Document, DocumentFault, Progress, Wanted, make, write};
