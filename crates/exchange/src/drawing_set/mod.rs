//! The drawing set: roof plans at a true scale, elevations, sections and setting-out, on sheets of one paper size.
//!
//! `set` puts the sheets together; `roof_plan`, `elevations`, `sections` and `setting_out` draw them. A `sheet` has a
//! frame and a strip at its right with legend, notes and title block; `lettering`, `table`, `arranged` and
//! `usual_scale` are what sheets are made with, here and in the load plan.

pub(crate) mod arranged;
pub(crate) mod elevations;
pub(crate) mod given;
pub(crate) mod lettering;
pub mod paper_size;
pub(crate) mod roof_plan;
pub(crate) mod sections;
pub(crate) mod set;
pub(crate) mod setting_out;
pub(crate) mod sheet;
pub(crate) mod table;
pub(crate) mod tiles;
pub(crate) mod title_block;
pub mod usual_scale;

pub use given::Given;
pub use paper_size::PaperSize;
pub use set::drawing_set;
