//! Small parts that panels are put together from.

pub mod choice_row;
pub mod decimal_column;
pub mod field;
pub mod figure;
pub mod finding_row;
pub mod icon;
pub mod mark;
pub mod one_line;
pub mod section;
pub mod sign_picture;
pub mod switch_row;
pub mod utilization_bar;

pub use choice_row::choice_row;
pub use decimal_column::DecimalColumns;
pub use field::{Asked, Field, ask};
pub use figure::{figure_row, word_row};
pub use finding_row::finding_row;
pub use icon::{Icon, icon_button};
pub use one_line::one_line;
pub use section::section;
pub use sign_picture::sign_picture;
pub use switch_row::switch_row;
pub use utilization_bar::{Opening, opening_utilization_row, utilization_row};
