//! Plane geometry of roofs, facades and clear zones, as pure functions of points in meters.

pub mod bounds;
pub mod concrete_around;
pub mod facade;
pub mod frame;
pub mod hair;
pub mod mass;
pub mod neighbors;
mod number_line;
pub mod polygons;
pub mod prism;
pub mod rings;
pub mod segments;
pub mod spans;
pub mod strips;
pub mod turns;
pub(crate) mod wedge;
