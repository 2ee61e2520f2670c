//! Drawings of whole plans, read back as marks and words.

mod bases;
mod building_views;
mod elevations;
mod plan_views;
mod plates;
mod read_back;
mod sample;
mod sections;
