//! Where a shown figure comes from: formula, symbols with their values, parts that add up, source, and where each input
//! was entered. Computed when someone asks, never while a plan is assessed.

mod acting;
mod brace_and_foot;
mod clearance;
mod entered;
mod facade;
pub mod figure_id;
mod inside;
mod joint;
mod member;
mod of_plan;
mod place;
mod plate;
mod reach;
mod reaction;
mod stiffness;
mod subject;
pub mod trace;

pub use figure_id::{FigureId, MeasuredFrom};
pub use trace::{Sum, Symbol, Term, Trace, explain, explain_in};
