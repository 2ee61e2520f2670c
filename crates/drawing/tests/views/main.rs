//! Drawings of whole plans, read back as marks and words.

mod plan_views;
mod sample;
