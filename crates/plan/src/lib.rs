//! The plan document, its changes, its file format and everything assessed about it.
//!
//! By theme: [`document`] is the plain data; [`catalog`] the parts a unit is made of; [`basis`] what
//! pulls and which limits hold; [`change`] the only way to alter a plan; [`mod@file`] text to plan and back;
//! [`quantity`] how figures are read and shown; [`geometry`] and [`assess`] what is computed; [`explain`] how any of
//! it came about.
//!
//! Conventions: meters, newtons, radians, kilograms; a roof's level is the top of its structural slab;
//! outer rings run counter-clockwise, holes clockwise, so that outside is on the right of an edge.
#![warn(missing_docs)]

pub mod assess;
pub mod basis;
pub mod catalog;
pub mod change;
pub mod document;
pub mod explain;
pub mod file;
pub mod geometry;
pub mod quantity;
