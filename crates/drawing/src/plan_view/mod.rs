//! The plan view: roofs with parapets and obstacles, units, what they sweep and reach, and figures where they belong.
//!
//! Each function draws one thing, so that an editor can keep what did not change; [`plan_view`] puts all together.

mod base;
mod edge_distances;
mod edges;
mod obstacle;
mod options;
mod reach_band;
mod readings;
mod roof;
mod setting_out;
mod slab_zones;
mod unit;
mod view;
mod zones;

pub(crate) use readings::against_word;

pub use edge_distances::edge_distance_marks;
pub use obstacle::obstacle_marks;
pub use options::PlanViewOptions;
pub use reach_band::reach_marks;
pub use readings::{clearance_labels, conflict_marks, reaction_label};
pub use roof::roof_marks;
pub use setting_out::{setback_marks, setting_out_marks};
pub use unit::{keep_clear_of, tag_label, unit_marks};
pub use view::{PlanView, plan_view, plan_view_keeping};
pub use zones::{room_marks, zone_marks};
