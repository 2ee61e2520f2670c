//! Small parts that panels are put together from.

pub mod field;
pub mod figure;
pub mod icon;
pub mod mark;
pub mod section;
pub mod utilization_bar;

pub use field::{Asked, Field, ask};
pub use figure::{figure_row, word_row};
pub use icon::{Icon, icon_button};
pub use section::section;
