//! What can be recomputed from the plan: its assessment and its drawings. Never saved; it follows the plan.

pub mod assessed;
pub mod drawn;
pub mod picture;
pub mod underlays;
pub mod views;

pub use assessed::Assessed;
pub use drawn::{Drawn, View};
pub use picture::picture;
pub use underlays::Underlays;
