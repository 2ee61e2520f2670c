//! The inspector: fields, figures and findings of what is selected.

mod base;
mod base_picture;
mod base_record;
mod base_uses;
mod clearances;
mod edges;
mod edges_data;
mod facade_profile;
mod inset_picture;
mod joints;
mod members;
mod nothing;
mod obstacle;
mod of_selection;
mod reach;
mod reactions;
mod roof;
mod roof_bars;
mod several;
mod underlay;
mod underlays;
mod unit;
mod unit_parts;
mod unit_place;
mod units;

pub use of_selection::show;
