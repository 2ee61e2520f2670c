//! Labels: boxed tags and blocks of figures, placed beside their things without overlap, with a leader where they stand off.
//!
//! Places are kept from one drawing to the next while they are still free, so that figures don't jump during a drag.

mod boxed;
mod drawn;
mod placing;

pub use boxed::{Label, LabelKey, LabelKind, LabelPlaces, PlacedLabel, Row};
pub use drawn::label_marks;
pub use placing::{place, places_of};
